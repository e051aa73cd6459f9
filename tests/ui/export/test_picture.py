from __future__ import annotations

import errno
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from benchpack.errors import BenchpackError
from benchpack.ui.charts.chart_or_table import ChartOrTable
from benchpack.ui.charts.closure_bar import ClosureBar
from benchpack.ui.charts.energy_mass import EnergyMassChart
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.programme import ProgrammeChart
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.charts.shares import SharesChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.charts.worth_map import WorthMapChart
from benchpack.ui.export.picture import (
    copy_picture,
    image_of,
    render_png,
    render_svg,
)
from benchpack.ui.palette import Scheme, roles
from benchpack.ui.theme import apply_theme
from tests.ui.charts import samples

KINDS: dict[str, tuple[Callable[[], Any], Callable[[], Any], str]] = {
    "energy mass": (EnergyMassChart, samples.energy_mass, "Avocet 81"),
    "gap bars": (GapBarsChart, samples.gap_bars, "Dunlin 74"),
    "waterfall": (WaterfallChart, samples.waterfall, "Energy share"),
    "fan": (FanChart, samples.fan, "25.0 kg"),
    "closure": (ClosureBar, samples.closure, "cells"),
    "programme": (ProgrammeChart, samples.programme, "paid back in 2.3 years"),
    "worth map": (WorthMapChart, samples.worth_map, "break-even"),
    "shares": (SharesChart, samples.shares, "with others"),
    "sets": (SetsChart, samples.sets, "ours, in use"),
}
WIDTH, HEIGHT = 600, 400


@pytest.fixture(params=list(KINDS.values()), ids=list(KINDS))
def chart_and_word(request: pytest.FixtureRequest, qtbot: QtBot) -> tuple[Any, str]:
    make, spec, word = request.param
    chart = make()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(spec())
    chart.show()
    QCoreApplication.processEvents()
    return chart, word


def colours(image: QImage) -> set[int]:
    step = max(1, image.width() // 300)
    return {
        image.pixel(x, y)
        for x in range(0, image.width(), step)
        for y in range(0, image.height(), step)
    }


@pytest.mark.parametrize("scale", [1, 2, 3, 4])
def test_png_has_its_size_and_is_not_blank(
    chart_and_word: tuple[Any, str], tmp_path: Path, scale: int
) -> None:
    chart, _ = chart_and_word
    path = tmp_path / "chart.png"
    render_png(chart, path, scale=scale)
    image = QImage(str(path))
    assert (image.width(), image.height()) == (
        scale * chart.width(),
        scale * chart.height(),
    )
    assert len(colours(image)) > 10
    assert image.dotsPerMeterX() == pytest.approx(scale * 96 / 0.0254, abs=1)


def test_texts_and_symbols_grow_with_the_scale(
    chart_and_word: tuple[Any, str],
) -> None:
    """A picture at 4x, made small again, is close to the one at 1x."""
    chart, _ = chart_and_word
    small = image_of(chart, scale=1)
    large = image_of(chart, scale=4).scaled(small.size())
    grey = QImage.Format.Format_Grayscale8
    first = bytes(small.convertToFormat(grey).constBits())
    second = bytes(large.convertToFormat(grey).constBits())
    near = sum(abs(a - b) < 100 for a, b in zip(first, second, strict=True))
    assert near / len(first) > 0.97


def test_svg_is_xml_with_texts(chart_and_word: tuple[Any, str], tmp_path: Path) -> None:
    chart, word = chart_and_word
    path = tmp_path / "chart.svg"
    render_svg(chart, path, title="A finding")
    root = ET.fromstring(path.read_text(encoding="utf-8"))
    texts = [one.text for one in root.iter() if one.tag.endswith("}text")]
    assert word in texts
    assert root.get("viewBox") == f"0 0 {chart.width()} {chart.height()}"
    assert "NaN" not in path.read_text(encoding="utf-8")


def test_pictures_are_light_in_the_dark(
    qapp: QApplication, chart_and_word: tuple[Any, str]
) -> None:
    chart, _ = chart_and_word
    light = image_of(chart, scale=1)
    apply_theme(qapp, Scheme.DARK)
    QCoreApplication.processEvents()
    shown = chart.grab().toImage()
    drawn = image_of(chart, scale=1)
    assert drawn.pixelColor(1, 1).name().upper() == roles(Scheme.LIGHT).panel
    assert drawn == light
    assert chart.tokens is roles(Scheme.DARK)
    assert chart.grab().toImage() == shown


def test_the_same_chart_gives_the_same_bytes(
    chart_and_word: tuple[Any, str], tmp_path: Path
) -> None:
    chart, _ = chart_and_word
    paths = [tmp_path / "one.png", tmp_path / "two.png"]
    for path in paths:
        render_png(chart, path)
    assert paths[0].read_bytes() == paths[1].read_bytes()


def test_copying_puts_a_picture_on_the_clipboard(
    chart_and_word: tuple[Any, str],
) -> None:
    chart, _ = chart_and_word
    copy_picture(chart, scale=2)
    image = QGuiApplication.clipboard().image()
    assert (image.width(), image.height()) == (2 * chart.width(), 2 * chart.height())


def test_a_chart_never_shown_can_be_drawn(qtbot: QtBot) -> None:
    chart = EnergyMassChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.energy_mass())
    seen = colours(image_of(chart, scale=1))
    subject = int(roles(Scheme.LIGHT).subject.removeprefix("#"), 16)
    assert subject in {one & 0xFFFFFF for one in seen}


