"""The program's table of processes holds what the shipped table holds, and no more."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from benchpack.model.process import PROCESS_FIELDS, PROCESS_NAMES, PROCESSES, process_of

DATASETS = Path(__file__).parents[3] / "datasets"

Row = dict[str, str]


def _read(name: str) -> list[Row]:
    with (DATASETS / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


ROWS = _read("processes.csv")


def test_processes_are_the_rows_of_the_table_both_ways() -> None:
    rows = [
        {
            field.header(currency="EUR"): float(cell) if field.is_numeric else cell
            for field in PROCESS_FIELDS
            if (cell := row[field.header(currency="EUR")])
        }
        for row in ROWS
    ]
    assert rows == [
        {
            field.header(currency="EUR"): value
            for field in PROCESS_FIELDS
            if (value := field.value_of(process)) is not None
        }
        for process in PROCESSES
    ]
    assert list(ROWS[0]) == [field.header(currency="EUR") for field in PROCESS_FIELDS]


def test_every_process_has_a_source_and_a_mark_and_money_is_recalled() -> None:
    for process in PROCESSES:
        assert len(process.source) > 20
        assert process.mark == "from memory"


@pytest.mark.parametrize(
    ("name", "cycle_s", "thousands", "scrap_pct", "rate_per_h", "weeks"),
    [
        ("die casting", (60, 130), (200, 700), (5, 12), (180, 450), (24, 36)),
        ("stamping", (4, 8), (400, 1500), (20, 45), (300, 800), (40, 60)),
        (
            "SMC compression moulding",
            (90, 180),
            (250, 700),
            (2, 5),
            (130, 220),
            (20, 30),
        ),
        ("injection moulding", (80, 150), (500, 1500), (1, 3), (150, 350), (26, 40)),
    ],
)
def test_the_ends_are_those_of_the_trade_reference(
    name: str,
    cycle_s: tuple[float, float],
    thousands: tuple[float, float],
    scrap_pct: tuple[float, float],
    rate_per_h: tuple[float, float],
    weeks: tuple[float, float],
) -> None:
    """Process data of the project's own trade reference, 9.2 (from memory)."""
    process = process_of(name)
    assert process is not None
    assert process.scrap is not None
    assert process.lead_weeks is not None
    cost, scrap = process.tooling.scaled(1e-3), process.scrap.scaled(100)
    assert (process.cycle_s.low, process.cycle_s.high) == cycle_s
    assert (cost.low, cost.high) == pytest.approx(thousands)
    assert (scrap.low, scrap.high) == pytest.approx(scrap_pct)
    rate = process.machine_rate_per_h
    assert (rate.low, rate.high) == rate_per_h
    assert (process.lead_weeks.low, process.lead_weeks.high) == weeks


def test_names_and_synonyms_mean_one_process_each() -> None:
    words = [w.casefold() for p in PROCESSES for w in (p.name, *p.synonyms)]
    assert len(set(words)) == len(words)
    for process in PROCESSES:
        for word in (process.name, *process.synonyms):
            assert process_of(word.upper()) is process
    assert process_of("carved by hand") is None
    assert process_of("") is None
    assert len(set(PROCESS_NAMES)) == len(PROCESSES)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("deep drawn, coated", "stamping"),
        ("extruded, friction stir welded", "extrusion"),
        ("die cast, machined", "die casting"),
        ("injection moulded, welded", "injection moulding"),
    ],
)
def test_processes_of_the_demo_are_understood(text: str, name: str) -> None:
    assert text in {row["process"] for row in _read("demo/parts.csv")}
    found = process_of(text)
    assert found is not None
    assert found.name == name


def test_volume_outside_of_the_window_does_not_suit() -> None:
    found = process_of("SMC compression moulding")
    assert found is not None
    assert [found.suits_volume(n) for n in (9999, 10_000, 120_000, 120_001)] == [
        False,
        True,
        True,
        False,
    ]
