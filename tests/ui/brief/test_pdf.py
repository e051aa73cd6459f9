"""The PDF of a brief as another program reads it."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject
from PySide6.QtWidgets import QApplication

from benchpack.errors import DataError
from benchpack.report.brief.blocks import Brief, Column, Figures, Paragraph, Table
from benchpack.ui.brief import document
from benchpack.ui.brief.pages import BriefPages
from benchpack.ui.brief.pdf import pdf_bytes, write_brief_pdf
from benchpack.ui.brief.pdf_words import spelled
from tests.ui.brief.samples import (
    ARABIC,
    LONG,
    hard_brief,
    one_section,
    rows_brief,
)
from tests.unit.report.brief.samples import brief_of, customer_brief

pytestmark = pytest.mark.usefixtures("qapp")


def plain(text: str) -> str:
    """Give a text with one plain space for each gap."""
    return " ".join(unicodedata.normalize("NFKC", text).split())


def read(brief: Brief) -> PdfReader:
    return PdfReader(BytesIO(pdf_bytes(BriefPages(brief))))


def pages_of(brief: Brief) -> list[str]:
    return [plain(page.extract_text()) for page in read(brief).pages]


@pytest.fixture(scope="module")
def theirs(qapp: QApplication) -> PdfReader:
    """Give the customer's brief of the demo."""
    return read(customer_brief())


@pytest.fixture(scope="module")
def texts(theirs: PdfReader) -> list[str]:
    """Give the text of its pages."""
    return [plain(page.extract_text()) for page in theirs.pages]


def catalogue(reader: PdfReader) -> DictionaryObject:
    root = reader.trailer["/Root"].get_object()
    assert isinstance(root, DictionaryObject)
    return root


@pytest.mark.parametrize("brief", [brief_of(), customer_brief()], ids=["own", "theirs"])
def test_its_text_holds_every_headline_figure(brief: Brief) -> None:
    first = plain(read(brief).pages[0].extract_text())
    (shown,) = (b for b in brief.sections[0].blocks if isinstance(b, Figures))
    assert len(shown.figures) == 6
    for figure in shown.figures:
        assert plain(figure.value) in first
        assert plain(figure.label) in first


def test_its_text_holds_every_cell(texts: list[str]) -> None:
    text = "".join(texts).replace(" ", "")
    sections = customer_brief().sections
    tables = [b for s in sections for b in s.blocks if isinstance(b, Table)]
    assert len(tables) == 5
    for table in tables:
        for row in table.rows:
            for cell in row:
                assert plain(cell).replace(" ", "") in text, cell


def test_it_has_title_and_language(theirs: PdfReader) -> None:
    title, root = customer_brief().title, catalogue(theirs)
    assert str(root["/Lang"]) == "en"
    shown = root["/ViewerPreferences"].get_object()
    assert isinstance(shown, DictionaryObject)
    assert str(shown["/DisplayDocTitle"]) == "True"
    assert theirs.metadata is not None
    assert theirs.metadata.title == title
    assert theirs.xmp_metadata is not None
    assert theirs.xmp_metadata.dc_title == {"x-default": title}
    assert theirs.xmp_metadata.dc_language == ["en"]


def test_its_bookmarks_are_the_headings(theirs: PdfReader, texts: list[str]) -> None:
    marks = [mark for mark in theirs.outline if not isinstance(mark, list)]
    headed = [s.title for s in customer_brief().sections if s.is_headed]
    assert [mark.title for mark in marks] == headed
    for mark in marks:
        number = theirs.get_destination_page_number(mark)
        assert number is not None
        assert str(mark.title) in texts[number]


def test_its_typeface_is_in_it(theirs: PdfReader) -> None:
    names = set()
    for page in theirs.pages:
        for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
            (inner,) = font["/DescendantFonts"]
            descriptor = inner.get_object()["/FontDescriptor"].get_object()
            assert "/FontFile2" in descriptor
            names.add(str(font["/BaseFont"]))
            assert descriptor["/FontName"] == inner.get_object()["/BaseFont"]
            assert font["/BaseFont"] == inner.get_object()["/BaseFont"]
    # Six letters and a plus: only the letters that are used are in it (ISO 32000-1).
    assert all(re.fullmatch(r"/[A-Z]{6}\+Inter-\w+", name) for name in names)
    tags, faces = zip(*(name.split("+") for name in sorted(names)), strict=True)
    assert {*faces} == {"Inter-Regular", "Inter-SemiBold"}
    assert len({*tags}) == 2


