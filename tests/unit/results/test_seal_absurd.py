"""Absurd but allowed figures of a flange give a sentence, never a traceback."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.files.demo import demo_library
from benchpack.results.inventory import inventory
from benchpack.results.seal import seal_checks


@pytest.mark.parametrize("modulus_gpa", [1e-311, 1e-9, 1e3])
@pytest.mark.parametrize("thickness_mm", [1e-9, 1e4])
def test_any_flange_has_its_checks(modulus_gpa: float, thickness_mm: float) -> None:
    library = demo_library()
    study = library.studies[0]
    materials = tuple(replace(m, modulus_gpa=modulus_gpa) for m in library.materials)
    parts = {
        pack: tuple(replace(part, thickness_mm=thickness_mm) for part in own)
        for pack, own in library.parts.items()
    }
    odd = replace(library, materials=materials, parts=parts)
    stock = inventory(library, study, study.subject)
    found = seal_checks(odd, stock, study)
    assert len(found) == len(seal_checks(library, stock, study)) > 0
    assert all(check.words.strip() for check in found)
