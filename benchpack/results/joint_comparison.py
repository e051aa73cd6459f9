"""The joining of two packs beside each other, and what fasteners are worth."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from benchpack.calc.densities import per_energy
from benchpack.calc.joining import joint_money
from benchpack.calc.worth import value_per_pack
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis
from benchpack.results.inventory import Inventory, Measure, Totals, totals_of
from benchpack.results.joint_facts import JointFacts
from benchpack.results.seal_rows import counted_clamps, pair_of
from benchpack.results.wording import listed


@dataclass(frozen=True, slots=True)
class ComparedRow:
    """One figure of both packs.

    Parameters
    ----------
    label : str
        What it is.
    unit : str
        Its unit, empty for a count and ``%`` for a share given as a fraction.
    subject, reference : float
        The figure of each pack, NaN where it is not known.
    difference : float
        Subject less reference, NaN where the two are not compared.
    note : str
        What has to be known about it.
    """

    label: str
    unit: str
    subject: float
    reference: float
    difference: float
    note: str = ""


@dataclass(frozen=True, slots=True)
class FastenerWorth:
    """What the fasteners of a pack weigh, are worth and cost.

    Parameters
    ----------
    fasteners : Totals
        Sums over screws, nuts, inserts, rivets, clips and other bought pieces.
    worth_likely : float
        Their mass at the study's likely worth per kilogram.
    piece_money : float
        What the pieces cost.
    time_money : float
        What labour and stations cost for their time.
    unknown_pieces : int
        Rows without the cost of a piece.
    """

    fasteners: Totals
    worth_likely: float
    piece_money: float
    time_money: float
    unknown_pieces: int


def compare_joints(subject: Inventory, reference: Inventory) -> tuple[ComparedRow, ...]:
    """Put the joining of two packs beside each other.

    Parameters
    ----------
    subject, reference : Inventory
        The packs, taken with one study.

    Returns
    -------
    tuple of ComparedRow
        Per pack, per kWh, per metre of seal and as a share of the structure. Where
        one energy is gross and the other usable there is no difference per kWh, and
        the row says why.
    """
    return tuple(
        ComparedRow(
            label=label,
            unit=unit.replace("CUR", subject.rates.currency),
            subject=(one := give(subject)),
            reference=(other := give(reference)),
            difference=math.nan if reason else one - other,
            note=" ".join(filter(None, (reason, *notes))),
        )
        for label, unit, give, measure in _ROWS
        for reason in [_not_compared(subject, reference) if "kWh" in unit else ""]
        for notes in [_notes(subject, reference, label, measure)]
    )


def _per_kwh(measure: Measure) -> Callable[[Inventory], float]:
    def give(inventory: Inventory) -> float:
        amount = inventory.totals.of(measure)
        return float(per_energy(amount, inventory.energy_kwh))

    return give


def _total(measure: Measure) -> Callable[[Inventory], float]:
    def give(inventory: Inventory) -> float:
        return inventory.totals.of(measure)

    return give


def _lines(inventory: Inventory) -> float:
    return inventory.totals.line_m


def _seal(inventory: Inventory) -> float:
    return inventory.seal_m


def _per_seal(inventory: Inventory) -> float:
    """Count screws and studs; a nut counts where no screw joins the same parts."""
    held: dict[frozenset[str], list[JointFacts]] = {}
    for facts in inventory.facts:
        if facts.clamps_seal:
            held.setdefault(pair_of(facts), []).append(facts)
    pieces = sum(f.pieces for rows in held.values() for f in counted_clamps(rows))
    return pieces / inventory.seal_m if inventory.seal_m > 0 else math.nan


def _of_structure(inventory: Inventory) -> float:
    structure_kg = inventory.structure_kg
    mass_kg = inventory.totals.of(Measure.MASS)
    return mass_kg / structure_kg if structure_kg > 0 else math.nan


def _carry_over(inventory: Inventory) -> float:
    pieces = inventory.totals.pieces
    return inventory.carry_over.pieces / pieces if pieces else math.nan


def _sizes(inventory: Inventory) -> float:
    return float(len(inventory.sizes))


def _drives(inventory: Inventory) -> float:
    return float(len(inventory.drives))


def _stations(inventory: Inventory) -> float:
    return math.nan if inventory.stations is None else float(inventory.stations)


_ROWS: tuple[tuple[str, str, Callable[[Inventory], float], Measure], ...] = (
    ("Pieces", "", _total(Measure.COUNT), Measure.COUNT),
    ("Pieces per kWh", "1/kWh", _per_kwh(Measure.COUNT), Measure.COUNT),
    ("Seams and beads", "m", _lines, Measure.COUNT),
    ("Seal", "m", _seal, Measure.COUNT),
    ("Screws on a seal, per metre", "1/m", _per_seal, Measure.COUNT),
    ("Mass", "kg", _total(Measure.MASS), Measure.MASS),
    ("Mass per kWh", "kg/kWh", _per_kwh(Measure.MASS), Measure.MASS),
    ("Share of the structure's mass", "%", _of_structure, Measure.MASS),
    ("Time", "s", _total(Measure.TIME), Measure.TIME),
    ("Time per kWh", "s/kWh", _per_kwh(Measure.TIME), Measure.TIME),
    ("Stations at the takt time", "", _stations, Measure.TIME),
    ("Money", "CUR", _total(Measure.MONEY), Measure.MONEY),
    ("Money per kWh", "CUR/kWh", _per_kwh(Measure.MONEY), Measure.MONEY),
    ("Pieces that have to stay", "%", _carry_over, Measure.COUNT),
    ("Distinct sizes", "", _sizes, Measure.COUNT),
    ("Distinct drives", "", _drives, Measure.COUNT),
)


def _not_compared(subject: Inventory, reference: Inventory) -> str:
    """Say why amounts per kWh are not compared, empty where they are."""
    bases = {subject.energy_basis, reference.energy_basis}
    if len(bases) < 2 or EnergyBasis.UNKNOWN in bases:
        return ""
    return (
        f"The energy of {subject.pack} is {subject.energy_basis}, that of "
        f"{reference.pack} {reference.energy_basis}: not compared."
    )


def _notes(
    subject: Inventory, reference: Inventory, label: str, measure: Measure
) -> tuple[str, ...]:
    packs = (subject, reference)
    found = [_lacking(pack, measure) for pack in packs]
    if "kWh" in label:
        unstated = tuple(
            pack.pack for pack in packs if pack.energy_basis is EnergyBasis.UNKNOWN
        )
        if unstated:
            found.append(
                f"Whether the energy of {listed(unstated)} is gross or usable is not "
                "recorded."
            )
    if "structure" in label:
        lacking = tuple(p.pack for p in packs if math.isnan(p.structure_kg))
        if lacking:
            found.append(f"The mass of the cells of {listed(lacking)} is not recorded.")
    if "seal" in label.casefold():
        lacking = tuple(pack.pack for pack in packs if not pack.seal_m > 0)
        if lacking:
            found.append(f"No length of seal is recorded for {listed(lacking)}.")
    return tuple(filter(None, found))


def _lacking(pack: Inventory, measure: Measure) -> str:
    if not pack.facts:
        return f"No joints of {pack.pack} are recorded."
    count = pack.totals.unknown(measure)
    if not count:
        return ""
    word = {Measure.MONEY: "cost or time"}.get(measure, str(measure))
    verb = "has" if count == 1 else "have"
    return f"{count} of {pack.totals.rows} rows of {pack.pack} {verb} no {word}."


def fastener_worth(inventory: Inventory, study: Study) -> FastenerWorth:
    """Say what all fasteners of a pack weigh, are worth as mass, and cost.

    Parameters
    ----------
    inventory : Inventory
        The joints of the pack.
    study : Study
        Worth per kilogram, and what time costs.
    """
    held = [facts for facts in inventory.facts if facts.is_fastener]
    totals = totals_of(held)
    likely = value_per_pack(totals.of(Measure.MASS), study.worth_likely_per_kg)
    timed = [facts for facts in held if not math.isnan(facts.seconds)]
    costs = [facts.joint.count * facts.cost_each for facts in held]
    known = [cost for cost in costs if not math.isnan(cost)]
    time_money = joint_money(
        [facts.joint.count for facts in timed],
        piece_cost=0.0,
        time_each_s=[facts.time_each_s for facts in timed],
        labour_rate_per_h=study.labour_rate_per_h,
        station_rate_per_h=study.station_rate_per_h,
    )
    return FastenerWorth(
        fasteners=totals,
        worth_likely=float(likely),
        piece_money=math.fsum(known) if known or not held else math.nan,
        time_money=math.fsum(time_money) if timed or not held else math.nan,
        unknown_pieces=len(costs) - len(known),
    )
