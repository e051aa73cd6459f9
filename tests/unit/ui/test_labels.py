from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from benchpack.ui.charts.labels import Box, place_labels

BOUNDS = Box(0, 0, 400, 300)
NONE = np.empty(0)


def test_two_labels_of_near_points_do_not_cover_each_other() -> None:
    anchors = [(200.0, 150.0, 80.0, 16.0), (204.0, 152.0, 80.0, 16.0)]
    first, second = place_labels(anchors, bounds=BOUNDS, x=NONE, y=NONE)
    assert first is not None
    assert second is not None
    assert first.overlap(second) == 0


def test_a_label_avoids_a_crowded_side() -> None:
    x = np.repeat(np.linspace(205, 300, 20), 3)
    y = np.tile(np.array([125.0, 133.0, 141.0]), 20)
    (box,) = place_labels([(200.0, 150.0, 80.0, 16.0)], bounds=BOUNDS, x=x, y=y)
    assert box is not None
    covered = (x > box.left) & (x < box.right) & (y > box.top) & (y < box.bottom)
    assert not covered.any()


def test_a_label_that_fits_nowhere_is_left_out_when_asked() -> None:
    taken = [BOUNDS]
    boxes = place_labels(
        [(200.0, 150.0, 80.0, 16.0)],
        bounds=BOUNDS,
        x=NONE,
        y=NONE,
        taken=taken,
        worst=100.0,
    )
    assert boxes == [None]


@given(across=st.floats(0, 400), down=st.floats(0, 300))
def test_labels_stay_inside(across: float, down: float) -> None:
    (box,) = place_labels([(across, down, 90.0, 16.0)], bounds=BOUNDS, x=NONE, y=NONE)
    assert box is not None
    assert box.left >= 0
    assert box.top >= 0
    assert box.right <= 400
    assert box.bottom <= 300
