"""Invented packs for the tests of charts."""

from __future__ import annotations

import numpy as np

from benchpack.report.change_charts import SwingsSpec
from benchpack.report.chart_specs import (
    ClosureSpec,
    EnergyMassSpec,
    FanPoint,
    FanSpec,
    FanTarget,
    GapBarsSpec,
    ParetoSpec,
    TrendBand,
    WaterfallSpec,
)
from benchpack.report.chart_text import share_text
from benchpack.report.worth_specs import (
    ProgrammeSpec,
    SetsSpec,
    SharesSpec,
    WorthMapSpec,
)

NAMES = ("Avocet 81", "Dunlin 74", "Knot 62", "Curlew 95", "Ruff 88", "Stint 70")
ENERGY = np.array([81.0, 74.0, 62.0, 95.0, 88.0, np.nan])
MASS = np.array([512.0, 460.0, 405.0, 598.0, 540.0, 430.0])


def kilograms(value: float) -> str:
    return f"{value:.1f} kg".replace("-", "−")


def kilowatt_hours(value: float) -> str:
    return f"{value:.1f} kWh"


def watt_hours(value: float) -> str:
    return f"{value:.0f} Wh/kg"


def euros(value: float) -> str:
    return f"{value:.0f} EUR".replace("-", "−")


def worths(value: float) -> str:
    return f"{value:.2f} EUR/kg"


def energy_mass() -> EnergyMassSpec:
    x = np.linspace(50, 110, 30)
    return EnergyMassSpec(
        title="3 of 4 packs are denser",
        note="n = 4, R² = 0.97",
        explain_key="trend",
        names=NAMES,
        energy=ENERGY,
        mass=MASS,
        subject="Avocet 81",
        reference="Dunlin 74",
        trend=TrendBand(x=x, low=6 * x, mid=6.3 * x, high=6.6 * x),
        format_energy=kilowatt_hours,
        format_mass=kilograms,
        format_density=watt_hours,
    )


def gap_bars() -> GapBarsSpec:
    return GapBarsSpec(
        title="Avocet 81 is heavier than 2 of 4 packs",
        explain_key="gap",
        names=NAMES[1:],
        gap=np.array([8.5, -17.1, 2.1, 14.9, np.nan]),
        uncertainty=np.array([2.0, 3.0, 1.5, np.nan, np.nan]),
        reference="Dunlin 74",
        axis_label="Gap at equal energy [kg]",
        format_full=kilograms,
    )


def waterfall() -> WaterfallSpec:
    return WaterfallSpec(
        title="40.7 kg carry energy, 11.3 kg are design",
        explain_key="density share",
        names=("Energy share", "Cells", "Tray", "Gap as weighed"),
        kinds=("energy", "step", "step", "sum"),
        values=np.array([40.7, -4.0, 15.3, 52.0]),
        axis_label="Gap [kg]",
        format_full=kilograms,
    )


def fan() -> FanSpec:
    saved = np.linspace(0, 40, 41)
    return FanSpec(
        title="11.3 kg are worth 34 EUR a pack",
        explain_key="worth",
        saved=saved,
        low=2 * saved,
        likely=3 * saved,
        high=6 * saved,
        points=(
            FanPoint(name="gap as counted", saved=11.3, value=33.9, low=22.6, high=68),
            FanPoint(name="share captured", saved=6.8, value=20.4, kind="subject"),
        ),
        target=FanTarget(saved=25, value=75, saved_text="25.0 kg", value_text="75 EUR"),
        format_saved=kilograms,
        format_value=euros,
    )


def closure() -> ClosureSpec:
    return ClosureSpec(
        explain_key="closure",
        names=("cells", "tray", "joints"),
        masses=np.array([300.0, 60.0, 6.0]),
        pack_mass=400.0,
        pack_text="pack 400.0 kg",
        verdict="look",
        verdict_text="look: 34.0 kg unaccounted",
        format_value=kilograms,
    )


def pareto() -> ParetoSpec:
    values = np.array([4.8, 2.4, 0.6, 0.2, np.nan])
    return ParetoSpec(
        title="2 of 5 kinds hold 90 % of the mass",
        note="1 row without a mass is not in it.",
        explain_key="joints mass",
        names=("gasket", "flange screw", "socket screw", "clip", "stud"),
        values=values,
        staying=np.array([0.0, 1.2, 0.6, 0.0, np.nan]),
        running=np.array([0.6, 0.9, 0.975, 1.0, np.nan]),
        details=("2 rows", "3 rows", "1 row", "1 row", "1 row"),
        role="subject",
        format_full=kilograms,
    )


def programme() -> ProgrammeSpec:
    likely = np.array([-120.0, 40.0, 60.0, 80.0, 80.0, 60.0])
    return ProgrammeSpec(
        title="Paid back in 2.4 years; worth 168 EUR over the programme",
        note="Present value at 6 % a year.",
        explain_key="programme",
        years=("start", "year 1", "year 2", "year 3", "year 4", "year 5"),
        low=np.array([-140.0, 20.0, 30.0, 45.0, 45.0, 30.0]),
        likely=likely,
        high=np.array([-100.0, 60.0, 90.0, 115.0, 115.0, 90.0]),
        cumulative=np.cumsum(likely),
        payback=2.25,
        payback_text="paid back in 2.3 years",
        format_value=euros,
        format_full=euros,
    )


def worth_map() -> WorthMapSpec:
    x, y = np.linspace(1.0, 6.0, 11), np.linspace(0.0, 1.0, 6)
    across, up = np.meshgrid(x, y)
    return WorthMapSpec(
        title="A gain from 2.50 EUR/kg at half the saving captured",
        explain_key="map",
        x=x,
        y=y,
        values=20.0 * across * up - 25.0,
        break_even=(np.stack((x, 1.25 / x), axis=1),),
        here=(3.0, 0.5),
        x_label="Worth [EUR/kg]",
        y_label="Share captured [1]",
        format_x=worths,
        format_y=share_text,
        format_value=euros,
        format_full=euros,
    )


def shares() -> SharesSpec:
    return SharesSpec(
        title="62 % of the variance: worth per kilogram",
        explain_key="net worth",
        names=("lid: release", "worth per kilogram", "tray: mass"),
        first=np.array([0.21, 0.55, 0.01]),
        total=np.array([0.3, 0.62, 0.012]),
        first_error=np.array([0.02, 0.03, 0.01]),
        total_error=np.array([0.03, 0.04, np.nan]),
        details=("84 % release", "", ""),
    )


def sets() -> SetsSpec:
    return SetsSpec(
        title="A gain under 2 of 3 sets",
        explain_key="value likely",
        names=("ours", "as the customer counts", "worst case"),
        low=np.array([20.0, -10.0, -60.0]),
        likely=np.array([34.0, 12.0, -22.0]),
        high=np.array([68.0, 30.0, -5.0]),
        in_use="ours",
        format_value=euros,
        format_full=euros,
    )


def swings() -> SwingsSpec:
    return SwingsSpec(
        title="62 % of the variance: worth per kilogram",
        explain_key="proposal net worth",
        names=("worth per kilogram", "lid: release"),
        at_low=np.array([-30.0, -12.0]),
        at_high=np.array([44.0, 8.0]),
        axis_label="Change [EUR]",
        format_value=euros,
        format_full=euros,
    )
