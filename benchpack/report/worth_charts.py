"""What the charts of the Worth page show, and the findings they state."""

from __future__ import annotations

import math

import numpy as np

from benchpack.calc.worth import value_per_pack
from benchpack.model.words import Basis
from benchpack.report.chart_specs import FanPoint, FanSpec, FanTarget, GapBarsSpec
from benchpack.report.display import Display
from benchpack.report.gap_charts import nothing_to_compare, peer_names
from benchpack.results.results import Results


def fan_spec(results: Results) -> FanSpec:
    """Give the value per pack against kilograms saved, low to high worth.

    Parameters
    ----------
    results : Results
        The results of a study.
    """
    study = results.study
    display = Display(study)
    gap_kg = results.gap_kg
    if results.missing is not None and study.target_kg is None:
        return FanSpec(empty_sentence=nothing_to_compare(results))
    saved = max(0.0 if math.isnan(gap_kg) else gap_kg, study.target_kg or 0.0)
    if saved <= 0:
        return FanSpec(empty_sentence=_nothing_to_save(results))
    grid = np.array([0.0, 1.15 * saved])
    low, likely, high = (value_per_pack(grid, worth) for worth in study.worth_per_kg)
    return FanSpec(
        title=_fan_finding(results, display),
        note=_fan_note(results, display),
        explain_key="value likely",
        decimal_mark=results.study.decimal_mark,
        saved=display.mass(grid),
        low=low,
        likely=likely,
        high=high,
        points=tuple(_points(results, display)),
        target=_target(results, display),
        x_label=f"Mass saved per pack [{display.mass_unit}]",
        y_label=f"Value per pack [{study.currency}]",
        low_text=f"low {display.worth_text(study.worth_low_per_kg)}",
        likely_text=f"likely {display.worth_text(study.worth_likely_per_kg)}",
        high_text=f"high {display.worth_text(study.worth_high_per_kg)}",
        format_saved=display.shown_mass_text,
        format_value=display.money_text,
    )


def _nothing_to_save(results: Results) -> str:
    return (
        f"{results.study.subject} is not heavier than {results.study.reference} "
        f"{results.study.basis}, so there is nothing to save. Choose another "
        "reference or basis, or set a target."
    )


def _fan_finding(results: Results, display: Display) -> str:
    study, valuation, place = results.study, results.valuation, results.place
    if valuation is None or place is None or not results.gap_kg > 0:
        return "No gap to value; the target stands alone"
    low, likely, high = (
        display.money_text(float(values[place]))
        for values in (valuation.low, valuation.likely, valuation.high)
    )
    gap = display.mass_text(results.gap_kg * study.share_captured)
    return f"Saving {gap} is worth {likely} a pack, between {low} and {high}"


def _fan_note(results: Results, display: Display) -> str:
    study = results.study
    reason = study.worth_reason or "no reason written down yet"
    per_pound = display.other_worth_text(study.worth_likely_per_kg)
    return (
        f"Worth per kilogram is set by the user: {reason}. Likely worth is {per_pound}."
    )


def _points(results: Results, display: Display) -> list[FanPoint]:
    study, gap_kg = results.study, results.gap_kg
    if math.isnan(gap_kg) or gap_kg <= 0:
        return []
    shares = {"whole gap": 1.0}
    if study.share_captured < 1:
        shares[f"{display.share_text(study.share_captured)} captured"] = (
            study.share_captured
        )
    points = []
    for name, share in shares.items():
        low, likely, high = (
            float(value_per_pack(gap_kg, worth, share_captured=share))
            for worth in study.worth_per_kg
        )
        points.append(
            FanPoint(
                name=name,
                saved=float(display.mass(gap_kg * share)),
                value=likely,
                low=low,
                high=high,
                kind="subject" if share == study.share_captured else "peer",
            )
        )
    return points


def _target(results: Results, display: Display) -> FanTarget | None:
    study = results.study
    if study.target_kg is None:
        return None
    value = study.target_kg * study.worth_likely_per_kg
    return FanTarget(
        saved=float(display.mass(study.target_kg)),
        value=value,
        saved_text=f"target {display.mass_text(study.target_kg)}",
        value_text=display.money_text(value),
    )


def value_bars_spec(results: Results) -> GapBarsSpec:
    """Give what the gap to every peer is worth per pack at the likely worth.

    Parameters
    ----------
    results : Results
        The results of a study.
    """
    comparison, valuation = results.comparison, results.valuation
    if comparison is None or valuation is None or len(comparison) == 0:
        return GapBarsSpec(
            empty_sentence=nothing_to_compare(results) or "There is no other pack."
        )
    study = results.study
    display = Display(study)
    names = peer_names(comparison)
    values, reference = valuation.likely, study.reference
    if comparison.basis is Basis.TREND:
        names, values, reference = ("trend of the peers",), values[:1], ""
    finite = values[~np.isnan(values)]
    worthwhile = int(np.count_nonzero(finite > 0))
    return GapBarsSpec(
        title=f"{worthwhile} of {len(finite)} peers show a gap worth money",
        note=(
            f"Gap {comparison.basis} times likely worth times share captured, "
            "per pack. Below zero the subject is the lighter one."
        ),
        explain_key="value likely",
        decimal_mark=results.study.decimal_mark,
        names=names,
        gap=values,
        reference=reference,
        axis_label=f"Value per pack [{study.currency}]",
        lighter_text="no saving",
        heavier_text="saving",
        format_value=display.signed_money_number,
        format_full=display.money_text,
    )
