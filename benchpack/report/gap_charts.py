"""What the charts of the Gap page show, and the findings they state."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from benchpack.model.words import Basis
from benchpack.report.chart_specs import (
    EnergyMassSpec,
    GapBarsSpec,
    StepKind,
    TrendBand,
    WaterfallSpec,
)
from benchpack.report.display import Display
from benchpack.results.comparison import Comparison
from benchpack.results.pack_columns import density_wh_per_kg
from benchpack.results.results import Results
from benchpack.results.subsystems import SubsystemSplit

FloatArray = NDArray[np.float64]

_GRID = 61
_NOTHING_KG = 0.05


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


def nothing_to_compare(results: Results) -> str:
    """Say in one sentence why there is no chart."""
    problem = results.missing
    return f"{problem.what} {problem.remedy}".strip() if problem else ""


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
        note=_trend_note(comparison),
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
    peers = len(rows) - 1
    denser = int(np.count_nonzero(densities[1:] > densities[0]))
    if peers == 0:
        return f"{comparison.subject.name} stands alone"
    verb = "is" if denser == 1 else "are"
    return (
        f"{denser} of {peers} {_plural('peer', peers)} {verb} denser than "
        f"{comparison.subject.name}"
    )


def _plural(word: str, count: int) -> str:
    return word if count == 1 else f"{word}s"


def _trend_note(comparison: Comparison) -> str:
    trend = comparison.trend
    if trend is None:
        problem = comparison.trend_problem
        return problem.what if problem else ""
    fit = "" if math.isnan(trend.r_squared) else f", R² {trend.r_squared:.2f}"
    note = (
        f"Trend: {trend.kind} through {trend.n} peers{fit}; the band holds a further "
        "pack with 95 % chance."
    )
    left_out = len(comparison) - int(np.count_nonzero(comparison.comparable))
    if left_out:
        note += f" Left out: {left_out} on another energy basis."
    return note


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
        note=_bars_note(comparison),
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
        return f"No gap {comparison.basis} can be counted"
    if comparison.basis is Basis.TREND:
        word = "Heavier" if gaps[0] > 0 else "Lighter"
        return f"{word} than the trend of its peers"
    heavier = int(np.count_nonzero(gaps > 0))
    return (
        f"Heavier than {heavier} of {len(gaps)} {_plural('peer', len(gaps))} "
        f"{_counted(comparison.basis)}"
    )


def _counted(basis: Basis) -> str:
    return {
        Basis.SCALED: "when scaled to its energy",
        Basis.STRUCTURE: "in structure only",
    }.get(basis, str(basis))


def _bars_note(comparison: Comparison) -> str:
    lacking = int(np.count_nonzero(np.isnan(comparison.gap_kg)))
    note = "Whiskers: two standard uncertainties each way."
    if np.all(np.isnan(comparison.gap_u_kg)):
        note = "No ranges: how the masses are known is not recorded."
    if lacking and comparison.basis is not Basis.TREND:
        note += f" {lacking} {_plural('peer', lacking)} cannot be counted so."
    return note


def waterfall_spec(results: Results) -> WaterfallSpec:
    """Give the gap to the reference as steps: energy, then subsystem by subsystem.

    Parameters
    ----------
    results : Results
        The results of a study.
    """
    comparison, place = results.comparison, results.place
    if comparison is None or place is None or results.split is None:
        return WaterfallSpec(empty_sentence=nothing_to_compare(results))
    display = Display(results.study)
    split = results.split
    steps = _steps(comparison, place, split)
    total = float(comparison.as_weighed_kg[place])
    names = [name for name, _, _ in steps]
    kinds = [kind for _, kind, _ in steps]
    values = [value for _, _, value in steps]
    return WaterfallSpec(
        title=_waterfall_finding(steps, display),
        note=_waterfall_note(results, split),
        explain_key="density share",
        decimal_mark=results.study.decimal_mark,
        names=(*names, "gap as weighed"),
        kinds=(*kinds, "sum"),
        values=display.mass(np.array([*values, total])),
        axis_label=f"Gap to {results.study.reference} [{display.mass_unit}]",
        format_value=display.signed_mass_number,
        format_full=display.signed_mass_text,
    )


_Step = tuple[str, StepKind, float]


def _steps(comparison: Comparison, place: int, split: SubsystemSplit) -> list[_Step]:
    share = float(comparison.energy_share_kg[place])
    if math.isnan(share):
        gaps, steps = split.gaps.as_weighed_kg, list[_Step]()
    else:
        gaps, steps = split.gaps.equal_energy_kg, [_energy_step(share)]
    if not split.is_recorded:
        label = "density share" if steps else "not split"
        whole = float(comparison.as_weighed_kg[place]) - (steps[0][2] if steps else 0)
        return [*steps, (label, "step", whole)]
    masses = zip(
        split.subject.rows_kg().values(),
        split.reference.rows_kg().values(),
        strict=True,
    )
    for name, gap, pair in zip(split.names, gaps.tolist(), masses, strict=True):
        if any(pair) or abs(gap) >= _NOTHING_KG:
            steps.append((name, "step", gap))
    return steps


def _energy_step(share_kg: float) -> _Step:
    return ("energy share", "energy", share_kg)


def _waterfall_finding(steps: list[_Step], display: Display) -> str:
    placed = [step for step in steps if step[1] == "step"]
    if len(placed) == 1:
        return "Energy and density share of the gap"
    name, _, value = max(placed, key=lambda step: step[2])
    if value < _NOTHING_KG:
        return "No subsystem is heavier at equal energy"
    return f"Most of the excess sits in {name}: {display.mass_text(value)}"


def _waterfall_note(results: Results, split: SubsystemSplit) -> str:
    if not split.is_recorded:
        lacking = [
            closure.pack
            for closure in (split.subject, split.reference)
            if not closure.is_recorded
        ]
        return (
            f"No parts are recorded for {' and '.join(lacking)}, so the density share "
            "cannot be placed. Add them on the Packs page."
        )
    notes = ["Hatched: mass that carries the difference in energy, no saving."]
    if split.boundary_kg:
        taken = Display(results.study).mass_text(abs(split.boundary_kg))
        notes.append(f"Unaccounted includes {taken} taken out for the boundary.")
    return " ".join(notes)
