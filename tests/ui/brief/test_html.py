"""The brief as a page of the web."""

from __future__ import annotations

import re
import tempfile
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from benchpack.errors import RequestError
from benchpack.report.brief.blocks import ChartBlock, Figures, Paragraph, Table
from benchpack.ui.brief.html import brief_html, write_brief_html
from tests.ui.brief.samples import hard_brief, one_section, rows_brief
from tests.unit.report.brief.samples import blocks, customer_brief

pytestmark = pytest.mark.usefixtures("qapp")
SVG = "{http://www.w3.org/2000/svg}svg"


def body_of(page: str) -> ET.Element:
    """Read the body; what Benchpack writes is well-formed."""
    start, end = page.index("<body>"), page.index("</body>") + len("</body>")
    return ET.fromstring(page[start:end])


def text_of(element: ET.Element) -> str:
    return "".join(element.itertext())


def test_it_has_language_title_and_nothing_from_elsewhere(tmp_path: Path) -> None:
    path = tmp_path / "brief.html"
    write_brief_html(customer_brief(), path)
    page = path.read_text(encoding="utf-8")
    assert page.startswith('<!DOCTYPE html>\n<html lang="en">')
    assert "<title>Brief: Avocet 81 against Dunlin 74</title>" in page
    assert "src=" not in page
    assert "href=" not in page.replace("xmlns:xlink=", "")
    assert page.count("url(") == page.count("url(#") + page.count('url("data:font/otf')
    assert "thead { display: table-header-group; }" in page


def test_it_holds_every_section_and_figure() -> None:
    brief = customer_brief()
    body = body_of(brief_html(brief))
    found = {one.get("id") for one in body.iter("section")}
    assert found == {section.key for section in brief.sections}
    shown = text_of(body)
    (figures,) = (b for b in blocks(brief, "result") if isinstance(b, Figures))
    assert all(figure.value in shown for figure in figures.figures)
    assert brief.footer in shown


def test_tables_name_their_heads() -> None:
    brief = customer_brief()
    body = body_of(brief_html(brief))
    tables = [b for s in brief.sections for b in s.blocks if isinstance(b, Table)]
    found = list(body.iter("table"))
    assert len(found) == len(tables)
    for element, table in zip(found, tables, strict=True):
        heads = element.findall("thead/tr/th")
        assert [head.get("scope") for head in heads] == ["col"] * len(table.columns)
        rows = element.findall("tbody/tr")
        assert [[text_of(cell) for cell in row] for row in rows] == [
            list(row) for row in table.rows
        ]
        assert all(row[0].get("scope") == "row" for row in rows)


def test_charts_are_drawings_with_words() -> None:
    brief = customer_brief()
    drawings = list(body_of(brief_html(brief)).iter(SVG))
    charts = [b for s in brief.sections for b in s.blocks if isinstance(b, ChartBlock)]
    assert [one.get("aria-label") for one in drawings] == [
        chart.alternative for chart in charts
    ]
    assert {one.get("role") for one in drawings} == {"img"}
    names = [e.get("id") for one in drawings for e in one.iter() if e.get("id")]
    assert len(names) == len(set(names))
    assert "energy share" in text_of(drawings[0])


@pytest.mark.usefixtures("dark")
def test_charts_are_light_in_a_dark_window() -> None:
    (drawing, *_) = body_of(brief_html(customer_brief())).iter(SVG)
    renderer = QSvgRenderer(QByteArray(ET.tostring(drawing)))
    image = QImage(300, 240, QImage.Format.Format_RGB32)
    image.fill(0)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    assert image.pixelColor(2, 2).name() == "#ffffff"


def test_cautions_are_a_list() -> None:
    brief = customer_brief()
    body = body_of(brief_html(brief))
    items = [text_of(one) for one in body.findall(".//ul[@class='cautions']/li")]
    assert len(items) == len(blocks(brief, "cautions"))


def test_names_are_written_as_text_not_as_marks() -> None:
    page = brief_html(rows_brief(2, text='<script>alert("x")</script> & more'))
    assert "<script>" not in page
    assert "&lt;script&gt;" in page


def test_no_character_stands_in_it_that_a_page_cannot_hold() -> None:
    brief = one_section(Paragraph("red \x1b[31m and \x00, \ud800", "body"))
    text = brief_html(replace(brief, title="Bell \x07"))
    assert "red \ufffd[31m and \ufffd, \ufffd" in text
    assert "<title>Bell \ufffd</title>" in text
    assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f]", text)


def test_hard_names_are_whole() -> None:
    brief = hard_brief()
    shown = text_of(body_of(brief_html(brief)))
    assert brief.title in shown
    assert shown.count("part 299 ") >= 1


def test_the_paper_is_that_of_whoever_prints() -> None:
    assert "size: Letter;" in brief_html(rows_brief(1), paper="Letter")
    with pytest.raises(RequestError):
        brief_html(rows_brief(1), paper="A7")


def test_charts_need_no_room_on_the_disk(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    brief = customer_brief()
    whole = brief_html(brief)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "gone"))
    assert brief_html(brief) == whole
    assert "<svg" in whole
