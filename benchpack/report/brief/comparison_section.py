"""The packs beside each other: energies, masses, gaps, and on what boundary."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from benchpack.model.words import Basis
from benchpack.report.brief.blocks import Block, Column, Paragraph, Table
from benchpack.report.display import Display
from benchpack.results.comparison import Comparison
from benchpack.results.results import Results
from benchpack.results.uncounted import why_no_gap
from benchpack.results.wording import listed
from benchpack.units.formatting import (
    UNKNOWN,
    format_density,
    format_energy,
    format_mass,
    format_range,
)

_MOST_PACKS = 6
_SHOWN_ANYWAY = (Basis.AS_WEIGHED, Basis.EQUAL_ENERGY)


def comparison_blocks(results: Results) -> tuple[Block, ...]:
    """Give the table of packs and the gap to the reference on every basis.

    Parameters
    ----------
    results : Results
        The gap.
    """
    comparison = results.comparison
    if comparison is None or len(comparison) == 0:
        problem = results.missing
        text = f"{problem.what} {problem.remedy}".strip() if problem else ""
        return (Paragraph(text or "There is no other pack.", "note"),)
    writer = _Writer(results, comparison)
    return (writer.table(), Paragraph(" ".join(writer.notes()), "note"))


class _Writer:
    """Writes one comparison."""

    def __init__(self, results: Results, comparison: Comparison) -> None:
        self.results = results
        self.comparison = comparison
        self.display = Display(results.study)
        self.style = self.display.style
        self.bases = [*_SHOWN_ANYWAY]
        if comparison.basis not in self.bases:
            self.bases.append(comparison.basis)
        self.places = self._places()

    def _places(self) -> list[int]:
        """Give the reference first, then the packs nearest in energy."""
        comparison, place = self.comparison, self.results.place
        away = np.abs(comparison.reference_energy_kwh - comparison.subject.energy_kwh)
        order: list[int] = np.argsort(away, kind="stable").tolist()
        if place is not None:
            order = [place, *(one for one in order if one != place)]
        return order[:_MOST_PACKS]

    def table(self) -> Table:
        mass = self.display.mass_unit
        columns = (
            Column("pack"),
            Column("energy", "kWh", "right"),
            Column("counted"),
            Column("mass", mass, "right"),
            Column("density", "Wh/kg", "right"),
            *(Column(str(basis), mass, "right") for basis in self.bases),
            Column("on the scale"),
        )
        rows = [self._subject(), *map(self._row, self.places)]
        return Table("", columns, tuple(rows), groups=frozenset({0}))

    def _subject(self) -> tuple[str, ...]:
        subject = self.comparison.subject
        return (
            f"{subject.name} (subject)",
            format_energy(subject.energy_kwh, style=self.style, with_unit=False),
            str(subject.energy_basis),
            self._mass(subject.mass_kg),
            self._density(subject.energy_kwh, subject.mass_kg),
            *("" for _ in self.bases),
            "as weighed" if subject.boundary.is_known else "not recorded",
        )

    def _row(self, place: int) -> tuple[str, ...]:
        comparison = self.comparison
        pack = self.results.library.packs[int(comparison.rows[place])]
        mass_kg = float(comparison.reference_mass_kg[place])
        is_reference = place == self.results.place
        return (
            f"{pack.name} (reference)" if is_reference else pack.name,
            format_energy(pack.energy_kwh, style=self.style, with_unit=False),
            str(pack.energy_basis),
            self._mass(mass_kg),
            self._density(pack.energy_kwh, mass_kg),
            *(self._gap(basis, place) for basis in self.bases),
            self._boundary(place, is_recorded=pack.boundary.is_known),
        )

    def _mass(self, mass_kg: float | None, *, signed: bool = False) -> str:
        return format_mass(mass_kg, style=self.style, with_unit=False, signed=signed)

    def _density(self, energy_kwh: float, mass_kg: float) -> str:
        density = 1000 * energy_kwh / mass_kg if mass_kg > 0 else math.nan
        return format_density(density, style=self.style, with_unit=False)

    def _gap(self, basis: Basis, place: int) -> str:
        comparison = self.comparison
        value = float(comparison.by_basis(basis)[place])
        if basis is not comparison.basis or math.isnan(value):
            return self._mass(value, signed=True)
        factor = comparison.uncertain.coverage_factor(place)
        half = factor * float(comparison.gap_u_kg[place])
        if math.isnan(half) or half == 0:
            return self._mass(value, signed=True)

        def write(mass_kg: float | None) -> str:
            return self._mass(mass_kg, signed=True)

        return format_range(value, value - half, value + half, write)

    def _boundary(self, place: int, *, is_recorded: bool) -> str:
        match = self.comparison.boundary(place)
        said = [
            f"out of {pack}: {listed(items)}"
            for pack, items in self._taken_out(place).items()
        ]
        if match.unlike:
            said.append(f"unlike: {listed(match.unlike)}")
        if not (is_recorded and self.comparison.subject.boundary.is_known):
            said.append("not recorded")
        elif match.unsure:
            said.append(f"not sure: {listed(match.unsure, most=3)}")
        return "; ".join(said) or "alike"

    def _taken_out(self, place: int) -> dict[str, tuple[str, ...]]:
        """Give what was taken out, by the pack that had it on the scale."""
        found: dict[str, tuple[str, ...]] = {}
        for item in self.comparison.boundary(place).taken_out:
            text = f"{item.item} {self.display.mass_text(item.mass_kg)}"
            found[item.pack] = (*found.get(item.pack, ()), text)
        return found

    def notes(self) -> Iterator[str]:
        comparison = self.comparison
        yield (
            f"Gaps are those of {comparison.subject.name}, positive where it is "
            f"heavier; the study counts {comparison.basis}, with the range in "
            "brackets. Masses are as compared, less what only one had on the scale."
        )
        if self.results.place is not None:
            yield f"{self._every_basis(self.results.place)}."
        left = len(comparison) - len(self.places)
        if left > 0:
            yield (
                f"Shown are the {len(self.places)} packs nearest in energy; {left} "
                "more are in the table of gaps that goes with this brief."
            )

    def _every_basis(self, place: int) -> str:
        said = []
        for basis in Basis:
            value = float(self.comparison.by_basis(basis)[place])
            if math.isnan(value):
                problem = why_no_gap(self.comparison, place, basis=basis)
                reason = problem.what.rstrip(".") if problem else "not known"
                said.append(f"{basis} {UNKNOWN} ({reason})")
            else:
                gap = self.display.signed_mass_text(self.display.mass(value))
                said.append(f"{basis} {gap}")
        return f"Gap to {self.results.study.reference}: {'; '.join(said)}"
