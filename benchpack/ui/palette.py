"""Colours by role, as text, for the light and the dark scheme. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Scheme(Enum):
    """The two colour schemes."""

    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True, kw_only=True)
class Roles:
    """Colours as ``#rrggbb``, by what they stand for.

    `ground` lies behind the page, `panel` behind cards, tables and charts;
    `selected` tints a chosen row, `pressed` a control that is held;
    `on_subject` is text on a face filled with `subject`.
    """

    ground: str
    panel: str
    text: str
    second: str
    hairline: str
    subject: str
    reference: str
    peer: str
    good: str
    look: str
    fail: str
    selected: str
    pressed: str
    on_subject: str


def _channels(colour: str) -> tuple[int, int, int]:
    digits = colour.removeprefix("#")
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:6], 16)


def mix(first: str, second: str, *, share: float) -> str:
    """Blend two colours in sRGB.

    Parameters
    ----------
    first, second : str
        Colours as ``#rrggbb``.
    share : float
        How much of `first` there is, 0 to 1.

    Returns
    -------
    str
        The blend as ``#rrggbb``.
    """
    pairs = zip(_channels(first), _channels(second), strict=True)
    return "#" + "".join(f"{round(a * share + b * (1 - share)):02X}" for a, b in pairs)


def contrast(first: str, second: str) -> float:
    """Give the contrast ratio of two colours, 1 to 21.

    Formula: ``(L1 + 0.05) / (L2 + 0.05)`` of the relative luminances,
    W3C Web Content Accessibility Guidelines 2.2, "contrast ratio".

    Parameters
    ----------
    first, second : str
        Colours as ``#rrggbb``, in any order.

    Returns
    -------
    float
        Lighter over darker.
    """
    low, high = sorted((_luminance(first), _luminance(second)))
    return (high + 0.05) / (low + 0.05)


def _luminance(colour: str) -> float:
    linear = []
    for channel in _channels(colour):
        value = channel / 255
        linear.append(
            value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4
        )
    red, green, blue = linear
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


_LIGHT = Roles(
    ground="#F6F7F5",
    panel="#FFFFFF",
    text="#1B1F24",
    second="#56606B",
    hairline="#D5DAE0",
    subject="#0072B2",
    reference="#B34700",
    peer="#7D8590",
    good="#00714F",
    look="#8A5A00",
    fail="#B3261E",
    selected=mix("#0072B2", "#FFFFFF", share=0.10),
    pressed=mix("#1B1F24", "#FFFFFF", share=0.08),
    on_subject="#FFFFFF",
)
_DARK = Roles(
    ground="#16191D",
    panel="#1E2227",
    text="#E8EBEE",
    second="#A3ACB7",
    hairline="#343B43",
    subject="#56B4E9",
    reference="#F0A35E",
    peer="#7B858F",
    good="#3CC79A",
    look="#E9B949",
    fail="#F2857C",
    selected=mix("#56B4E9", "#1E2227", share=0.14),
    pressed=mix("#E8EBEE", "#1E2227", share=0.10),
    on_subject="#16191D",
)


def roles(scheme: Scheme) -> Roles:
    """Give the colours of a scheme."""
    return _DARK if scheme is Scheme.DARK else _LIGHT
