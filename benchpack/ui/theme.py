"""Typeface, palette and stylesheet of the whole window, light and dark."""

from __future__ import annotations

from functools import cache
from typing import Literal

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from benchpack.places import resources_folder
from benchpack.ui.palette import Roles, Scheme, mix, roles
from benchpack.ui.stylesheet import RADIUS, stylesheet

__all__ = [
    "RADIUS",
    "Roles",
    "Scheme",
    "Theme",
    "apply_theme",
    "colour",
    "font",
    "roles",
    "scheme_for",
    "set_text_role",
    "theme",
]

TextRole = Literal["body", "strong", "note", "section", "figure"]

SPACE_INSIDE, SPACE_BETWEEN, SPACE_AROUND = 4, 8, 16
_POINTS: dict[TextRole, tuple[int, QFont.Weight]] = {
    "body": (11, QFont.Weight.Normal),
    "strong": (11, QFont.Weight.DemiBold),
    "note": (9, QFont.Weight.Normal),
    "section": (13, QFont.Weight.DemiBold),
    "figure": (20, QFont.Weight.DemiBold),
}


class Theme(QObject):
    """The scheme in use.

    Signals
    -------
    theme_changed(object)
        The `Roles` that hold from now on.
    """

    theme_changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.scheme = Scheme.LIGHT
        self.roles = roles(Scheme.LIGHT)

    def set_scheme(self, scheme: Scheme) -> None:
        """Take another scheme and tell everyone who draws by hand."""
        if scheme is not self.scheme:
            self.scheme = scheme
            self.roles = roles(scheme)
            self.theme_changed.emit(self.roles)


@cache
def theme() -> Theme:
    """Give the one theme of the process."""
    return Theme()


def scheme_for(system: Qt.ColorScheme) -> Scheme:
    """Give the scheme that follows the system's; unknown counts as light."""
    return Scheme.DARK if system is Qt.ColorScheme.Dark else Scheme.LIGHT


def colour(text: str, *, alpha: float = 1.0) -> QColor:
    """Make a colour of ``#rrggbb`` and an opacity from 0 to 1."""
    made = QColor(text)
    made.setAlphaF(alpha)
    return made


@cache
def _family() -> str:
    """Register the shipped typeface once and give its family name."""
    families: list[str] = []
    for name in ("Inter-Regular.otf", "Inter-SemiBold.otf"):
        path = resources_folder() / "fonts" / name
        identity = QFontDatabase.addApplicationFont(str(path))
        families += QFontDatabase.applicationFontFamilies(identity)
    return families[0] if families else QApplication.font().family()


def font(role: TextRole = "body") -> QFont:
    """Give the font of a text role; figures have equal width but in "figure"."""
    return QFont(_font(role))


@cache
def _font(role: TextRole) -> QFont:
    points, weight = _POINTS[role]
    made = QFont(_family(), points)
    made.setWeight(weight)
    made.setFeature(QFont.Tag("tnum"), 0 if role == "figure" else 1)
    # Glyphs that depend on their neighbours stand for no character in a PDF.
    made.setFeature(QFont.Tag("calt"), 0)
    # Hinted advances of figures differ by fractions of a pixel.
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return made


def set_text_role(widget: QWidget, role: TextRole) -> None:
    """Give a widget the font of a text role; notes are set in the second colour."""
    widget.setFont(font(role))
    widget.setProperty("textRole", role)


def apply_theme(app: QApplication, scheme: Scheme) -> None:
    """Dress the application in a scheme; charts and icons are told by `theme()`.

    Parameters
    ----------
    app : QApplication
        The running application.
    scheme : Scheme
        Light or dark.
    """
    tokens = roles(scheme)
    sheet = stylesheet(tokens, icons=(resources_folder() / "icons").as_posix())
    if app.styleSheet() == sheet:
        return
    if app.style().objectName() != "fusion" and not app.styleSheet():
        app.setStyle("Fusion")
    app.setFont(font("body"))
    app.setPalette(qt_palette(tokens))
    app.setStyleSheet(sheet)
    theme().set_scheme(scheme)


def qt_palette(tokens: Roles) -> QPalette:
    """Give Qt's palette for the colours of a scheme."""
    group, role = QPalette.ColorGroup, QPalette.ColorRole
    table = {
        role.Window: tokens.ground,
        role.WindowText: tokens.text,
        role.Base: tokens.panel,
        role.AlternateBase: tokens.ground,
        role.Text: tokens.text,
        role.PlaceholderText: tokens.second,
        role.Button: tokens.panel,
        role.ButtonText: tokens.text,
        role.ToolTipBase: tokens.panel,
        role.ToolTipText: tokens.text,
        role.Highlight: tokens.selected,
        role.HighlightedText: tokens.text,
        role.Link: tokens.subject,
        role.LinkVisited: tokens.subject,
        role.BrightText: tokens.fail,
        role.Accent: tokens.subject,
        role.Light: tokens.panel,
        role.Midlight: tokens.hairline,
        role.Mid: tokens.hairline,
        role.Dark: tokens.peer,
        role.Shadow: tokens.peer,
    }
    made = QPalette()
    for which, value in table.items():
        made.setColor(which, QColor(value))
    pale = QColor(mix(tokens.second, tokens.panel, share=0.6))
    for which in (role.WindowText, role.Text, role.ButtonText, role.HighlightedText):
        made.setColor(group.Disabled, which, pale)
    return made
