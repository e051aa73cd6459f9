"""What is edited is there after the worst end, and signals do not wear Python out."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from benchpack.session.opening import open_library

pytestmark = pytest.mark.e2e

EDIT_AND_DIE = """
import os, signal, sys
from pathlib import Path
from benchpack.session.opening import open_last
from benchpack.session.settings import load_settings
from benchpack.ui.app import make_application, make_window
app = make_application()
window = make_window(open_last(load_settings()))
window.show()
app.processEvents()
window.headline.worth.setValue(7.25)
print(window.workspace.document.path, flush=True)
os.kill(os.getpid(), getattr(signal, "SIGKILL", signal.SIGTERM))
"""

EMIT = """
import sys
from PySide6.QtCore import QCoreApplication, QObject, Signal
class Source(QObject):
    changed = Signal(object, bool)
app = QCoreApplication([])
source = Source()
seen = []
source.changed.connect(lambda *values: seen.append(len(values)))
before = sys.getrefcount(None)
for _ in range(5000):
    source.changed.emit(None, True)
assert len(seen) == 5000
print(sys.getrefcount(None) - before)
"""


def run(code: str, home: Path) -> subprocess.CompletedProcess[str]:
    environment = {
        **os.environ,
        "BENCHPACK_HOME": str(home),
        "QT_QPA_PLATFORM": "offscreen",
    }
    return subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=False,
        env=environment,
    )


def test_an_edit_survives_a_kill(tmp_path: Path) -> None:
    done = run(EDIT_AND_DIE, tmp_path)
    # Where there is no such signal, the process is ended by its code alone.
    assert done.returncode in (-9, signal.SIGTERM), done.stderr
    document = open_library(Path(done.stdout.strip()))
    assert document.state.study.worth_likely_per_kg == 7.25
    assert document.state.study.subject == "Avocet 81"
    document.close()


def test_five_thousand_signals_leave_none_alone(tmp_path: Path) -> None:
    """PySide6 6.12.0 on Python 3.11 loses a reference to None at each emission."""
    done = run(EMIT, tmp_path)
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > -100
