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
    assert "Its 10.0 kWh of smaller energy accounts for 58.8 kg less" in text
    assert "at equal energy it is 48.8 kg" in text
    assert "heavier, worth 146 EUR a pack." in text
    assert text.endswith("The sign turns between as weighed and equal energy.")


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
