"""The sentence, in every case it has to tell apart."""

from __future__ import annotations

from typing import Any

import pytest

from benchpack.model.boundary import parse_boundary
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis
from benchpack.report.headline import headline, plain_text
from benchpack.results.explain import EXPLAINED
from benchpack.results.results import compute
from tests.unit.results.packs import library, pack


def said(
    subject: tuple[float, float], reference: tuple[float, float], **study: Any
) -> str:
    """Give the sentence for energy and mass of two packs, in plain spaces."""
    records = library(
        pack("Heron", *subject, cells_mass_kg=subject[1] * 0.6),
        pack("Egret", *reference, cells_mass_kg=reference[1] * 0.6),
        pack("Crane", 60, 340),
        pack("Ibis", 90, 500),
    )
    question = Study(subject="Heron", reference="Egret", **study)
    text = plain_text(headline(compute(records, question)))
    return text.replace("\u00a0", " ").replace("\u2009", " ")


def test_heavier_with_more_energy_is_split() -> None:
    # Common practice, no source: a pack pair of the trade, names withheld.
    text = said((82, 489), (75, 439))
    assert text.startswith(
        "Heron is 50.0 kg heavier than Egret. 41.0 kg of that carries its 7.0 kWh of "
        "extra energy; 9.0 kg ("
    )
    assert "is density, worth 27 EUR a pack." in text
    assert text.endswith("As weighed and at equal energy differ by more than half.")


def test_the_sign_can_turn() -> None:
    text = said((70, 460), (80, 470))
    assert "Heron is 10.0 kg lighter than Egret." in text
    assert "It holds 10.0 kWh less, which accounts for 58.8 kg; " in text
    assert "at equal energy it is 48.8 kg" in text
    assert "heavier, worth 146 EUR a pack." in text
    assert text.endswith("As weighed and at equal energy point opposite ways.")


def test_lighter_at_equal_energy_promises_nothing() -> None:
    text = said((80, 440), (75, 439))
    assert "lighter, so there is nothing to save on this basis." in text
    assert "worth" not in text


def test_equal_energy_is_all_density() -> None:
    text = said((75, 460), (75, 440))
    assert "Both hold the same energy, so all of it is density: 20.0 kg" in text
    assert "differ" not in text


def test_equal_mass_is_said_plainly() -> None:
    text = said((80, 440), (75, 440))
    assert text.startswith("Heron weighs as much as Egret.")


@pytest.mark.parametrize(
    ("basis", "words"),
    [
        (Basis.AS_WEIGHED, "As weighed it is 50.0 kg"),
        (Basis.SCALED, "Scaled with exponent 0.5 it is "),
        (Basis.TREND, "Against the trend of its peers it is "),
        (Basis.STRUCTURE, "Counting the structure only it is "),
    ],
)
def test_other_bases_follow_the_split(basis: Basis, words: str) -> None:
    text = said((82, 489), (75, 439), basis=basis)
    assert "41.0 kg of that carries" in text
    assert words in text
    assert "EUR a pack" in text


def test_share_pounds_comma_and_currency_are_followed() -> None:
    text = said(
        (82, 489),
        (75, 439),
        mass_unit="lb",
        decimal_mark=",",
        currency="USD",
        share_captured=0.5,
    )
    assert "110,2 lb heavier" in text
    assert "USD a pack if 50 % of it is captured" in text


def test_less_energy_and_lighter_is_split_as_well() -> None:
    text = said((70, 400), (80, 470))
    assert "58.8 kg of that comes from holding 10.0 kWh less; 11.2 kg (" in text
    assert "is better density, so there is nothing to save on this basis." in text


def test_a_gap_that_shows_as_zero_has_no_sign() -> None:
    text = said((82, 439 * 82 / 75 + 0.02), (75, 439))
    assert "of extra energy; at equal energy it is neither heavier nor lighter," in text
    assert "opposite" not in text
    weighed = said((75, 439.01), (75, 439), basis=Basis.AS_WEIGHED)
    assert "Both hold the same energy; at equal energy it is neither" in weighed
    assert (
        "As weighed it is neither heavier nor lighter, so there is nothing" in weighed
    )