def test_an_empty_chart_draws_its_sentence(qtbot: QtBot, tmp_path: Path) -> None:
    chart = FanChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(type(samples.fan())(empty_sentence="No saving is known."))
    path = tmp_path / "empty.svg"
    render_svg(chart, path)
    assert "No saving is known." in path.read_text(encoding="utf-8")


def test_any_widget_can_be_drawn(qtbot: QtBot, tmp_path: Path) -> None:
    label = QLabel("Avocet 81")
    qtbot.addWidget(label)
    label.resize(200, 40)
    path = tmp_path / "label.png"
    render_png(label, path, scale=3)
    image = QImage(str(path))
    assert (image.width(), image.height()) == (600, 120)
    assert len(colours(image)) > 3


@pytest.mark.parametrize("scale", [0, 5])
def test_other_scales_are_refused(qtbot: QtBot, scale: int) -> None:
    label = QLabel("Avocet 81")
    qtbot.addWidget(label)
    with pytest.raises(BenchpackError, match="scale 1 to 4"):
        image_of(label, scale=scale)


def test_a_place_that_cannot_be_written_is_said(qtbot: QtBot, tmp_path: Path) -> None:
    chart = FanChart()
    qtbot.addWidget(chart)
    chart.show_spec(samples.fan())
    with pytest.raises(BenchpackError, match="could not be written"):
        render_png(chart, tmp_path / "missing" / "chart.png")
    with qtbot.waitSignal(chart.said) as heard:
        chart.actions_of_chart.save(tmp_path / "missing" / "chart.png")
    assert "could not be written" in heard.args[0]


def test_what_stands_there_stays_where_writing_fails(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    chart = FanChart()
    qtbot.addWidget(chart)
    chart.show_spec(samples.fan())

    def fail(*_: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    for name, render in (("chart.png", render_png), ("chart.svg", render_svg)):
        (tmp_path / name).write_text("mine")
        monkeypatch.setattr(Path, "write_bytes", fail)
        with pytest.raises(BenchpackError, match="could not be written"):
            render(chart, tmp_path / name)
        monkeypatch.undo()
        assert (tmp_path / name).read_text() == "mine"
    assert len(list(tmp_path.iterdir())) == 2


def test_a_drawing_is_xml_whatever_a_name_holds(qtbot: QtBot, tmp_path: Path) -> None:
    chart = GapBarsChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    name = "Dunlin\x01\x1b[31m\ufffe"
    spec = samples.gap_bars()
    chart.show_spec(replace(spec, names=(name, *spec.names[1:])))
    path = tmp_path / "chart.svg"
    render_svg(chart, path, title=name)
    text = "".join(ET.fromstring(path.read_bytes()).itertext())
    assert "Dunlin\ufffd\ufffd[31m\ufffd" in text


def test_saving_by_the_menu_follows_the_ending(qtbot: QtBot, tmp_path: Path) -> None:
    chart = FanChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.fan())
    chart.actions_of_chart.save(tmp_path / "fan.svg")
    chart.actions_of_chart.save(tmp_path / "fan.png", scale=3)
    assert (tmp_path / "fan.svg").read_text(encoding="utf-8").startswith("<?xml")
    assert QImage(str(tmp_path / "fan.png")).width() == 3 * WIDTH


@pytest.mark.parametrize("make", [ClosureBar, FanChart])
def test_a_scale_is_chosen_in_the_menu(
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    make: Callable[[], Any],
) -> None:
    chart = make()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.closure() if make is ClosureBar else samples.fan())
    offered: list[str] = []

    def answer(*asked: object) -> tuple[str, str]:
        offered.append(str(asked[2]))
        return str(tmp_path / "picture 0.5"), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    with qtbot.waitSignal(chart.said) as heard:
        chart.actions_of_chart.scales.actions()[3].trigger()
    assert heard.args == ["Saved picture 0.5.png"]
    assert offered == [f"{chart.accessibleName()}.png"]
    image = QImage(str(tmp_path / "picture 0.5.png"))
    assert (image.width(), image.height()) == (4 * chart.width(), 4 * chart.height())


