"""A study keeps its fingerprint in every form that a library is kept in."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from benchpack.errors import Severity
from benchpack.files.demo import demo_library
from benchpack.files.reading import read_any, write_any
from benchpack.files.workbook_writing import ExactNumber
from benchpack.model.library import Library
from benchpack.results.fingerprint import canonical_text, fingerprint_of
from tests.strategies.records import libraries

FORMS = ("library.benchpack", "package", "library.xlsx")
_IN_NO_WORKBOOK = ("\\ufffe", "\\uffff")


def read_back(library: Library, form: str) -> Library | None:
    """Write a library and read it again; None where a row was refused."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / form
        write_any(library, path, currency="EUR")
        reading = read_any(path)
    refused = [p for p in reading.problems if p.severity is Severity.ERROR]
    return None if refused else reading.library


@pytest.mark.parametrize("form", FORMS)
def test_every_study_of_the_demo(form: str) -> None:
    library = demo_library()
    again = read_back(library, form)
    assert again is not None
    expected = [fingerprint_of(library, study) for study in library.studies]
    assert [fingerprint_of(again, study) for study in again.studies] == expected
    assert len(set(expected)) == len(expected)


@pytest.mark.parametrize("form", FORMS[:2])
@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(library=libraries())
def test_any_study_in_the_forms_that_lose_nothing(form: str, library: Library) -> None:
    again = read_back(library, form)
    assert again is not None
    for study in library.studies:
        assert canonical_text(again, study) == canonical_text(library, study)


@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
@given(libraries())
def test_any_study_in_a_workbook(library: Library) -> None:
    """A workbook is read as a person's: blanks go, rows of totals are refused."""
    assume(library.studies and len(library.packs))
    again = read_back(library, FORMS[2])
    assume(again is not None)
    assert again is not None
    for before, after in zip(library.studies, again.studies, strict=True):
        text = canonical_text(library, before)
        assume(not any(sign in text for sign in _IN_NO_WORKBOOK))
        assert canonical_text(again, after) == text


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_workbook_gets_every_digit(value: float) -> None:
    assert float(f"{ExactNumber(value):.16G}") == value