def test_a_small_difference_of_energy_is_not_written_as_none() -> None:
    text = said((80.04, 480), (80, 470))
    assert "carries its 0.04 kWh of extra energy" in text


def test_nothing_captured_or_nothing_paid_is_not_sold() -> None:
    none = said((82, 489), (75, 439), share_captured=0.0)
    assert "is density, but none of it is captured." in none
    free = said((82, 489), (75, 439), worth_low_per_kg=0.0, worth_likely_per_kg=0.0)
    assert "worth 0 EUR a pack." in free
    little = said((82, 489), (75, 439), worth_low_per_kg=0, worth_likely_per_kg=0.01)
    assert "worth under 1 EUR a pack." in little
    tiny = said((82, 489), (75, 439), share_captured=0.002)
    assert "if under 1 % of it is captured" in tiny


def test_the_scaled_gap_says_how_far_the_exponent_moves_it() -> None:
    text = said((70, 460), (80, 470), basis=Basis.SCALED, decimal_mark=",")
    assert "Scaled with exponent 0,5 it is" in text
    assert "Over exponents 0 to 1 it runs from 25,2 kg to 48,8 kg heavier." in text
    turned = said((81, 498), (64.1, 404.2), basis=Basis.SCALED)
    assert " lighter to " in turned
    assert turned.rstrip(".").endswith("point opposite ways")


def test_the_gap_as_weighed_is_not_sold_as_a_saving() -> None:
    text = said((82, 489), (75, 439), basis=Basis.AS_WEIGHED)
    assert "worth 150 EUR a pack with the energy share counted in." in text


def test_a_counted_basis_that_points_the_other_way_is_said() -> None:
    records = library(
        pack("Heron", 81, 505, cells_mass_kg=320),
        pack("Egret", 80, 505, cells_mass_kg=385),
    )
    study = Study(subject="Heron", reference="Egret", basis=Basis.STRUCTURE)
    text = plain_text(headline(compute(records, study)))
    assert text.endswith("At equal energy and structure only point opposite ways.")


def test_a_pack_weighed_without_its_cells_is_not_split() -> None:
    records = library(
        pack("Heron", 82, 489),
        pack("Egret", 75, 140, boundary=parse_boundary("cells=out")),
    )
    study = Study(subject="Heron", reference="Egret")
    text = plain_text(headline(compute(records, study)))
    assert "Egret was weighed without its cells" in text
    assert "worth" not in text


def test_mixed_energy_is_not_split() -> None:
    records = library(
        pack("Heron", 82, 489),
        pack("Egret", 75, 439, energy_basis=EnergyBasis.USABLE),
    )
    study = Study(subject="Heron", reference="Egret")
    text = plain_text(headline(compute(records, study)))
    assert "One energy is gross, the other usable, so it cannot be split." in text


def test_what_was_taken_out_is_named() -> None:
    records = library(
        pack("Heron", 82, 489, boundary=parse_boundary("coolant=out")),
        pack("Egret", 75, 445, boundary=parse_boundary("coolant=in 6")),
    )
    study = Study(subject="Heron", reference="Egret")
    text = plain_text(headline(compute(records, study)))
    assert "heavier than Egret with coolant left out." in text


def test_nothing_chosen_says_what_to_do() -> None:
    text = plain_text(headline(compute(library(), Study())))
    assert text == "No subject is chosen. Add packs or open a table first."


def test_figures_carry_keys_that_can_be_explained() -> None:
    records = library(pack("Heron", 82, 489), pack("Egret", 75, 439))
    pieces = headline(compute(records, Study(subject="Heron", reference="Egret")))
    keys = {piece.key for piece in pieces} - {""}
    assert keys == {"gap as weighed", "energy share", "density share", "value likely"}
    assert keys <= set(EXPLAINED)
