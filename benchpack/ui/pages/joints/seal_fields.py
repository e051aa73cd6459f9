"""The fields of a seal line as it is tried out, and what they make of it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from benchpack.errors import DataError
from benchpack.ui.dialogs.number_field import NumberField
from benchpack.ui.dialogs.study_text import said


@dataclass(frozen=True, slots=True)
class SealField:
    """One number of the form.

    Parameters
    ----------
    key : str
        Attribute of `SealTrial`.
    group : str
        The heading it stands under.
    label, unit : str
        What stands before and behind the field.
    tip : str
        A sentence of help.
    factor : float
        What the trial's figure is multiplied with to be shown.
    may_be_zero : bool
        True where zero says something.
    hint : str
        What an empty field stands for.
    """

    key: str
    group: str
    label: str
    unit: str
    tip: str
    factor: float = 1.0
    may_be_zero: bool = False
    hint: str = ""


FLANGE, GASKET, LINE = "Flange", "Gasket", "Line"
GROUPS = (FLANGE, GASKET, LINE)

FIELDS = (
    SealField(
        "modulus_mpa",
        FLANGE,
        "Design modulus",
        "GPa",
        "Of a polymer hot and in the long term: data sheet times stiffness knock-down.",
        factor=1e-3,
    ),
    SealField("thickness_mm", FLANGE, "Thickness", "mm", "Thickness of the flange."),
    SealField(
        "flange_width_mm",
        FLANGE,
        "Width",
        "mm",
        "Width of the flange; empty: as wide as the gasket.",
        hint="gasket's",
    ),
    SealField(
        "gasket_width_mm",
        GASKET,
        "Width",
        "mm",
        "Width of the gasket. It sets the load on the screws.",
    ),
    SealField(
        "pressure_low_mpa",
        GASKET,
        "Pressure midway",
        "MPa",
        "Pressure that keeps tight midway between two screws.",
    ),
    SealField(
        "pressure_high_mpa",
        GASKET,
        "Pressure at a screw",
        "MPa",
        "Pressure of the gasket at a screw.",
    ),
    SealField(
        "allowed_loss_mm",
        GASKET,
        "Allowed loss",
        "mm",
        "Compression that the gasket may lose between two screws.",
    ),
    SealField("length_mm", LINE, "Length", "mm", "Length of the closed seal line."),
    SealField(
        "count",
        LINE,
        "Screws",
        "",
        "Number of screws; empty: the least that holds.",
        hint="least",
    ),
    SealField(
        "area_m2",
        LINE,
        "Area inside",
        "m²",
        "Area of the cover inside the line, on which the pressure acts.",
    ),
    SealField(
        "overpressure_kpa",
        LINE,
        "Pressure inside",
        "kPa",
        "Lifts the cover; a leak test has 2 to 5 kPa (common practice, no source).",
        may_be_zero=True,
    ),
)
"""The numbers of the form in their order; pitch stands beside the screws."""
PITCH = SealField(
    "pitch_mm",
    LINE,
    "Pitch",
    "mm",
    "From screw to screw; a pitch that is entered sets the screws.",
    hint="greatest",
)
_WHOLE = ("count",)
_MOST = 1e7


def made_field(spec: SealField) -> NumberField:
    """Make the field of a number, empty."""
    field = NumberField(f"{spec.group}, {spec.label[:1].lower()}{spec.label[1:]}")
    field.setPlaceholderText(spec.hint)
    return field


def read_field(
    spec: SealField, field: NumberField, *, decimal_mark: str
) -> tuple[float, str]:
    """Give the number in a field in the trial's unit, and what is wrong with it.

    Parameters
    ----------
    spec : SealField
        What the field is.
    field : NumberField
        The field.
    decimal_mark : str
        Point or comma.

    Returns
    -------
    float
        NaN where the field is empty or wrong.
    str
        A complaint, empty where there is none.
    """
    try:
        number = field.number(decimal_mark=decimal_mark)
    except DataError as error:
        return math.nan, said(error.problems[0])
    if number is None:
        return math.nan, ""
    if (
        not math.isfinite(number)
        or number < 0
        or (number == 0 and not spec.may_be_zero)
    ):
        least = "zero or more" if spec.may_be_zero else "above zero"
        return math.nan, f"It has to be {least}."
    if number > _MOST:
        return math.nan, "That is more than can be meant: check the unit."
    if spec.key in _WHOLE and number != int(number):
        return math.nan, "It has to be a whole number."
    return number, ""


def cross_errors(values: Mapping[str, float]) -> dict[str, str]:
    """Give what is wrong with fields against each other, by key."""
    if values["pressure_low_mpa"] > values["pressure_high_mpa"]:
        return {"pressure_low_mpa": "It cannot be more than at a screw."}
    return {}
