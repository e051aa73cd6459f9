"""A request for gaps as it comes from the command line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from benchpack.errors import DataError, Problem, RequestError
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.results.results import Results, compute
from benchpack.session.pack_names import lacking_pack
from benchpack.units.parsing import parse_number


@dataclass(frozen=True, slots=True)
class GapsRequest:
    """What was asked for.

    Parameters
    ----------
    subject : str
        Name of the subject.
    references : tuple of str
        Names of the references; empty for every other pack.
    basis : str
        Basis as on the command line.
    worth_text : str
        ``low:likely:high`` per kilogram, or one figure; empty for the study's.
    currency : str
        Currency code; empty for the study's.
    """

    subject: str
    references: tuple[str, ...] = ()
    basis: str = "equal-energy"
    worth_text: str = ""
    currency: str = ""


def answer(
    library: Library, request: GapsRequest
) -> tuple[Results | None, tuple[Problem, ...]]:
    """Compute the gaps that are asked for.

    Parameters
    ----------
    library : Library
        The records.
    request : GapsRequest
        What is asked for.

    Returns
    -------
    tuple
        The results, None when nothing could be compared, and the problems of the
        data that the request runs into.

    Raises
    ------
    RequestError
        When the worth or the currency cannot be so, or the subject is named as a
        reference.
    """
    if request.subject in request.references:
        raise RequestError(
            f"{request.subject!r} is the subject: name other packs as references"
        )
    names = [request.subject, *request.references]
    lacking = [name for name in names if not library.packs.has(name)]
    problems = [
        lacking_pack(library, name, purpose="to compare")
        for name in dict.fromkeys(lacking)
    ]
    if request.subject in lacking:
        return None, tuple(problems)
    named = dict.fromkeys(request.references)
    references = [name for name in named if name not in lacking]
    if request.references and not references:
        return None, tuple(problems)
    study = _study(library, request, references)
    results = compute(library, study, references=references or None)
    if results.comparison is not None and request.references:
        problems.extend(_uncounted(results, references))
    return results, tuple(problems)


def _study(library: Library, request: GapsRequest, references: Sequence[str]) -> Study:
    stored = library.studies[0] if library.studies else Study(currency="CUR")
    others = [n for n in library.packs.names[:2].tolist() if n != request.subject]
    reference = references[0] if references else (others or [""])[0]
    try:
        study = replace(
            stored,
            subject=request.subject,
            reference=reference,
            peers=(),
            basis=Basis.from_option(request.basis),
        )
        if request.currency:
            _check_currency(library, request, stored.currency)
            study = replace(study, currency=request.currency)
        if request.worth_text:
            low, likely, high = parse_worth(request.worth_text)
            study = replace(
                study,
                worth_low_per_kg=low,
                worth_likely_per_kg=likely,
                worth_high_per_kg=high,
                worth_reason="given on the command line",
            )
    except DataError as error:
        raise RequestError(str(error)) from error
    return study


def _check_currency(library: Library, request: GapsRequest, stored: str) -> None:
    """Refuse to call the worth of a stored study by another currency's name."""
    renamed = bool(library.studies) and stored != request.currency
    if renamed and not request.worth_text:
        raise RequestError(
            f"the worth in the file is in {stored} and there are no exchange rates: "
            f"give --worth in {request.currency} too"
        )


def parse_worth(text: str) -> tuple[float, float, float]:
    """Read a worth per kilogram, ``2:3:6`` or ``3``.

    Parameters
    ----------
    text : str
        Low, likely and high separated by colons, or one figure for all three.

    Raises
    ------
    RequestError
        When it is neither.
    """
    words = text.split(":")
    if len(words) not in (1, 3):
        raise RequestError(f"worth {text!r}: give low:likely:high, 2:3:6 for instance")
    try:
        numbers = [parse_number(word) for word in words]
    except DataError as error:
        raise RequestError(f"worth {text!r}: {error}") from error
    low, likely, high = numbers if len(numbers) == 3 else numbers * 3
    return low, likely, high


def _uncounted(results: Results, references: Sequence[str]) -> list[Problem]:
    """Give a problem for each named reference whose gap cannot be counted."""
    comparison = results.comparison
    if comparison is None:
        return []
    problems = []
    for name in references:
        place = comparison.place(name)
        if place is None or not np.isnan(comparison.gap_kg[place]):
            continue
        one = compute(results.library, replace(results.study, reference=name))
        if one.missing is not None:
            problems.append(one.missing)
    return list(dict.fromkeys(problems))
