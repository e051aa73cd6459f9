"""Blocks of a brief as parts of a page of the web."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

from benchpack.report.brief.blocks import Column, Figures, Paragraph, Table

_ID = re.compile(r'\bid="([^"]+)"')
_USE = re.compile(r"url\(#([^)]+)\)")
_SVG = re.compile(r"<svg\b([^>]*)>", re.DOTALL)
_SIZE = re.compile(r'\s(?:width|height)="[^"]*"')


def paragraph_lines(block: Paragraph) -> Iterator[str]:
    """Give a paragraph; a caution is an item of a list.

    Parameters
    ----------
    block : Paragraph
        The text.
    """
    text = escape(block.text)
    if block.role == "caution":
        yield f"<li>{text}</li>"
    elif block.role == "body":
        yield f"<p>{text}</p>"
    else:
        yield f'<p class="{block.role}">{text}</p>'


def figures_lines(block: Figures) -> Iterator[str]:
    """Give figures side by side, each named.

    Parameters
    ----------
    block : Figures
        The figures.
    """
    yield '<dl class="figures">'
    for figure in block.figures:
        value, bracket, spread = figure.value.partition(" (")
        small = f" <small>({escape(spread)}</small>" if bracket else ""
        yield f"<div><dt>{escape(figure.label)}</dt>"
        yield f'<dd class="value">{escape(value)}{small}</dd>'
        if figure.note:
            yield f'<dd class="note">{escape(figure.note)}</dd>'
        yield "</div>"
    yield "</dl>"


def table_lines(block: Table) -> Iterator[str]:
    """Give a table whose heads tell what they head.

    Parameters
    ----------
    block : Table
        The table.
    """
    yield '<div class="scrolls"><table>'
    if block.title:
        yield f"<caption>{escape(block.title)}</caption>"
    heads = "".join(
        f'<th scope="col"{_side(column)}>{escape(_head(column))}</th>'
        for column in block.columns
    )
    yield f"<thead><tr>{heads}</tr></thead>"
    yield "<tbody>"
    for place, row in enumerate(block.rows):
        kind = ' class="sum"' if place in block.sums else ""
        if place in block.groups:
            kind = ' class="group"'
        first, *others = row
        cells = "".join(
            f"<td{_side(column, text)}>{escape(text)}</td>"
            for text, column in zip(others, block.columns[1:], strict=True)
        )
        verdict = f' class="{first}"' if first in ("fail", "look") else ""
        yield f'<tr{kind}><th scope="row"{verdict}>{escape(first)}</th>{cells}</tr>'
    yield "</tbody></table></div>"


def _head(column: Column) -> str:
    return f"{column.head} [{column.unit}]" if column.unit else column.head


def _side(column: Column, text: str = "") -> str:
    if column.align == "right":
        return ' class="right"'
    return f' class="{text}"' if text in ("fail", "look") else ""


def inline_svg(drawn: str, number: int, *, alternative: str) -> str:
    """Give a drawing as a part of a page: with words, and names of its own.

    Parameters
    ----------
    drawn : str
        A whole SVG file.
    number : int
        Keeps its names apart from those of other drawings on the page.
    alternative : str
        What it shows, in words.

    Examples
    --------
    >>> inline_svg(
    ...     '<?xml?><svg width="9mm" id="a"><g fill="url(#b)"/></svg>',
    ...     2,
    ...     alternative="x",
    ... )
    '<svg id="c2-a" role="img" aria-label="x"><g fill="url(#c2-b)"/></svg>'
    """
    start = drawn.index("<svg")
    text = _ID.sub(rf'id="c{number}-\1"', drawn[start:].strip())
    text = _USE.sub(rf"url(#c{number}-\1)", text)
    words = escape(alternative)

    def named(head: re.Match[str]) -> str:
        kept = _SIZE.sub("", head[1])
        return f'<svg{kept} role="img" aria-label="{words}">'

    return _SVG.sub(named, text, count=1)
