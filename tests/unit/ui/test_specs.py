from __future__ import annotations

import numpy as np
import pytest

from benchpack.report.chart_specs import (
    ChartSpec,
    ClosureSpec,
    EnergyMassSpec,
    FanSpec,
    GapBarsSpec,
    WaterfallSpec,
    plain_text,
    signed_text,
)


@pytest.mark.parametrize(
    "kind", [ClosureSpec, EnergyMassSpec, FanSpec, GapBarsSpec, WaterfallSpec]
)
def test_a_spec_without_data_is_empty(kind: type[ChartSpec]) -> None:
    assert kind().is_empty


def test_packs_without_energy_or_mass_leave_the_scatter_empty() -> None:
    spec = EnergyMassSpec(
        names=("a", "b"), energy=np.array([80, np.nan]), mass=np.array([np.nan, 500])
    )
    assert spec.is_empty


def test_plain_texts() -> None:
    assert plain_text(-1.5) == "−1.5"
    assert signed_text(2.0) == "+2.0"
    assert signed_text(-2.0) == "−2.0"
    assert plain_text(float("nan")) == signed_text(float("nan")) == "–"
