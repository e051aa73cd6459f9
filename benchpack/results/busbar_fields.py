"""What is entered of a busbar in the calculator: names, units, limits."""

from __future__ import annotations

from benchpack.model.fields import Field, Kind


def _number(
    name: str, title: str, quantity: str, *, unit: str, ceiling: float, help_text: str
) -> Field:
    return Field(
        name,
        title,
        Kind.NUMBER,
        quantity,
        unit,
        positive=True,
        ceiling=ceiling,
        help=help_text,
    )


TRIAL_FIELDS: tuple[Field, ...] = (
    _number(
        "length_mm",
        "length",
        "length",
        unit="mm",
        ceiling=1_000_000,
        help_text="Length between the ends that are held.",
    ),
    _number(
        "width_mm",
        "width",
        "length",
        unit="mm",
        ceiling=10_000,
        help_text="The wider side of the section.",
    ),
    _number(
        "thickness_mm",
        "thickness",
        "thickness",
        unit="mm",
        ceiling=10_000,
        help_text="The thinner side of the section, all foils together.",
    ),
    Field(
        "foils",
        "foils",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=10_000,
        help="Of how many loose foils it is laminated; 1 for a solid bar.",
    ),
    _number(
        "rise_k",
        "temperature rise",
        "rise of temperature",
        unit="K",
        ceiling=1000,
        help_text="How much warmer the bar gets than what holds its ends.",
    ),
    _number(
        "leg_mm",
        "leg",
        "length",
        unit="mm",
        ceiling=1_000_000,
        help_text="Free length of each leg; empty for the least the stress allows.",
    ),
    _number(
        "allowed_stress_mpa",
        "allowed stress",
        "stress",
        unit="MPa",
        ceiling=10_000,
        help_text="Greatest bending stress in a leg.",
    ),
    _number(
        "current_a",
        "current",
        "current",
        unit="A",
        ceiling=1_000_000,
        help_text="Steady current to compare with; may stay empty.",
    ),
    _number(
        "fault_current_a",
        "short-circuit current",
        "current",
        unit="A",
        ceiling=10_000_000,
        help_text="Peak current, the same in both bars.",
    ),
    _number(
        "distance_mm",
        "distance of the bars",
        "length",
        unit="mm",
        ceiling=100_000,
        help_text="From axis to axis of two parallel bars.",
    ),
    _number(
        "duration_s",
        "duration",
        "time",
        unit="s",
        ceiling=10,
        help_text="How long the short circuit lasts, ten seconds at most: no heat is "
        "taken to be lost.",
    ),
)
"""What is entered of a busbar; a figure that is not known is NaN."""

TRIAL_FIELD = {one.name: one for one in TRIAL_FIELDS}
