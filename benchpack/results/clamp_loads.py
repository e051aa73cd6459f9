"""Clamp loads of screws: how much each clamps at least and at most, and what holds."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc.threads import proof_load_n, stress_area_mm2
from benchpack.calc.tightening import (
    least_preload_n,
    preload_at_torque_n,
    tightening_torque_nm,
    yield_preload_n,
)
from benchpack.model.study import Study
from benchpack.model.tightening_words import METHODS, TighteningMethod
from benchpack.results.clamp_screws import Screw

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

DEGREE = 0.9
"""Share of yield that is used where no torque is stated (VDI 2230-1)."""
BETTER_METHOD = next(method for method in METHODS if method.name == "torque and angle")
"""What a screw could be tightened by to guarantee more."""


@dataclass(frozen=True, slots=True)
class ClampLoad:
    """The clamp load of one screw: an estimate for comparing, not a joint design.

    Parameters
    ----------
    screw : Screw
        What it was worked out from.
    least_n, greatest_n : float
        Preload when all goes badly and when all goes well, N.
    torque_nm : float
        Torque that gives the greatest one at the study's friction, Nm.
    proof_load_n : float
        What the screw holds without lasting stretch, N.
    allowed_torque_nm : float
        Torque at which pull and twist together reach 0.9 of yield, Nm.
    better_least_n : float
        Least preload by torque and angle at the same greatest one, N.
    stress_area_mm2 : float
        Area that carries, mm2.
    """

    screw: Screw
    least_n: float
    greatest_n: float
    torque_nm: float
    proof_load_n: float
    allowed_torque_nm: float
    better_least_n: float
    stress_area_mm2: float

    @property
    def method(self) -> TighteningMethod:
        """How it is tightened, or taken to be."""
        return self.screw.method

    @property
    def utilisation(self) -> float:
        """Greatest preload over proof load."""
        return self.greatest_n / self.proof_load_n

    @property
    def gain(self) -> float:
        """Least preload by torque and angle over the present one, at least 1."""
        return max(1.0, self.better_least_n / self.least_n)

    def same_clamp_count(self, count: int) -> int:
        """Give how many by torque and angle guarantee the clamp of so many.

        Parameters
        ----------
        count : int
            Number of screws now.
        """
        return math.ceil(count / self.gain - 1e-9)


def clamp_loads(screws: Sequence[Screw], study: Study) -> list[ClampLoad]:
    """Work out the clamp loads of many screws at once.

    Parameters
    ----------
    screws : sequence of Screw
        The screws.
    study : Study
        Its friction counts as the least to be expected, so that the preload it gives
        is the greatest.
    """
    columns = {
        name: np.array([getattr(screw, name) for screw in screws], dtype=np.float64)
        for name in (
            "diameter_mm",
            "pitch_mm",
            "bearing_diameter_mm",
            "yield_mpa",
            "proof_mpa",
            "share",
            "torque_nm",
        )
    }
    diameter, pitch, share = (
        columns[name] for name in ("diameter_mm", "pitch_mm", "share")
    )
    at_yield = share * yield_preload_n(
        diameter,
        pitch,
        yield_stress_mpa=columns["yield_mpa"],
        thread_friction=study.thread_friction,
        degree=DEGREE,
    )
    rubbing: dict[str, ArrayLike] = {
        "diameter_mm": diameter,
        "pitch_mm": pitch,
        "bearing_diameter_mm": columns["bearing_diameter_mm"],
        "thread_friction": study.thread_friction,
        "head_friction": study.head_friction,
    }
    stated = preload_at_torque_n(columns["torque_nm"], **rubbing)
    greatest = np.where(np.isnan(stated), at_yield, stated)
    area = stress_area_mm2(diameter, pitch)
    factors = np.array([screw.method.factor for screw in screws], dtype=np.float64)
    results = np.stack(
        (
            least_preload_n(greatest, factors),
            greatest,
            tightening_torque_nm(greatest, **rubbing),
            share * proof_load_n(area, columns["proof_mpa"]),
            tightening_torque_nm(at_yield, **rubbing),
            least_preload_n(greatest, BETTER_METHOD.factor),
            area,
        ),
        axis=-1,
    )
    return [
        ClampLoad(screw, *row)
        for screw, row in zip(screws, results.tolist(), strict=True)
    ]
