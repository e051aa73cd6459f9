"""What is typed at the scale: one mass, or many pieces weighed together."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.model.part import PART_FIELDS
from benchpack.model.words import KnownBy
from benchpack.units.formatting import NumberStyle

_FIELD = {field.name: field for field in PART_FIELDS}


@dataclass(frozen=True, slots=True)
class Weighing:
    """A weighed mass.

    Parameters
    ----------
    mass_each_kg : float
        Mass of one piece, kg.
    pieces : int
        How many were on the scale together.
    """

    mass_each_kg: float
    pieces: int = 1

    @property
    def known_by(self) -> KnownBy:
        """Weighed one by one, or as a batch."""
        return KnownBy.WEIGHED if self.pieces == 1 else KnownBy.WEIGHED_BATCH


def parse_weighing(
    text: str, style: NumberStyle, *, unit: str = "", example: str = "3.06 kg / 20"
) -> Weighing:
    """Read ``2.4 kg``, ``153 g`` or ``3.06 kg / 20`` for twenty weighed together.

    Parameters
    ----------
    text : str
        What was typed; without a unit it is in `unit`.
    style : NumberStyle
        Decimal mark and mass unit.
    unit : str
        Unit of a figure without one, by default the study's.
    example : str
        A batch that shows how it is typed.

    Raises
    ------
    DataError
        When mass or number of pieces cannot be read.

    Examples
    --------
    >>> parse_weighing("3 kg / 20", NumberStyle())
    Weighing(mass_each_kg=0.15, pieces=20)
    """
    mass_text, slash, pieces_text = text.partition("/")
    if not mass_text.strip():
        raise DataError(
            Problem(
                "The mass is empty.",
                f"Give it as 2.4 kg, 153 g, or {example} for twenty pieces.",
                column="mass each",
            )
        )
    mass_kg: float = parse_value(
        _FIELD["mass_each_kg"],
        mass_text,
        unit=unit or style.mass_unit,
        decimal=style.decimal_mark,
    )
    if not slash:
        return Weighing(mass_kg)
    pieces: int | None = None
    what = "The number of pieces behind the / is empty."
    try:
        pieces = parse_value(_FIELD["count"], pieces_text)
    except DataError:
        what = f"“{pieces_text.strip()}” is no number of pieces behind the /."
    if pieces is None:
        raise DataError(Problem(what, f"Give it as {example}.", column="mass each"))
    return Weighing(mass_kg / pieces, pieces)


def parse_count(text: str, weighing: Weighing) -> int:
    """Read how many of a part the pack holds; empty means as many as were weighed.

    Raises
    ------
    DataError
        When it is no whole number above zero.
    """
    count: int | None = parse_value(_FIELD["count"], text)
    return weighing.pieces if count is None else count
