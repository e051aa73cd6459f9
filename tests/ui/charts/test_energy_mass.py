from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPointF
from pytestqt.qtbot import QtBot

from benchpack.ui.charts.energy_mass import EnergyMassChart
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.palette import Scheme, roles
from tests.ui.charts import samples


@pytest.fixture
def chart(qtbot: QtBot) -> EnergyMassChart:
    made = EnergyMassChart()
    qtbot.addWidget(made)
    made.resize(700, 480)
    made.show()
    made.show_spec(samples.energy_mass())
    QCoreApplication.processEvents()
    return made


def test_peers_are_drawn_where_the_spec_says(chart: EnergyMassChart) -> None:
    x, y = chart.peers.getData()
    assert x.tolist() == [62.0, 95.0, 88.0]  # neither subject nor reference nor nan
    assert y.tolist() == [405.0, 598.0, 540.0]


def test_subject_and_reference_have_their_signs(chart: EnergyMassChart) -> None:
    tokens = roles(Scheme.LIGHT)
    spots = {spot.symbol(): spot for spot in chart.marks.points()}
    circle, diamond = spots["o"], spots["d"]
    assert (circle.pos().x(), circle.pos().y()) == (81.0, 512.0)
    assert (diamond.pos().x(), diamond.pos().y()) == (74.0, 460.0)
    assert circle.brush().color().name().upper() == tokens.subject
    assert diamond.brush().color().name().upper() == tokens.reference


def test_moving_packs_keeps_the_items(chart: EnergyMassChart) -> None:
    spec = samples.energy_mass()
    chart.show_spec(replace(spec, mass=spec.mass + 10))
    _, y = chart.peers.getData()
    assert y.tolist() == [415.0, 608.0, 550.0]


def test_the_view_stays_where_a_fixed_range_says(chart: EnergyMassChart) -> None:
    spec = replace(
        samples.energy_mass(), energy_range=(0.0, 120.0), mass_range=(0.0, 700.0)
    )
    chart.show_spec(spec)
    assert chart.view.viewRange() == [[0.0, 120.0], [0.0, 700.0]]
    chart.show_spec(replace(spec, mass=spec.mass * 1.1))
    assert chart.view.viewRange() == [[0.0, 120.0], [0.0, 700.0]]


def test_all_packs_are_in_the_first_view(chart: EnergyMassChart) -> None:
    (x_low, x_high), (y_low, y_high) = chart.view.viewRange()
    known = np.isfinite(samples.ENERGY)
    assert x_low < samples.ENERGY[known].min() < samples.ENERGY[known].max() < x_high
    assert y_low < samples.MASS[known].min() < samples.MASS[known].max() < y_high


def test_rays_are_round_and_near_the_packs(chart: EnergyMassChart) -> None:
    values, texts = chart.rays.densities()
    assert 2 <= len(values) <= 7
    assert texts == [f"{value:.0f}" for value in values]
    density = 1000 * samples.ENERGY / samples.MASS
    assert min(values) <= np.nanmax(density)
    assert max(values) >= np.nanmin(density)
    assert all(value % 5 == 0 for value in values)


def test_labels_of_subject_and_reference_do_not_touch(chart: EnergyMassChart) -> None:
    near = replace(
        samples.energy_mass(),
        energy=np.array([81.0, 80.8, 62.0, 95.0, 88.0, 70.0]),
        mass=np.array([512.0, 511.0, 405.0, 598.0, 540.0, 430.0]),
    )
    chart.show_spec(near)
    chart.grab()
    first, second = chart.labels.boxes[:2]
    assert first is not None
    assert second is not None
    assert first.overlap(second) == 0


def test_one_pack_is_enough(chart: EnergyMassChart) -> None:
    chart.show_spec(
        replace(
            samples.energy_mass(),
            names=("Avocet 81",),
            energy=np.array([81.0]),
            mass=np.array([512.0]),
            trend=None,
        )
    )
    chart.grab()
    assert not chart.parts.is_empty
    assert len(chart.peers.getData()[0]) == 0
    assert len(chart.marks.getData()[0]) == 1


def test_a_pack_without_energy_is_never_near(chart: EnergyMassChart) -> None:
    area = plot_area(chart.plot)
    assert chart.nearest(QPointF(area.rect.center())) != samples.NAMES.index("Stint 70")
    assert samples.NAMES.index("Stint 70") not in chart.keyboard_order().tolist()


def test_the_nearest_is_within_twelve_pixels(chart: EnergyMassChart) -> None:
    place = chart.item_position(2)
    assert chart.nearest(place + QPointF(0, 11)) == 2
    assert chart.nearest(place + QPointF(0, 14)) == -1


def test_ten_thousand_packs_are_one_item(chart: EnergyMassChart) -> None:
    random = np.random.default_rng(1)
    energy = random.uniform(40, 120, 10_000)
    mass = 1000 * energy / random.normal(150, 10, 10_000)
    names = tuple(f"Knot {number}" for number in range(10_000))
    chart.show_spec(
        replace(
            samples.energy_mass(), names=names, energy=energy, mass=mass, subject=""
        )
    )
    assert len(chart.peers.getData()[0]) == 10_000
    items = len(chart.parts.canvas.scene().items())
    chart.show_spec(samples.energy_mass())
    assert len(chart.parts.canvas.scene().items()) == items
