from __future__ import annotations

import re
from dataclasses import fields

import pytest

from benchpack.ui.palette import Roles, Scheme, contrast, mix, roles
from benchpack.ui.stylesheet import stylesheet

TEXTS = ("text", "second", "subject", "reference", "good", "look", "fail")
GRAPHICS = ("subject", "reference", "peer", "good", "look", "fail")


def test_contrast_of_black_and_white_is_21() -> None:
    """Source: W3C WCAG 2.2, definition of contrast ratio: 21:1 at most."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#FFFFFF", "#000000") == pytest.approx(21.0)
    assert contrast("#777777", "#777777") == pytest.approx(1.0)


def test_contrast_of_a_known_grey() -> None:
    """#767676 on white is the well-known 4.54:1 (from memory)."""
    assert contrast("#767676", "#FFFFFF") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("scheme", Scheme)
@pytest.mark.parametrize("behind", ["ground", "panel"])
@pytest.mark.parametrize("role", TEXTS)
def test_text_has_contrast(scheme: Scheme, behind: str, role: str) -> None:
    """Source: WCAG 2.2 success criterion 1.4.3, 4.5:1 for text."""
    tokens = roles(scheme)
    assert contrast(getattr(tokens, role), getattr(tokens, behind)) >= 4.5


@pytest.mark.parametrize("scheme", Scheme)
@pytest.mark.parametrize("behind", ["ground", "panel"])
@pytest.mark.parametrize("role", GRAPHICS)
def test_graphics_have_contrast(scheme: Scheme, behind: str, role: str) -> None:
    """Source: WCAG 2.2 success criterion 1.4.11, 3:1 for graphics."""
    tokens = roles(scheme)
    assert contrast(getattr(tokens, role), getattr(tokens, behind)) >= 3.0


@pytest.mark.parametrize("scheme", Scheme)
def test_main_and_second_text_reach_what_the_design_says(scheme: Scheme) -> None:
    tokens = roles(scheme)
    for behind in (tokens.ground, tokens.panel):
        assert contrast(tokens.text, behind) >= 13
        assert contrast(tokens.second, behind) >= 6 - 0.05


@pytest.mark.parametrize("scheme", Scheme)
def test_text_on_tinted_faces_has_contrast(scheme: Scheme) -> None:
    tokens = roles(scheme)
    assert contrast(tokens.text, tokens.selected) >= 4.5
    assert contrast(tokens.second, tokens.selected) >= 4.5
    assert contrast(tokens.text, tokens.pressed) >= 4.5
    assert contrast(tokens.on_subject, tokens.subject) >= 4.5


@pytest.mark.parametrize("scheme", Scheme)
def test_every_role_is_a_colour(scheme: Scheme) -> None:
    tokens = roles(scheme)
    for one in fields(Roles):
        assert re.fullmatch(r"#[0-9A-F]{6}", getattr(tokens, one.name)), one.name


def test_mix_ends_at_its_colours() -> None:
    assert mix("#0072B2", "#FFFFFF", share=1.0) == "#0072B2"
    assert mix("#0072B2", "#FFFFFF", share=0.0) == "#FFFFFF"
    assert mix("#000000", "#FFFFFF", share=0.5) == "#808080"


@pytest.mark.parametrize("scheme", Scheme)
def test_stylesheet_has_no_open_names_gradients_or_capitals(scheme: Scheme) -> None:
    sheet = stylesheet(roles(scheme), icons="/icons")
    assert "$" not in sheet
    assert "gradient" not in sheet
    assert "uppercase" not in sheet
    assert roles(scheme).subject in sheet
