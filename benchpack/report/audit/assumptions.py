"""The sheet of assumptions: every figure that somebody has set, with its reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy
from benchpack.report.audit import names
from benchpack.report.audit.assumption_rows import NO, VALUE, AssumptionRows
from benchpack.report.audit.assumption_supply import supply_rows, volume_rows
from benchpack.report.audit.assumption_tables import (
    ProcessCells,
    Used,
    add_back_rows,
    common_rows,
    price_rows,
    process_rows,
    share_rows,
)
from benchpack.report.audit.assumption_vehicle import vehicle_rows
from benchpack.report.audit.assumption_worth import valued_rows
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import AuditSheet, Format, formula, text
from benchpack.results.change_supply import Supply
from benchpack.results.explained_assumed import OF_STUDY, worth_source_of
from benchpack.units.formatting import KG_PER_LB

_PURPOSE = (
    "Every assumption. Shaded cells may be changed: all sheets follow. Fractions are "
    "entered as per cent."
)
_HEADS = (
    "assumption",
    "low",
    "value",
    "high",
    "unit",
    "may be changed",
    "source or reason",
    "where it enters",
)


@dataclass(frozen=True, slots=True)
class Assumptions:
    """The sheet, and where its rows stand that have no name of their own.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    shares : mapping of KnownBy to str
        Uncertainty of a mass as a share of it, by how it is known.
    prices : mapping of str to str
        Prices of materials by their name.
    processes : mapping of str to ProcessCells
        Processes by their name.
    add_backs : mapping of str to tuple of str
        Low, likely and high price of add-backs by their name.
    volumes : tuple of str
        Packs of each year.
    """

    sheet: AuditSheet
    shares: Mapping[KnownBy, str]
    prices: Mapping[str, str]
    processes: Mapping[str, ProcessCells]
    add_backs: Mapping[str, Triple]
    volumes: tuple[str, ...]


def assumptions_sheet(
    study: Study, supply: Supply, used: Used, *, subject_volume: float | None
) -> Assumptions:
    """Build the sheet of assumptions.

    Parameters
    ----------
    study : Study
        The study.
    supply : Supply
        Its volume, years and interest.
    used : Used
        What its proposal draws on.
    subject_volume : float or None
        Yearly volume of the subject.
    """
    draft = Draft("Assumptions", _PURPOSE, (38, 11, 16, 11, 20, 11, 62, 50))
    draft.heads(*_HEADS)
    rows = AssumptionRows(draft, study.currency)
    _study_rows(rows, study)
    supply_rows(rows, study, supply, subject_volume=subject_volume)
    valued_rows(rows, study)
    vehicle_rows(rows, study)
    shares = share_rows(rows)
    prices = price_rows(rows, used)
    backs = add_back_rows(rows, used)
    processes = process_rows(rows, used)
    if used.common is not None:
        common_rows(rows, used.common)
    volumes = volume_rows(rows, study)
    return Assumptions(draft.sheet(), shares, prices, processes, backs, volumes)


def _study_rows(rows: AssumptionRows, study: Study) -> None:
    """Write what the study itself sets."""
    rows.triple(
        "worth of a kilogram saved",
        Range(*study.worth_per_kg),
        unit="CUR/kg",
        labels=names.WORTH,
        source=worth_source_of(study),
        where="values on Gaps, Value, Programme and Price, net worth on Proposal",
        limits=(0.0, 1e6),
    )
    if study.mass_unit == "lb":
        _worth_per_pound(rows.draft, study)
    rows.single(
        "share captured",
        study.share_captured,
        unit="%",
        number_format=Format.SHARE,
        name=names.SHARE_CAPTURED,
        source=OF_STUDY,
        where="values of the gaps",
        limits=(0.0, 1.0),
    )
    rows.single(
        "target",
        study.target_kg,
        unit="kg",
        name=names.TARGET,
        source="the saving that is promised per pack; empty: none",
        where="Value, Programme",
        limits=(0.0, 1e6),
    )
    rows.single(
        "basis",
        str(study.basis),
        name=names.BASIS,
        source=f"{OF_STUDY}; one of: {', '.join(Basis)}",
        where="the gap that counts, and its value",
        choices=tuple(map(str, Basis)),
    )
    _basis_number(rows.draft, study)
    rows.single(
        "exponent",
        study.exponent,
        name=names.EXPONENT,
        source="how mass that is not cells grows with energy, 0 to 1; a convention",
        where="gaps scaled and structure only",
        limits=(0.0, 1.0),
    )
    rows.single(
        "trend",
        str(study.trend),
        source=OF_STUDY,
        where="sheet Trend; another kind needs the program",
        changes=False,
    )


def _worth_per_pound(draft: Draft, study: Study) -> None:
    """Say the worth per pound, which the study shows on screen."""
    cells = [
        formula(f"{name}*{KG_PER_LB!r}", worth * KG_PER_LB)
        for name, worth in zip(names.WORTH, study.worth_per_kg, strict=True)
    ]
    words = (text(f"{study.currency}/lb"), text(NO))
    exact = text("the pound is exactly 0.45359237 kg (NIST SP 811)")
    draft.line(text("the same per pound"), *cells, *words, exact)


def _basis_number(draft: Draft, study: Study) -> None:
    """Give the basis its number, by which formulas choose."""
    cell = address(draft.next_row - 1, VALUE)
    body = "0"
    for number, basis in reversed(list(enumerate(Basis, start=1))):
        body = f'IF({cell}="{basis}",{number},{body})'
    number = list(Basis).index(study.basis) + 1
    found = formula(body, number, Format.COUNT, name=names.BASIS_NUMBER)
    said = text("1 to 5, in the order of the list above")
    draft.line(text("number of the basis"), None, found, None, text(""), text(NO), said)
