"""Changes: what stands, what is refused, what is still lacking."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.model.change import (
    CHANGE_FIELDS,
    RANGES,
    Change,
    ChangeKind,
    ProgrammeKind,
)
from benchpack.model.change_needs import lacking
from benchpack.model.library import Library, by_study
from benchpack.model.name_lists import (
    names_text,
    parse_names,
    parse_reasons,
    reasons_text,
)
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from tests.strategies.records import texts

LID = Change("S", "lid in SMC", ChangeKind.SUBSTITUTE, parts=("lid",), material="SMC")


@pytest.mark.parametrize(
    ("values", "said", "column"),
    [
        ({"name": " "}, "change is empty", "change"),
        ({"study": ""}, "study is empty", "study"),
        ({"kind": "melt"}, "kind 'melt' is not known", "kind"),
        ({"programme": "soon"}, "programme 'soon' is not known", "programme"),
        ({"release_chance": 1.1}, "more than can be meant", "release chance"),
        ({"release_chance": -0.1}, "-0.1", "release chance"),
        ({"stiffness_shape": 0.0}, "above zero", "stiffness shape"),
        ({"count": 0}, "above zero", "count"),
        ({"parts": ("lid", "lid")}, "names 'lid' twice", "parts"),
        ({"joints": ("",)}, "holds an empty name", "joints"),
        ({"governs": ("looks",)}, "'looks' is not known", "governs"),
        ({"requires": ("lid in SMC",)}, "requires itself", "requires"),
        (
            {"requires": ("a",), "excludes": ("a",)},
            "requires a and excludes it",
            "excludes",
        ),
        ({"waived": (("fire barrier", " "),)}, "without a reason", "waived"),
        ({"mass_kg": Range(-1.0, 0.0, 1.0)}, "zero or more", "mass low [kg]"),
        ({"tooling": Range(0.0, 1.0, 2e9)}, "more than can be meant", "tooling high"),
    ],
)
def test_what_cannot_be_is_refused_with_its_column(
    values: dict[str, Any], said: str, column: str
) -> None:
    with pytest.raises(DataError, match=said) as caught:
        replace(LID, **values)
    assert column in [problem.column for problem in caught.value.problems]
    if values.get("name", "x").strip():
        assert {p.record for p in caught.value.problems} == {"lid in SMC"}


def test_costs_and_seconds_may_fall() -> None:
    less = Range(-3.0, -2.0, -1.0)
    change = replace(LID, part_cost=less, joining_cost=less, seconds=less)
    assert change.part_cost == less


def test_a_waiver_gives_its_reason() -> None:
    change = replace(LID, waived=(("fire barrier", "mica stays"),))
    assert change.waiver("fire barrier") == "mica stays"
    assert change.waiver("shield foil") == ""


def test_every_range_takes_three_columns() -> None:
    assert (
        *("mass_kg", "part_cost", "joining_cost", "seconds"),
        *("tooling", "validation_cost", "lead_weeks"),
    ) == RANGES
    heads = [field.header() for field in CHANGE_FIELDS]
    assert len(heads) == len(set(heads))
    assert {"mass low [kg]", "mass likely [kg]", "mass high [kg]"} <= set(heads)
    change = replace(LID, mass_kg=Range(1.0, 2.0, 4.0))
    found = {f.name: f.value_of(change) for f in CHANGE_FIELDS if f.end}
    assert found["mass_kg_low"] == 1.0
    assert found["mass_kg_high"] == 4.0
    assert found["tooling_likely"] is None


def test_what_fits_a_running_change_fits_the_later_ones() -> None:
    running, facelift, new = list(ProgrammeKind)[1:]
    fitting = [
        [kind.fits(p) for p in (running, facelift, new)] for kind in ProgrammeKind
    ]
    assert fitting == [
        [True, True, True],
        [True, True, True],
        [False, True, True],
        [False, False, True],
    ]
    assert all(kind.fits(ProgrammeKind.UNSTATED) for kind in ProgrammeKind)


_NEEDS: dict[ChangeKind, tuple[dict[str, Any], set[str]]] = {
    ChangeKind.REMOVE: ({"joints": ("lid screws",)}, {"parts"}),
    ChangeKind.SUBSTITUTE: (
        {"parts": ("lid",), "material": "SMC"},
        {"parts", "material"},
    ),
    ChangeKind.INTEGRATE: (
        {"parts": ("a", "b"), "into": "c", "mass_kg": Range.exactly(2.0)},
        {"parts", "into", "material"},
    ),
    ChangeKind.MOULD_IN: ({"parts": ("a",), "into": "tray"}, {"parts", "into"}),
    ChangeKind.ADD: (
        {"into": "plate", "mass_kg": Range(2.0, 3.0, 4.0)},
        {"into", "mass likely [kg]"},
    ),
    ChangeKind.SWAP_JOINTS: (
        {"joints": ("lid screws",), "into": "lid bead", "family": "sealant bead"},
        {"joints", "into", "family"},
    ),
    ChangeKind.ADJUST: (
        {"parts": ("lid",), "seconds": Range.exactly(-3.0)},
        {"parts", "mass likely [kg]"},
    ),
}


@pytest.mark.parametrize("kind", ChangeKind)
def test_each_kind_says_what_it_lacks(kind: ChangeKind) -> None:
    whole, columns = _NEEDS[kind]
    assert lacking(Change("S", "a change", kind, **whole)) == ()
    found = lacking(Change("S", "a change", kind))
    assert {problem.column for problem in found} == columns
    assert all(problem.remedy and problem.record == "a change" for problem in found)


def test_a_part_is_not_moulded_into_itself() -> None:
    change = Change("S", "x", ChangeKind.MOULD_IN, parts=("a", "b"), into="a")
    assert [problem.column for problem in lacking(change)] == ["into"]


@settings(deadline=None)
@given(
    st.lists(texts(), max_size=4).map(tuple),
    st.dictionaries(texts(), texts(), max_size=3).map(lambda d: tuple(d.items())),
)
def test_lists_come_back_from_their_text(
    found: tuple[str, ...], reasons: tuple[tuple[str, str], ...]
) -> None:
    assert parse_names(names_text(found)) == found
    assert parse_reasons(reasons_text(reasons)) == reasons


@pytest.mark.parametrize("text", ["a; b", "[1]", "{}", "{", '{"a": "b"}', "[" * 9999])
def test_what_is_no_list_is_refused(text: str) -> None:
    with pytest.raises(DataError, match="no list of names"):
        parse_names(text)


@pytest.mark.parametrize("text", ["a", "[]", '{"a": 1}', '{"a": {}}', "{"])
def test_what_gives_no_reasons_is_refused(text: str) -> None:
    with pytest.raises(DataError, match="no names with reasons"):
        parse_reasons(text)
    with pytest.raises(DataError, match="'a' is named twice"):
        parse_reasons('{"a": "b", "a": "c"}')


def test_lists_by_hand_have_semicolons() -> None:
    assert parse_names("lid; flange strip, long ;", by_hand=True) == (
        "lid",
        "flange strip, long",
    )
    assert parse_names('["a; b"]', by_hand=True) == ("a; b",)


def test_a_library_gives_the_changes_of_a_study_in_order() -> None:
    changes = [
        replace(LID, name="b"),
        replace(LID, study="T", name="a"),
        replace(LID, name="a"),
    ]
    library = Library(studies=(Study("S"), Study("T")), changes=by_study(changes))
    assert [change.name for change in library.changes_of("S")] == ["b", "a"]
    assert library.changes_of("none") == ()


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"programme": "later"}, "programme 'later' is not known"),
        ({"yearly_volume": 0}, "yearly volume is 0"),
        ({"programme_years": 0.0}, "runs 0 years"),
        ({"discount_rate": 8.0}, "interest a year is 8"),
        ({"discount_rate": float("nan")}, "interest a year is nan"),
        ({"tooling_budget": -1.0}, "tooling budget is -1.0 EUR"),
    ],
)
def test_a_study_refuses_what_its_proposal_cannot_assume(
    values: dict[str, Any], said: str
) -> None:
    with pytest.raises(DataError, match=said):
        Study(**values)
