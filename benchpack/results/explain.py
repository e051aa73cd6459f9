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
from benchpack.results.figure import Figure, Input
from benchpack.results.results import COVERAGE_FACTOR, Results

_STUDY = "study"
_PRACTICE = "common practice, no source"
_SPLIT = "exact split of the as-weighed gap; " + _PRACTICE
_GUM = "JCGM 100:2008, 5.1.2 (first order), 6.3 (coverage factor 2)"

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
"""Keys that `explain` answers."""


def explain(results: Results, key: str, *, reference: str = "") -> Figure:
    """Say where one figure comes from.

    Parameters
    ----------
    results : Results
        The results it is shown with.
    key : str
        One of `EXPLAINED`.
    reference : str
        The reference it belongs to; by default that of the study.

    Returns
    -------
    Figure
        With formula, inputs and sources.

    Raises
    ------
    RequestError
        For a key that is not known, or a reference that is not compared.
    """
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


def _reference(results: Results, comparison: Comparison, place: int) -> Pack:
    return results.library.packs[int(comparison.rows[place])]


def _known(pack: Pack) -> str:
    words = [str(pack.mass_known_by) or "how known not recorded", pack.source]
    return ", ".join(filter(None, words))


def _mass(symbol: str, pack: Pack, compared_kg: float) -> tuple[Input, ...]:
    mass = Input(f"{symbol}, mass of {pack.name}", pack.mass_kg, "kg", _known(pack))
    if compared_kg == pack.mass_kg:
        return (mass,)
    taken = Input(
        f"taken out of {pack.name} for the boundary",
        pack.mass_kg - compared_kg,
        "kg",
        "boundary record",
    )
    return mass, taken


def _energy(symbol: str, pack: Pack) -> Input:
    basis = f"{pack.energy_basis} energy" if pack.energy_basis else ""
    source = ", ".join(filter(None, (basis, pack.source)))
    return Input(f"{symbol}, energy of {pack.name}", pack.energy_kwh, "kWh", source)


def _cells(symbol: str, pack: Pack) -> Input:
    mass_kg = math.nan if pack.cells_mass_kg is None else pack.cells_mass_kg
    return Input(f"{symbol}, cells of {pack.name}", mass_kg, "kg", pack.source)


def _masses(results: Results, comparison: Comparison, place: int) -> tuple[Input, ...]:
    reference = _reference(results, comparison, place)
    return (
        *_mass("m_s", comparison.subject, float(comparison.subject_mass_kg[place])),
        *_mass("m_r", reference, float(comparison.reference_mass_kg[place])),
    )


def _energies(
    results: Results, comparison: Comparison, place: int
) -> tuple[Input, ...]:
    reference = _reference(results, comparison, place)
    return _energy("E_s", comparison.subject), _energy("E_r", reference)


def _gap(
    results: Results,
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
        half = COVERAGE_FACTOR * float(comparison.gap_u_kg[place])
    missing = results.missing.what if results.missing and math.isnan(value) else ""
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
        range_meaning=f"plus and minus two standard uncertainties; {_GUM}",
        missing=missing,
    )


def _as_weighed(results: Results, comparison: Comparison, place: int) -> Figure:
    return _gap(
        results,
        comparison,
        place,
        basis=Basis.AS_WEIGHED,
        label="Gap as weighed",
        formula="m_s - m_r",
        inputs=_masses(results, comparison, place),
    )


def _energy_share(results: Results, comparison: Comparison, place: int) -> Figure:
    return Figure(
        key="energy share",
        label="Energy share of the gap",
        value=float(comparison.energy_share_kg[place]),
        unit="kg",
        formula="m_r (E_s - E_r) / E_r",
        inputs=(
            *_masses(results, comparison, place),
            *_energies(results, comparison, place),
        ),
        source=_SPLIT,
    )


def _density_share(results: Results, comparison: Comparison, place: int) -> Figure:
    return _gap(
        results,
        comparison,
        place,
        basis=Basis.EQUAL_ENERGY,
        label="Gap at equal energy (density share)",
        formula="m_s - m_r E_s / E_r",
        inputs=(
            *_masses(results, comparison, place),
            *_energies(results, comparison, place),
        ),
        source=_SPLIT,
    )


