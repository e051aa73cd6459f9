"""Rows of the sheet of value: a figure with its range, unit and how it is formed."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.record import AuditCell, Format, Look, fixed, formula, text

LOW, LIKELY, HIGH = 1, 2, 3
"""Columns of the figures."""
HEADS = (
    "figure",
    "low",
    "likely",
    "high",
    "unit",
    "likely, as handed over",
    "how",
)
WIDTHS = (46, 13, 13, 13, 16, 15, 74)


class ValueRows:
    """Writes rows of the sheet of value.

    Parameters
    ----------
    draft : Draft
        The sheet.
    currency : str
        Code of the currency.
    """

    def __init__(self, draft: Draft, currency: str) -> None:
        self.draft, self.currency = draft, currency

    def one(
        self,
        title: str,
        body: str,
        value: float,
        *,
        unit: str,
        how: str,
        name: str = "",
        number_format: Format = Format.CENT,
        look: Look = Look.FORMULA,
    ) -> str:
        """Write a figure without a range, and give its address on the sheet."""
        cell = formula(body, value, number_format, name=name, look=look)
        return self._write(title, (None, cell, None), unit, how)[1]

    def three(
        self,
        title: str,
        bodies: Sequence[str],
        values: Sequence[float],
        *,
        unit: str,
        how: str,
        labels: Sequence[str] = ("", "", ""),
        number_format: Format = Format.CENT,
        look: Look = Look.FORMULA,
    ) -> tuple[str, str, str]:
        """Write a figure with its range, and give the addresses of its ends."""
        low, likely, high = (
            formula(body, value, number_format, name=name, look=look)
            for body, value, name in zip(bodies, values, labels, strict=True)
        )
        return self._write(title, (low, likely, high), unit, how)

    def values(
        self,
        title: str,
        values: tuple[float | None, float, float | None],
        *,
        unit: str,
        how: str,
        number_format: Format = Format.CENT,
    ) -> None:
        """Write figures of the program that no formula moves."""
        low, likely, high = (
            None if value is None else fixed(value, number_format) for value in values
        )
        if likely is not None:
            self._write(title, (low, likely, high), unit, how)

    def words(self, title: str, said: str, how: str = "") -> None:
        """Write words in the place of a figure."""
        self.draft.line(text(title), None, text(said), *[None] * 3, text(how))

    def said(self, title: str, body: str, said: str) -> None:
        """Write a formula that says a sentence, in the column of sentences."""
        self.draft.line(text(title), *[None] * 5, formula(body, said, look=Look.TEXT))

    def _write(
        self,
        title: str,
        cells: tuple[AuditCell | None, AuditCell, AuditCell | None],
        unit: str,
        how: str,
    ) -> tuple[str, str, str]:
        likely = cells[1]
        handed_over = AuditCell(
            likely.content, Look.FIXED, number_format=likely.number_format
        )
        unit = unit.replace("CUR", self.currency)
        row = self.draft.line(text(title), *cells, text(unit), handed_over, text(how))
        low, middle, high = (address(row, column) for column in (LOW, LIKELY, HIGH))
        return low, middle, high
