"""Tables on paper: hairlines between rows, heads that repeat, figures aligned."""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontMetricsF,
    QPaintDevice,
    QTextCursor,
    QTextFrameFormat,
    QTextLength,
    QTextTable,
    QTextTableCellFormat,
    QTextTableFormat,
)

from benchpack.report.brief.blocks import Column, Figures, Table
from benchpack.ui.brief.column_widths import column_widths
from benchpack.ui.brief.paper import pixels, units
from benchpack.ui.brief.placed import PlacedTable
from benchpack.ui.brief.print_type import (
    PrintRole,
    ink,
    print_block,
    print_font,
    print_format,
)

_SOLID = QTextFrameFormat.BorderStyle.BorderStyle_Solid
_HAIR, _RULE = 0.4, 0.75
_UP_DOWN, _BESIDE = 0.7, 3.0
_ABOVE, _ABOVE_FIGURES = 1.5, 6.0
"""Points."""
_LONGEST_WORD = 24
# Chinese, Japanese and Korean have no blanks between words: a line ends anywhere.
_EACH = "\u2e80-\ua4cf\uac00-\ud7af\uf900-\ufaff\uff00-\uffef\U00020000-\U0003ffff"
_WORD = re.compile(f"[{_EACH}]|[^ {_EACH}]+")
_FULL = QTextLength(QTextLength.Type.PercentageLength, 100)


def insert_table(
    cursor: QTextCursor, block: Table, device: QPaintDevice, *, room: float
) -> PlacedTable:
    """Put a table into a text.

    Parameters
    ----------
    cursor : QTextCursor
        Where; it stands behind the table afterwards.
    block : Table
        The table.
    device : QPaintDevice
        Whose resolution the fonts are measured for.
    room : float
        Width of the table in units of the layout.
    """
    rows, columns = len(block.rows) + 1, len(block.columns)
    widths = _widths(block, device, room=room)
    table = cursor.insertTable(rows, columns, _table_format(widths, header_rows=1))
    for place, column in enumerate(block.columns):
        _fill(table, 0, place, _head(column), "head", column=column)
    for row, cells in enumerate(block.rows):
        for place, (text, column) in enumerate(zip(cells, block.columns, strict=True)):
            role = _role(block, row, place)
            _fill(table, row + 1, place, text, role, column=column)
            _line(table, row + 1, place, is_sum=row in block.sums)
    cursor.movePosition(QTextCursor.MoveOperation.End)
    return PlacedTable(table)


def insert_figures(cursor: QTextCursor, block: Figures) -> QTextTable:
    """Put figures side by side into a text.

    Parameters
    ----------
    cursor : QTextCursor
        Where; it stands behind the figures afterwards.
    block : Figures
        The figures.
    """
    count = len(block.figures)
    shape = _table_format([1.0] * count, header_rows=0)
    shape.setTopMargin(pixels(_ABOVE_FIGURES))
    table = cursor.insertTable(1, count, shape)
    for place, figure in enumerate(block.figures):
        cell = table.cellAt(0, place)
        inner = cell.firstCursorPosition()
        inner.setBlockFormat(print_block())
        inner.insertText(figure.label, print_format("head"))
        value, bracket, spread = figure.value.partition(" (")
        inner.insertBlock(print_block())
        inner.insertText(value, print_format("figure"))
        if bracket:
            inner.insertBlock(print_block())
            inner.insertText(f"({spread}", print_format("cell"))
        if figure.note:
            inner.insertBlock(print_block())
            inner.insertText(figure.note, print_format("note"))
        _dress(table, 0, place, top=(_RULE, ink().text))
    cursor.movePosition(QTextCursor.MoveOperation.End)
    return table


def _table_format(widths: Sequence[float], *, header_rows: int) -> QTextTableFormat:
    shape = QTextTableFormat()
    shape.setBorder(0)
    shape.setBorderCollapse(True)
    shape.setCellPadding(0)
    shape.setCellSpacing(0)
    shape.setTopMargin(pixels(_ABOVE))
    shape.setHeaderRowCount(header_rows)
    shape.setWidth(_FULL)
    whole = sum(widths)
    shape.setColumnWidthConstraints(
        [
            QTextLength(QTextLength.Type.PercentageLength, 100 * width / whole)
            for width in widths
        ]
    )
    return shape


def _head(column: Column) -> str:
    return f"{column.head} [{column.unit}]" if column.unit else column.head


