"""Rows of the sheet of assumptions."""

from __future__ import annotations

from benchpack.model.ranges import Range
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import AuditCell, Format, Look, shown, text

LOW, VALUE, HIGH = 1, 2, 3
"""Columns of the figures."""
YES, NO = "yes", "no"
"""Whether a figure may be changed in the workbook."""


class AssumptionRows:
    """Writes rows of assumptions.

    Parameters
    ----------
    draft : Draft
        The sheet.
    currency : str
        Code of the currency of all money.
    """

    def __init__(self, draft: Draft, currency: str) -> None:
        self.draft, self.currency = draft, currency

    def single(
        self,
        title: str,
        value: float | str | None,
        *,
        unit: str = "",
        number_format: Format = Format.CENT,
        name: str = "",
        source: str = "",
        where: str = "",
        changes: bool = True,
        limits: tuple[float, float] | None = None,
        choices: tuple[str, ...] = (),
    ) -> str:
        """Write an assumption with one figure, and give where it stands."""
        look = Look.CHANGEABLE if changes else Look.FIXED
        content = value if isinstance(value, str) else shown(value)
        cell = AuditCell(content, look, "", number_format, name, choices, limits)
        return self._write(title, (None, cell, None), unit, source, where=where)[1]

    def triple(
        self,
        title: str,
        value: Range | None,
        *,
        unit: str = "",
        number_format: Format = Format.CENT,
        labels: tuple[str, str, str] = ("", "", ""),
        source: str = "",
        where: str = "",
        changes: bool = True,
        limits: tuple[float, float] | None = None,
    ) -> Triple:
        """Write an assumption with three figures, and give where they stand."""
        look = Look.CHANGEABLE if changes else Look.FIXED
        ends = (None, None, None) if value is None else value.ends
        low, likely, high = (
            AuditCell(end, look, "", number_format, name, (), limits)
            for end, name in zip(ends, labels, strict=True)
        )
        return self._write(title, (low, likely, high), unit, source, where=where)

    def _write(
        self,
        title: str,
        cells: tuple[AuditCell | None, AuditCell, AuditCell | None],
        unit: str,
        source: str,
        *,
        where: str,
    ) -> Triple:
        changes = YES if cells[1].look is Look.CHANGEABLE else NO
        unit = unit.replace("CUR", self.currency)
        words = (text(unit), text(changes), text(source), text(where))
        row = self.draft.line(text(title), *cells, *words)
        low, likely, high = (
            self.draft.outside(row, column) for column in (LOW, VALUE, HIGH)
        )
        return low, likely, high
