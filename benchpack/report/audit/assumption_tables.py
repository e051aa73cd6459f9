"""Prices, processes and other tables of the sheet of assumptions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from benchpack.model.add_backs import AddBack
from benchpack.model.material import Material
from benchpack.model.process import Process
from benchpack.model.ranges import Range
from benchpack.model.words import RELATIVE_UNCERTAINTY, KnownBy
from benchpack.report.audit.assumption_rows import AssumptionRows
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import Format
from benchpack.results.joint_facts import USUAL_CURRENCY
from benchpack.results.proposal_trials import CommonRanges

_MONEY = (0.0, 1e9)


@dataclass(frozen=True, slots=True)
class ProcessCells:
    """Where the figures of a process stand; None where it has none.

    Parameters
    ----------
    cycle, machine, tooling : tuple of str
        Cells with the low, likely and high figure.
    operators, utilisation : str
        Cells with one figure.
    scrap : tuple of str or None
        Cells with the share of the material bought that is lost.
    life : str or None
        Cell with the parts that a tool set makes.
    """

    cycle: Triple
    machine: Triple
    tooling: Triple
    operators: str
    utilisation: str
    scrap: Triple | None
    life: str | None


@dataclass(frozen=True, slots=True)
class Used:
    """What a proposal draws on beside its study.

    Parameters
    ----------
    materials : mapping of str to (str, Material or None)
        By folded name: the name that parts give, and the material where there is one.
    processes : tuple of Process
        The processes whose rates count.
    add_backs : tuple of AddBack
        The add-backs in the sum.
    common : CommonRanges or None
        What the trials drew once for all changes.
    """

    materials: Mapping[str, tuple[str, Material | None]] = field(default_factory=dict)
    processes: tuple[Process, ...] = ()
    add_backs: tuple[AddBack, ...] = ()
    common: CommonRanges | None = None


def share_rows(rows: AssumptionRows) -> dict[KnownBy, str]:
    """Write how uncertain a mass is by how it is known, and give where it stands."""
    rows.draft.section("How well a mass is known")
    return {
        word: rows.single(
            f"uncertainty of a mass: {word}",
            share,
            unit="%",
            number_format=Format.SHARE,
            source="standard uncertainty as a share; common practice, no source",
            where="Packs, where no tolerance is recorded",
            limits=(0.0, 1.0),
        )
        for word, share in RELATIVE_UNCERTAINTY.items()
        if share is not None
    }


def price_rows(rows: AssumptionRows, used: Used) -> dict[str, str]:
    """Write the prices of materials, and give where they stand by folded name."""
    if used.materials:
        rows.draft.section("Prices of materials")
    return {
        key: rows.single(
            f"price of {name}",
            None if material is None else material.price_per_kg,
            unit="CUR/kg",
            source=_source_of(material),
            where="Part costs",
            limits=_MONEY,
        )
        for key, (name, material) in used.materials.items()
    }


def _source_of(material: Material | None) -> str:
    if material is None:
        return "the library has no such material: fill the price in"
    mark = f" [{material.mark}]" if material.mark else ""
    return f"{material.source}{mark}".strip() or "the library, no source written"


def add_back_rows(rows: AssumptionRows, used: Used) -> dict[str, Triple]:
    """Write the prices of add-backs, and give where they stand by name."""
    if used.add_backs:
        rows.draft.section("Prices of add-backs, made and fitted")
    is_usual = rows.currency == USUAL_CURRENCY
    return {
        back.key: rows.triple(
            f"price of {back.key}",
            back.price_per_kg if is_usual else None,
            unit="CUR/kg",
            source=f"{back.source} [{back.mark}]"
            if is_usual
            else f"usual prices are in {USUAL_CURRENCY}: fill yours in",
            where="Ledger",
            limits=_MONEY,
        )
        for back in used.add_backs
    }


def process_rows(rows: AssumptionRows, used: Used) -> dict[str, ProcessCells]:
    """Write the figures of processes, and give where they stand by name."""
    found = {}
    for process in used.processes:
        rows.draft.section(f"Process {process.name}")
        found[process.name] = _process(rows, process)
    return found


def _process(rows: AssumptionRows, process: Process) -> ProcessCells:
    name, of_process = process.name, f"{process.source} [{process.mark}]"
    said = iter((of_process, *["as above"] * 6))

    def three(title: str, value: Range, unit: str, form: Format) -> Triple:
        return rows.triple(
            f"{name}: {title}",
            value,
            unit=unit,
            number_format=form,
            source=next(said),
            where="Part costs",
            limits=_MONEY,
        )

    def one(title: str, value: float, unit: str, form: Format) -> str:
        return rows.single(
            f"{name}: {title}",
            value,
            unit=unit,
            number_format=form,
            source=next(said),
            where="Part costs",
            limits=_MONEY,
        )

    scrap, life = process.scrap, process.tool_life
    return ProcessCells(
        cycle=three("cycle time", process.cycle_s, "s", Format.TENTH),
        machine=three("machine rate", process.machine_rate_per_h, "CUR/h", Format.CENT),
        tooling=three("tool set", process.tooling, "CUR", Format.COUNT),
        operators=one("people", process.operators, "", Format.CENT),
        utilisation=one("utilisation", process.utilisation, "%", Format.SHARE),
        scrap=three("scrap", scrap, "%", Format.SHARE) if scrap else None,
        life=one("tool life", life.likely, "parts", Format.COUNT) if life else None,
    )


def common_rows(rows: AssumptionRows, common: CommonRanges) -> None:
    """Write what each trial drew once for all changes."""
    rows.draft.section("Drawn once in each trial")
    for title, drawn in (
        ("level of all prices", common.price_level),
        ("masses after a change", common.mass_bias),
    ):
        rows.triple(
            title,
            drawn,
            unit="factor",
            source="common practice, no source",
            where="chance of the target, in the program only",
            changes=False,
        )
