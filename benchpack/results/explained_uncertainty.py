"""Where the uncertainty of a gap comes from: every input and what it adds."""

from __future__ import annotations

import math

from benchpack.model.words import Basis
from benchpack.results.comparison import Comparison
from benchpack.results.explained_inputs import known, reference_pack
from benchpack.results.figure import Figure, Input
from benchpack.results.results import Results

GUM = "JCGM 100:2008, 5.1.2 (first order), inputs independent"
_TOLERANCE = "stated tolerance a as a / sqrt(3) (JCGM 100:2008, 4.3.7)"
_SYMBOLS = {
    "subject_mass_u_kg": "m_s",
    "reference_mass_u_kg": "m_r",
    "subject_energy_u_kwh": "E_s",
    "reference_energy_u_kwh": "E_r",
    "subject_cells_mass_u_kg": "c_s",
    "reference_cells_mass_u_kg": "c_r",
    "prediction_u_kg": "m_hat",
}
_OF_X = ", u(x)^2 = (u(E_s)/E_r)^2 + (x u(E_r)/E_r)^2"
_FORMULAS = {
    Basis.AS_WEIGHED: "sqrt(u(m_s)^2 + u(m_r)^2)",
    Basis.EQUAL_ENERGY: "sqrt(u(m_s)^2 + x^2 u(m_r)^2 + (m_r/E_r)^2 u(E_s)^2 + "
    "(m_r x/E_r)^2 u(E_r)^2), x = E_s / E_r",
    Basis.SCALED: "sqrt(u(m_s)^2 + x^(2b) u(m_r)^2 + (x^b - x)^2 u(c_r)^2 + "
    "(c_r + b (m_r - c_r) x^(b-1))^2 u(x)^2), x = E_s / E_r" + _OF_X,
    Basis.TREND: "sqrt(u(m_s)^2 + u(m_hat)^2)",
    Basis.STRUCTURE: "sqrt(u(m_s)^2 + u(c_s)^2 + x^(2b) (u(m_r)^2 + u(c_r)^2) + "
    "(b (m_r - c_r) x^(b-1))^2 u(x)^2), x = E_s / E_r" + _OF_X,
}


def range_meaning(comparison: Comparison, place: int) -> str:
    """Say what the range of the gap on the counted basis means.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference.
    """
    if comparison.basis is not Basis.TREND:
        return (
            "plus and minus two standard uncertainties (JCGM 100:2008, 6.3); what was "
            "taken out, the exponent and energies without tolerance count as exact"
        )
    factor = comparison.uncertain.coverage_factor(place)
    return (
        f"plus and minus {factor:.2f} standard uncertainties: Student t for 95 % on "
        "the effective degrees of freedom (JCGM 100:2008, G.4.1)"
    )


def uncertainty_figure(results: Results, comparison: Comparison, place: int) -> Figure:
    """Explain the standard uncertainty of the gap on the counted basis.

    Parameters
    ----------
    results : Results
        The results it is shown with.
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference.
    """
    value = float(comparison.gap_u_kg[place])
    return Figure(
        key="u(gap)",
        label=f"Standard uncertainty of the gap {comparison.basis}",
        value=value,
        unit="kg",
        formula=_FORMULAS[comparison.basis],
        inputs=_inputs(results, comparison, place),
        source=GUM,
        missing=_why_none(results, comparison, place) if math.isnan(value) else "",
    )


def _inputs(results: Results, comparison: Comparison, place: int) -> tuple[Input, ...]:
    found: list[Input] = []
    for part in comparison.uncertain.budget(place):
        symbol = _SYMBOLS[part.name]
        unit = "kWh" if part.name.endswith("_kwh") else "kg"
        source = _source(results, comparison, place, name=part.name)
        found.append(Input(f"u({symbol})", part.uncertainty, unit, source))
        if part.uncertainty > 0:
            slope = part.gap_kg / part.uncertainty
            per = "kg/kWh" if unit == "kWh" else ""
            found.append(Input(f"sensitivity to {symbol}, size", slope, per, "formula"))
        found.append(Input(f"{symbol} adds to u", part.gap_kg, "kg", "product"))
    return tuple(found)


def _source(results: Results, comparison: Comparison, place: int, *, name: str) -> str:
    if name == "prediction_u_kg":
        return "standard error of predicting one more pack from the trend"
    own = name.startswith("subject")
    pack = comparison.subject
    if not own:
        pack = reference_pack(results, comparison, place)
    if "energy" in name:
        if pack.energy_tolerance_kwh is None:
            return f"{pack.name} has no tolerance of energy: counts as exact"
        return f"{pack.name}, {_TOLERANCE}"
    share = "same share of it uncertain as of the pack's mass, assumed; "
    lead = share if "cells" in name else ""
    if pack.mass_tolerance_kg is not None:
        return f"{lead}{pack.name}, {_TOLERANCE}"
    return (
        f"{lead}{pack.name}, {known(pack)}, default share (common practice, no source)"
    )


def _why_none(results: Results, comparison: Comparison, place: int) -> str:
    if math.isnan(comparison.gap_kg[place]):
        return "There is no gap on this basis."
    packs = [comparison.subject]
    if comparison.basis is not Basis.TREND:
        packs.append(reference_pack(results, comparison, place))
    lacking = [
        pack.name
        for pack in packs
        if not pack.mass_known_by and pack.mass_tolerance_kg is None
    ]
    return f"How the mass of {' and '.join(lacking)} is known is not recorded."
