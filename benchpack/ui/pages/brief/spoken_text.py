"""A brief as plain text, for the screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.report.brief.blocks import (
    Block,
    Brief,
    ChartBlock,
    Figures,
    Paragraph,
    Table,
)


def spoken_text(brief: Brief) -> str:
    """Give the words of a brief in their order, a chart by what it says in words.

    Parameters
    ----------
    brief : Brief
        The brief.
    """
    return "\n".join(line for line in _lines(brief) if line)


def _lines(brief: Brief) -> Iterator[str]:
    yield brief.title
    for section in brief.sections:
        if section.is_headed:
            yield section.title
        for block in section.blocks:
            yield from _block_lines(block)
    yield brief.footer


def _block_lines(block: Block) -> Iterator[str]:
    if isinstance(block, Paragraph):
        yield block.text
    elif isinstance(block, Figures):
        for figure in block.figures:
            yield ", ".join(filter(None, (figure.label, figure.value, figure.note)))
    elif isinstance(block, Table):
        yield block.title
        heads = [
            f"{one.head} [{one.unit}]" if one.unit else one.head
            for one in block.columns
        ]
        yield ", ".join(heads)
        for row in block.rows:
            yield ", ".join(cell for cell in row if cell)
    elif isinstance(block, ChartBlock):
        yield block.alternative
