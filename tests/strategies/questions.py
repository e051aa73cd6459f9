"""Hypothesis strategies for questions that a library can answer, or cannot."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.boundary import UNKNOWN_BOUNDARY, Boundary, Weighed
from benchpack.model.library import Library, by_pack
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem
from tests.strategies.records import names, studies

_ITEMS = ("cells", "coolant", "bottom shield", "onboard charger", "lid")
_ROUND_ENERGIES = (0.5, 70.0, 70.0004, 74.4, 80.0, 104.1)
_ROUND_MASSES = (0.2, 460.0, 460.02, 470.0, 525.5, 99_000.0)


@cache
def _boundaries() -> SearchStrategy[Boundary]:
    states = st.dictionaries(
        st.sampled_from(_ITEMS), st.sampled_from((Weighed.IN, Weighed.OUT))
    )
    masses = st.dictionaries(st.sampled_from(_ITEMS), st.floats(0, 60).map(abs))
    return st.just(UNKNOWN_BOUNDARY) | st.builds(Boundary, states, masses)


@st.composite
def _packs(draw: st.DrawFn) -> Pack:
    mass_kg = draw(st.sampled_from(_ROUND_MASSES) | st.floats(0.1, 2000))
    tolerances = st.none() | st.floats(0, 50).map(abs)
    return Pack(
        draw(names()),
        draw(st.sampled_from(_ROUND_ENERGIES) | st.floats(0.1, 500)),
        mass_kg,
        energy_basis=draw(st.sampled_from(EnergyBasis)),
        energy_tolerance_kwh=draw(tolerances),
        mass_known_by=draw(st.sampled_from(KnownBy)),
        mass_tolerance_kg=draw(tolerances),
        cells_mass_kg=draw(st.none() | st.floats(0.01, 1).map(lambda s: s * mass_kg)),
        boundary=draw(_boundaries()),
        state_of_health_pct=draw(st.none() | st.floats(50, 105)),
        voltage_v=draw(st.none() | st.floats(12, 1500)),
        chemistry=draw(st.sampled_from(("", "LFP", "NMC 811", "nmc 622"))),
        year=draw(st.none() | st.integers(1995, 2050)),
    )


@st.composite
def _parts(draw: st.DrawFn, owners: list[str]) -> Part:
    return Part(
        draw(st.sampled_from(owners)),
        draw(st.sampled_from(("coolant", "Bottom shield", "cell", "tray"))),
        subsystem=draw(st.sampled_from(Subsystem)),
        count=draw(st.integers(1, 200)),
        mass_each_kg=draw(st.none() | st.floats(0, 3).map(abs)),
        known_by=draw(st.sampled_from(KnownBy)),
    )


@st.composite
def questions(draw: st.DrawFn) -> tuple[Library, Study]:
    """Libraries of one to seven packs and a study of two of them.

    Energies, masses, tolerances, boundaries, cells and parts may all be unknown or at
    odds; now and then the reference is the subject or is not there.
    """
    rows = draw(
        st.lists(_packs(), min_size=1, max_size=7, unique_by=lambda pack: pack.name)
    )
    found = [pack.name for pack in rows]
    parts = draw(st.lists(_parts(found), max_size=8))
    library = Library(PackTable.from_packs(rows), parts=by_pack(parts))
    study = draw(studies())
    chosen: dict[str, Any] = {
        "subject": found[0],
        "reference": draw(st.sampled_from((found[-1], found[-1], found[0], ""))),
        "peers": draw(st.just(()) | st.just(tuple(found[:-1]))),
    }
    return library, replace(study, **chosen)
