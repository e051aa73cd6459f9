"""What Qt leaves out of a PDF: language, title, bookmarks, characters of its glyphs."""

from __future__ import annotations

import hashlib
import io
import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from typing import TYPE_CHECKING, cast
from xml.sax.saxutils import escape

from PySide6.QtGui import QRawFont, QTextLayout

from benchpack.ui.brief.pages import BriefPages
from benchpack.ui.brief.print_type import PrintRole, print_font
from benchpack.ui.export.picture import without_controls

if TYPE_CHECKING:
    from pypdf import PdfWriter
    from pypdf.generic import DictionaryObject, PdfObject

_RANGE = re.compile(r"<(\w{4})> <(\w{4})> (?:<(\w+)>|\[([^\]]*)\])")
_CODE = re.compile(r"<(\w+)>")
_OWN_USE = range(0xE000, 0xF900)
_JOINED = (range(0xFB50, 0xFE00), range(0xFE70, 0xFEFF))
"""Forms of Arabic letters by their place in a word."""
_PRINTED = "".join(map(chr, range(0x20, 0x7F))) + "\u2212\u00b1\u00d7\u2013\u2014"
_MOST_ENTRIES = 100
_XMP = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>{creator}</xmp:CreatorTool>
<xmp:CreateDate>{day}</xmp:CreateDate>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>"""


def with_words(written: bytes, pages: BriefPages) -> bytes:
    """Give a PDF with language, title, bookmarks and true characters.

    Parameters
    ----------
    written : bytes
        The PDF as Qt writes it.
    pages : BriefPages
        What stands in it.
    """
    from pypdf import PdfReader, PdfWriter

    reader = PdfReader(io.BytesIO(written))
    writer = PdfWriter(clone_from=reader)
    writer.pdf_header = reader.pdf_header
    _name(writer, pages)
    for title, page in pages.section_pages():
        writer.add_outline_item(title=title, page_number=page)
    _spell(writer)
    _mark_subsets(writer)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _name(writer: PdfWriter, pages: BriefPages) -> None:
    """Give title and language to readers that show them or read aloud."""
    from pypdf.generic import (
        BooleanObject,
        DictionaryObject,
        NameObject,
        StreamObject,
        TextStringObject,
    )

    brief, root = pages.brief, writer.root_object
    root[NameObject("/Lang")] = TextStringObject(brief.language)
    shown = DictionaryObject(
        {NameObject("/DisplayDocTitle"): BooleanObject(value=True)}
    )
    root[NameObject("/ViewerPreferences")] = shown
    day = brief.made_on
    creator = f"Benchpack {brief.version}"
    writer.add_metadata(
        {
            "/Title": brief.title,
            "/Creator": creator,
            "/CreationDate": f"D:{day:%Y%m%d}000000Z",
            "/ModDate": f"D:{day:%Y%m%d}000000Z",
        }
    )
    packet = root["/Metadata"].get_object()
    assert isinstance(packet, StreamObject)  # Qt writes one into every file
    packet.set_data(
        _XMP.format(
            title=escape(without_controls(brief.title)),
            language=escape(brief.language),
            creator=escape(creator),
            day=day.isoformat(),
        ).encode()
    )


def _spell(writer: PdfWriter) -> None:
    """Give every glyph the character that it stands for.

    Figures of equal width are glyphs of their own: Qt names them by a code of the
    typeface's own use, with which no figure could be found or copied.
    """
    from pypdf.generic import StreamObject

    spelt = _characters()
    for stream in _maps(writer):
        if isinstance(stream, StreamObject):
            text = stream.get_data().decode("ascii")
            stream.set_data(spelled(text, spelt).encode("ascii"))


def _maps(writer: PdfWriter) -> Iterator[PdfObject | None]:
    """Give the map from glyphs to characters of each font, once."""
    for font in _fonts(writer):
        if "/ToUnicode" in font:
            yield font["/ToUnicode"].get_object()


def _fonts(writer: PdfWriter) -> Iterator[DictionaryObject]:
    """Give each font once."""
    fonts: dict[int, DictionaryObject] = {}
    for page in writer.pages:
        resources = cast("DictionaryObject", page["/Resources"].get_object())
        named = cast("DictionaryObject", resources.get("/Font", {}))
        for font in named.values():
            found = cast("DictionaryObject", font.get_object())
            fonts[id(found)] = found
    yield from fonts.values()


def _mark_subsets(writer: PdfWriter) -> None:
    """Name each font as one of which only the letters that are used are there.

    ISO 32000-1, 9.6.4: six capital letters and a plus sign before its name.
    """
    from pypdf.generic import NameObject

    for font in _fonts(writer):
        for inner in cast("Sequence[PdfObject]", font.get("/DescendantFonts", ())):
            descendant = cast("DictionaryObject", inner.get_object())
            described = cast(
                "DictionaryObject", descendant["/FontDescriptor"].get_object()
            )
            own = str(font["/BaseFont"]).removeprefix("/")
            name = NameObject(f"/{_tag(described)}+{own}")
            font[NameObject("/BaseFont")] = name
            descendant[NameObject("/BaseFont")] = name
            described[NameObject("/FontName")] = name


def _tag(described: DictionaryObject) -> str:
    """Give six letters that tell one subset of a font from another."""
    from pypdf.generic import StreamObject

    held = described["/FontFile2"].get_object()
    assert isinstance(held, StreamObject)  # Qt embeds every font as TrueType
    digest = hashlib.sha256(held.get_data()).digest()
    return "".join(chr(ord("A") + byte % 26) for byte in digest[:6])


def spelled(cmap: str, characters: Mapping[int, str]) -> str:
    r"""Give the map from glyphs to characters with its codes of own use replaced.

    Parameters
    ----------
    cmap : str
        A ToUnicode map as Qt writes it.
    characters : mapping of int to str
        The character that each code stands for.

    Examples
    --------
    >>> cmap = "1 beginbfrange\n<0006> <0007> <E071>\nendbfrange\nendcmap"
    >>> print(spelled(cmap, {0xE071: "0", 0xE072: "1"}))
    2 beginbfchar
    <0006> <0030>
    <0007> <0031>
    endbfchar
    endcmap
    """
    head, found, rest = cmap.partition("beginbfrange")
    if not found:
        return cmap
    ranges, _, tail = rest.rpartition("endbfrange")
    entries = [
        f"<{glyph:04X}> <{_hexed(_true(code, characters))}>"
        for glyph, code in _entries(ranges)
    ]
    parts = [head.rstrip("0123456789 ")]
    for start in range(0, len(entries), _MOST_ENTRIES):
        some = entries[start : start + _MOST_ENTRIES]
        parts.append("\n".join([f"{len(some)} beginbfchar", *some, "endbfchar\n"]))
    return "".join(parts) + tail.lstrip("\n")


def _entries(ranges: str) -> Iterator[tuple[int, int]]:
    """Give glyph and code of all ranges."""
    for first, last, code, codes in _RANGE.findall(ranges):
        glyphs = range(int(first, 16), int(last, 16) + 1)
        if code:
            for step, glyph in enumerate(glyphs):
                yield glyph, int(code, 16) + step
        else:
            listed = _CODE.findall(codes)
            for glyph, one in zip(glyphs, listed, strict=False):
                yield glyph, int(one, 16)


def _true(code: int, characters: Mapping[int, str]) -> str:
    if code > 0x10FFFF or 0xD800 <= code < 0xE000:
        return _paired(code)
    text = characters.get(code, chr(code))
    if text == "\t":  # Qt's name for the glyph of a space
        return " "
    if any(code in forms for forms in _JOINED):
        return unicodedata.normalize("NFKC", text)
    return text


def _paired(code: int) -> str:
    """Read a code that is written as two halves of UTF-16."""
    size = 4 if code > 0xFFFF else 2
    return code.to_bytes(size, "big").decode("utf-16-be", errors="replace")


def _hexed(text: str) -> str:
    return text.encode("utf-16-be").hex().upper()


@cache
def _characters() -> dict[int, str]:
    """Give what the codes of own use stand for in the typefaces of the brief."""
    found: dict[int, str] = {}
    roles: tuple[PrintRole, ...] = ("cell", "strong")
    for role in roles:
        font = print_font(role)
        raw = QRawFont.fromFont(font)
        codes = {
            glyph: code
            for code in _OWN_USE
            for glyph in raw.glyphIndexesForString(chr(code))
            if glyph
        }
        for letter in _PRINTED:
            layout = QTextLayout(letter, font)
            layout.beginLayout()
            layout.createLine()
            layout.endLayout()
            for run in layout.glyphRuns():
                for glyph in run.glyphIndexes():
                    if glyph in codes and run.rawFont() == raw:
                        found[codes[glyph]] = letter
    return found