def _scaled(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = _reference(results, comparison, place)
    return _gap(
        results,
        comparison,
        place,
        basis=Basis.SCALED,
        label="Gap scaled",
        formula="m_s - [c_r x + (m_r - c_r) x^b], x = E_s / E_r",
        inputs=(
            *_masses(results, comparison, place),
            *_energies(results, comparison, place),
            _cells("c_r", reference),
            Input("b, exponent", comparison.exponent, "", _STUDY),
            Input("gap at b = 0", _flat(comparison, place), "kg"),
            Input("gap at b = 1", float(comparison.density_share_kg[place]), "kg"),
        ),
    )


def _flat(comparison: Comparison, place: int) -> float:
    """Give the end of the scaled band that is not the gap at equal energy, kg."""
    ends = (comparison.scaled_low_kg[place], comparison.scaled_high_kg[place])
    equal = comparison.density_share_kg[place]
    return float(max(ends, key=lambda end: abs(end - equal)))


def _structure(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = _reference(results, comparison, place)
    return _gap(
        results,
        comparison,
        place,
        basis=Basis.STRUCTURE,
        label="Gap of the structure only",
        formula="(m_s - c_s) - (m_r - c_r) x^b, x = E_s / E_r",
        inputs=(
            *_masses(results, comparison, place),
            *_energies(results, comparison, place),
            _cells("c_s", comparison.subject),
            _cells("c_r", reference),
            Input("b, exponent", comparison.exponent, "", _STUDY),
        ),
    )


def _to_trend(results: Results, comparison: Comparison, place: int) -> Figure:
    trend = comparison.trend
    subject = comparison.subject
    inputs = [
        *_mass("m_s", subject, subject.mass_kg),
        _energy("E_s", subject),
    ]
    if trend is not None:
        inputs += [
            Input("n, peers", trend.n, "", f"{trend.kind}, subject left out"),
            Input("m_hat(E_s)", float(trend.predict_kg(subject.energy_kwh)), "kg"),
            Input("residual s", trend.residual_s, _residual_unit(trend)),
            Input("R2", trend.r_squared),
        ]
    return _gap(
        results,
        comparison,
        place,
        basis=Basis.TREND,
        label="Gap to the trend of the peers",
        formula="m_s - m_hat(E_s)",
        inputs=tuple(inputs),
        source="ordinary least squares and its prediction interval, as in "
        "NIST/SEMATECH e-Handbook of Statistical Methods, 4.5.1",
    )


def _residual_unit(trend: LinearTrend) -> str:
    return "of ln m" if trend.kind == TrendKind.POWER_LAW else "kg"


def _u_gap(results: Results, comparison: Comparison, place: int) -> Figure:
    value = float(comparison.gap_u_kg[place])
    return Figure(
        key="u(gap)",
        label="Standard uncertainty of the gap",
        value=value,
        unit="kg",
        formula="u^2 = sum of (sensitivity x standard uncertainty)^2",
        inputs=(
            *_masses(results, comparison, place),
            *_energies(results, comparison, place),
        ),
        source=_GUM + "; a stated tolerance counts as rectangular (4.3.7)",
        missing="How one of the masses is known is not recorded."
        if math.isnan(value)
        else "",
    )


def _value(which: str) -> Callable[[Results, Comparison, int], Figure]:
    def build(results: Results, comparison: Comparison, place: int) -> Figure:
        study = results.study
        worth = getattr(study, f"worth_{which}_per_kg")
        valuation = results.valuation
        values = getattr(valuation, which) if valuation else None
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
                Input("share captured", study.share_captured, "", _STUDY),
            ),
            source="the person's own worth per kilogram",
        )

    return build


def _density(_results: Results, comparison: Comparison, place: int) -> Figure:
    return _density_figure(
        "density", comparison.subject, float(comparison.subject_mass_kg[place]), "s"
    )


def _reference_density(results: Results, comparison: Comparison, place: int) -> Figure:
    reference = _reference(results, comparison, place)
    mass_kg = float(comparison.reference_mass_kg[place])
    return _density_figure("reference density", reference, mass_kg, "r")


def _density_figure(key: str, pack: Pack, mass_kg: float, suffix: str) -> Figure:
    return Figure(
        key=key,
        label=f"Gravimetric energy density of {pack.name}",
        value=float(gravimetric_density_wh_per_kg(pack.energy_kwh, mass_kg)),
        unit="Wh/kg",
        formula=f"1000 E_{suffix} / m_{suffix}",
        inputs=(
            _energy(f"E_{suffix}", pack),
            *_mass(f"m_{suffix}", pack, mass_kg),
        ),
        source=_PRACTICE,
    )


_BUILDERS: dict[str, Callable[[Results, Comparison, int], Figure]] = {
    "gap as weighed": _as_weighed,
    "energy share": _energy_share,
    "density share": _density_share,
    "gap scaled": _scaled,
    "gap to trend": _to_trend,
    "gap structure": _structure,
    "u(gap)": _u_gap,
    "value low": _value("low"),
    "value likely": _value("likely"),
    "value high": _value("high"),
    "density": _density,
    "reference density": _reference_density,
}
