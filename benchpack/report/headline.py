"""The one plain sentence that states the result."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.model.pack import Pack
from benchpack.model.words import Basis
from benchpack.report.chart_words import nothing_to_compare
from benchpack.report.display import Display
from benchpack.results.comparison import Comparison
from benchpack.results.pair_cautions import NOTHING_KG, bases_disagree, signs_turn
from benchpack.results.results import Results
from benchpack.results.uncounted import why_no_gap
from benchpack.results.wording import listed
from benchpack.units.formatting import format_chance

_NOTHING_KWH = 0.05
_NEITHER = "neither heavier nor lighter"


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


def headline(results: Results, *, has_remedy: bool = True) -> Sentence:
    """State the gap to the reference, its two shares, and what it is worth.

    Parameters
    ----------
    results : Results
        The results of a study.
    has_remedy : bool
        False where the reader cannot change the study: a reason is then said alone.

    Returns
    -------
    tuple of Piece
        Whole sentences. The gap as weighed never comes without its split.
    """
    comparison, place = results.comparison, results.place
    if comparison is None or place is None:
        return (Piece(nothing_to_compare(results, has_remedy=has_remedy)),)
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
        if math.isnan(self.equal_kg):
            return (*self._unsplit(), *self._to_trend_alone())
        pieces = [*self._weighed(), Piece(" "), *self._split()]
        return (*pieces, *self._other_basis(), *self._disagreement())

    def _mass(self, mass_kg: float, key: str) -> Piece:
        return Piece(self.display.mass_text(abs(mass_kg)), key)

    def _weighed(self) -> list[Piece]:
        if abs(self.weighed_kg) < NOTHING_KG:
            return [Piece(f"{self.subject.name} weighs as much as {self._named()}.")]
        return [
            Piece(f"{self.subject.name} is "),
            self._mass(self.weighed_kg, "gap as weighed"),
            Piece(f" {_heavier(self.weighed_kg)} than {self._named()}."),
        ]

    def _named(self) -> str:
        taken = self.comparison.boundary(self.place).taken_out
        if not taken:
            return self.reference.name
        items = listed(tuple(item.item for item in taken))
        return f"{self.reference.name} with {items} left out"

    def _split(self) -> list[Piece]:
        extra_kwh = self.subject.energy_kwh - self.reference.energy_kwh
        if abs(self.share_kg) < NOTHING_KG:
            return self._same_energy(extra_kwh)
        energy = self.display.difference_text(abs(extra_kwh))
        share = self._mass(self.share_kg, "energy share")
        equal = [*self._equal(), *self._worth_of_equal(), Piece(".")]
        weighed = self.weighed_kg if abs(self.weighed_kg) >= NOTHING_KG else 0.0
        if weighed * self.share_kg > 0 and self.equal_kg * self.share_kg > -NOTHING_KG:
            verb = f"carries its {energy} of extra energy"
            if extra_kwh < 0:
                verb = f"comes from holding {energy} less"
            return [share, Piece(f" of that {verb}; "), *self._density_of(equal)]
        more = "more" if extra_kwh > 0 else "less"
        lead = f"It holds {energy} {more}, which accounts for "
        return [Piece(lead), share, Piece("; at equal energy it is "), *equal]

    def _density_of(self, equal: list[Piece]) -> list[Piece]:
        """Call the rest density where it is anything at all."""
        if abs(self.equal_kg) < NOTHING_KG:
            return [Piece("at equal energy it is "), *equal]
        word = " is density" if self.equal_kg > 0 else " is better density"
        figure, worth = self._equal_figure(), self._worth_of_equal()
        return [figure, Piece(word), *worth, Piece(".")]

    def _same_energy(self, extra_kwh: float) -> list[Piece]:
        lead = "Both hold the same energy"
        if abs(extra_kwh) >= _NOTHING_KWH:
            lead = "The difference in energy weighs nothing"
        if abs(self.weighed_kg) < NOTHING_KG:
            lead += "; at equal energy it is "
        else:
            lead += ", so all of it is density: "
        return [Piece(lead), *self._equal(), *self._worth_of_equal(), Piece(".")]

    def _equal(self) -> list[Piece]:
        if abs(self.equal_kg) < NOTHING_KG:
            return [Piece(_NEITHER)]
        return [self._equal_figure(), Piece(f" {_heavier(self.equal_kg)}")]

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
        if self.results.gap_kg < NOTHING_KG:
            return [Piece(", so there is nothing to save on this basis")]
        if self.study.share_captured == 0:
            return [Piece(", but none of it is captured")]
        value = float(valuation.likely[self.place])
        money = self.display.least_money_text(value)
        pieces = [Piece(", worth "), Piece(money, "value likely"), Piece(" a pack")]
        basis = self.comparison.basis
        if basis is Basis.AS_WEIGHED and self.share_kg >= NOTHING_KG:
            pieces.append(Piece(" with the energy share counted in"))
        if self.study.share_captured < 1:
            share = format_chance(self.study.share_captured)
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
        exponent = self.display.ratio_text(self.comparison.exponent)
        lead = {
            Basis.AS_WEIGHED: " As weighed it is ",
            Basis.SCALED: f" Scaled with exponent {exponent} it is ",
            Basis.TREND: " Against the trend of its peers it is ",
            Basis.STRUCTURE: " Counting the structure only it is ",
        }[basis]
        counted = [Piece(_NEITHER)]
        if abs(gap_kg) >= NOTHING_KG:
            counted = [Piece(self._ranged(gap_kg), "gap")]
            counted.append(Piece(f" {_heavier(gap_kg)}"))
        return [Piece(lead), *counted, *self._worth(), Piece("."), *self._band()]

    def _band(self) -> list[Piece]:
        """Say how far the scaled gap moves with the exponent."""
        if self.comparison.basis is not Basis.SCALED:
            return []
        low = float(self.comparison.scaled_low_kg[self.place])
        high = float(self.comparison.scaled_high_kg[self.place])
        if high - low < NOTHING_KG:
            return []
        ends = sorted((low, high), key=abs)
        texts = [self.display.mass_text(abs(end)) for end in ends]
        words = [_heavier(end) for end in ends]
        first = f" {words[0]}" if words[0] != words[1] else ""
        return [
            Piece(
                f" Over exponents 0 to 1 it runs from {texts[0]}{first} to {texts[1]} "
                f"{words[1]}."
            )
        ]

    def _disagreement(self) -> list[Piece]:
        turned = signs_turn(self.comparison, self.place)
        if turned:
            one, other = (str(basis) for basis in turned)
            return [Piece(f" {one.capitalize()} and {other} point opposite ways.")]
        if not bases_disagree(self.comparison, self.place):
            return []
        return [Piece(" As weighed and at equal energy differ by more than half.")]

    def _unsplit(self) -> list[Piece]:
        if math.isnan(self.weighed_kg):
            return [Piece(self._reason())]
        bases = {self.subject.energy_basis, self.reference.energy_basis}
        text = self._reason()
        if self.comparison.masses.has_cells[self.place] and len(bases) > 1:
            text = (
                f"One energy is {self.subject.energy_basis}, the other "
                f"{self.reference.energy_basis}, so it cannot be split."
            )
        return [*self._weighed(), Piece(f" {text}")]

    def _reason(self) -> str:
        basis = Basis.EQUAL_ENERGY
        problem = why_no_gap(self.comparison, self.place, basis=basis)
        return problem.what if problem else ""

    def _to_trend_alone(self) -> list[Piece]:
        return self._other_basis() if self.comparison.basis is Basis.TREND else []


def _heavier(gap_kg: float) -> str:
    return "heavier" if gap_kg > 0 else "lighter"
