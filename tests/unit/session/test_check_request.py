"""What is said of a file that is checked: everything once, and what it holds."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchpack.files.reading import Reading, read_any
from benchpack.session.check_request import all_problems, counts_text


def checked(folder: Path, text: str) -> tuple[Reading, str]:
    path = folder / "list.csv"
    path.write_text(text, encoding="utf-8")
    reading = read_any(path)
    return reading, counts_text(reading, all_problems(reading))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "pack,energy [kWh],mass [kg]\na,70,430\n",
            "1 packs, 0 parts, 0 joints; 0 errors, 0 warnings",
        ),
        (
            "pack,joint,mass each [g],family\na,a,2,nut\na,b,3,clip\nb,a,2,nut\n",
            "3 joints of 2 packs; 0 errors, 0 warnings",
        ),
        (
            "pack,part,count\na,lid,1\na,lid,1\n",
            "1 parts of 1 pack; 1 errors, 0 warnings",
        ),
    ],
)
def test_what_a_file_holds_is_counted(tmp_path: Path, text: str, said: str) -> None:
    assert checked(tmp_path, text)[1] == said


def test_nothing_is_said_twice(tmp_path: Path) -> None:
    reading, said = checked(
        tmp_path,
        "pack,joint,family,count,mass each [g]\na,big,hex screw,1,6000\n"
        "a,odd,magnet,3,\na,none,nut,0,2\n",
    )
    problems = all_problems(reading)
    assert len({(p.what, p.record) for p in problems}) == len(problems)
    for name in ("big", "odd", "none"):
        assert sum(name in (p.record, p.what.split(":")[0]) for p in problems) == 1
    assert said == "2 joints of 1 pack; 1 errors, 2 warnings"
