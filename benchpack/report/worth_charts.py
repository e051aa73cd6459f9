"""What the charts of the Worth page show, and the findings they state."""

from __future__ import annotations

import numpy as np

from benchpack.calc.worth import value_per_pack
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.report.chart_specs import FanPoint, FanSpec, FanTarget, GapBarsSpec
from benchpack.report.chart_words import nothing_to_compare
from benchpack.report.display import Display
from benchpack.report.gap_charts import peer_names
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.results import Results
from benchpack.results.worth_programme import product


def fan_spec(results: Results, proposed: Range | None = None) -> FanSpec:
    """Give the worth per pack against kilograms saved, low to high worth.

    Parameters
    ----------
    results : Results
        The results of a study.
    proposed : Range, optional
        Kilograms that a proposal saves, where the study values one.
    """
    study = results.study
    display = Display(study)
    gap_kg = results.gap_kg
    if results.missing is not None and study.target_kg is None and proposed is None:
        return FanSpec(empty_sentence=nothing_to_compare(results))
    saved = max(
        gap_kg if gap_kg >= NOTHING_KG else 0.0,
        study.target_kg or 0.0,
        proposed.likely if proposed else 0.0,
    )
    if saved <= 0:
        return FanSpec(empty_sentence=_nothing_to_save(results))
    grid = np.array([0.0, 1.15 * saved])
    low, likely, high = (value_per_pack(grid, worth) for worth in study.worth_per_kg)
    return FanSpec(
        title=_fan_finding(results, display, proposed),
        note=_fan_note(results, display),
        explain_key="worth per pack" if proposed else "value likely",
        decimal_mark=results.study.decimal_mark,
        saved=display.mass(grid),
        low=low,
        likely=likely,
        high=high,
        points=(*_points(results, display, proposed), *_proposed(study, proposed)),
        target=_target(results, display),
        x_label=f"Mass saved per pack [{display.mass_unit}]",
        y_label=f"Worth per pack [{study.currency}]",
        low_text=f"low {display.worth_text(study.worth_low_per_kg)}",
        likely_text=f"likely {display.worth_text(study.worth_likely_per_kg)}",
        high_text=f"high {display.worth_text(study.worth_high_per_kg)}",
        format_saved=display.shown_mass_text,
        format_value=display.money_text,
    )


def _nothing_to_save(results: Results) -> str:
    study = results.study
    against = f"{study.reference} {study.basis}"
    if study.basis is Basis.TREND:
        against = "the trend of its peers"
    return (
        f"{study.subject} is not heavier than {against}, so there is nothing to save. "
        "Choose another reference or basis, or set a target."
    )


def _fan_finding(
    results: Results, display: Display, proposed: Range | None = None
) -> str:
    study, valuation, place = results.study, results.valuation, results.place
    if proposed is not None:
        worth = product(Range(*study.worth_per_kg), proposed)
        money = display.money_range_text(worth.likely, worth.low, worth.high)
        mass = display.mass_text(abs(proposed.likely))
        if proposed.likely < 0:
            return f"The proposal adds {mass}, worth {money} a pack"
        return f"The proposal saves {mass}, worth {money} a pack"
    if valuation is None or place is None or not results.gap_kg >= NOTHING_KG:
        return "No gap to value; the target stands alone"
    if study.share_captured == 0:
        return "None of the gap is captured, so it is worth nothing"
    low, likely, high = (
        display.money_text(float(values[place]))
        for values in (valuation.low, valuation.likely, valuation.high)
    )
    gap = display.mass_text(results.gap_kg * study.share_captured)
    if low == high:
        return f"Saving {gap} is worth {likely} a pack"
    return (
        f"Saving {gap} is worth {likely} a pack, {low} at low and {high} at high worth"
    )


def _fan_note(results: Results, display: Display) -> str:
    study = results.study
    reason = study.worth_reason or "a starting value, no reason is written down yet"
    per_pound = display.other_worth_text(study.worth_likely_per_kg)
    note = f"Worth per kilogram: {reason}. Likely worth is {per_pound}."
    comparison, place = results.comparison, results.place
    if comparison is None or place is None or study.basis is not Basis.AS_WEIGHED:
        return note
    share_kg = float(comparison.energy_share_kg[place])
    if results.gap_kg >= NOTHING_KG and share_kg >= NOTHING_KG:
        carried = display.mass_text(min(share_kg, results.gap_kg))
        note += f" {carried} of the gap as weighed carries energy and is no saving."
    return note


def _proposed(study: Study, proposed: Range | None) -> list[FanPoint]:
    """Mark what a proposal saves, with the range of its mass and of the worth."""
    if proposed is None or proposed.likely < 0:
        return []
    display, worth = Display(study), product(Range(*study.worth_per_kg), proposed)
    return [
        FanPoint(
            name="the proposal",
            saved=float(display.mass(proposed.likely)),
            value=worth.likely,
            low=worth.low,
            high=worth.high,
            kind="subject",
        )
    ]


def _points(
    results: Results, display: Display, proposed: Range | None = None
) -> list[FanPoint]:
    """Mark the gap and the share captured; what is valued stands out."""
    study, gap_kg = results.study, results.gap_kg
    if not gap_kg >= NOTHING_KG:
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
                kind="subject"
                if proposed is None and share == study.share_captured
                else "peer",
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


def _worth_finding(basis: Basis, worthwhile: int, *, of: int) -> str:
    if of == 0:
        return "No gap can be valued"
    if basis is Basis.TREND:
        return f"The gap to the trend is {'' if worthwhile else 'not '}worth money"
    peers = "peer shows" if of == 1 else "peers show"
    return f"{worthwhile} of {of} {peers} a gap worth money"


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
        title=_worth_finding(comparison.basis, worthwhile, of=len(finite)),
        note=(
            f"Gap {comparison.basis} times likely worth times share captured, "
            "per pack. Below zero the subject is the lighter one."
        ),
        explain_key="value likely",
        decimal_mark=results.study.decimal_mark,
        names=names,
        gap=values,
        reference=reference,
        axis_label=f"Worth per pack [{study.currency}]",
        lighter_text="no saving",
        heavier_text="saving",
        format_value=display.signed_money_number,
        format_full=display.money_text,
    )
