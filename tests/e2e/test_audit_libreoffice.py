"""The audit workbook in LibreOffice: its figures are ours, also for changed inputs."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import pytest

from benchpack.files.audit_workbook import write_audit_workbook
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import Basis, TrendKind
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.report.audit import names
from benchpack.report.audit.record import AuditSheet
from tests.e2e.spreadsheets import (
    Content,
    assert_same,
    figures_of,
    office,
    without_figures,
    work_out,
)
from tests.unit.report.audit import audit_samples as samples

pytestmark = [
    pytest.mark.e2e,
    pytest.mark.skipif(office() is None, reason="LibreOffice is not installed"),
]


@dataclass(frozen=True, slots=True)
class Case:
    """A study, and what a customer changes in its workbook."""

    make: Callable[[], tuple[Library, Study]]
    changes: Mapping[str, Any] = field(default_factory=dict)

    def inputs(self, sheets: Sequence[AuditSheet]) -> dict[tuple[str, str], Content]:
        """Give the cells in which the customer changes something."""
        cells, found = samples.named_cells(sheets), dict[tuple[str, str], Content]()
        for key, value in self.changes.items():
            if key == "volumes":
                found |= zip(samples.cells_of_years(sheets), value, strict=False)
            elif isinstance(value, Range):
                ends = zip(_RANGES[key], value.ends, strict=True)
                found |= {cells[name]: end for name, end in ends}
            else:
                found[cells[_NAMED[key]]] = value
        return found


_NAMED = {
    "worth_low_per_kg": names.WORTH[0],
    "worth_likely_per_kg": names.WORTH[1],
    "worth_high_per_kg": names.WORTH[2],
    "share_captured": names.SHARE_CAPTURED,
    "target_kg": names.TARGET,
    "basis": names.BASIS,
    "exponent": names.EXPONENT,
    "yearly_volume": names.EVEN_VOLUME,
    "programme_years": names.EVEN_YEARS,
    "discount_rate": names.DISCOUNT_RATE,
    "labour_rate_per_h": names.LABOUR_RATE,
    "station_rate_per_h": names.STATION_RATE,
    "tooling_budget": names.TOOLING_BUDGET,
    "valued_mass": names.VALUED,
    "volume_spread": names.VOLUME_SPREAD,
    "start_year": names.START_YEAR,
    "customer_share": names.CUSTOMER_SHARE,
    "required_saving": names.REQUIRED_SAVING,
    "part_price": names.PART_PRICE,
    "old_part_price": names.OLD_PART_PRICE,
    "vehicle_range_km": names.VEHICLE_RANGE,
    "usable_share": names.USABLE_SHARE,
    "pack_density_wh_per_kg": names.BATTERY_DENSITY,
    "sizing": names.SIZING,
    "consumption_kwh": names.CONSUMPTION,
    "driver_km_per_year": names.DRIVER_WAY,
    "driver_years": names.DRIVER_YEARS,
    "energy_price": names.ENERGY_PRICE,
    "charging_efficiency": names.CHARGING_EFFICIENCY,
    "driver_rate": names.DRIVER_RATE,
}
_RANGES = {"mass_energy": names.MASS_ENERGY, "battery_cost": names.BATTERY_COST}
_WORDS = {"basis": Basis, "valued_mass": ValuedMass, "sizing": Sizing}
_WORTHS = {
    "worth_low_per_kg": 2.5,
    "worth_likely_per_kg": 5.25,
    "worth_high_per_kg": 11.0,
}
_PROGRAMME = {"yearly_volume": 130_000, "programme_years": 4.5, "discount_rate": 0.115}
_VOLUMES = {"volumes": (10_000, 25_000, 40_000, 40_000, 15_000)}
_PRICES = {
    "part_price": 118.5,
    "old_part_price": 104.0,
    "required_saving": 7.5,
    "customer_share": 0.3,
}
_VEHICLE = {
    "mass_energy": Range(0.47, 0.7, 0.8),
    "battery_cost": Range(70.0, 95.0, 150.0),
    "vehicle_range_km": 310.0,
    "usable_share": 0.92,
    "pack_density_wh_per_kg": 150.0,
}
_DRIVER = {
    "driver_km_per_year": 30_000.0,
    "driver_years": 8.5,
    "energy_price": 0.4,
    "charging_efficiency": 0.8,
    "driver_rate": 0.0,
}
_KEPT = {"sizing": "battery kept", "consumption_kwh": 21.0}
_RATES = {"labour_rate_per_h": 71.0, "station_rate_per_h": 22.5}
CYCLE = DriveCycle("=1+1", 1.0, (0.0, 20.0, 50.0, 50.0, 30.0, 0.0)).to_text()


def _demo(place: int) -> Callable[[], tuple[Library, Study]]:
    return lambda: (samples.demo(), samples.demo().studies[place])


def _kinds(**study: Any) -> Callable[[], tuple[Library, Study]]:
    return lambda: samples.every_kind(**study)


def _driven(**study: Any) -> Callable[[], tuple[Library, Study]]:
    return lambda: (samples.demo(), replace(samples.demo().studies[0], **study))


def _peers(**study: Any) -> Callable[[], tuple[Library, Study]]:
    return lambda: samples.peers(**study)


CASES: dict[str, Case] = {
    "demo": Case(_demo(0)),
    "demo to the trend": Case(_demo(1)),
    "demo of one change": Case(_demo(2)),
    "demo, worth": Case(_demo(0), _WORTHS),
    "demo, share captured": Case(_demo(0), {"share_captured": 0.35}),
    "demo, volume": Case(_demo(0), {"yearly_volume": 900_000}),
    "demo, discount rate": Case(_demo(0), {"discount_rate": 0.03}),
    "demo, no interest": Case(_demo(0), {"discount_rate": 0.0}),
    "demo, programme and rates": Case(_demo(0), {**_PROGRAMME, **_RATES}),
    "demo, exponent": Case(_demo(0), {"exponent": 0.8, "basis": "scaled"}),
    **{f"demo, {basis}": Case(_demo(0), {"basis": str(basis)}) for basis in Basis},
    "demo, volumes by year": Case(_demo(0), _VOLUMES),
    "demo, one year without packs": Case(_demo(0), {"volumes": (0, 5_000, 0, 90_000)}),
    "demo, years without packs": Case(_demo(0), {"volumes": (0, 0)}),
    "demo, prices": Case(_demo(0), {**_PRICES, **_VOLUMES}),
    "demo, less than asked for": Case(
        _demo(0), {"required_saving": 500.0, "old_part_price": 0.0}
    ),
    "demo, vehicle and driver": Case(_demo(0), {**_VEHICLE, **_DRIVER}),
    "demo, battery kept": Case(_demo(0), {**_KEPT, "driver_rate": 0.2}),
    "demo, a light battery": Case(_demo(0), {"pack_density_wh_per_kg": 40.0}),
    "demo, high end not believed": Case(_demo(0), {"pack_density_wh_per_kg": 45.0}),
    "demo, worth of nothing": Case(
        _demo(0),
        {
            "worth_low_per_kg": 0.0,
            "worth_likely_per_kg": 0.0,
            "worth_high_per_kg": 0.0,
        },
    ),
    "demo, worth far above": Case(
        _demo(0), {"worth_likely_per_kg": 9.0, "worth_high_per_kg": 12.0}
    ),
    "demo, half a year": Case(
        _demo(0), {"volume_spread": 0.45, "programme_years": 0.5, "start_year": 2031}
    ),
    "demo, the target valued": Case(_demo(0), {"valued_mass": "the target"}),
    "demo, the share to the trend": Case(
        _demo(0),
        {
            "valued_mass": "share captured",
            "share_captured": 0.4,
            "basis": "to the trend",
        },
    ),
    "demo, one change, valued": Case(_demo(2), {**_PRICES, **_VEHICLE, **_KEPT}),
    "demo, trend, all changed": Case(
        _demo(1), {**_PRICES, **_VEHICLE, **_VOLUMES, "basis": "at equal energy"}
    ),
    "demo, driven in town": Case(_driven(energy_from=EnergyFrom.URBAN), _VOLUMES),
    "demo, a drive cycle": Case(
        _driven(energy_from=EnergyFrom.CYCLE, drive_cycle=CYCLE), _PRICES
    ),
    "demo, no drive cycle": Case(_driven(energy_from=EnergyFrom.CYCLE), _WORTHS),
    "demo, more than all recuperated": Case(
        _driven(
            energy_from=EnergyFrom.URBAN,
            recuperated_share=1.0,
            drive_efficiency=1.0,
            rolling_resistance=0.001,
        )
    ),
    "demo, a plan by year": Case(
        _driven(volumes=(5_000, 60_000, 80_000), start_year=2029),
        {"volumes": (20_000, 60_000, 80_000, 30_000), "discount_rate": 0.12},
    ),
    "kinds": Case(_kinds()),
    "kinds, a plan by year": Case(_kinds(volumes=(900, 0, 80)), _RATES),
    "kinds, money": Case(
        _kinds(programme=ProgrammeKind.NEW),
        {**_PRICES, **_VEHICLE, **_DRIVER, **_VOLUMES},
    ),
    "kinds, the target without one": Case(
        _kinds(target_kg=None), {"valued_mass": "the target"}
    ),
    "kinds, running change": Case(_kinds(programme=ProgrammeKind.RUNNING), _VEHICLE),
    "kinds, much gained": Case(
        _kinds(), {"worth_likely_per_kg": 400.0, "worth_high_per_kg": 500.0}
    ),
    "kinds, everything": Case(
        _kinds(), {**_WORTHS, **_PROGRAMME, **_RATES, "target_kg": 9.5}
    ),
    "kinds, power law": Case(_kinds(trend=TrendKind.POWER_LAW)),
    "kinds in CHF": Case(_kinds(currency="CHF"), {**_WORTHS, **_RATES}),
    "kinds, a part of a year": Case(
        _kinds(programme_years=3.5, programme=ProgrammeKind.FACELIFT),
        {"programme_years": 4.25, "yearly_volume": 30_000},
    ),
    "kinds, a whole year more": Case(
        _kinds(programme_years=0.5), {"programme_years": 5.0}
    ),
    "demo in JPY": Case(_driven(currency="JPY")),
    "demo in JPY, entered": Case(
        _driven(currency="JPY"),
        {"battery_cost": Range(9e3, 14e3, 2e4), "energy_price": 31.0},
    ),
    "peers, a usable subject": Case(
        _peers(subject="Crane 100"), {"usable_share": 0.9, "sizing": "range kept"}
    ),
    "kinds in lb": Case(_kinds(mass_unit="lb"), _WORTHS),
    "kinds without a volume": Case(_kinds(yearly_volume=None, target_kg=None)),
    "kinds, tiny interest": Case(_kinds(discount_rate=1e-7)),
    "kinds without a reference": Case(_kinds(reference="")),
    "merged": Case(samples.merged, {**_WORTHS, **_PROGRAMME}),
    "a cost given as a whole": Case(samples.given_cost, _VOLUMES),
    "moulded": Case(samples.moulded, {**_RATES}),
    "peers": Case(_peers(), {"exponent": 0.0}),
    "peers, power law": Case(_peers(trend=TrendKind.POWER_LAW, basis=Basis.TREND)),
    "peers, Theil-Sen": Case(_peers(trend=TrendKind.THEIL_SEN, basis=Basis.TREND)),
    "peers, structure": Case(_peers(), {"exponent": 0.25, "basis": "structure only"}),
    "hostile names": Case(samples.hostile, _WORTHS),
    "many": Case(samples.many, _WORTHS),
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a folder with all workbooks, worked out by LibreOffice in one go."""
    out = tmp_path_factory.mktemp("office")
    bare = []
    for number, case in enumerate(CASES.values()):
        sheets = samples.sheets_of(*case.make())
        own, stripped = out / f"own-{number}.xlsx", out / "bare" / f"{number}.xlsx"
        stripped.parent.mkdir(exist_ok=True)
        write_audit_workbook(sheets, own)
        without_figures(own, stripped, case.inputs(sheets))
        bare.append(stripped)
    work_out(bare, out)
    return out


@pytest.mark.parametrize("name", CASES)
def test_every_figure_is_ours(name: str, folder: Path) -> None:
    """LibreOffice finds what this program finds for the study as it is changed."""
    case = CASES[name]
    library, study = case.make()
    values: dict[str, Any] = {
        key: _WORDS[key](value) if key in _WORDS else value
        for key, value in case.changes.items()
    }
    expected = samples.formulas_of(samples.sheets_of(library, replace(study, **values)))
    number = list(CASES).index(name)
    found = figures_of(folder / f"{number}.xlsx", expected)
    assert assert_same(found, expected) > 100


def test_the_figures_written_beside_the_formulas_are_ours(folder: Path) -> None:
    """A program that works nothing out shows them; the changed ones are others."""
    number = list(CASES).index("demo, worth")
    library, study = CASES["demo, worth"].make()
    expected = samples.formulas_of(samples.sheets_of(library, study))
    assert_same(figures_of(folder / f"own-{number}.xlsx", expected), expected)
    moved = figures_of(folder / f"{number}.xlsx", expected)
    sheets = samples.sheets_of(library, study)
    net_worth = samples.named_cells(sheets)[names.NET_WORTH[1]]
    assert moved[net_worth] != expected[net_worth]
