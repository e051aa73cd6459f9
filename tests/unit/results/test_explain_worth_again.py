"""Who recomputes a figure of the worth from its own inputs gets the figure."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import product

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.files.demo import demo_library
from benchpack.model.ranges import Range
from benchpack.model.worth_words import Sizing, ValuedMass
from benchpack.results.explain_worth import WORTH_KEYS, explain_worth
from benchpack.results.figure import Figure
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from tests.unit.results.worth_samples import CHANGES, COSTED, RICH, case_of

Ends = tuple[float, float, float]

DEMO = demo_library()
RISKY = tuple(replace(one, release_chance=0.6) for one in CHANGES)
TOOLED = replace(COSTED, tooling=Range(1e5, 3e5, 4e5), part_cost=Range(-9.0, 2.0, 8.0))
POOR = {"worth_low_per_kg": 0.0, "worth_likely_per_kg": 0.1, "worth_high_per_kg": 0.2}
CASES = {
    "demo": worth_case(compute(DEMO, DEMO.first_study())),
    "rich": case_of(*CHANGES),
    "risky": case_of(*RISKY),
    "tooled": case_of(TOOLED, *CHANGES[1:]),
    "at a loss": case_of(*CHANGES, study=replace(RICH, **POOR)),  # type: ignore[arg-type]  # names are attributes
    "in francs": case_of(*CHANGES, study=replace(RICH, currency="CHF")),
    "many years": case_of(*CHANGES, study=replace(RICH, programme_years=40.5)),
    "by year": case_of(*CHANGES, study=replace(RICH, volumes=(9_000, 0, 90_000))),
    "without interest": case_of(*CHANGES, study=replace(RICH, discount_rate=0.0)),
    "battery kept": case_of(*CHANGES, study=replace(RICH, sizing=Sizing.BATTERY_KEPT)),
    "share": case_of(
        study=replace(RICH, valued_mass=ValuedMass.SHARE, share_captured=0.5)
    ),
    "target": case_of(*CHANGES, study=replace(RICH, valued_mass=ValuedMass.TARGET)),
    "old price unknown": case_of(*CHANGES, study=replace(RICH, old_part_price=None)),
}


class Inputs:
    """The inputs of a figure by their symbols, a range with its ends."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure
        self.values = {one.label.partition(",")[0]: one.value for one in figure.inputs}

    def __getitem__(self, symbol: str) -> float:
        return self.values[symbol]

    def ends(self, symbol: str) -> Ends:
        likely = self[symbol]
        low, high = (self.values.get(f"{symbol} {e}", likely) for e in ("low", "high"))
        return low, likely, high

    def numbered(self, symbol: str) -> dict[str, float]:
        found = (k for k in self.values if k.startswith(f"{symbol}_"))
        return {key.removeprefix(f"{symbol}_"): self.values[key] for key in found}

    @property
    def volumes(self) -> list[float]:
        return list(self.numbered("n").values())

    @property
    def packs(self) -> float:
        if "P" in self.values:
            return self["P"]
        return sum(n / (1 + self["i"]) ** y for y, n in enumerate(self.volumes, 1))

    @property
    def recovery(self) -> float:
        i, n = self["i"], self["n"]
        factor = i * (1 + i) ** n / ((1 + i) ** n - 1) if i else 1 / n
        assert_allclose(self["CRF"], factor, rtol=1e-9)
        return factor


def times(one: Ends, other: Ends) -> Ends:
    every = [a * b for a, b in product(one, other)]
    return min(every), one[1] * other[1], max(every)


def alone(value: float) -> Ends:
    return value, value, value


def worth_per_pack(one: Inputs) -> Ends:
    return times(one.ends("w"), one.ends("dm"))


def gain_per_pack(one: Inputs) -> Ends:
    low, likely, high = worth_per_pack(one)
    costs = [one.ends(name) for name in ("parts", "joining", "add-backs")]
    least, usual, most = (sum(cost[place] for cost in costs) for place in range(3))
    return low - most, likely - usual, high - least


def programme_value(one: Inputs) -> Ends:
    gains, spends = one.ends("g"), one.ends("I")
    low, high = (one.values.get(f"v {end}", 1.0) for end in ("low", "high"))
    spread = one["volume spread"]
    assert {low, high} <= {1.0, 1.0 - spread, 1.0 + spread}
    return (
        low * one.packs * gains[0] - spends[2],
        one.packs * gains[1] - spends[1],
        high * one.packs * gains[2] - spends[0],
    )