def test_pages_are_numbered_and_carry_the_fingerprint(texts: list[str]) -> None:
    brief = customer_brief()
    for number, text in enumerate(texts, 1):
        assert f"page {number} of {len(texts)}" in text
        assert plain(brief.footer) in text
    assert [plain(brief.header) in text for text in texts] == [False, True]


def test_the_words_of_charts_are_text(texts: list[str]) -> None:
    for word in ("energy share", "gap as weighed", "rim by flow-drill screws"):
        assert word in texts[0]
    assert "50.9 Hatched" in texts[0]
    assert "\u22125.2" in texts[0]


def test_heads_stand_on_every_page_of_a_long_table() -> None:
    texts = pages_of(rows_brief(300))
    assert len(texts) > 3
    assert all("place mass [kg] said" in text for text in texts)
    whole = " ".join(texts)
    assert all(f"row {n} of all {n}.25 a word" in whole for n in range(300))


def striped(above: int, count: int) -> Brief:
    """Give a brief with a table of some rows below one of others."""
    columns = (Column("place"), Column("said"))
    first = tuple((f"row {n}", "a word") for n in range(above))
    stripes = tuple((f"stripe {n};", "a word") for n in range(count))
    table = Table("", (Column("zebra"), Column("said")), stripes)
    filling = one_section(
        Table("", columns, first), Paragraph("filling", "body"), title="Above"
    )
    below = one_section(table, Paragraph("below the table", "note"), title="Striped")
    return replace(filling, sections=(*filling.sections, *below.sections))


@pytest.mark.parametrize(("above", "count"), [(61, 5), (60, 82)])
def test_a_table_may_end_anywhere_on_a_page(
    monkeypatch: pytest.MonkeyPatch, above: int, count: int
) -> None:
    """Its head stands where rows stand, and no line is cut or set upon another."""
    ends = set()
    for step in range(13):
        monkeypatch.setitem(document._ABOVE, "body", 16.0 + 0.8 * step)
        texts = pages_of(striped(above, count))
        ends.add(tuple("below the table" in text for text in texts))
        for text in texts:
            assert text.count("zebra") == ("stripe" in text)
            assert text.count("Striped") <= text.count("zebra")
        whole = "".join(texts)
        for said in ("Striped", "below the table", "stripe 0;", f"stripe {count - 1};"):
            assert whole.count(said) == 1
    assert len(ends) > 1  # what stands below has gone to the next page


def test_sections_that_are_left_out_are_not_in_it() -> None:
    text = " ".join(pages_of(customer_brief(left_out=["checks"])))
    assert "Checks that ask for a look" not in text
    assert "To be validated again" in text
    assert "Cautions" in text


def test_three_hundred_parts_and_other_scripts_are_all_there() -> None:
    text = "".join(pages_of(hard_brief())).replace(" ", "")
    for number in range(300):
        assert f"part{number}{LONG}" in text
    assert all(word in text or word[::-1] in text for word in ARABIC.split())


def test_it_is_written_whole(tmp_path: Path) -> None:
    path = tmp_path / "brief.pdf"
    path.write_text("what stood there")
    write_brief_pdf(rows_brief(2), path)
    assert "row 1 of all" in PdfReader(path).pages[0].extract_text()
    assert list(tmp_path.iterdir()) == [path]


def test_what_stands_there_stays_where_writing_fails(tmp_path: Path) -> None:
    target = tmp_path / "no such folder" / "brief.pdf"
    with pytest.raises(DataError):
        write_brief_pdf(rows_brief(2), target)
    assert list(tmp_path.iterdir()) == []


def test_a_map_keeps_ranges_lists_and_letters_that_are_joined() -> None:
    cmap = (
        "2 beginbfrange\n<0001> <0002> [<0009> <FEB3> ]\n<0004> <0005> <E071>\n"
        "endbfrange\nendcmap\n"
    )
    said = spelled(cmap, {0xE071: "0", 0xE072: "1"})
    assert said.splitlines()[:5] == [
        "4 beginbfchar",
        "<0001> <0020>",
        "<0002> <0633>",
        "<0004> <0030>",
        "<0005> <0031>",
    ]


def test_a_map_without_ranges_stays() -> None:
    assert spelled("begincmap endcmap", {}) == "begincmap endcmap"


def test_a_map_of_many_glyphs_is_written_in_parts() -> None:
    said = spelled("1 beginbfrange\n<0001> <00FA> <0041>\nendbfrange\nend", {})
    assert re.findall(r"(\d+) beginbfchar", said) == ["100", "100", "50"]
