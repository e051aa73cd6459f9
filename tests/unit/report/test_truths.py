"""What has to hold of the sentence, the steps and the table, whatever is recorded."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import numpy as np
from hypothesis import HealthCheck, given, settings
from numpy.testing import assert_allclose

from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.report.explanation import explanation_text
from benchpack.report.gap_charts import (
    energy_mass_spec,
    gap_bars_spec,
    waterfall_spec,
)
from benchpack.report.gap_table import gap_columns, gap_rows
from benchpack.report.headline import headline, plain_text
from benchpack.report.worth_charts import fan_spec, value_bars_spec
from benchpack.results.cautions import row_warnings
from benchpack.results.explain import EXPLAINED, explain
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.results import compute
from benchpack.units.formatting import NumberStyle
from tests.strategies.questions import questions

thorough = settings(
    deadline=None, max_examples=30, suppress_health_check=[HealthCheck.too_slow]
)
SPLIT = (" is density", " is better density", "at equal energy it is", "all of it is d")


@given(question=questions())
@thorough
def test_the_gap_as_weighed_never_stands_without_its_split(
    question: tuple[Library, Study],
) -> None:
    results = compute(*question)
    sentence = headline(results)
    text = plain_text(sentence)
    assert text.rstrip().endswith((".", "?"))
    assert "nan" not in text.replace(results.study.subject, "").replace(
        results.study.reference, ""
    )
    comparison, place = results.comparison, results.place
    if comparison is None or place is None:
        return
    if any(piece.key == "gap as weighed" for piece in sentence):
        split = any(words in text for words in SPLIT)
        assert split != math.isnan(comparison.density_share_kg[place])


@given(question=questions())
@thorough
def test_the_sentence_says_the_signs_right(question: tuple[Library, Study]) -> None:
    results = compute(*question)
    comparison, place = results.comparison, results.place
    if comparison is None or place is None:
        return
    sentence = headline(results)
    weighed_kg = float(comparison.as_weighed_kg[place])
    equal_kg = float(comparison.density_share_kg[place])
    figures = {"gap as weighed": weighed_kg, "density share": equal_kg}
    for piece, after in pairwise(sentence):
        if piece.key in figures and after.text.startswith((" heavier", " lighter")):
            wanted = " heavier" if figures[piece.key] > 0 else " lighter"
            assert after.text.startswith(wanted)
    if any(piece.key == "value likely" for piece in sentence):
        assert results.gap_kg >= NOTHING_KG
    turned = weighed_kg * equal_kg < 0
    if turned and min(abs(weighed_kg), abs(equal_kg)) >= NOTHING_KG:
        assert "As weighed and at equal energy point opposite" in plain_text(sentence)


@given(question=questions())
@thorough
def test_steps_and_subsystems_close(question: tuple[Library, Study]) -> None:
    results = compute(*question)
    comparison, place, split = results.comparison, results.place, results.split
    if comparison is None or place is None or split is None:
        return
    weighed_kg = comparison.as_weighed_kg[place]
    scale = np.nan_to_num(
        comparison.subject_mass_kg[place]
        + abs(comparison.energy_share_kg[place])
        + comparison.reference_mass_kg[place]
    )
    near: dict[str, Any] = {"rtol": 1e-9, "atol": 1e-9 * max(1.0, float(scale))}
    assert_allclose(split.gaps.as_weighed_kg.sum(), weighed_kg, **near)
    equal_kg = comparison.density_share_kg[place]
    assert_allclose(split.gaps.equal_energy_kg.sum(), equal_kg, **near)
    spec = waterfall_spec(results)
    assert spec.is_empty == math.isnan(weighed_kg)
    if not spec.is_empty:
        assert spec.kinds.count("sum") == 1
        assert_allclose(spec.values[:-1].sum(), spec.values[-1], **near)


@given(question=questions())
@thorough
def test_a_row_can_be_computed_again(question: tuple[Library, Study]) -> None:
    library, study = question
    results = compute(library, study)
    heads = [column.name.partition(" [")[0] for column in gap_columns(study.currency)]
    for cells in gap_rows(results):
        row = dict(zip(heads, cells, strict=True))
        n = {name: cell for name, cell in row.items() if isinstance(cell, float)}
        near: dict[str, Any] = {"rtol": 1e-9, "atol": 1e-7, "equal_nan": True}
        weighed = n["mass"] - n["reference mass"]
        assert_allclose(n["gap as weighed"], weighed, **near)
        if not math.isnan(n["density share"]):
            assert_allclose(n["energy share"] + n["density share"], weighed, **near)
            ratio = n["energy"] / n["reference energy"]
            equal = n["mass"] - n["reference mass"] * ratio
            assert_allclose(n["density share"], equal, **near)
        assert_allclose(n["density"], 1000 * n["energy"] / n["mass"], **near)
        counted = {
            Basis.AS_WEIGHED: "gap as weighed",
            Basis.EQUAL_ENERGY: "density share",
            Basis.SCALED: "gap scaled",
            Basis.TREND: "gap to trend",
            Basis.STRUCTURE: "gap structure",
        }[study.basis]
        assert_allclose(n["gap"], n[counted], **near)
        for which in ("low", "likely", "high"):
            value = n["gap"] * n[f"worth {which}"] * study.share_captured
            assert_allclose(n[f"value {which}"], value, **near)
        text = str(row["warnings"])
        if any(math.isnan(number) for number in n.values()):
            assert text
        if study.share_captured != 1:
            assert repr(study.share_captured) in text


@given(question=questions())
@thorough
def test_warnings_in_files_are_plain(question: tuple[Library, Study]) -> None:
    results = compute(*question)
    if results.comparison is None:
        return
    for place, text in enumerate(row_warnings(results.library, results.comparison)):
        names = results.study.subject + str(results.comparison.names[place])
        for sign in "\u2212\u2009\u00a0":
            assert sign in names or sign not in text


@given(question=questions())
@thorough
def test_every_chart_and_figure_has_something_to_say(
    question: tuple[Library, Study],
) -> None:
    results = compute(*question)
    for build in (
        energy_mass_spec,
        gap_bars_spec,
        waterfall_spec,
        fan_spec,
        value_bars_spec,
    ):
        spec = build(results)
        assert spec.empty_sentence if spec.is_empty else spec.title
    comparison, place = results.comparison, results.place
    if comparison is None or place is None:
        return
    for key in EXPLAINED:
        figure = explain(results, key)
        assert figure.formula
        assert figure.source
        assert figure.missing or not math.isnan(figure.value)
        assert explanation_text(figure, style=NumberStyle()).value
