"""A brief as one page of the web that needs nothing but itself."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from itertools import count
from pathlib import Path

from benchpack.files.atomic import write_text
from benchpack.report.brief.blocks import (
    Block,
    Brief,
    ChartBlock,
    Figures,
    Paragraph,
    Section,
    Table,
)
from benchpack.ui.brief.chart_pictures import chart_of
from benchpack.ui.brief.html_parts import (
    figures_lines,
    inline_svg,
    paragraph_lines,
    table_lines,
)
from benchpack.ui.brief.html_style import page_style
from benchpack.ui.brief.paper import paper_named
from benchpack.ui.brief.print_type import ink
from benchpack.ui.export.picture import svg_text, without_controls

_WIDTH = 900
"""Pixels of a chart that takes the whole line."""


def write_brief_html(brief: Brief, path: Path, *, paper: str = "A4") -> None:
    """Write a brief as a page of the web.

    Parameters
    ----------
    brief : Brief
        What is written.
    path : Path
        The file; what stands there is replaced once all is written.
    paper : str
        ``A4`` or ``Letter``, for whoever prints it.

    Raises
    ------
    DataError
        When the file cannot be written.
    RequestError
        There is no such paper.
    """
    write_text(path, brief_html(brief, paper=paper))


def brief_html(brief: Brief, *, paper: str = "A4") -> str:
    """Give a brief as a page of the web; charts are drawn on the window's thread.

    Parameters
    ----------
    brief : Brief
        What is written.
    paper : str
        ``A4`` or ``Letter``.

    Raises
    ------
    RequestError
        There is no such paper.
    """
    paper_named(paper)
    return without_controls("\n".join(_Writer(brief, paper).lines()) + "\n")


class _Writer:
    """Writes one page."""

    def __init__(self, brief: Brief, paper: str) -> None:
        self.brief = brief
        self.paper = paper
        self.numbers = count(1)

    def lines(self) -> Iterator[str]:
        brief = self.brief
        yield "<!DOCTYPE html>"
        yield f'<html lang="{escape(brief.language)}">'
        yield "<head>"
        yield '<meta charset="utf-8">'
        yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
        yield f'<meta name="generator" content="Benchpack {escape(brief.version)}">'
        yield f"<title>{escape(brief.title)}</title>"
        yield f"<style>{page_style(ink(), paper=self.paper)}</style>"
        yield "</head>"
        yield "<body>"
        yield f"<header><h1>{escape(brief.title)}</h1></header>"
        yield "<main>"
        yield from self._sections()
        yield "</main>"
        yield f"<footer>{escape(brief.header)}. {escape(brief.footer)}</footer>"
        yield "</body>"
        yield "</html>"

    def _sections(self) -> Iterator[str]:
        """Give the sections; those that are one chart each stand beside each other."""
        opened = ""
        for section in self.brief.sections:
            wanted = "charts" if _is_chart(section) else ""
            if wanted != opened:
                yield from _closing(opened)
                yield from _opening(wanted)
                opened = wanted
            name = escape(section.title)
            yield f'<section id="{escape(section.key)}" aria-label="{name}">'
            if section.is_headed:
                yield f"<h2>{name}</h2>"
            yield from self._blocks(section)
            yield "</section>"
        yield from _closing(opened)

    def _blocks(self, section: Section) -> Iterator[str]:
        opened = ""
        for block in section.blocks:
            wanted = _frame(block)
            if wanted != opened:
                yield from _closing(opened)
                yield from _opening(wanted)
                opened = wanted
            yield from self._block(block)
        yield from _closing(opened)

    def _block(self, block: Block) -> Iterator[str]:
        if isinstance(block, Paragraph):
            yield from paragraph_lines(block)
        elif isinstance(block, Figures):
            yield from figures_lines(block)
        elif isinstance(block, Table):
            yield from table_lines(block)
        else:
            yield from self._chart(block)

    def _chart(self, block: ChartBlock) -> Iterator[str]:
        chart = chart_of(block, width=round(_WIDTH * block.width))
        drawn = svg_text(chart, title=block.spec.title)
        chart.deleteLater()
        yield "<figure>"
        yield inline_svg(drawn, next(self.numbers), alternative=block.alternative)
        yield "</figure>"


def _is_chart(section: Section) -> bool:
    is_alone = not section.is_headed and len(section.blocks) == 1
    return is_alone and isinstance(section.blocks[0], ChartBlock)


def _frame(block: Block) -> str:
    """Give what stands around blocks of a kind that follow each other."""
    if isinstance(block, ChartBlock):
        return "charts"
    if isinstance(block, Paragraph) and block.role == "caution":
        return "cautions"
    return ""


def _opening(frame: str) -> Iterator[str]:
    if frame == "charts":
        yield '<div class="charts">'
    elif frame == "cautions":
        yield '<ul class="cautions">'


def _closing(frame: str) -> Iterator[str]:
    if frame:
        yield "</div>" if frame == "charts" else "</ul>"
