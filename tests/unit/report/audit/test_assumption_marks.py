"""Each row of the sheet of assumptions bears the mark that explanations give it."""

from __future__ import annotations

from typing import Any

import pytest

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis
from benchpack.model.worth_words import EnergyFrom
from benchpack.report.audit import names
from benchpack.report.audit.record import AuditSheet
from benchpack.results.explained_assumed import (
    OF_STUDY,
    secondary_source,
    source_of,
    worth_source_of,
)
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from tests.unit.report.audit import audit_samples as samples

_NAMED = {
    "programme_years": names.EVEN_YEARS,
    "volume_spread": names.VOLUME_SPREAD,
    "discount_rate": names.DISCOUNT_RATE,
    "customer_share": names.CUSTOMER_SHARE,
    "mass_energy": names.MASS_ENERGY[1],
    "vehicle_range_km": names.VEHICLE_RANGE,
    "usable_share": names.USABLE_SHARE,
    "battery_cost": names.BATTERY_COST[1],
    "consumption_kwh": names.CONSUMPTION,
    "driver_km_per_year": names.DRIVER_WAY,
    "driver_years": names.DRIVER_YEARS,
    "energy_price": names.ENERGY_PRICE,
    "charging_efficiency": names.CHARGING_EFFICIENCY,
    "driver_rate": names.DRIVER_RATE,
}
_OTHER: dict[str, Any] = {
    "programme_years": 4.0,
    "volume_spread": 0.35,
    "discount_rate": 0.111,
    "customer_share": 0.21,
    "mass_energy": Range(0.3, 0.5, 0.7),
    "vehicle_range_km": 321.0,
    "usable_share": 0.81,
    "battery_cost": Range(70.0, 81.0, 99.0),
    "consumption_kwh": 19.5,
    "driver_km_per_year": 9_000.0,
    "driver_years": 4.5,
    "energy_price": 0.51,
    "charging_efficiency": 0.77,
    "driver_rate": 0.012,
}
_SOURCE = 6


def sheet(title: str, **study: Any) -> AuditSheet:
    sheets = samples.sheets_of(*samples.every_kind(**study))
    return next(one for one in sheets if one.title == title)


def source(of: AuditSheet, name: str) -> str:
    place = next(row for (row, _), cell in of.cells.items() if cell.name == name)
    return str(of.cells[place, _SOURCE].content)


def value(of: AuditSheet, name: str) -> object:
    return next(cell.content for cell in of.cells.values() if cell.name == name)


@pytest.mark.parametrize("attribute", _NAMED)
def test_a_starting_value_is_marked_and_an_entered_one_is_the_study_s(
    attribute: str,
) -> None:
    start = {attribute: getattr(Study(), attribute)}
    mark = source_of(Study(), attribute)
    assert mark.startswith("starting value")
    assert source(sheet("Assumptions", **start), _NAMED[attribute]).startswith(mark)
    other = sheet("Assumptions", **{attribute: _OTHER[attribute]})
    assert source(other, _NAMED[attribute]).startswith(OF_STUDY)


def test_what_a_pattern_is_driven_with_is_marked() -> None:
    said = sheet("Assumptions", energy_from=EnergyFrom.URBAN)
    rows = {
        str(cell.content): str(said.cells[row, _SOURCE].content)
        for (row, column), cell in said.cells.items()
        if column == 0 and (row, _SOURCE) in said.cells
    }
    memory = "starting value, from memory"
    assert rows["efficiency from battery to wheel"] == memory
    assert rows["share of the braking recuperated"] == memory
    assert rows["energy at the wheel while driving"].endswith(f"({memory})")


@pytest.mark.parametrize("programme", list(ProgrammeKind))
@pytest.mark.parametrize("share", [None, 0.2])
def test_secondary_mass_and_worth_have_one_source_everywhere(
    programme: ProgrammeKind, share: float | None
) -> None:
    values = {"programme": programme, "secondary_share": share}
    _, study = samples.every_kind(**values)
    found = sheet("Assumptions", **values)
    assert source(found, names.SECONDARY[1]) == secondary_source(study)
    assert source(found, names.WORTH[1]) == worth_source_of(study)


def test_starting_values_of_another_currency_are_left_empty() -> None:
    yen = sheet("Assumptions", currency="JPY")
    for name in (*names.BATTERY_COST, names.ENERGY_PRICE):
        assert value(yen, name) is None
        assert source(yen, name) == (
            "empty: starting value in EUR, from memory; enter it in JPY"
        )
    vehicle = sheet("Vehicle", currency="JPY")
    assert [value(vehicle, name) for name in names.DERIVED_WORTH] == [None] * 3
    own = sheet("Assumptions", currency="JPY", energy_price=31.0)
    assert value(own, names.ENERGY_PRICE) == 31.0
    assert source(own, names.ENERGY_PRICE) == OF_STUDY


def test_a_part_of_a_year_counts_as_the_program_has_it() -> None:
    library, study = samples.every_kind(programme_years=3.5)
    supply = worth_case(compute(library, study)).supply
    found = sheet("Assumptions", programme_years=3.5)
    assert value(found, names.YEARLY_VOLUME) == supply.yearly_volume
    assert supply.yearly_volume < float(study.yearly_volume or 0)
    assert value(found, names.PROGRAMME_YEARS) == 4.0
    assert value(found, names.EVEN_YEARS) == 3.5


def test_the_density_of_usable_energy_is_that_of_installed_energy() -> None:
    library, study = samples.peers(subject="Crane 100", usable_share=0.9)
    crane = library.packs[library.packs.position("Crane 100")]
    assert crane.energy_basis is EnergyBasis.USABLE
    sheets = samples.sheets_of(library, study)
    cells = next(one for one in sheets if one.title == "Vehicle").cells
    place = next(
        row
        for (row, _), cell in cells.items()
        if cell.content == "density of that battery"
    )
    wanted = 1000 * 100 / 600 / 0.9
    assert cells[place, 2].content == pytest.approx(wanted, rel=1e-12)


def test_words_are_those_of_the_panel() -> None:
    words = {
        str(cell.content)
        for one in samples.sheets_of(*samples.every_kind())
        for cell in one.cells.values()
        if isinstance(cell.content, str)
    }
    text = " | ".join(words)
    assert "interest a year" in words
    assert "programme value (net present value)" in words
    assert "our part" in words
    for old in ("discount rate", "supplier's part", "starting figure"):
        assert old not in text
    for title in ("Programme", "By year"):
        purpose = sheet(title).purpose
        assert "all that is better; the interest stays" in purpose
        assert "all inputs" not in purpose
