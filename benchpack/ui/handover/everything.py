"""All files of a hand-over in one folder: planned first, then written together."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from benchpack.errors import CancelledError
from benchpack.files.staging import staged
from benchpack.ui.handover.handed_files import FILES, HandedFile
from benchpack.ui.handover.handing import Handing
from benchpack.ui.tasks import Token

_ENDINGS = (".png", ".svg")
_INTERNAL = (
    "Charts of cost and programme are for internal use and were left out; workbook, "
    "tables and bundle hold costs."
)


@dataclass(frozen=True, slots=True)
class Planned:
    """What one step writes.

    Parameters
    ----------
    names : tuple of str
        Names of the files.
    words : str
        What is going on while it is written.
    write : callable
        Writes them into a folder.
    """

    names: tuple[str, ...]
    words: str
    write: Callable[[Path], None]


@dataclass(frozen=True, slots=True)
class Plan:
    """All that is to be written.

    Parameters
    ----------
    steps : tuple of Planned
        What is written, in order.
    left_out : tuple of str
        Why the rest is not.
    """

    steps: tuple[Planned, ...]
    left_out: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Names of all files."""
        return tuple(name for step in self.steps for name in step.names)

    def there_already(self, folder: Path) -> tuple[str, ...]:
        """Give the names of those that the folder holds already."""
        return tuple(name for name in self.names if (folder / name).exists())


def make_plan(handing: Handing, stem: str) -> Plan:
    """Work out what there is to write of a study.

    Parameters
    ----------
    handing : Handing
        The hand-over.
    stem : str
        Name of the study as it can stand in a file's name.

    Raises
    ------
    DataError
        When there is nothing to compare.
    """
    results = handing.results
    reasons = [(file, file.lacks(results)) for file in FILES]
    files = [_file_step(handing, file, stem) for file, reason in reasons if not reason]
    left_out = [reason for _, reason in reasons if reason]
    if handing.is_outward:
        left_out.append(_INTERNAL)
    return Plan((*files, *_chart_steps(handing, stem)), tuple(left_out))


def write_plan(plan: Plan, folder: Path, token: Token) -> None:
    """Write everything into a folder, or nothing where it is stopped or fails.

    Parameters
    ----------
    plan : Plan
        What is written.
    folder : Path
        Where to; files of the same names are replaced.
    token : Token
        Told how far it is; asked between files whether to stop.

    Raises
    ------
    CancelledError
        When it was stopped.
    DataError
        When a file cannot be written.
    """
    with staged(folder) as stage:
        for done, step in enumerate(plan.steps):
            if token.cancelled():
                raise CancelledError(str(folder))
            token.progress(done, len(plan.steps), step.words)
            step.write(stage)
        if token.cancelled():
            raise CancelledError(str(folder))


def _file_step(handing: Handing, file: HandedFile, stem: str) -> Planned:
    names = file.names(stem)

    def write(folder: Path) -> None:
        file.write(handing, folder / names[0])

    return Planned(names, file.words, write)


def _chart_steps(handing: Handing, stem: str) -> Iterator[Planned]:
    for chart in handing.charts:
        names = tuple(f"{stem} chart, {chart.name}{ending}" for ending in _ENDINGS)
        draw = partial(handing.draw, chart)
        words = f"Drawing the chart, {chart.name}"
        yield Planned(names, words, partial(_draw_all, draw, names))


def _draw_all(draw: Callable[[Path], None], names: Sequence[str], folder: Path) -> None:
    for name in names:
        draw(folder / name)
