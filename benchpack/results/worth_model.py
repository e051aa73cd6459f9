"""The value of a programme as a function of what it is reckoned with."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.distributions import quantile_of_range
from benchpack.calc.worth import programme_npv
from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.model.worth_words import ValuedMass
from benchpack.results.proposal_trials import USUAL_COMMON
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import Programme

FloatArray = NDArray[np.float64]

RATE_WIDTH = 0.02
"""By which the interest may lie off either way (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Assumed:
    """One input of the value of a programme.

    Parameters
    ----------
    key : str
        Name by which it is asked for.
    label : str
        What it is, in words.
    unit : str
        Unit label with ``CUR`` for the currency; empty for a ratio.
    range : Range
        Its range; without width it is held fast.
    is_chance : bool
        True for a release: it comes, 1, or it does not, 0; `range` holds its chance.
    """

    key: str
    label: str
    unit: str
    range: Range
    is_chance: bool = False


@dataclass(frozen=True, slots=True)
class Term:
    """What one change adds to the value of a programme, likely figures.

    Parameters
    ----------
    name : str
        Name of the change.
    chance : float
        That it is released, with those that it needs.
    saved_kg : float
        Mass saved per pack.
    money : float
        Money per pack for parts, add-backs and joining.
    tooling : float
        Money spent once for tools.
    """

    name: str
    chance: float
    saved_kg: float
    money: float
    tooling: float


_NOTHING = 1e-9

SHARE_WORDS: Mapping[ValuedMass, str] = {
    ValuedMass.SHARE: "share captured",
    ValuedMass.PROPOSAL: "share of the proposal captured",
    ValuedMass.TARGET: "share of the target captured",
}
"""What the share is taken of; that of the study is of the gap, and of nothing else."""

COMMON_KEYS = (
    "worth",
    "share",
    "volume",
    "interest",
    "price level",
    "mass estimate",
    "tooling",
    "validation",
)
"""Keys of the inputs that are common to all changes, as rows in this order."""


class WorthModel:
    """The net present value of a programme, for arrays of its inputs.

    ``NPV = P(v, i) sum_k r_k (w s b dm_k - p m_k - j_k) - t T - V`` with the present
    packs P, releases r, worth w, share captured s, mass estimate b, price level p,
    part and add-back money m, joining money j, tools T of what is released, and
    validation V. A release has the chance of the change with those that it needs; that
    they fall together is not drawn. The sets of tools are those of the planned volume.
    Where no proposal is valued there is one saving without cost.

    Parameters
    ----------
    case : WorthCase
        With a programme.
    programme : Programme
        That of the case.
    """

    def __init__(self, case: WorthCase, programme: Programme) -> None:
        self._volumes = programme.volumes
        study, saving = case.study, case.saving
        of_proposal = saving.valued is ValuedMass.PROPOSAL and case.proposal is not None
        effects = case.proposal.effects if of_proposal and case.proposal else ()
        whole = saving.saved_kg or Range.exactly(0.0)
        share = 1.0 if saving.valued is not ValuedMass.SHARE else study.share_captured
        if effects:
            self.names = [one.name for one in effects]
            self._saved = np.array([one.saved_kg.likely for one in effects])
            self._priced = np.array(
                [(one.part_cost + one.add_back_cost).likely for one in effects]
            )
            self._joined = np.array([one.joining_cost.likely for one in effects])
            self._tools = np.array([one.tooling.likely for one in effects])
        else:
            self.names = [str(saving.valued)]
            # The whole gap, so that a share of nothing can still be raised.
            of_gap = saving.valued is ValuedMass.SHARE
            self._saved = np.array([case.gap.gap_kg if of_gap else whole.likely])
            self._priced = self._joined = self._tools = np.zeros(1)
        self._validation = saving.validation_cost.likely
        spread, rate = study.volume_spread, study.discount_rate
        low_rate = max(0.0, rate - RATE_WIDTH)
        commons = (
            Assumed(
                "worth", "worth per kilogram", "CUR/kg", Range(*study.worth_per_kg)
            ),
            Assumed("share", SHARE_WORDS[saving.valued], "", Range.exactly(share)),
            Assumed(
                "volume", "volume against plan", "", Range(1 - spread, 1, 1 + spread)
            ),
            Assumed(
                "interest", "interest", "1/a", Range(low_rate, rate, rate + RATE_WIDTH)
            ),
            Assumed("price level", "price level", "", self._price_level),
            Assumed("mass estimate", "mass saved against plan", "", _factor(whole)),
            Assumed("tooling", "tools against plan", "", _factor(saving.tooling)),
            Assumed(
                "validation",
                "validation against plan",
                "",
                _factor(saving.validation_cost),
            ),
        )
        releases = (
            Assumed(
                f"release {one.name}",
                f"release of {one.name}",
                "",
                Range(0.0, one.release_chance, 1.0)
                if 0 < one.release_chance < 1
                else Range.exactly(one.release_chance),
                is_chance=True,
            )
            for one in effects
        )
        self.inputs: tuple[Assumed, ...] = (*commons, *releases)

    @property
    def terms(self) -> tuple[Term, ...]:
        """What each change adds, in their order; none where no proposal is valued."""
        releases = [one for one in self.inputs if one.is_chance]
        if not releases:
            return ()
        columns = (self._saved, self._priced + self._joined, self._tools)
        return tuple(
            Term(name, one.range.likely, *figures)
            for name, one, *figures in zip(
                self.names,
                releases,
                *(column.tolist() for column in columns),
                strict=True,
            )
        )

    @property
    def base(self) -> float:
        """The value at all likely figures, each change by its chance."""
        return float(self.npv(self.likely[:, np.newaxis])[0])

    @property
    def likely(self) -> FloatArray:
        """The likely value of each input, (inputs,)."""
        return np.array([one.range.likely for one in self.inputs])

    @property
    def _price_level(self) -> Range:
        """Common to all money for parts and add-backs; nothing where there is none."""
        if not self._priced.any():
            return Range.exactly(1.0)
        return USUAL_COMMON.price_level

    def npv(self, inputs: FloatArray) -> FloatArray:
        """Give the net present value, (n,), from inputs of shape (inputs, n)."""
        worth, share, volume, rate, price, estimate, tools, validation = inputs[:8]
        released = inputs[8:]
        if not released.shape[0]:
            released = np.ones((1, inputs.shape[1]))
        packs = volume * programme_npv(1.0, self._volumes, discount_rate=rate)
        saved, priced, joined, spent = (
            column @ released
            for column in (self._saved, self._priced, self._joined, self._tools)
        )
        per_pack = worth * share * estimate * saved - price * priced - joined
        once = tools * spent + validation * self._validation
        return np.asarray(packs * per_pack - once, dtype=np.float64)

    def quantiles(self) -> list[Callable[[FloatArray], FloatArray]]:
        """Give each input as a function of a probability."""
        return [_quantile(one) for one in self.inputs]


def worth_model(case: WorthCase) -> WorthModel | Problem:
    """Give the value of a case as a function of what it is reckoned with.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    WorthModel or Problem
        Why there is none, as a sentence.
    """
    if isinstance(case.programme, Problem):
        return case.programme
    return WorthModel(case, case.programme)


def _quantile(one: Assumed) -> Callable[[FloatArray], FloatArray]:
    found = one.range
    if one.is_chance:
        chance = found.likely

        def release(probability: FloatArray) -> FloatArray:
            return np.where(probability < chance, 1.0, 0.0)

        return release
    return quantile_of_range(found.low, found.high, likely=found.likely)


def _factor(money: Range) -> Range:
    """Give a range as a factor on its likely figure, none where that is nothing."""
    likely = money.likely
    if not likely > _NOTHING:
        return Range.exactly(1.0)
    return Range(money.low / likely, 1.0, money.high / likely)