def test_a_picture_shows_the_chart_behind_its_table(qtbot: QtBot) -> None:
    chart = FanChart()
    both = ChartOrTable(chart)
    qtbot.addWidget(both)
    both.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.fan())
    both.show()
    QCoreApplication.processEvents()
    drawn = image_of(chart, scale=1)
    both.show_view("table")
    both.resize(WIDTH + 80, HEIGHT)
    both.resize(WIDTH, HEIGHT)
    QCoreApplication.processEvents()
    assert image_of(chart, scale=1) == drawn
    assert both.table.isVisible()


def test_a_map_is_a_picture_in_a_drawing(qtbot: QtBot, tmp_path: Path) -> None:
    chart = WorthMapChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.worth_map())
    chart.show()
    QCoreApplication.processEvents()
    chart.view.setRange(xRange=(2, 4), yRange=(0.2, 0.6), padding=0)
    path = tmp_path / "map.svg"
    render_svg(chart, path)
    root = ET.fromstring(path.read_text(encoding="utf-8"))
    images = [one for one in root.iter() if one.tag.endswith("}image")]
    assert len(images) == 2  # the area and the scale
    for one in images:
        begin, size = float(one.get("x", 0)), float(one.get("width", 0))
        assert 0 < begin < begin + size < WIDTH


def test_a_zoomed_drawing_ends_at_the_edges(qtbot: QtBot, tmp_path: Path) -> None:
    """Viewers show what Qt's generator leaves unclipped."""
    chart = EnergyMassChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.energy_mass())
    chart.show()
    chart.view.setRange(xRange=(78, 84), yRange=(490, 530), padding=0)
    path = tmp_path / "chart.svg"
    render_svg(chart, path)
    root = ET.fromstring(path.read_text(encoding="utf-8"))
    numbers = [
        float(number)
        for one in root.iter()
        if one.tag.endswith(("}path", "}polyline", "}polygon"))
        for number in re.findall(
            r"-?\d+\.?\d*(?:e-?\d+)?", one.get("d") or one.get("points") or ""
        )
    ]
    assert len(numbers) > 20
    assert min(numbers) > -30
    assert max(numbers) < WIDTH + 30


def test_marks_are_as_wide_in_viewers_without_vector_effects(
    qtbot: QtBot, tmp_path: Path
) -> None:
    """Where a line would keep its width, a mark scaled up would become a blot."""
    chart = EnergyMassChart()
    qtbot.addWidget(chart)
    chart.resize(WIDTH, HEIGHT)
    chart.show_spec(samples.energy_mass())
    chart.show()
    QCoreApplication.processEvents()
    path = tmp_path / "chart.svg"
    render_svg(chart, path)
    text = path.read_text(encoding="utf-8")
    assert "non-scaling-stroke" not in text
    widths = [
        float(width) * float(scale)
        for width, scale in re.findall(
            r'stroke-width="([^"]*)"[^>]*transform="matrix\(([^,]*),', text
        )
    ]
    assert len(widths) > 20
    assert max(widths) <= 4
