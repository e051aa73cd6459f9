"""Where a figure comes from: formula, inputs with units, sources."""

from __future__ import annotations

import math
from collections.abc import Callable

from benchpack.calc.densities import gravimetric_density_wh_per_kg
from benchpack.calc.line import LinearTrend
from benchpack.errors import RequestError
from benchpack.model.pack import Pack
from benchpack.model.words import Basis, TrendKind
from benchpack.results.comparison import Comparison
from benchpack.results.explain_joints import JOINT_KEYS, explain_joints
from benchpack.results.explain_proposal import PROPOSAL_KEYS, explain_proposal
from benchpack.results.explain_worth import WORTH_KEYS, explain_worth
from benchpack.results.explained_inputs import (
    STUDY,
    cells,
    compared_mass,
    energies,
    energy,
    masses,
    reference_pack,
    scale_mass,
)
from benchpack.results.explained_uncertainty import range_meaning, uncertainty_figure
from benchpack.results.figure import Figure, Input
from benchpack.results.proposal import proposal
from benchpack.results.results import Results
from benchpack.results.uncounted import why_no_gap
from benchpack.results.worth_case import worth_case

_PRACTICE = "common practice, no source"
_SPLIT = "exact split of the as-weighed gap; " + _PRACTICE

_BAND = "the formula at b = 0 and b = 1"

EXPLAINED = (
    "gap",
    "gap as weighed",
    "energy share",
    "density share",
    "gap scaled",
    "gap to trend",
    "gap structure",
    "u(gap)",
    "value low",
    "value likely",
    "value high",
    "density",
    "reference density",
)
"""Keys of the gap that `explain` answers, beside those of joints in `JOINT_KEYS`, of
the proposal in `PROPOSAL_KEYS` and of the worth in `WORTH_KEYS`."""


def explain(results: Results, key: str, *, reference: str = "") -> Figure:
    """Say where one figure comes from.

    Parameters
    ----------
    results : Results
        The results it is shown with.
    key : str
        One of `EXPLAINED`, `JOINT_KEYS`, `PROPOSAL_KEYS` or `WORTH_KEYS`.
    reference : str
        The reference it belongs to; by default that of the study. For a figure of
        joints the pack, or the joint as `joint_record` names it; by default the
        subject. For a figure of one change its name.

    Returns
    -------
    Figure
        With formula, inputs and sources.

    Raises
    ------
    RequestError
        For a key that is not known, or a reference that is not compared.
    """
    if key in PROPOSAL_KEYS:
        found = proposal(results.library, results.study, gap=results)
        return explain_proposal(found, key, reference)
    if key in WORTH_KEYS:
        return explain_worth(worth_case(results), key)
    if key in JOINT_KEYS:
        return explain_joints(results.library, results.study, key, reference)
    if key not in EXPLAINED:
        raise RequestError(f"There is no figure {key!r}.")
    comparison = results.comparison
    place = results.place
    if comparison is not None and reference:
        place = comparison.place(reference)
    if comparison is None or place is None:
        raise RequestError(f"{key} needs a subject and a reference.")
    if key == "gap":
        key = _KEY_OF_BASIS[comparison.basis]
    return _BUILDERS[key](results, comparison, place)


_KEY_OF_BASIS = {
    Basis.AS_WEIGHED: "gap as weighed",
    Basis.EQUAL_ENERGY: "density share",
    Basis.SCALED: "gap scaled",
    Basis.TREND: "gap to trend",
    Basis.STRUCTURE: "gap structure",
}


def _gap(
    comparison: Comparison,
    place: int,
    *,
    basis: Basis,
    label: str,
    formula: str,
    inputs: tuple[Input, ...],
    source: str = _PRACTICE,
) -> Figure:
    value = float(comparison.by_basis(basis)[place])
    half = math.nan
    if basis is comparison.basis:
        factor = comparison.uncertain.coverage_factor(place)
        half = factor * float(comparison.gap_u_kg[place])
    reason = why_no_gap(comparison, place, basis=basis)
    return Figure(
        key=_KEY_OF_BASIS[basis],
        label=label,
        value=value,
        unit="kg",
        formula=formula,
        inputs=inputs,
        source=source,
        low=value - half,
        high=value + half,
        range_meaning="" if math.isnan(half) else range_meaning(comparison, place),
        missing=reason.what if reason else "",
    )


