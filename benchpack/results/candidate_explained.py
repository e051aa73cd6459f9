"""Where the figures of a candidate material come from."""

from __future__ import annotations

import math

from benchpack.results.candidate_record import PRICE_SHARE, Candidate, Candidates
from benchpack.results.change_checks_words import material_source
from benchpack.results.figure import Figure, Input

CANDIDATE_MASS, CANDIDATE_COST = "candidate mass", "candidate cost"
CANDIDATE_KEYS = (CANDIDATE_MASS, CANDIDATE_COST)
"""Keys that `explain_candidate` answers."""
_ASHBY = (
    "Ashby, Materials Selection in Mechanical Design, tables of material indices (from "
    "memory)"
)


def explain_candidate(
    compared: Candidates, row: Candidate, *, key: str = CANDIDATE_MASS
) -> Figure:
    """Say where the mass or the cost of a candidate comes from.

    Parameters
    ----------
    compared : Candidates
        The comparison.
    row : Candidate
        A candidate, or the part as it is.
    key : str
        One of `CANDIDATE_KEYS`.
    """
    missing = "" if row.problem is None else row.problem.what
    if key == CANDIDATE_COST:
        return _cost(compared, row, missing)
    equal = next(
        (check for check in row.checks if check.kind == "equal function"), None
    )
    inputs = () if equal is None else equal.figures
    if row.is_today or equal is None:
        known = str(compared.part.known_by) or "parts"
        inputs = (Input(f"mass of {compared.part.name}", row.mass_kg, "kg", known),)
    return Figure(
        CANDIDATE_MASS,
        f"{compared.part.name} in {row.name}",
        row.mass_kg,
        "kg",
        "m_1 rho_2 / rho_1 r (1 + ribs), r by the function that makes it heaviest",
        inputs,
        _ASHBY,
        low=row.mass_low_kg,
        high=row.mass_high_kg,
        range_meaning="usual range of a computed mass",
        missing=missing,
    )


def _cost(compared: Candidates, row: Candidate, missing: str) -> Figure:
    price = None if row.material is None else row.material.price_per_kg
    if price is None and not missing:
        missing = f"The price of {row.name} is not recorded."
    source = "" if row.material is None else material_source(row.material)
    return Figure(
        CANDIDATE_COST,
        f"Material of {compared.part.name} in {row.name}",
        row.cost,
        compared.currency,
        "m p, scrap not in it",
        (
            Input("m, mass at equal function", row.mass_kg, "kg", "by design values"),
            Input(
                "p, price",
                math.nan if price is None else price,
                f"{compared.currency}/kg",
                source,
            ),
            Input("range of the price", PRICE_SHARE, "", "plus and minus, from memory"),
        ),
        "common practice, no source",
        low=row.cost_low,
        high=row.cost_high,
        range_meaning="range of mass and price together",
        missing=missing,
    )
