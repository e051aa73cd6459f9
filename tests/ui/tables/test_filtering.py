"""Filters as they are typed."""

from __future__ import annotations

import pytest

from benchpack.errors import DataError
from benchpack.model.library import Library
from benchpack.ui.pages.packs.pack_columns import PackBook, table_columns
from benchpack.ui.tables.filtering import EVERY_ROW, matching_rows, parse_filter
from benchpack.ui.tables.text_index import TextIndex
from benchpack.units.formatting import NumberStyle


def found(library: Library, text: str, style: NumberStyle | None = None) -> list[str]:
    style = style or NumberStyle()
    columns = table_columns(style)
    records = PackBook(library).records
    wanted = parse_filter(text, columns, decimal=style.decimal_mark)
    mask = matching_rows(wanted, records, columns)
    assert mask is not None
    return [str(name).split()[0] for name in library.packs.names[mask]]


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("avoc", ["Avocet"]),
        ("LFP", ["Turnstone", "Knot"]),
        ("lfp knot", ["Knot"]),
        ("far too", ["Ruff"]),
        ("energy > 60", ["Avocet", "Dunlin", "Turnstone"]),
        ("energy>60 and chemistry = lfp", ["Turnstone"]),
        ("Energy > 60; chemistry = LFP", ["Turnstone"]),
        ("energy > 60 chemistry = LFP", ["Turnstone"]),
        ("avocet energy > 60", ["Avocet"]),
        ("energy > 60; avocet", ["Avocet"]),
        ("energy > 60 and lfp", ["Turnstone"]),
        ('chemistry = "LFP" energy > 60', ["Turnstone"]),
        ('note = "far too heavy."; ruff', ["Ruff"]),
        ("mass < 1000 lb", ["Dunlin", "Knot"]),
        ("mass <= 447,2", ["Dunlin", "Knot"]),
        ("density >= 163", ["Dunlin"]),
        ("density = 163", ["Avocet"]),
        ("density != 163", ["Dunlin", "Turnstone", "Knot", "Ruff"]),
        ("cells share > 66.5", ["Dunlin"]),
        ("cells mass = unknown", ["Turnstone", "Knot", "Ruff"]),
        ("cells mass != unknown", ["Avocet", "Dunlin"]),
        ("chemistry = unknown", ["Ruff"]),
        ("chemistry != LFP", ["Avocet", "Dunlin", "Ruff"]),
        ("boundary = unknown", ["Dunlin", "Turnstone", "Knot", "Ruff"]),
        ("boundary = coolant", ["Avocet"]),
        ("year = 2025", ["Dunlin", "Turnstone"]),
        ("closure > 90", ["Avocet"]),
        ("mass known by = weighed", ["Avocet", "Dunlin"]),
        ("nothing like it", []),
    ],
)
def test_filter_finds(library: Library, text: str, names: list[str]) -> None:
    assert found(library, text) == names


def test_figures_are_in_the_unit_of_the_head(library: Library) -> None:
    pounds = NumberStyle(",", "lb")
    assert found(library, "mass > 1000,5", pounds) == ["Avocet", "Turnstone", "Ruff"]


def test_empty_filter_lets_everything_through() -> None:
    assert parse_filter("  ", table_columns(NumberStyle())) == EVERY_ROW


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("mass > ", "compared with nothing"),
        ("mass > 3x", "x"),
        ("mass > 3 kWh", "kWh"),
        ("density > many", "many"),
        ("chemistry > LFP", "chemistry is text"),
        ("foo > 3", "called “foo”"),
        ("mass > 400 and weight < 3", "called “weight”"),
        ("> 3", "No column is named"),
    ],
)
def test_condition_that_cannot_be_read_is_refused(text: str, said: str) -> None:
    with pytest.raises(DataError, match=said):
        parse_filter(text, table_columns(NumberStyle()))


@pytest.mark.parametrize(
    "texts",
    [
        ["b", "", "A", "c"],
        ["b", "", "A", "b", "b", "", "A", "b"],
        ["b" * 100, "", "A", "c"],
        [],
    ],
)
def test_index_ranks_and_finds_alike_in_either_form(texts: list[str]) -> None:
    index = TextIndex(texts)
    ranks = index.ranks()
    order = sorted((text.casefold(), i) for i, text in enumerate(texts) if text)
    known = [i for i in ranks.argsort(kind="stable") if texts[i]]
    assert known == [i for _, i in order]
    assert [bool(r != r) for r in ranks] == [not text for text in texts]
    assert index.containing("B").tolist() == ["b" in text for text in texts]
    assert index.equal_to("a").tolist() == [text == "A" for text in texts]
