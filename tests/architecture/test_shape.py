"""The shape of the code: layers, what loads when, sizes, names."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "benchpack"
SOURCES = sorted(PACKAGE.rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))


def loaded_by(code: str) -> set[str]:
    """Give the modules that a fresh interpreter has loaded after some code."""
    script = f"{code}\nimport sys\nprint('\\n'.join(sys.modules))"
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
    )
    return set(done.stdout.split())


def test_import_contracts_hold() -> None:
    done = subprocess.run(
        [Path(sys.executable).with_name("lint-imports"), "--no-cache"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize(
    "module",
    [
        "benchpack.session.document",
        "benchpack.session.handover",
        "benchpack.report.headline",
        "benchpack.report.gap_charts",
        "benchpack.files.reading",
    ],
)
def test_everything_below_the_window_runs_without_qt(module: str) -> None:
    assert not {"PySide6", "pyqtgraph"} & loaded_by(f"import {module}")


def test_the_command_line_starts_light() -> None:
    heavy = {"PySide6", "numpy", "pandas", "pint", "scipy", "sqlalchemy"}
    assert not heavy & loaded_by("import benchpack.cli")


def test_pint_loads_on_first_need_only() -> None:
    assert "pint" not in loaded_by("import benchpack.units.parsing")


def test_opening_the_window_loads_nothing_it_does_not_use(tmp_path: Path) -> None:
    code = (
        "import os\n"
        f"os.environ['BENCHPACK_HOME'] = {str(tmp_path)!r}\n"
        "os.environ['QT_QPA_PLATFORM'] = 'offscreen'\n"
        "from benchpack.ui.app import make_application, make_window\n"
        "from benchpack.session.opening import open_demo, Opened\n"
        "open_demo().close()\n"
    )
    start = (
        "import os\n"
        f"os.environ['BENCHPACK_HOME'] = {str(tmp_path)!r}\n"
        "os.environ['QT_QPA_PLATFORM'] = 'offscreen'\n"
        "from benchpack.ui.app import make_application, make_window\n"
        "from benchpack.session.opening import open_demo, Opened\n"
        "app = make_application()\n"
        "window = make_window(Opened(open_demo()))\n"
        "window.show()\n"
        "app.processEvents()\n"
        "window.close()\n"
    )
    loaded_by(code)
    modules = loaded_by(start)
    unwanted = {
        "python_calamine",
        "xlsxwriter",
        "contourpy",
        "pypdf",
        "scipy.stats",
        "pint",
        "sqlalchemy",
    }
    assert not unwanted & modules


@pytest.mark.parametrize(
    "path", [*SOURCES, *TESTS], ids=lambda path: str(path.relative_to(ROOT))
)
def test_files_stay_readable(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 400


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_lambda_is_connected_to_a_signal(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found = [
        node.lineno
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr == "connect"
        and any(isinstance(argument, ast.Lambda) for argument in node.args)
    ]
    assert not found


def test_names_say_what_is_inside() -> None:
    vague = re.compile(r"^(utils?|helpers?|common|managers?|misc)$")
    assert not [path for path in [*SOURCES, *TESTS] if vague.match(path.stem)]


def test_the_top_level_is_the_agreed_one() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], capture_output=True, text=True, check=True, cwd=ROOT
    ).stdout.splitlines()
    top = {name.split("/")[0] for name in listed}
    agreed = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "benchpack",
        "resources",
        "datasets",
        "tests",
    }
    assert {name for name in top if not name.startswith(".")} <= agreed