def _role(block: Table, row: int, place: int) -> PrintRole:
    """Set name and figures of sums and groups strong, what is said beside them not."""
    is_marked = row in block.sums or row in block.groups
    is_said = place > 0 and block.columns[place].align == "left"
    return "strong" if is_marked and not is_said else "cell"


def _fill(
    table: QTextTable,
    row: int,
    place: int,
    text: str,
    role: PrintRole,
    *,
    column: Column,
) -> None:
    cell = table.cellAt(row, place)
    cursor = cell.firstCursorPosition()
    shape = print_block()
    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignAbsolute
    if column.align == "right":
        shape.setAlignment(right)
    letters = print_format(role, colour=_verdict(text))
    cursor.setBlockFormat(shape)
    cursor.setBlockCharFormat(letters)
    cursor.insertText(text, letters)
    if row == 0:
        _dress(table, row, place, bottom=(_RULE, ink().second))


def _verdict(text: str) -> str:
    """Give the ink of a verdict, which is a word as well."""
    tokens = ink()
    return {"fail": tokens.fail, "look": tokens.look}.get(text, "")


def _line(table: QTextTable, row: int, place: int, *, is_sum: bool) -> None:
    if is_sum:
        _dress(table, row, place, top=(_RULE, ink().text))
    elif row > 1:
        _dress(table, row, place, top=(_HAIR, ink().hairline))
    else:
        _dress(table, row, place)


def _dress(
    table: QTextTable,
    row: int,
    place: int,
    *,
    top: tuple[float, str] | None = None,
    bottom: tuple[float, str] | None = None,
) -> None:
    """Give a cell its padding and its lines."""
    shape = QTextTableCellFormat()
    shape.setFont(print_font("cell"))  # which sets the height of an empty cell
    shape.setTopPadding(pixels(_UP_DOWN))
    shape.setBottomPadding(pixels(_UP_DOWN))
    shape.setLeftPadding(0 if place == 0 else pixels(_BESIDE))
    is_last = place == table.columns() - 1
    shape.setRightPadding(0 if is_last else pixels(_BESIDE))
    if top:
        shape.setTopBorder(pixels(top[0]))
        shape.setTopBorderStyle(_SOLID)
        shape.setTopBorderBrush(QBrush(QColor(top[1])))
    if bottom:
        shape.setBottomBorder(pixels(bottom[0]))
        shape.setBottomBorderStyle(_SOLID)
        shape.setBottomBorderBrush(QBrush(QColor(bottom[1])))
    table.cellAt(row, place).setFormat(shape)


def _widths(block: Table, device: QPaintDevice, *, room: float) -> list[float]:
    """Measure the texts and share the room among the columns."""
    metrics: dict[PrintRole, QFontMetricsF] = {
        role: QFontMetricsF(print_font(role), device)
        for role in ("cell", "strong", "head")
    }
    texts = np.zeros((len(block.rows) + 1, len(block.columns)))
    least = np.zeros(len(block.columns))
    floor = np.zeros(len(block.columns))
    for place, column in enumerate(block.columns):
        cells = [(_head(column), metrics["head"])]
        cells += [
            (row[place], metrics[_role(block, number, place)])
            for number, row in enumerate(block.rows)
        ]
        texts[:, place] = [m.horizontalAdvance(text) for text, m in cells]
        if column.align == "right":
            # A figure stays on one line with its range; the unit may stand below.
            parts = [column.head, f"[{column.unit}]"]
            heads = [metrics["head"].horizontalAdvance(part) for part in parts]
            least[place] = floor[place] = max([*heads, *texts[1:, place]])
            texts[0, place] = least[place]
        else:
            least[place] = _longest_word(cells)
            floor[place] = min(_longest_word(cells[:1]), least[place])
    beside = units(2 * _BESIDE + 1)
    # Where not all fit, names are broken anywhere before a figure or a head is.
    spare = room - floor.sum() - beside * len(least)
    wanted = (least - floor).sum()
    if 0 < spare < wanted:
        least = floor + 0.9 * (least - floor) * spare / wanted
    widths: list[float] = column_widths(texts, least, room=room, beside=beside).tolist()
    return widths


def _longest_word(cells: Sequence[tuple[str, QFontMetricsF]]) -> float:
    """Measure the longest word; what is longer than any word is broken anywhere."""
    widths = (
        metrics.horizontalAdvance(word[:_LONGEST_WORD])
        for text, metrics in cells
        for word in _WORD.findall(text)
    )
    return max(widths, default=0.0)
