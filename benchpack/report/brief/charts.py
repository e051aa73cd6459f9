"""Waterfalls of a brief, with what they show in words."""

from __future__ import annotations

from benchpack.report.brief.blocks import Block, ChartBlock, Paragraph
from benchpack.report.chart_specs import WaterfallSpec

_ROW, _AROUND = 0.0375, 0.27
"""Height of a row and of the words around the rows, by the width of half a line."""


def waterfall_block(spec: WaterfallSpec, *, width: float) -> Block:
    """Give a waterfall as a block, or why there is none.

    Parameters
    ----------
    spec : WaterfallSpec
        The steps.
    width : float
        Share of the line that it takes.
    """
    if spec.is_empty:
        return Paragraph(spec.empty_sentence, "note")
    height = (_AROUND + _ROW * len(spec.names)) * 0.5 / width
    return ChartBlock(spec, height, waterfall_text(spec), width)


def waterfall_text(spec: WaterfallSpec) -> str:
    """Say step by step what a waterfall shows.

    Parameters
    ----------
    spec : WaterfallSpec
        The steps.
    """
    steps = "; ".join(
        f"{name} {spec.format_full(value)}"
        for name, value in zip(spec.names, spec.values.tolist(), strict=True)
    )
    target = f" {spec.target_text.capitalize()}." if spec.target_text else ""
    return f"{spec.title}. {spec.axis_label}: {steps}.{target} {spec.note}".strip()
