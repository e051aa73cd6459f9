"""The one plain sentence that states the result."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.model.pack import Pack
from benchpack.model.words import Basis
from benchpack.report.display import Display
from benchpack.results.cautions import bases_disagree
from benchpack.results.comparison import Comparison
from benchpack.results.results import Results

_NOTHING_KG = 0.05
"""Below this a gap shows as 0.0 kg and counts as none."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A run of text; a figure carries the key that explains it.

    Parameters
    ----------
    text : str
        The words.
    key : str
        Key for `benchpack.results.explain.explain`, empty for plain words.
    """

    text: str
    key: str = ""


Sentence = tuple[Piece, ...]


def plain_text(sentence: Sentence) -> str:
    """Give a sentence without its keys."""
    return "".join(piece.text for piece in sentence)


def headline(results: Results) -> Sentence:
    """State the gap to the reference, its two shares, and what it is worth.

    Parameters
    ----------
    results : Results
        The results of a study.

    Returns
    -------
    tuple of Piece
        Whole sentences. The gap as weighed never comes without its split.
    """
    comparison, place = results.comparison, results.place
    if comparison is None or place is None:
        problem = results.missing
        text = f"{problem.what} {problem.remedy}".strip() if problem else ""
        return (Piece(text),)
    writer = _Writer(results, comparison, place)
    return writer.sentence()


class _Writer:
    """Writes the sentence for one reference."""

    def __init__(self, results: Results, comparison: Comparison, place: int) -> None:
        self.results = results
        self.comparison = comparison
        self.place = place
        self.study = results.study
        self.display = Display(results.study)
        self.subject = comparison.subject
        self.reference: Pack = results.library.packs[int(comparison.rows[place])]
        self.weighed_kg = float(comparison.as_weighed_kg[place])
        self.share_kg = float(comparison.energy_share_kg[place])
        self.equal_kg = float(comparison.density_share_kg[place])

    def sentence(self) -> Sentence:
        pieces = [*self._weighed(), Piece(" ")]
        if math.isnan(self.equal_kg):
            pieces += [*self._unsplit(), *self._worth_alone()]
        else:
            pieces += [*self._split(), *self._other_basis(), *self._disagreement()]
        return tuple(pieces)

    def _mass(self, mass_kg: float, key: str) -> Piece:
        return Piece(self.display.mass_text(abs(mass_kg)), key)

    def _weighed(self) -> list[Piece]:
        if abs(self.weighed_kg) < _NOTHING_KG:
            return [Piece(f"{self.subject.name} weighs as much as {self._named()}.")]
        word = "heavier" if self.weighed_kg > 0 else "lighter"
        return [
            Piece(f"{self.subject.name} is "),
            self._mass(self.weighed_kg, "gap as weighed"),
            Piece(f" {word} than {self._named()}."),
        ]

    def _named(self) -> str:
        taken = self.comparison.boundary(self.place).taken_out
        if not taken:
            return self.reference.name
        items = " and ".join(item.item for item in taken)
        return f"{self.reference.name} with {items} left out"

    def _split(self) -> list[Piece]:
        extra_kwh = self.subject.energy_kwh - self.reference.energy_kwh
        energy = self.display.energy_text(abs(extra_kwh))
        density = self._equal()
        if abs(self.share_kg) < _NOTHING_KG:
            text = "Both hold the same energy, so all of it is density: "
            return [Piece(text), *density, *self._worth_of_equal(), Piece(".")]
        more = "extra energy" if extra_kwh > 0 else "smaller energy"
        share = self._mass(self.share_kg, "energy share")
        same_sign = self.weighed_kg * self.share_kg > 0
        if same_sign and self.equal_kg * self.weighed_kg > 0:
            verb = "carries" if extra_kwh > 0 else "comes with"
            return [
                share,
                Piece(f" of that {verb} its {energy} of {more}; "),
                self._equal_figure(),
                Piece(" is density"),
                *self._worth_of_equal(),
                Piece("."),
            ]
        return [
            Piece(f"Its {energy} of {more} "),
            Piece("accounts for "),
            share,
            Piece(
                f" {'more' if self.share_kg > 0 else 'less'}; at equal energy it is "
            ),
            *density,
            *self._worth_of_equal(),
            Piece("."),
        ]

    def _equal(self) -> list[Piece]:
        if abs(self.equal_kg) < _NOTHING_KG:
            return [Piece("neither heavier nor lighter")]
        word = "heavier" if self.equal_kg > 0 else "lighter"
        return [self._equal_figure(), Piece(f" {word}")]

    def _equal_figure(self) -> Piece:
        if self.comparison.basis is Basis.EQUAL_ENERGY:
            return Piece(self._ranged(self.equal_kg), "density share")
        return self._mass(self.equal_kg, "density share")

    def _ranged(self, value_kg: float) -> str:
        """Give a gap with its range; the range is turned with the sign."""
        low, high = self.results.gap_range_kg()
        size, half = abs(value_kg), (high - low) / 2
        return self.display.ranged_mass_text(size, size - half, size + half)

    def _worth_of_equal(self) -> list[Piece]:
        if self.comparison.basis is not Basis.EQUAL_ENERGY:
            return []
        return self._worth()

    def _worth(self) -> list[Piece]:
        valuation = self.results.valuation
        if valuation is None or math.isnan(self.results.gap_kg):
            return []
        if self.results.gap_kg < _NOTHING_KG:
            return [Piece(", so there is nothing to save on this basis")]
        value = float(valuation.likely[self.place])
        money = self.display.money_text(value)
        pieces = [Piece(", worth "), Piece(money, "value likely"), Piece(" a pack")]
        if self.study.share_captured < 1:
            share = self.display.share_text(self.study.share_captured)
            pieces.append(Piece(f" if {share} of it is captured"))
        return pieces

    def _other_basis(self) -> list[Piece]:
        basis = self.comparison.basis
        gap_kg = self.results.gap_kg
        if basis is Basis.EQUAL_ENERGY:
            return []
        if math.isnan(gap_kg):
            problem = self.results.missing
            return [Piece(f" {problem.what}")] if problem else []
        word = "heavier" if gap_kg > 0 else "lighter"
        lead = {
            Basis.AS_WEIGHED: " As weighed it is ",
            Basis.SCALED: f" Scaled with exponent {self.comparison.exponent:g} it is ",
            Basis.TREND: " Against the trend of its peers it is ",
            Basis.STRUCTURE: " Counting the structure only it is ",
        }[basis]
        figure = Piece(self._ranged(gap_kg), "gap")
        return [Piece(lead), figure, Piece(f" {word}"), *self._worth(), Piece(".")]

    def _disagreement(self) -> list[Piece]:
        if not bases_disagree(self.comparison, self.place):
            return []
        if self.weighed_kg * self.equal_kg < 0:
            return [Piece(" The sign turns between as weighed and equal energy.")]
        return [Piece(" As weighed and at equal energy differ by more than half.")]

    def _unsplit(self) -> list[Piece]:
        text = (
            f"One energy is {self.subject.energy_basis}, the other "
            f"{self.reference.energy_basis}, so it cannot be split."
        )
        return [Piece(text)]

    def _worth_alone(self) -> list[Piece]:
        if self.comparison.basis is Basis.AS_WEIGHED:
            return []
        return self._other_basis() if self.comparison.basis is Basis.TREND else []
