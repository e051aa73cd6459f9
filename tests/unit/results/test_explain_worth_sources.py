"""No explanation claims a source, a mark or a volume that is another's."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.study import Study
from benchpack.results.explain import explain
from benchpack.results.explain_worth import explain_worth
from benchpack.results.explained_assumed import (
    secondary_source,
    source_of,
    worth_source_of,
)
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from tests.unit.results.worth_samples import CHANGES, RICH, case_of

EVEN = "even volume of the same present value"


def demo(**study: Any) -> WorthCase:
    library = demo_library()
    return worth_case(compute(library, replace(library.first_study(), **study)))


def source(case: WorthCase, key: str, label: str) -> str:
    found = explain_worth(case, key)
    return next(one.source for one in found.inputs if one.label == label)


@pytest.mark.parametrize(
    ("study", "said"),
    [
        ({"volumes": (20_000, 40_000, 60_000)}, EVEN),
        ({"volumes": (20_000, 40_000), "yearly_volume": None}, EVEN),
        ({"programme_years": 3.5}, EVEN),
        ({"yearly_volume": 9_000}, "the study"),
        ({"yearly_volume": None}, "the subject"),
    ],
)
def test_the_volume_of_a_share_is_whose_it_is(study: dict[str, Any], said: str) -> None:
    case = demo(**study)
    assert case.proposal is not None
    change = case.proposal.effects[0].change.name
    found = explain(case.gap, "change tooling", reference=change)
    volume = next(one for one in found.inputs if one.label.startswith("V,"))
    assert volume.source == said
    assert volume.value == case.supply.yearly_volume


@pytest.mark.parametrize(
    ("study", "packs", "said"),
    [
        ({}, 700_000, "yearly volume of the study"),
        ({"yearly_volume": None}, 7 * 5_000, "yearly volume of the subject"),
        ({"volumes": (1, 2)}, 3, "volumes by year of the study"),
    ],
)
def test_without_a_saving_the_packs_are_still_whose_they_are(
    study: dict[str, Any], packs: float, said: str
) -> None:
    asked = replace(RICH, reference="", programme_years=7.0, **study)
    library = case_of(study=asked).gap.library
    row = library.packs.position(asked.subject)
    fields = {"yearly_volume": 5_000}
    records = [library.packs[place] for place in range(len(library.packs))]
    records[row] = replace(records[row], **fields)  # type: ignore[arg-type]  # names are attributes
    library = replace(library, packs=type(library.packs).from_packs(records))
    found = explain_worth(worth_case(compute(library, asked)), "programme value")
    volume = next(one for one in found.inputs if one.label.startswith("n, packs"))
    assert (volume.value, volume.source) == (packs, said)


@pytest.mark.parametrize(
    ("programme", "share", "said"),
    [
        (ProgrammeKind.RUNNING, None, "0 in a running change, common practice"),
        (ProgrammeKind.RUNNING, 0.4, "0 in a running change, common practice"),
        (ProgrammeKind.UNSTATED, None, "0 where the kind of programme is not stated"),
        (ProgrammeKind.UNSTATED, 0.0, "the study"),
        (ProgrammeKind.FACELIFT, 0.2, "the study"),
        (ProgrammeKind.NEW, None, "usual for the programme new programme, from memory"),
    ],
)
def test_only_a_running_change_is_common_practice(
    programme: ProgrammeKind, share: float | None, said: str
) -> None:
    study = replace(RICH, programme=programme, secondary_share=share)
    assert secondary_source(study).startswith(said)
    mark = source(case_of(*CHANGES, study=study), "derived worth", "s, secondary mass")
    assert mark == secondary_source(study)


def test_starting_values_in_money_name_their_currency() -> None:
    euro, yen = Study(), Study(currency="JPY")
    for name in ("battery_cost", "energy_price"):
        assert source_of(euro, name) == "starting value, from memory"
        assert source_of(yen, name) == "starting value in EUR, from memory"
        assert "in EUR" in worth_source_of(yen)
    assert "EUR" not in worth_source_of(euro)
    assert source_of(yen, "usable_share") == "starting value, from memory"
    assert source_of(replace(yen, energy_price=31.0), "energy_price") == "the study"


@pytest.mark.parametrize("key", ["derived worth", "driver saving"])
def test_in_another_currency_the_vehicle_says_nothing(key: str) -> None:
    found = explain_worth(demo(currency="JPY"), key)
    assert "starting value in EUR" in found.missing
