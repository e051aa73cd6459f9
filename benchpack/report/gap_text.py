"""The table of gaps as text for a terminal."""

from __future__ import annotations

import math

from benchpack.report.display import Display
from benchpack.report.headline import headline, plain_text
from benchpack.report.plain_table import aligned, plain_spaces
from benchpack.results.results import Results
from benchpack.units.formatting import format_number


def gap_text(results: Results) -> str:
    """Give the gaps as an aligned table under the sentence of the headline.

    Parameters
    ----------
    results : Results
        Results with a comparison.
    """
    comparison, valuation = results.comparison, results.valuation
    if comparison is None or valuation is None:
        return ""
    study, display = results.study, Display(results.study)
    mass, money = display.mass_unit, study.currency
    heads = (
        "reference",
        "kWh",
        mass,
        "Wh/kg",
        f"as weighed {mass}",
        f"energy share {mass}",
        f"density share {mass}",
        f"gap {mass}",
        f"u {mass}",
        f"value {money}",
        f"at low {money}",
        f"at high {money}",
    )
    rows = [
        (
            str(comparison.names[place]),
            _number(comparison.reference_energy_kwh[place], 1, display),
            _number(display.mass(comparison.reference_mass_kg[place]), 1, display),
            _number(
                1000
                * comparison.reference_energy_kwh[place]
                / comparison.reference_mass_kg[place],
                0,
                display,
            ),
            *(
                _signed(display.mass(column[place]), display)
                for column in (
                    comparison.as_weighed_kg,
                    comparison.energy_share_kg,
                    comparison.density_share_kg,
                    comparison.gap_kg,
                )
            ),
            _number(display.mass(comparison.gap_u_kg[place]), 1, display),
            *(
                display.signed_money_number(float(column[place]))
                for column in (valuation.likely, valuation.low, valuation.high)
            ),
        )
        for place in range(len(comparison))
    ]
    sentence = plain_text(headline(results))
    lead = f"Gaps of {study.subject}, counted {study.basis}."
    return plain_spaces("\n".join((sentence, lead, "", *aligned([heads, *rows]))))


def _number(value: float, decimals: int, display: Display) -> str:
    return format_number(float(value), decimals, style=display.style)


def _signed(shown: float, display: Display) -> str:
    return "–" if math.isnan(shown) else display.signed_mass_number(float(shown))