def expected_value(one: Inputs) -> Ends:
    if "dm" in one.values:
        return alone(one.packs * one["w"] * one["dm"])
    chances, saved, money, tools = map(one.numbered, ("r", "m", "c", "T"))
    assert chances.keys() == saved.keys() == money.keys() >= tools.keys()
    gain = sum(r * (one["w"] * saved[k] - money[k]) for k, r in chances.items())
    once = sum(chances[k] * spent for k, spent in tools.items())
    return alone(one.packs * gain - once - one["validation"])


def payback(one: Inputs) -> Ends:
    left, i = one["I"], one["i"]
    for year, packs in enumerate(one.volumes, 1):
        comes_in = packs * one["g"] / (1 + i) ** year
        if comes_in >= left:
            return alone(year - 1 + left / comes_in)
        left -= comes_in
    return alone(math.nan)


def break_even(one: Inputs) -> Ends:
    # Here the volumes of every year have to be listed.
    mean = sum(one.volumes) / len(one.volumes)
    return alone(mean * one["I"] / (one.packs * one["g"]))


def internal_rate(one: Inputs) -> Ends:
    """Give the interest at which the present value is that of the figure's own."""
    rate = one.figure.value / 100
    years = enumerate(one.volumes, 1)
    back = sum(n * one["g"] / (1 + rate) ** y for y, n in years)
    slope = abs(back) / (1 + rate)
    return alone(100 * (rate + (back - one["I"]) / slope))


def even_price(one: Inputs) -> Ends:
    once = one["I"] * one.recovery / one["V"]
    assert_allclose(one["I CRF / V"], once, rtol=1e-9, atol=1e-12)
    rest = one["joining that goes"] + one["old parts"] - once
    low, likely, high = (w * one["dm"] + rest for w in one.ends("w"))
    return min(low, high), likely, max(low, high)


def headroom(one: Inputs) -> Ends:
    low, likely, high = even_price(one)
    asked = one["saving asked for"]
    return low - asked, likely - asked, high - asked


def headroom_per_kg(one: Inputs) -> Ends:
    low, likely, high = one.ends("H")
    return low / one["m_new"], likely / one["m_new"], high / one["m_new"]


def less(symbol: str) -> Callable[[Inputs], Ends]:
    def recomputed(one: Inputs) -> Ends:
        low, likely, high = one.ends("H_0")
        return low - one[symbol], likely - one[symbol], high - one[symbol]

    return recomputed


def shared_price(one: Inputs) -> Ends:
    cost = one["old parts"] + one["parts"] + one["add-backs"]
    assert_allclose(one["c"], cost, rtol=1e-9)
    low, likely, high = (h - one["s"] * (h - cost) for h in one.ends("H_0"))
    return low, likely, high


def customer_part(one: Inputs) -> Ends:
    low, likely, high = (one["s"] * whole for whole in one.ends("H_0 - c"))
    return low, likely, high


def our_part(one: Inputs) -> Ends:
    low, likely, high = ((1 - one["s"]) * whole for whole in one.ends("H_0 - c"))
    return low, likely, high


def of_programme(part: Callable[[Inputs], Ends]) -> Callable[[Inputs], Ends]:
    def recomputed(one: Inputs) -> Ends:
        low, likely, high = (one.packs * end for end in part(one))
        return low, likely, high

    return recomputed


def battery(one: Inputs) -> tuple[Ends, Ends]:
    kwh = [e * one["R"] / (10_000 * one["u"]) for e in one.ends("e")]
    mass = [1_000 * energy / one["eps"] for energy in kwh]
    assert_allclose(one.ends("dE"), kwh, rtol=1e-9)
    assert_allclose(one.ends("g"), mass, rtol=1e-9)
    return (kwh[0], kwh[1], kwh[2]), (mass[0], mass[1], mass[2])


def derived_worth(one: Inputs) -> Ends:
    if one.figure.formula.startswith("V = 0"):
        return alone(0.0)
    columns = (*battery(one), one.ends("C"), one.ends("s"))
    low, likely, high = (
        kwh * cost * (1 + share) / (1 - loop)
        for kwh, loop, cost, share in zip(*columns, strict=True)
    )
    return low, likely, high


def battery_saved(one: Inputs) -> Ends:
    return battery(one)[1]


def range_gain(one: Inputs) -> Ends:
    low, likely, high = times(one.ends("e"), one.ends("dm"))
    return low / one["c"], likely / one["c"], high / one["c"]


def driver_saving(one: Inputs) -> Ends:
    annuity = (1 - (1 + one["i"]) ** -one["n"]) / one["i"]
    factor = one["D"] * one["p"] * annuity / (10_000 * one["eta_c"])
    low, likely, high = (factor * e for e in one.ends("e"))
    return low, likely, high


