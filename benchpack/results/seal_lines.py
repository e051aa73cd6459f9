"""The seal lines of a pack: what clamps each, and how far apart that may stand."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from benchpack.calc.seal_line import compression_loss_mm, greatest_pitch_mm
from benchpack.model.families import GasketKind, gasket_kind
from benchpack.model.library import Library
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.results.seal_flange import Flange, Flanges
from benchpack.results.seal_rows import (
    BONDING,
    Holding,
    counted_clamps,
    gasket_width_mm,
    holding_of,
    is_clamp,
    is_nut,
    is_seal_line,
    line_key,
    pair_of,
)

__all__ = ["Holding", "SealLine", "seal_lines"]

_LEAST_COVER = 0.25
"""A cover fills at least this share of the circle that its line would enclose."""


@dataclass(frozen=True, slots=True, eq=False)
class SealLine:
    """One seal line of a pack; NaN where a figure is not known.

    Parameters
    ----------
    joints : tuple of JointFacts
        Its rows: a line recorded in pieces of one designation is one line.
    holding : Holding
        What keeps it tight.
    kind : GasketKind or None
        Kind of gasket, None where the designation tells none.
    length_mm, gasket_width_mm : float
        Length of all its rows and width of the gasket.
    flanges : tuple of Flange
        What it lies between.
    clamps : tuple of JointFacts
        Screws that join the same two parts to clamp or seal.
    nuts : tuple of JointFacts
        Nuts that join the same two parts: they say how studs are tightened.
    count : int
        Number of screws.
    pitch_mm : float
        Present pitch, mm.
    allowed_mm : float
        Greatest pitch of the flange that gives way most, the other taken as rigid.
    allowed_both_mm : float
        Greatest pitch with the give of both flanges.
    loss_mm : float
        Compression lost midway between two screws at the present pitch, mm, by the
        flange that gives way most.
    """

    joints: tuple[JointFacts, ...]
    holding: Holding
    kind: GasketKind | None
    length_mm: float
    gasket_width_mm: float
    flanges: tuple[Flange, Flange]
    clamps: tuple[JointFacts, ...]
    nuts: tuple[JointFacts, ...]
    count: int
    pitch_mm: float
    allowed_mm: float = math.nan
    allowed_both_mm: float = math.nan
    loss_mm: float = math.nan

    @property
    def name(self) -> str:
        """Name of its first row."""
        return self.joints[0].joint.name

    @property
    def governing(self) -> Flange:
        """The flange that gives way most; an unknown one only where both are."""
        return min(self.flanges, key=_softest_first)

    @property
    def other(self) -> Flange:
        """The flange on the other side."""
        first, second = self.flanges
        return second if self.governing is first else first

    @property
    def bonds(self) -> bool:
        """True where the seal sticks to both flanges."""
        return self.kind in BONDING

    @property
    def covered_area_m2(self) -> float:
        """Area inside the line by the smaller cover on record, NaN where none fits."""
        circle_m2 = (self.length_mm / 1000) ** 2 / (4 * math.pi)
        areas = [
            flange.area_m2
            for flange in self.flanges
            if _LEAST_COVER * circle_m2 <= flange.area_m2 <= circle_m2
        ]
        return min(areas, default=math.nan)


def _softest_first(flange: Flange) -> float:
    stiffness = flange.stiffness_n_mm
    return math.inf if math.isnan(stiffness) else stiffness


def seal_lines(library: Library, inventory: Inventory) -> tuple[SealLine, ...]:
    """Find the seal lines of a pack.

    Parameters
    ----------
    library : Library
        Parts and materials.
    inventory : Inventory
        The joints of the pack.

    Returns
    -------
    tuple of SealLine
        Gaskets, sealant beads, and other lines whose role is to seal, in the order of
        their first row.
    """
    rows: dict[tuple[object, ...], list[JointFacts]] = {}
    clamps: dict[frozenset[str], list[JointFacts]] = {}
    nuts: dict[frozenset[str], list[JointFacts]] = {}
    for facts in inventory.facts:
        pair = pair_of(facts)
        if is_seal_line(facts):
            rows.setdefault(line_key(facts, pair), []).append(facts)
        elif "" not in pair:
            if is_clamp(facts):
                clamps.setdefault(pair, []).append(facts)
            if is_nut(facts):
                nuts.setdefault(pair, []).append(facts)
    flanges = Flanges(library, inventory.pack)
    lines = [
        _bare(
            tuple(held),
            counted_clamps(clamps.get(pair_of(held[0]), ())),
            tuple(nuts.get(pair_of(held[0]), ())),
            flanges,
        )
        for held in rows.values()
    ]
    return _computed(lines)


def _bare(
    rows: tuple[JointFacts, ...],
    clamps: tuple[JointFacts, ...],
    nuts: tuple[JointFacts, ...],
    flanges: Flanges,
) -> SealLine:
    """Give a line with what was recorded, its figures still to be computed."""
    first = rows[0]
    length_mm = sum(row.joint.count * row.length_each_mm for row in rows)
    kind = gasket_kind(first.kind, first.joint.designation)
    count = sum(clamp.joint.count for clamp in clamps)
    return SealLine(
        joints=rows,
        holding=holding_of(first, kind, clamps),
        kind=kind,
        length_mm=length_mm,
        gasket_width_mm=gasket_width_mm(first),
        flanges=flanges.pair(first.joint.joins, first.joint.to, length_mm=length_mm),
        clamps=clamps,
        nuts=nuts,
        count=count,
        pitch_mm=length_mm / count if count else math.nan,
    )


def _computed(lines: list[SealLine]) -> tuple[SealLine, ...]:
    """Compute the figures of all lines at once; absurd ones give infinity or NaN."""
    with np.errstate(all="ignore"):
        return _with_figures(lines)


def _with_figures(lines: list[SealLine]) -> tuple[SealLine, ...]:
    stiffness = np.array(
        [[flange.stiffness_n_mm for flange in line.flanges] for line in lines]
    ).reshape(-1, 2)
    figures = np.array([_pressures(line.kind) for line in lines]).reshape(-1, 3)
    low, high, loss = figures.T
    softest = np.fmin(stiffness[:, 0], stiffness[:, 1])
    # The two flanges give way one after the other: what they lose adds up.
    both = 1.0 / (1.0 / stiffness[:, 0] + 1.0 / stiffness[:, 1])
    pitch = np.array([line.pitch_mm for line in lines])
    allowed, with_both = (
        # The flange is taken as wide as the gasket; E t^3 stands for E with t = 1.
        greatest_pitch_mm(
            flange,
            1.0,
            flange_width_mm=1.0,
            gasket_width_mm=1.0,
            pressure_low_mpa=low,
            pressure_high_mpa=high,
            allowed_loss_mm=loss,
        )
        for flange in (softest, both)
    )
    lost = compression_loss_mm(
        softest,
        1.0,
        pitch_mm=pitch,
        flange_width_mm=1.0,
        gasket_width_mm=1.0,
        pressure_low_mpa=low,
        pressure_high_mpa=high,
    )
    columns = (allowed.tolist(), with_both.tolist(), lost.tolist())
    return tuple(
        replace(line, allowed_mm=one, allowed_both_mm=two, loss_mm=loss_mm)
        for line, one, two, loss_mm in zip(lines, *columns, strict=True)
    )


def _pressures(kind: GasketKind | None) -> tuple[float, float, float]:
    if kind is None:
        return math.nan, math.nan, math.nan
    return kind.pressure_low_mpa, kind.pressure_high_mpa, kind.allowed_loss_mm
