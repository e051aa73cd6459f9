"""The masses of a subject and its references, each pair on one boundary."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from benchpack.model.boundary import UNKNOWN_BOUNDARY, Boundary
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.results.boundaries import (
    SAME_BOUNDARY,
    BoundaryMatch,
    match_boundaries,
    weighed_without_cells,
)

FloatArray = NDArray[np.float64]


class ComparedMasses:
    """Masses of one subject and n references with unlike items taken out.

    Parameters
    ----------
    library : Library
        The records.
    subject : Pack
        The subject.
    rows : ndarray of int, shape (n,)
        Rows of the references in the library.

    Attributes
    ----------
    subject_kg, reference_kg : ndarray, shape (n,)
        Masses as compared; NaN where more would be taken out than the pack holds
        beside its cells.
    has_cells : ndarray of bool, shape (n,)
        False where subject or reference was weighed without its cells.
    """

    def __init__(self, library: Library, subject: Pack, rows: NDArray[np.intp]) -> None:
        self._library = library
        self._subject = (subject.name, subject.boundary, library.parts_of(subject.name))
        columns = library.packs.columns
        self._names = columns["name"][rows]
        self._boundaries = columns["boundary"][rows]
        self.subject_kg = np.full(len(rows), subject.mass_kg)
        self.reference_kg: FloatArray = columns["mass_kg"][rows]
        self.has_cells = np.full(len(rows), not weighed_without_cells(subject.boundary))
        if set(map(id, self._boundaries)) <= {id(UNKNOWN_BOUNDARY)}:
            return
        self._take_out()
        cells_kg = -1.0 if subject.cells_mass_kg is None else subject.cells_mass_kg
        self.subject_kg = _kept(self.subject_kg, subject.mass_kg, cells_kg)
        self.reference_kg = _kept(
            self.reference_kg, columns["mass_kg"][rows], columns["cells_mass_kg"][rows]
        )

    def match(self, place: int) -> BoundaryMatch:
        """Give how the boundaries of the subject and one reference compare."""
        name, boundary = str(self._names[place]), self._boundaries[place]
        if boundary is UNKNOWN_BOUNDARY and not self._subject[1].is_known:
            return SAME_BOUNDARY
        side = (name, boundary, self._library.parts_of(name))
        return match_boundaries(self._subject, side)

    def _take_out(self) -> None:
        """Take out what is unlike, each different boundary looked at once."""
        numbers: dict[Boundary, int] = {}
        seen = {id(boundary): boundary for boundary in self._boundaries}
        number_of = {
            key: numbers.setdefault(boundary, len(numbers))
            for key, boundary in seen.items()
        }
        number = np.fromiter(
            (number_of[id(boundary)] for boundary in self._boundaries),
            dtype=np.intp,
            count=len(self._boundaries),
        )
        matches = [
            match_boundaries(self._subject, ("", boundary, ())) for boundary in numbers
        ]
        own = np.array([match.mass_kg(self._subject[0]) for match in matches])
        other = np.array([match.mass_kg("") for match in matches])
        lacking = np.array([weighed_without_cells(boundary) for boundary in numbers])
        self.subject_kg = self.subject_kg - own[number]
        self.reference_kg = self.reference_kg - other[number]
        self.has_cells &= ~lacking[number]
        self._take_out_parts(other[number])

    def _take_out_parts(self, taken_kg: FloatArray) -> None:
        """Take out of the few packs with parts what only their parts tell."""
        recorded = set(self._library.parts).intersection(self._names.tolist())
        if not recorded:
            return
        for place, name in enumerate(self._names.tolist()):
            if name in recorded:
                more_kg = self.match(place).mass_kg(name) - taken_kg[place]
                self.reference_kg[place] -= more_kg


def _kept(
    compared_kg: FloatArray, mass_kg: FloatArray | float, cells_kg: FloatArray | float
) -> FloatArray:
    """Give NaN where what was taken out cannot have been part of the mass."""
    impossible = (compared_kg <= 0) | (compared_kg < cells_kg)
    return np.where((compared_kg != mass_kg) & impossible, np.nan, compared_kg)
