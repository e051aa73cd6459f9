"""The demo shows what the seal check says: most hold, one wants a look, one fails."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from benchpack.files.reading import read_any
from benchpack.results.check import Check, Grade
from benchpack.results.inventory import inventory
from benchpack.results.seal import seal_checks

DEMO = Path(__file__).parents[3] / "datasets" / "demo"
PACKS = ("Avocet 81", "Dunlin 74", "Turnstone 68")


def demo_checks() -> dict[str, tuple[Check, ...]]:
    library = read_any(DEMO).library
    study = library.first_study()
    return {
        pack: seal_checks(library, inventory(library, study, pack), study)
        for pack in PACKS
    }


def test_one_seal_fails_one_wants_a_look_and_the_others_hold() -> None:
    checks = [check for held in demo_checks().values() for check in held]
    counted = Counter(check.grade for check in checks)
    assert counted[Grade.GOOD] >= 6
    assert [c.record for c in checks if c.grade is Grade.FAIL] == [
        "service cover gasket"
    ]
    assert [c.record for c in checks if c.grade is Grade.LOOK] == ["lid gasket"]


def test_every_clamped_seal_of_the_demo_can_be_judged() -> None:
    for held in demo_checks().values():
        unjudged = [check for check in held if check.grade is Grade.NONE]
        assert not [check.remedy for check in unjudged if check.remedy]
        assert len(held) > len(unjudged)