def _as_weighed(results: Results, comparison: Comparison, place: int) -> Figure:
    return _gap(
        comparison,
        place,
        basis=Basis.AS_WEIGHED,
        label="Gap as weighed",
        formula="m_s - m_r",
        inputs=masses(results, comparison, place),
    )


def _energy_share(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = reference_pack(results, comparison, place)
    reason = why_no_gap(comparison, place, basis=Basis.EQUAL_ENERGY)
    return Figure(
        key="energy share",
        label="Energy share of the gap",
        value=float(comparison.energy_share_kg[place]),
        unit="kg",
        formula="m_r (E_s - E_r) / E_r",
        inputs=(
            *compared_mass("m_r", reference, comparison, place),
            *energies(results, comparison, place),
        ),
        source=_SPLIT,
        missing=reason.what if reason else "",
    )


def _density_share(results: Results, comparison: Comparison, place: int) -> Figure:
    return _gap(
        comparison,
        place,
        basis=Basis.EQUAL_ENERGY,
        label="Gap at equal energy (density share)",
        formula="m_s - m_r E_s / E_r",
        inputs=(
            *masses(results, comparison, place),
            *energies(results, comparison, place),
        ),
        source=_SPLIT,
    )


def _scaled(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = reference_pack(results, comparison, place)
    low = float(comparison.scaled_low_kg[place])
    high = float(comparison.scaled_high_kg[place])
    return _gap(
        comparison,
        place,
        basis=Basis.SCALED,
        label="Gap scaled",
        formula="m_s - [c_r x + (m_r - c_r) x^b], x = E_s / E_r",
        inputs=(
            *masses(results, comparison, place),
            *energies(results, comparison, place),
            cells("c_r", reference),
            Input("b, exponent", comparison.exponent, "", STUDY),
            Input("least gap over b from 0 to 1", low, "kg", _BAND),
            Input("greatest gap over b from 0 to 1", high, "kg", _BAND),
        ),
    )


def _structure(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = reference_pack(results, comparison, place)
    return _gap(
        comparison,
        place,
        basis=Basis.STRUCTURE,
        label="Gap of the structure only",
        formula="(m_s - c_s) - (m_r - c_r) x^b, x = E_s / E_r",
        inputs=(
            *masses(results, comparison, place),
            *energies(results, comparison, place),
            cells("c_s", comparison.subject),
            cells("c_r", reference),
            Input("b, exponent", comparison.exponent, "", STUDY),
        ),
    )


def _to_trend(_results: Results, comparison: Comparison, _place: int) -> Figure:
    trend, subject = comparison.trend, comparison.subject
    inputs = [scale_mass("m_s", subject), energy("E_s", subject)]
    law, source = "m_hat = a + b E", _LINES[TrendKind.LEAST_SQUARES]
    if trend is not None:
        source = _LINES[trend.kind]
        inputs += _of_line(trend, subject.energy_kwh)
        if trend.kind is TrendKind.POWER_LAW:
            law = "m_hat = exp(a) E^b"
    return _gap(
        comparison,
        _place,
        basis=Basis.TREND,
        label="Gap to the trend of the peers",
        formula=f"m_s - m_hat(E_s), {law}",
        inputs=tuple(inputs),
        source=f"{source}; the peers' masses as weighed, on one energy basis, the "
        "subject left out",
    )


_LINES = {
    TrendKind.LEAST_SQUARES: "ordinary least squares and its prediction error, as in "
    "NIST/SEMATECH e-Handbook of Statistical Methods, 4.5.1",
    TrendKind.THEIL_SEN: "median of the slopes of all pairs (Theil-Sen); its "
    "prediction error by the formula of least squares, an approximation",
    TrendKind.POWER_LAW: "ordinary least squares in logarithms: m_hat is the median "
    "mass, not its mean; prediction error first order",
}


def _of_line(trend: LinearTrend, energy_kwh: float) -> list[Input]:
    in_logs = trend.kind is TrendKind.POWER_LAW
    drawn = f", {trend.sampled_pairs} pairs drawn" if trend.sampled_pairs else ""
    error_kg = float(trend.prediction_uncertainty_kg(energy_kwh))
    span = f"{trend.least_energy_kwh:g} to {trend.greatest_energy_kwh:g} kWh"
    return [
        Input("n, peers", trend.n, "", f"{trend.kind}{drawn}, {span}"),
        Input("a", trend.intercept, "" if in_logs else "kg", "fit"),
        Input("b", trend.slope, "" if in_logs else "kg/kWh", "fit"),
        Input("m_hat(E_s)", float(trend.predict_kg(energy_kwh)), "kg", "fit"),
        Input("prediction error of m_hat", error_kg, "kg", "fit"),
        Input("residual s", trend.residual_s, "of ln m" if in_logs else "kg", "fit"),
        Input("R2 of ln m" if in_logs else "R2", trend.r_squared, "", "fit"),
    ]


def _value(which: str) -> Callable[[Results, Comparison, int], Figure]:
    def build(results: Results, comparison: Comparison, place: int) -> Figure:
        study = results.study
        worth = getattr(study, f"worth_{which}_per_kg")
        valuation = results.valuation
        values = getattr(valuation, which) if valuation else None
        missing = why_no_gap(comparison, place, basis=comparison.basis)
        reason = study.worth_reason or "set in the study, no reason written"
        return Figure(
            key=f"value {which}",
            label=f"Worth of the gap per pack, {which}",
            value=math.nan if values is None else float(values[place]),
            unit=study.currency,
            formula="worth x gap x share captured",
            inputs=(
                Input("worth", worth, f"{study.currency}/kg", reason),
                Input(f"gap {comparison.basis}", float(comparison.gap_kg[place]), "kg"),
                Input("share captured", study.share_captured, "", STUDY),
            ),
            source="the person's own worth per kilogram",
            missing=missing.what if missing else "",
        )

    return build


def _density(_results: Results, comparison: Comparison, place: int) -> Figure:
    return _density_figure("density", comparison.subject, comparison, place)


def _reference_density(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = reference_pack(results, comparison, place)
    return _density_figure("reference density", reference, comparison, place)


def _density_figure(key: str, pack: Pack, comparison: Comparison, place: int) -> Figure:
    suffix = "r" if key == "reference density" else "s"
    mass = compared_mass(f"m_{suffix}", pack, comparison, place)
    return Figure(
        key=key,
        label=f"Gravimetric energy density of {pack.name}"
        + (" as compared" if len(mass) > 1 else ""),
        value=float(gravimetric_density_wh_per_kg(pack.energy_kwh, mass[0].value)),
        unit="Wh/kg",
        formula=f"1000 E_{suffix} / m_{suffix}",
        inputs=(energy(f"E_{suffix}", pack), *mass),
        source=_PRACTICE,
        missing=_TAKEN_OUT if math.isnan(mass[0].value) else "",
    )


_TAKEN_OUT = "More would be taken out for the boundary than the pack holds."

_BUILDERS: dict[str, Callable[[Results, Comparison, int], Figure]] = {
    "gap as weighed": _as_weighed,
    "energy share": _energy_share,
    "density share": _density_share,
    "gap scaled": _scaled,
    "gap to trend": _to_trend,
    "gap structure": _structure,
    "u(gap)": uncertainty_figure,
    "value low": _value("low"),
    "value likely": _value("likely"),
    "value high": _value("high"),
    "density": _density,
    "reference density": _reference_density,
}
