"""What the charts of the Gap page show, and the findings they state."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from benchpack.model.words import Basis, TrendKind
from benchpack.report.chart_specs import (
    EnergyMassSpec,
    GapBarsSpec,
    TrendBand,
)
from benchpack.report.chart_words import nothing_to_compare, plural
from benchpack.report.display import Display
from benchpack.report.waterfall import waterfall_spec
from benchpack.results.comparison import Comparison
from benchpack.results.pack_columns import density_wh_per_kg
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.results import Results

__all__ = [
    "energy_mass_spec",
    "gap_bars_spec",
    "nothing_to_compare",
    "peer_names",
    "waterfall_spec",
]

FloatArray = NDArray[np.float64]

_GRID = 61


@lru_cache(maxsize=2)
def peer_names(comparison: Comparison) -> tuple[str, ...]:
    """Give the names of the references; the same object for the same comparison.

    Charts keep the order of their rows as long as the names are the same object.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    """
    return tuple(comparison.names.tolist())


def energy_mass_spec(results: Results) -> EnergyMassSpec:
    """Give energy against mass of the subject and its peers.

    Parameters
    ----------
    results : Results
        The results of a study.
    """
    comparison = results.comparison
    if comparison is None:
        return EnergyMassSpec(empty_sentence=nothing_to_compare(results))
    display = Display(results.study)
    packs = results.library.packs
    subject_row = packs.position(comparison.subject.name)
    rows = np.concatenate(([subject_row], comparison.rows)).astype(np.intp)
    masses = packs.columns["mass_kg"][rows]
    energies = packs.columns["energy_kwh"][rows]
    return EnergyMassSpec(
        title=_density_finding(results, comparison, rows),
        note=f"{_trend_note(comparison)} Masses as weighed.".strip(),
        explain_key="density",
        decimal_mark=results.study.decimal_mark,
        names=tuple(packs.names[rows].tolist()),
        energy=energies,
        mass=display.mass(masses),
        subject=comparison.subject.name,
        reference=results.study.reference,
        trend=_band(comparison, energies, display),
        y_label=f"Mass [{display.mass_unit}]",
        ray_factor=float(display.mass(1000.0)),
        format_energy=display.energy_text,
        format_mass=display.shown_mass_text,
        format_density=display.density_text,
    )


def _density_finding(
    results: Results, comparison: Comparison, rows: NDArray[np.intp]
) -> str:
    packs = results.library.packs.selected(rows)
    densities = density_wh_per_kg(packs)
    comparable = densities[1:][comparison.comparable]
    peers = len(comparable)
    denser = int(np.count_nonzero(comparable > densities[0]))
    if peers == 0:
        alone = len(comparison) == 0
        return f"{comparison.subject.name} {'stands alone' if alone else _UNLIKE}"
    if denser == 0:
        return f"No peer is denser than {comparison.subject.name}"
    verb = "is" if denser == 1 else "are"
    return (
        f"{denser} of {peers} {plural('peer', peers)} {verb} denser than "
        f"{comparison.subject.name}"
    )


_UNLIKE = "and its peers cannot be compared in energy"


def _trend_note(comparison: Comparison) -> str:
    trend = comparison.trend
    if trend is None:
        problem = comparison.trend_problem
        return problem.what if problem else ""
    fit = "" if math.isnan(trend.r_squared) else f", R² {trend.r_squared:.2f}"
    about = "" if trend.kind is TrendKind.LEAST_SQUARES else "about "
    note = (
        f"Trend: {trend.kind} through {trend.n} peers{fit}; the band holds a further "
        f"pack with {about}95 % chance."
    )
    left_out = _not_comparable(comparison)
    if left_out:
        note += f" Left out: {', '.join(left_out)}."
    return note


def _not_comparable(comparison: Comparison) -> list[str]:
    """Count the peers that cannot be compared in energy, by their reason."""
    has_cells = comparison.masses.has_cells
    without = int(np.count_nonzero(~has_cells))
    mixed = int(np.count_nonzero(~comparison.comparable & has_cells))
    reasons = [f"{mixed} on another energy basis"] if mixed else []
    return [*reasons, f"{without} weighed without cells"] if without else reasons


def _band(
    comparison: Comparison, energies: FloatArray, display: Display
) -> TrendBand | None:
    trend = comparison.trend
    if trend is None:
        return None
    grid = np.linspace(np.nanmin(energies), np.nanmax(energies), _GRID)
    low, high = trend.prediction_interval_kg(grid, coverage=0.95)
    return TrendBand(
        x=grid,
        low=display.mass(low),
        mid=display.mass(trend.predict_kg(grid)),
        high=display.mass(high),
    )


def gap_bars_spec(results: Results) -> GapBarsSpec:
    """Give the gap to every peer on the study's basis, greatest first.

    Parameters
    ----------
    results : Results
        The results of a study.
    """
    comparison = results.comparison
    if comparison is None or len(comparison) == 0:
        return GapBarsSpec(
            empty_sentence=nothing_to_compare(results) or "There is no other pack."
        )
    display = Display(results.study)
    names = peer_names(comparison)
    gaps, spread = comparison.gap_kg, comparison.gap_u_kg
    reference = results.study.reference
    if comparison.basis is Basis.TREND:
        peers = 0 if comparison.trend is None else comparison.trend.n
        names, gaps, spread = (f"trend of {peers} peers",), gaps[:1], spread[:1]
        reference = ""
    return GapBarsSpec(
        title=_gap_finding(comparison),
        note=_bars_note(comparison, display),
        explain_key="gap",
        decimal_mark=results.study.decimal_mark,
        names=names,
        gap=display.mass(gaps),
        uncertainty=display.mass(spread),
        reference=reference,
        axis_label=f"Gap {comparison.basis} [{display.mass_unit}]",
        format_value=display.signed_mass_number,
        format_full=display.signed_mass_text,
    )


def _gap_finding(comparison: Comparison) -> str:
    gaps = comparison.gap_kg[~np.isnan(comparison.gap_kg)]
    if len(gaps) == 0:
        return f"No gap can be counted {_counted(comparison.basis)}"
    if comparison.basis is Basis.TREND:
        if abs(gaps[0]) < NOTHING_KG:
            return "On the trend of its peers"
        word = "Heavier" if gaps[0] > 0 else "Lighter"
        return f"{word} than the trend of its peers"
    heavier = int(np.count_nonzero(gaps >= NOTHING_KG))
    return (
        f"Heavier than {heavier} of {len(gaps)} {plural('peer', len(gaps))} "
        f"{_counted(comparison.basis)}"
    )


def _counted(basis: Basis) -> str:
    return {
        Basis.SCALED: "when scaled to its energy",
        Basis.STRUCTURE: "in structure only",
    }.get(basis, str(basis))


def _bars_note(comparison: Comparison, display: Display) -> str:
    counted = ~np.isnan(comparison.gap_kg)
    ranged = ~np.isnan(comparison.gap_u_kg[counted])
    notes = []
    if ranged.any():
        notes.append("Whiskers: two standard uncertainties each way.")
    if not ranged.all():
        lead = "No whisker" if ranged.any() else "No ranges"
        notes.append(f"{lead}: how the masses are known is not recorded.")
    if comparison.basis is Basis.TREND:
        notes.extend(_trend_range(comparison, display))
    elif not counted.all():
        notes.append(_why_not_counted(comparison, counted))
    return " ".join(notes)


def _trend_range(comparison: Comparison, display: Display) -> list[str]:
    """Give the wider range that few peers ask for, or why there is no gap."""
    if comparison.trend is None:
        problem = comparison.trend_problem
        return [problem.what] if problem else []
    half_kg = comparison.uncertain.coverage_factor(0) * float(comparison.gap_u_kg[0])
    if math.isnan(half_kg):
        return []
    gap_kg = float(comparison.gap_kg[0])
    low, high = (
        display.signed_mass_text(display.mass(gap_kg + side * half_kg))
        for side in (-1, 1)
    )
    return [f"95 % range by Student t: {low} to {high}."]


def _why_not_counted(comparison: Comparison, counted: NDArray[np.bool_]) -> str:
    """Say why some peers have no bar."""
    reasons = []
    uncounted = ~counted
    if comparison.basis is not Basis.AS_WEIGHED:
        reasons = _not_comparable(comparison)
        uncounted = uncounted & comparison.comparable
    emptied = np.isnan(comparison.subject_mass_kg + comparison.reference_mass_kg)
    beyond = int(np.count_nonzero(uncounted & emptied))
    cells = int(np.count_nonzero(uncounted & ~emptied))
    if cells:
        reasons.append(f"{cells} without a mass of cells")
    if beyond:
        reasons.append(f"{beyond} with more taken out than it weighs")
    return f"Not counted: {', '.join(reasons)}."
