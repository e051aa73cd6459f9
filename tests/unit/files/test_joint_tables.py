"""Joints in tables: what is refused is said with its row, what is odd is kept."""

from __future__ import annotations

from pathlib import Path

from benchpack.files.package import read_package

PACKS = "pack,energy [kWh],mass [kg]\nAvocet 81,81,498.1\n"
JOINTS = """pack,joint,family,designation,property class,count,length [mm],mass each [g]
Avocet 81,lid screws,flange screw,EN 1665 M6x20,8.8,84,,8.7
Avocet 81,no screws,flange screw,EN 1665 M6x20,8.8,0,,8.7
Avocet 81,half screws,flange screw,EN 1665 M6x20,8.8,1.5,,8.7
Avocet 81,less than none,clip,edge clip,,-4,,1.2
Avocet 81,no length,gasket,silicone foam 12x6,,1,0,
Avocet 81,some screws,flange screw,EN 1665 M6x20,8.8,many,,8.7
Avocet 81,odd,no such family,?? M0x,11.9,3,,
"""


def test_counts_that_cannot_be_are_said_with_their_row(tmp_path: Path) -> None:
    (tmp_path / "packs.csv").write_text(PACKS, "utf-8")
    (tmp_path / "joints.csv").write_text(JOINTS, "utf-8")
    reading = read_package(tmp_path)
    said = [(p.row, p.record, p.column, p.value, p.what) for p in reading.problems]
    assert said[:4] == [
        (3, "no screws", "count", "0", "count is 0."),
        (4, "half screws", "count", "1.5", "count is 1.5."),
        (5, "less than none", "count", "-4", "count is -4."),
        (6, "no length", "length [mm]", "0", "length is 0 mm."),
    ]
    assert said[4][:4] == (7, "some screws", "count", "many")
    assert len(said) == 5
    assert all(p.remedy and p.source == "joints.csv" for p in reading.problems)
    assert "above zero" in reading.problems[0].remedy


def test_what_no_list_knows_is_kept_as_it_was_written(tmp_path: Path) -> None:
    (tmp_path / "packs.csv").write_text(PACKS, "utf-8")
    (tmp_path / "joints.csv").write_text(JOINTS, "utf-8")
    first, odd = read_package(tmp_path).library.joints_of("Avocet 81")
    assert first.name == "lid screws"
    assert (odd.family, odd.designation, odd.property_class, odd.count) == (
        "no such family",
        "?? M0x",
        "11.9",
        3,
    )
