"""The sheets of the worth: every assumption is there, and what they say of cases."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from benchpack.model.assumptions import ASSUMPTION_NAMES
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.ranges import Range
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.report.audit import names
from benchpack.report.audit.record import NEVER, AuditCell, AuditSheet, Look
from benchpack.report.audit.vehicle import ABOVE, AGREES, BELOW, KEPT, UNKNOWN
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme
from tests.unit.report.audit import audit_samples as samples

CYCLE = DriveCycle("invented", 1.0, (0.0, 30.0, 50.0, 20.0, 0.0))
OTHER: dict[str, Any] = {
    "worth_low_per_kg": 0.5,
    "worth_likely_per_kg": 4.5,
    "worth_high_per_kg": 8.0,
    "worth_reason": "because",
    "worth_source": "a book",
    "share_captured": 0.4,
    "valued_mass": ValuedMass.TARGET,
    "programme": ProgrammeKind.NEW,
    "yearly_volume": 7,
    "programme_years": 3.5,
    "volumes": (5, 6),
    "volume_spread": 0.4,
    "start_year": 2040,
    "discount_rate": 0.2,
    "customer_share": 0.9,
    "required_saving": 3.0,
    "part_price": 77.0,
    "old_part_price": 78.0,
    "mass_energy": Range(0.1, 0.2, 0.3),
    "energy_from": EnergyFrom.URBAN,
    "rolling_resistance": 0.02,
    "drive_efficiency": 0.5,
    "recuperated_share": 0.1,
    "steady_speed_kmh": 33.0,
    "drive_cycle": CYCLE.to_text(),
    "vehicle_range_km": 123.0,
    "usable_share": 0.77,
    "battery_cost": Range(1.0, 2.0, 3.0),
    "pack_density_wh_per_kg": 99.0,
    "sizing": Sizing.BATTERY_KEPT,
    "consumption_kwh": 9.0,
    "secondary_share": 0.77,
    "driver_km_per_year": 1.0,
    "driver_years": 2.0,
    "energy_price": 3.0,
    "charging_efficiency": 0.44,
    "driver_rate": 0.33,
}
"""Each assumption with a figure that the sample does not have."""
_PATTERNS = {
    "rolling_resistance": EnergyFrom.STEADY,
    "drive_efficiency": EnergyFrom.STEADY,
    "recuperated_share": EnergyFrom.STEADY,
    "steady_speed_kmh": EnergyFrom.STEADY,
    "drive_cycle": EnergyFrom.CYCLE,
}


def sheet(title: str, **study: Any) -> AuditSheet:
    sheets = samples.sheets_of(*samples.every_kind(**study))
    return next(one for one in sheets if one.title == title)


def named(name: str, **study: Any) -> AuditCell:
    sheets = samples.sheets_of(*samples.every_kind(**study))
    return next(
        cell for one in sheets for cell in one.cells.values() if cell.name == name
    )


def row(of: AuditSheet, title: str) -> tuple[object, ...]:
    """Give low, likely and high beside a title."""
    place = next(row for (row, _), cell in of.cells.items() if cell.content == title)
    return tuple(
        of.cells[place, column].content if (place, column) in of.cells else None
        for column in (1, 2, 3)
    )


def test_the_list_of_assumptions_is_whole() -> None:
    assert tuple(OTHER) == ASSUMPTION_NAMES


@pytest.mark.parametrize("name", ASSUMPTION_NAMES)
def test_every_assumption_stands_on_the_sheet_of_assumptions(name: str) -> None:
    """Whatever of a study is changed, the sheet reads otherwise."""
    base = {"energy_from": _PATTERNS.get(name, EnergyFrom.GIVEN)}
    before = sheet("Assumptions", **base)
    after = sheet("Assumptions", **{**base, name: OTHER[name]})
    assert {k: c.content for k, c in before.cells.items()} != {
        k: c.content for k, c in after.cells.items()
    }


def test_a_pattern_of_driving_is_a_value_marked_as_such() -> None:
    said = sheet(
        "Assumptions", energy_from=EnergyFrom.CYCLE, drive_cycle=CYCLE.to_text()
    )
    rows = [
        row
        for (row, column), cell in said.cells.items()
        if column == 0 and str(cell.content).startswith("energy at the wheel")
    ]
    assert len(rows) == 2
    for place in rows:
        assert said.cells[place, 2].look is Look.FIXED
        assert said.cells[place, 5].content == "no"
        assert "value of the program: drive cycle invented" in str(
            said.cells[place, 6].content
        )


def test_volumes_by_year_set_the_volume_of_capital_recovery() -> None:
    """The even volume of the same present value, as the program has it."""
    volumes = (900, 0, 80)
    library, study = samples.every_kind(volumes=volumes)
    case = worth_case(compute(library, study))
    assert named(names.YEARLY_VOLUME, volumes=volumes).content == pytest.approx(
        case.supply.yearly_volume, rel=1e-12
    )
    assert case.supply.yearly_volume != study.yearly_volume
    assert named(names.PROGRAMME_YEARS, volumes=volumes).content == 3
    assert named(names.EVEN_VOLUME, volumes=volumes).content == study.yearly_volume


def test_the_program_s_own_figures_stand_on_the_sheets() -> None:
    library, study = samples.every_kind(part_price=20.0, old_part_price=30.0)
    case = worth_case(compute(library, study))
    assert isinstance(case.programme, Programme)
    assert isinstance(case.price, Price)
    found = {"part_price": 20.0, "old_part_price": 30.0}
    npv = row(sheet("Programme", **found), "programme value (net present value)")
    assert npv == case.programme.npv.ends
    price = sheet("Price", **found)
    for title, value in (
        ("price at which the customer is even", case.price.even_price),
        ("price headroom", case.price.headroom),
        ("headroom per kilogram of new parts", case.price.per_kg),
        ("cost of making the new parts", case.price.cost),
        ("price that shares it so", case.price.shared_price),
        ("customer's gain at the price given", case.price.customer_gain),
        ("what then stays over the cost of making", case.price.supplier_margin),
    ):
        assert row(price, title)[1] == pytest.approx(value, rel=1e-12)
    assert case.derived.worth_per_kg is not None
    worth = row(sheet("Vehicle", **found), "worth of a kilogram by the vehicle")
    assert worth == case.derived.worth_per_kg.ends


def test_what_is_never_paid_back_says_so() -> None:
    programme = sheet("Programme")
    assert row(programme, "paid back after")[1] == NEVER
    assert row(programme, "pays from")[1] == NEVER
    assert row(programme, "internal rate")[1] is None


def test_without_packs_there_is_no_value() -> None:
    programme = sheet("Programme", volumes=(0, 0))
    assert row(programme, "it is reckoned")[1] == 0
    assert row(programme, "programme value (net present value)") == (None, None, None)
    assert row(programme, "gain per pack")[1] is not None


@pytest.mark.parametrize(
    ("study", "said"),
    [
        ({"worth_likely_per_kg": 2.5}, AGREES),
        ({"worth_likely_per_kg": 19.0, "worth_high_per_kg": 20.0}, ABOVE),
        ({"worth_likely_per_kg": 1.0}, BELOW),
        ({"sizing": Sizing.BATTERY_KEPT}, KEPT),
        ({"pack_density_wh_per_kg": 20.0}, UNKNOWN),
    ],
)
def test_the_comparison_of_both_worths_speaks_up(
    study: dict[str, Any], said: str
) -> None:
    cells = sheet("Vehicle", **study).cells
    place = next(
        row
        for (row, _), cell in cells.items()
        if cell.content == "the worth that is entered lies"
    )
    assert cells[place, 6].content == said
    assert cells[place, 6].look is Look.TEXT


def test_the_table_of_years_has_room_for_the_study_and_more() -> None:
    library, study = samples.every_kind()
    for years, rows in ((7.0, 20), (33.2, 34)):
        sheets = samples.sheets_of(library, replace(study, programme_years=years))
        assert len(samples.cells_of_years(sheets)) == rows
