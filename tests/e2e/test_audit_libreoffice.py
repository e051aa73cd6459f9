"""The audit workbook in LibreOffice: its figures are ours, also for changed inputs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import pytest

from benchpack.files.audit_workbook import write_audit_workbook
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.words import Basis, TrendKind
from benchpack.report.audit import names
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

    def inputs(
        self, cells: Mapping[str, tuple[str, str]]
    ) -> dict[tuple[str, str], Content]:
        """Give the cells in which the customer changes something."""
        return {cells[_NAMED[key]]: value for key, value in self.changes.items()}


_NAMED = {
    "worth_low_per_kg": names.WORTH[0],
    "worth_likely_per_kg": names.WORTH[1],
    "worth_high_per_kg": names.WORTH[2],
    "share_captured": names.SHARE_CAPTURED,
    "target_kg": names.TARGET,
    "basis": names.BASIS,
    "exponent": names.EXPONENT,
    "yearly_volume": names.YEARLY_VOLUME,
    "programme_years": names.PROGRAMME_YEARS,
    "discount_rate": names.DISCOUNT_RATE,
    "labour_rate_per_h": names.LABOUR_RATE,
    "station_rate_per_h": names.STATION_RATE,
    "tooling_budget": names.TOOLING_BUDGET,
}
_WORTHS = {
    "worth_low_per_kg": 2.5,
    "worth_likely_per_kg": 5.25,
    "worth_high_per_kg": 11.0,
}
_PROGRAMME = {"yearly_volume": 130_000, "programme_years": 4.5, "discount_rate": 0.115}
_RATES = {"labour_rate_per_h": 71.0, "station_rate_per_h": 22.5}


def _demo(place: int) -> Callable[[], tuple[Library, Study]]:
    return lambda: (samples.demo(), samples.demo().studies[place])


def _kinds(**study: Any) -> Callable[[], tuple[Library, Study]]:
    return lambda: samples.every_kind(**study)


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
    "kinds": Case(_kinds()),
    "kinds, everything": Case(
        _kinds(), {**_WORTHS, **_PROGRAMME, **_RATES, "target_kg": 9.5}
    ),
    "kinds, power law": Case(_kinds(trend=TrendKind.POWER_LAW)),
    "kinds in CHF": Case(_kinds(currency="CHF"), {**_WORTHS, **_RATES}),
    "kinds in lb": Case(_kinds(mass_unit="lb"), _WORTHS),
    "kinds without a volume": Case(_kinds(yearly_volume=None, target_kg=None)),
    "kinds, tiny interest": Case(_kinds(discount_rate=1e-7)),
    "kinds without a reference": Case(_kinds(reference="")),
    "merged": Case(samples.merged, {**_WORTHS, **_PROGRAMME}),
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
        without_figures(own, stripped, case.inputs(samples.named_cells(sheets)))
        bare.append(stripped)
    work_out(bare, out)
    return out


@pytest.mark.parametrize("name", CASES)
def test_every_figure_is_ours(name: str, folder: Path) -> None:
    """LibreOffice finds what this program finds for the study as it is changed."""
    case = CASES[name]
    library, study = case.make()
    values: dict[str, Any] = {
        key: Basis(value) if key == "basis" else value
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
