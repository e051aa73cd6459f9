"""The formulas of the audit workbook, worked out by the package formulas."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import formulas
import pytest
from numpy.testing import assert_allclose

from benchpack.files.audit_workbook import write_audit_workbook
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.report.audit import names
from tests.e2e.spreadsheets import without_figures
from tests.unit.report.audit import audit_samples as samples

_WORTH = {
    "worth_likely_per_kg": 4.75,
    "yearly_volume": 15_000,
    "labour_rate_per_h": 9.0,
}
_NAMED = {
    "worth_likely_per_kg": names.WORTH[1],
    "yearly_volume": names.EVEN_VOLUME,
    "labour_rate_per_h": names.LABOUR_RATE,
}


def worked_out(path: Path) -> dict[str, str | float]:
    """Give what each cell of a workbook comes to."""
    solution = formulas.ExcelModel().loads(str(path)).finish().calculate()
    return {
        str(key).upper(): found.value[0, 0]
        for key, found in solution.items()
        # Beside cells there are ranges, and what works them out.
        if getattr(found, "value", None) is not None and found.value.shape == (1, 1)
    }


def _key(path: Path, place: tuple[str, str]) -> str:
    sheet, cell = place
    return f"'[{path.name}]{sheet}'!{cell}".upper()


def planned() -> tuple[Library, Study]:
    """Give a study with packs by year, prices, and other mass that goes."""
    prices = {"part_price": 20.0, "old_part_price": 30.0, "worth_high_per_kg": 400.0}
    plan = {"volumes": (90_000, 0, 8_000), "programme": ProgrammeKind.NEW}
    return samples.every_kind(**prices, **plan)


@pytest.mark.parametrize(
    "make", [samples.every_kind, samples.merged, samples.peers, planned]
)
def test_another_library_finds_our_figures(
    make: Callable[[], tuple[Library, Study]], tmp_path: Path
) -> None:
    """formulas 1.3 reads the workbook, works it out anew and agrees to 1e-9."""
    library, study = make()
    sheets = samples.sheets_of(library, study)
    own, path = tmp_path / "own.xlsx", tmp_path / "audit.xlsx"
    write_audit_workbook(sheets, own)
    cells = samples.named_cells(sheets)
    without_figures(own, path, {cells[_NAMED[key]]: v for key, v in _WORTH.items()})
    changed: dict[str, Any] = _WORTH
    expected = samples.formulas_of(
        samples.sheets_of(library, replace(study, **changed))
    )
    found = worked_out(path)
    numbers = 0
    for place, value in expected.items():
        if isinstance(value, float):
            numbers += 1
            assert_allclose(
                float(found[_key(path, place)]),
                value,
                rtol=1e-9,
                atol=1e-9,
                err_msg=str(place),
            )
        else:
            assert str(found[_key(path, place)]) == (value or "")
    assert numbers > 100
