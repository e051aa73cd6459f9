"""What a brief is made of: sections of paragraphs, figures, tables and charts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Literal

from benchpack.report.chart_specs import ChartSpec

ParagraphRole = Literal["lead", "body", "note", "caution"]
Alignment = Literal["left", "right"]


class Audience(StrEnum):
    """Whom a brief is for."""

    INTERNAL = "internal"
    CUSTOMER = "customer"


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text.

    Parameters
    ----------
    text : str
        Whole sentences.
    role : str
        ``lead`` for what the brief says, ``note`` for what explains, ``caution`` for
        what has to be known before a figure is used; such ones in a row are a list.
    """

    text: str
    role: ParagraphRole = "body"


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure that stands out.

    Parameters
    ----------
    label : str
        What it is.
    value : str
        The figure with its unit and, in brackets, its range.
    note : str
        What has to be known with it, empty for nothing.
    """

    label: str
    value: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Figures:
    """Figures side by side."""

    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table.

    Parameters
    ----------
    head : str
        What stands in it.
    unit : str
        Unit of all its figures, empty where there is none.
    align : str
        ``right`` for figures.
    """

    head: str
    unit: str = ""
    align: Alignment = "left"


@dataclass(frozen=True, slots=True)
class Table:
    """A table of texts.

    Parameters
    ----------
    title : str
        What the table shows; shown above it.
    columns : tuple of Column
        Its columns.
    rows : tuple of tuple of str
        One text for each column, in every row.
    sums : frozenset of int
        Rows that are sums.
    groups : frozenset of int
        Rows that head the ones below them.

    Raises
    ------
    ValueError
        When a row has another number of cells than there are columns.
    """

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    sums: frozenset[int] = frozenset()
    groups: frozenset[int] = frozenset()

    def __post_init__(self) -> None:
        for place, row in enumerate(self.rows):
            if len(row) != len(self.columns):
                raise ValueError(f"row {place} of {self.title!r} has {len(row)} cells")


@dataclass(frozen=True, slots=True, eq=False)
class ChartBlock:
    """A chart.

    Parameters
    ----------
    spec : ChartSpec
        What it shows.
    relative_height : float
        Height by width; where rows need more, it is drawn higher.
    alternative : str
        What it shows in words, with its figures.
    width : float
        Share of the line, 0 to 1; charts in a row that fit one line stand beside each
        other.
    """

    spec: ChartSpec
    relative_height: float
    alternative: str
    width: float = 1.0


Block = Paragraph | Figures | Table | ChartBlock


@dataclass(frozen=True, slots=True, eq=False)
class Section:
    """A section of a brief.

    Parameters
    ----------
    key : str
        Its name in a list of what is left out.
    title : str
        Its heading.
    blocks : tuple of Block
        What stands in it.
    can_be_left_out : bool
        False where a reader must not miss it.
    is_headed : bool
        False where the title is not shown, its charts say what they find.
    """

    key: str
    title: str
    blocks: tuple[Block, ...]
    can_be_left_out: bool = True
    is_headed: bool = True


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Brief:
    """A brief, ready to be set on paper or on a page of the web.

    Parameters
    ----------
    title : str
        What it is about.
    language : str
        Language of its words, as in BCP 47.
    audience : Audience
        Whom it is for.
    sections : tuple of Section
        What stands in it, in order.
    header, footer : str
        What stands on top of every page but the first, and below every page.
    fingerprint : str
        Hash of the study and of the records that it uses.
    version : str
        Version of the program.
    made_on : date
        Day on which it was made.
    """

    title: str
    language: str
    audience: Audience
    sections: tuple[Section, ...]
    header: str
    footer: str
    fingerprint: str
    version: str
    made_on: date

    def section(self, key: str) -> Section | None:
        """Give a section by its key, None where it was left out."""
        return next((one for one in self.sections if one.key == key), None)
