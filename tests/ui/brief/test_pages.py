"""The pages of a brief: how many, where they break, in which colours."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor, QImage, QTextDocument

from benchpack.errors import RequestError
from benchpack.report.brief.blocks import Brief, Column, Paragraph, Table
from benchpack.ui.brief.chart_pictures import CHARTS, chart_of
from benchpack.ui.brief.pages import BriefPages
from tests.ui.brief.page_images import page_images
from tests.ui.brief.samples import hard_brief, one_section, rows_brief
from tests.unit.report.brief.samples import blocks, brief_of, customer_brief

pytestmark = pytest.mark.usefixtures("qapp")


def darkest_ground(image: QImage) -> int:
    """Give how dark the edge of a page is, 0 to 255."""
    width, height = image.width(), image.height()
    edge = [(x, 2) for x in range(width)] + [(2, y) for y in range(height)]
    return min(QColor(image.pixel(x, y)).lightness() for x, y in edge)


def ink_share(image: QImage) -> float:
    """Give the share of pixels that are darker than paper."""
    grey = image.convertToFormat(QImage.Format.Format_Grayscale8)
    dark = sum(
        1
        for y in range(0, grey.height(), 2)
        for x in range(0, grey.width(), 2)
        if QColor(grey.pixel(x, y)).lightness() < 128
    )
    return dark / (grey.width() * grey.height() / 4)


def block_tops(document: QTextDocument, height: float) -> list[tuple[str, int, float]]:
    """Give text, page and place on the page of each first line."""
    found = []
    block = document.begin()
    while block.isValid():
        box = document.documentLayout().blockBoundingRect(block)
        layout = block.layout()
        if block.text() and layout.lineCount():
            for place in (0, layout.lineCount() - 1):
                line = layout.lineAt(place).rect()
                top, end = box.top() + line.top(), box.top() + line.bottom()
                assert int((top + 1) // height) == int((end - 1) // height)
                found.append((block.text(), int((top + 1) // height), top))
        block = block.next()
    return found


def test_the_customer_s_demo_brief_is_two_pages() -> None:
    assert BriefPages(customer_brief()).page_count == 2


def test_letter_has_its_own_size() -> None:
    (first, *_) = page_images(customer_brief(), paper="Letter")
    assert (first.width(), first.height()) == (816, 1056)


def test_other_paper_is_refused() -> None:
    with pytest.raises(RequestError, match="A4 or Letter"):
        BriefPages(customer_brief(), paper="A7")


def test_images_grow_with_the_scale() -> None:
    one, two = (page_images(rows_brief(3), scale=scale)[0] for scale in (1.0, 2.0))
    assert (one.width(), one.height()) == (793, 1123)
    assert abs(two.width() - 2 * one.width()) <= 1
    small = two.scaled(one.size())
    assert ink_share(small) == pytest.approx(ink_share(one), rel=0.5)


@pytest.mark.usefixtures("dark")
def test_a_dark_window_prints_light() -> None:
    dark_pages = page_images(customer_brief())
    for image in dark_pages:
        assert darkest_ground(image) == 255
        assert 0.01 < ink_share(image) < 0.25


def test_dark_and_light_print_alike(request: pytest.FixtureRequest) -> None:
    light = page_images(customer_brief())
    request.getfixturevalue("dark")
    assert page_images(customer_brief()) == light


def test_heads_repeat_on_every_page_of_a_long_table() -> None:
    pages = BriefPages(rows_brief(300))
    assert pages.page_count > 3
    first, *_, last = (pages.image(page) for page in range(pages.page_count))
    top = last.copy(0, 0, last.width(), 90)
    assert ink_share(top) > 0.001
    assert top != first.copy(0, 0, first.width(), 90)


def test_no_row_and_no_heading_is_parted() -> None:
    text = " ".join(["some words that need more than a line of their own"] * 4)
    pages = BriefPages(rows_brief(120, text=text))
    height = pages.paper.content.height()
    tops = block_tops(pages._document, height)
    by_row: dict[str, set[int]] = {}
    name = ""
    for said, page, _ in tops:
        name = said if said.startswith("row ") else name
        by_row.setdefault(name, set()).add(page)
    del by_row[""]
    assert len(by_row) == 120
    assert not [row for row, found in by_row.items() if len(found) > 1]


@pytest.mark.parametrize("lines", range(60, 84, 3))
def test_a_heading_stays_with_its_table(lines: int) -> None:
    """However far down the page the heading comes, a row is below it."""
    columns = (Column("place"), Column("said"))
    filling = Table("", columns, tuple((f"row {n}", "said") for n in range(lines)))
    brief = one_section(filling)
    named = one_section(
        Paragraph("What the table is on.", "note"),
        Table("", columns, (("the first", "row"),)),
        title="The heading",
    )
    both = (*brief.sections, *named.sections)
    pages = BriefPages(_with(brief, both))
    tops = block_tops(pages._document, pages.paper.content.height())
    page_of = {text: page for text, page, _ in tops}
    assert page_of["The heading"] == page_of["the first"]
    assert pages.page_count == 1 + max(page_of.values())


def _with(brief: Brief, sections: tuple[object, ...]) -> Brief:
    from dataclasses import replace

    return replace(brief, sections=sections)  # type: ignore[arg-type]


def test_hard_names_wrap_and_stay_on_the_paper() -> None:
    brief = hard_brief()
    pages = BriefPages(brief)
    content = pages.paper.content
    assert pages._document.size().width() <= content.width() + 1
    block_tops(pages._document, content.height())
    for page in range(pages.page_count):
        image = pages.image(page)
        right = image.copy(image.width() - 40, 0, 40, image.height())
        assert ink_share(right) == 0


@pytest.mark.parametrize("name", ["\u96fb\u6c60" * 30, "Longestnameofall" * 12])
def test_long_names_break_before_heads_and_figures_do(name: str) -> None:
    said = [Column("change"), Column("what happens"), Column("where it comes from")]
    figures = [Column("pieces", "", "right"), Column("saved", "kg", "right")]
    row = (name, name, name, "1 to 0", "0.643 (0.243 to 0.743)")
    heads = Table("", (*said, *figures), (row,) * 3)
    document = BriefPages(one_section(heads))._document
    block, lines = document.begin(), {}
    while block.isValid():
        lines[block.text()] = block.layout().lineCount()
        block = block.next()
    for text in ("change", "what happens", "pieces", *row[3:]):
        assert lines[text] == 1, text
    assert lines[name] > 3


def test_every_row_of_a_chart_is_seen() -> None:
    (gap,) = blocks(brief_of(), "gap")
    chart = chart_of(gap, width=420)  # type: ignore[arg-type]
    assert chart.parts.scroll_bar.isHidden()
    chart.deleteLater()


def test_every_kind_of_spec_has_its_chart() -> None:
    for spec, make in CHARTS.items():
        chart = make()
        chart.show_spec(spec())
        assert chart.title_text() == ""
        chart.deleteLater()
