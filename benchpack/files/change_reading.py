"""What a table of changes points to and does not find."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from benchpack.errors import Problem, Severity
from benchpack.files.record_reading import Rows
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.study import Study


@dataclass(frozen=True, slots=True)
class Subjects:
    """What the subjects of the studies are made of.

    Parameters
    ----------
    subjects : mapping of str to str
        Subject by study.
    parts, joints : mapping of str to set of str
        Names by pack; of a pack that is not taken apart nothing is asked.
    """

    subjects: Mapping[str, str] = field(default_factory=dict)
    parts: Mapping[str, frozenset[str]] = field(default_factory=dict)
    joints: Mapping[str, frozenset[str]] = field(default_factory=dict)

    @classmethod
    def of(
        cls,
        studies: tuple[Study, ...],
        parts: tuple[Part, ...],
        joints: tuple[Joint, ...],
    ) -> Subjects:
        """Give what the subjects of some studies are made of."""
        subjects = {study.name: study.subject for study in studies}
        wanted = frozenset(subjects.values())
        return cls(subjects, _names(parts, wanted), _names(joints, wanted))


def _names(
    records: tuple[Part, ...] | tuple[Joint, ...], packs: frozenset[str]
) -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for record in records:
        if record.pack in packs:
            found.setdefault(record.pack, set()).add(record.name)
    return {pack: frozenset(names) for pack, names in found.items()}


def doubt_names(rows: Rows, subjects: Subjects) -> None:
    """Warn of parts, joints and changes that a change names and that are not there.

    Parameters
    ----------
    rows : Rows
        The rows of a table of changes.
    subjects : Subjects
        What there is to be named. What other changes bring may be named as well.
    """
    studies = rows.values["study"].tolist()
    brought: dict[str, set[str]] = {study: set() for study in studies}
    changes: dict[str, set[str]] = {study: set() for study in studies}
    intos = _column(rows, "into") or [""] * len(rows)
    named = zip(studies, intos, rows.values["name"].tolist(), strict=True)
    for study, into, name in named:
        brought[study].add(into)
        changes[study].add(name)
    for at, study in enumerate(studies):
        pack = subjects.subjects.get(study, "")
        for column, kind, known in (
            ("parts", "part", subjects.parts.get(pack)),
            ("joints", "joint", subjects.joints.get(pack)),
        ):
            if known is None:
                continue
            for name in _missing(rows, column, at, known | brought[study]):
                rows.add(at, column, _doubt(f"{pack} has no {kind} {name!r}."))
        for column in ("requires", "excludes"):
            for name in _missing(rows, column, at, changes[study]):
                rows.add(at, column, _doubt(f"{study} has no change {name!r}."))


def _column(rows: Rows, name: str) -> list[str] | None:
    return rows.values[name].tolist() if name in rows.values else None


def _missing(
    rows: Rows, column: str, at: int, known: frozenset[str] | set[str]
) -> Iterator[str]:
    if column in rows.values:
        yield from (name for name in rows.values[column][at] if name not in known)


def _doubt(what: str) -> Problem:
    remedy = "Correct the name, or add what is missing."
    return Problem(what, remedy, severity=Severity.WARNING)