def target_worth(one: Inputs) -> Ends:
    low, likely, high = (w * one["target"] for w in one.ends("w"))
    return low, likely, high


def target_share(one: Inputs) -> Ends:
    low, likely, high = one.ends("gap")
    if low <= 0:
        return alone(100 * one["target"] / likely)
    share = 100 * one["target"]
    return share / high, share / likely, share / low


def least_worth(one: Inputs) -> Ends:
    spread = one.recovery / one["V"]
    per_pack = (one["tools"] + one["validation"]) * spread
    both = one["tools per pack"] + one["validation per pack"]
    assert_allclose(per_pack, both, rtol=1e-9)
    costs = one["parts"] + one["joining"] + one["add-backs"] + per_pack
    return alone(max(0.0, costs / one["dm"]))


def gap_left(one: Inputs) -> Ends:
    gap, saved = one.ends("gap"), one.ends("mass saved")
    return gap[0] - saved[2], gap[1] - saved[1], gap[2] - saved[0]


RECOMPUTED: Mapping[str, Callable[[Inputs], Ends]] = {
    "worth per pack": worth_per_pack,
    "gain per pack": gain_per_pack,
    "programme value": programme_value,
    "payback": payback,
    "programme break-even": break_even,
    "internal rate": internal_rate,
    "expected programme value": expected_value,
    "even price": even_price,
    "headroom": headroom,
    "headroom per kg": headroom_per_kg,
    "customer gain": less("p"),
    "shared price": shared_price,
    "customer part": customer_part,
    "our part": our_part,
    "customer part of programme": of_programme(customer_part),
    "our part of programme": of_programme(our_part),
    "derived worth": derived_worth,
    "battery saved": battery_saved,
    "range gain": range_gain,
    "driver saving": driver_saving,
    "target worth": target_worth,
    "target share": target_share,
    "least worth": least_worth,
    "gap left": gap_left,
}
BY_EVERY_YEAR = {"payback", "programme break-even", "internal rate"}
"""What needs the volumes of all years, which are not listed for many of them."""


def test_every_figure_is_recomputed_in_some_case() -> None:
    assert tuple(RECOMPUTED) == WORTH_KEYS
    for key in WORTH_KEYS:
        assert any(not explain_worth(case, key).missing for case in CASES.values())
    for key in WORTH_KEYS:
        figures = [explain_worth(case, key) for case in CASES.values()]
        if any(one.range_meaning for one in figures):
            assert any(one.low < one.value < one.high for one in figures), key


@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize("key", WORTH_KEYS)
def test_the_inputs_give_value_low_and_high(key: str, name: str) -> None:
    figure = explain_worth(CASES[name], key)
    inputs = Inputs(figure)
    if figure.missing or (name == "many years" and key in BY_EVERY_YEAR):
        assert figure.missing or len(inputs.volumes) == 12
        return
    given = np.array([figure.low, figure.value, figure.high])
    given[np.isnan(given)] = figure.value
    assert_allclose(given, RECOMPUTED[key](inputs), rtol=1e-9, atol=1e-9)


def test_a_loss_takes_more_packs_for_its_low_end() -> None:
    inputs = Inputs(explain_worth(CASES["at a loss"], "programme value"))
    assert inputs.ends("g")[0] < 0
    assert inputs["v low"] == 1 + RICH.volume_spread
    gain = Inputs(explain_worth(CASES["rich"], "programme value"))
    assert gain.ends("g")[2] > 0
    assert gain["v high"] == 1 + RICH.volume_spread


def test_no_symbol_stands_for_two_inputs() -> None:
    for key in WORTH_KEYS:
        for case in CASES.values():
            labels = [one.label for one in explain_worth(case, key).inputs]
            symbols = [label.partition(",")[0] for label in labels]
            assert len(symbols) == len(set(symbols)), (key, symbols)


def test_the_expected_value_is_less_where_releases_are_not_sure() -> None:
    sure = explain_worth(CASES["rich"], "expected programme value")
    whole = explain_worth(CASES["rich"], "programme value")
    assert_allclose(sure.value, whole.value, rtol=1e-9)
    risky = explain_worth(CASES["risky"], "expected programme value")
    assert risky.value < whole.value
    assert list(Inputs(risky).numbered("r").values()) == [0.6] * 3
    demo = explain_worth(CASES["demo"], "expected programme value")
    assert "by its chance" in demo.label
    assert len(Inputs(demo).numbered("c")) == 6
    assert len(Inputs(demo).numbered("T")) == 4
