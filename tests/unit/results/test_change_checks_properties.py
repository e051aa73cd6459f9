"""Checks of any change of anything: they are well said, and never break."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, TypeVar

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchpack.model.change import Change, ChangeKind
from benchpack.model.fields import Field
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import MATERIAL_FIELDS, Material
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.ranges import Range
from benchpack.model.words import GOVERNS, KnownBy, Subsystem
from benchpack.results.candidates import compare_candidates
from benchpack.results.change_checks import KINDS, change_checks, proposal_checks
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.ledger import build_ledger
from tests.strategies.records import joints, materials, parts
from tests.unit.results import proposal_samples as samples
from tests.unit.results.change_samples import PACK, STUDY
from tests.unit.results.packs import pack
from tests.unit.results.proposal_strategies import proposals

relaxed = settings(
    deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow]
)
SaneT = TypeVar("SaneT", Part, Material)
_LEAST, _MOST = 1.0, 100.0
GOVERNING = st.sampled_from([(word,) for word in GOVERNS if word])
MASSES = st.none() | st.floats(1e-3, 1e4).map(Range.exactly)


def well_said(check: Check) -> None:
    assert check.kind in KINDS
    assert check.record
    assert check.words.endswith(".")
    assert "nan" not in check.words
    assert "inf " not in check.words
    if check.grade is Grade.FAIL:
        assert check.remedy
    for figure in check.figures:
        assert figure.label


@relaxed
@given(proposals())
def test_the_checks_of_any_proposal_are_well_said(changes: tuple[Change, ...]) -> None:
    library = samples.bench()
    ledger = build_ledger(library, samples.STUDY, changes)
    found = proposal_checks(library, samples.STUDY, ledger)
    assert list(found) == [applied.change.name for applied in ledger.applied]
    for checks in found.values():
        kinds = [KINDS.index(check.kind) for check in checks]
        assert len(kinds) == len(checks)
        for check in checks:
            well_said(check)


def _sane(record: SaneT, fields: tuple[Field, ...], **more: Any) -> SaneT:
    """Give a record whose figures lie within two decades, so that masses stay sane."""
    values: dict[str, Any] = {
        field.name: min(max(value, _LEAST), _MOST)
        for field in fields
        if isinstance(value := getattr(record, field.name), float) and field.positive
    }
    return replace(record, **values, **more)


def _library(
    part: Part, frame: Part, joint: Joint, two: tuple[Material, Material]
) -> Library:
    old, new = (
        _sane(material, MATERIAL_FIELDS, name=name)
        for material, name in zip(two, ("old", "new"), strict=True)
    )
    one = _sane(
        part,
        PART_FIELDS,
        pack=PACK,
        name="one",
        inside="two",
        material="old",
        carry_over=False,
        known_by=KnownBy.WEIGHED,
        mass_each_kg=0.01,
    )
    two_part = _sane(
        frame, PART_FIELDS, pack=PACK, name="two", inside="one", material="old"
    )
    cell = Part(PACK, "cell", inside="one", subsystem=Subsystem.CELLS)
    held = replace(joint, pack=PACK, joins="one", to="two", carry_over=False)
    return Library(
        PackTable.from_packs((pack(PACK, 70, 460),)),
        parts=by_pack((one, two_part, cell)),
        joints=by_pack((held,)),
        materials=(old, new),
    )


@relaxed
@given(
    parts(),
    parts(),
    joints(),
    st.tuples(materials(), materials()),
    GOVERNING,
    MASSES,
)
def test_no_record_breaks_a_check(
    part: Part,
    frame: Part,
    joint: Joint,
    two: tuple[Material, Material],
    governs: tuple[str, ...],
    mass: Range | None,
) -> None:
    library = _library(part, frame, joint, two)
    one = Change(
        STUDY.name,
        "one",
        ChangeKind.SUBSTITUTE,
        parts=("one",),
        material="new",
        governs=governs,
        mass_kg=mass,
    )
    for check in change_checks(library, STUDY, one):
        if check.kind in KINDS:
            assert check.words.endswith(".")
            if check.kind != "flammability":
                assert "nan" not in check.words
    found = compare_candidates(
        library, STUDY, "one", governs=governs, materials=("new",)
    )
    assert len(found.rows) == 1
    assert found.of("mass_kg").shape == (1,)


@settings(deadline=None, max_examples=5)
@given(st.permutations(["PP-LGF40", "aluminium", "PP-GF30", "bare PA"]))
def test_the_order_of_candidates_changes_no_figure(names: list[str]) -> None:
    library = samples.bench()
    found = compare_candidates(library, samples.STUDY, "lid", materials=names)
    for row in found.rows:
        (alone,) = compare_candidates(
            library, samples.STUDY, "lid", materials=(row.name,)
        ).rows
        assert (alone.mass_kg, alone.wall_mm) == (row.mass_kg, row.wall_mm)
        assert [c.words for c in alone.checks] == [c.words for c in row.checks]
