"""The window's actions as a table, and the menus they stand in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar

from benchpack.ui.assets import icon

RECENT = "recent"
"""Name of the action that opens the menu of recent files."""


@dataclass(frozen=True, slots=True)
class ActionRow:
    """One action.

    Parameters
    ----------
    name : str
        Name of the action; the slot is ``on_<name>``.
    menu : str
        The menu it stands in.
    text : str
        Its words, with the mnemonic marked by ``&``.
    keys : str
        Its shortcut, empty for none; a second one stands behind a semicolon.
    icon : str
        Name of its icon, empty for none.
    group : bool
        True where a separator stands above it.
    """

    name: str
    menu: str
    text: str
    keys: str = ""
    icon: str = ""
    group: bool = False


ACTIONS: tuple[ActionRow, ...] = (
    ActionRow("new_library", "&File", "&New library…", "Ctrl+N", "add"),
    ActionRow("open", "&File", "&Open…", "Ctrl+O", "open"),
    ActionRow("open_folder", "&File", "Open Data Package &folder…", "Ctrl+Shift+O"),
    ActionRow("open_demo", "&File", "Open the &demo"),
    ActionRow(
        "export_brief", "&File", "Export &brief…", "Ctrl+P", "export", group=True
    ),
    ActionRow("export_workbook", "&File", "Export &workbook…"),
    ActionRow("export_gaps", "&File", "&Export gaps as CSV…", "Ctrl+E"),
    ActionRow("export_bundle", "&File", "Export study b&undle…"),
    ActionRow("export_everything", "&File", "Export e&verything…", "Ctrl+Alt+E"),
    ActionRow("save_copy", "&File", "Save a &copy as…", "Ctrl+Shift+E"),
    ActionRow("quit", "&File", "&Quit", "Ctrl+Q", group=True),
    ActionRow("undo", "&Edit", "&Undo", "Ctrl+Z", "undo"),
    ActionRow("redo", "&Edit", "&Redo", "Ctrl+Shift+Z;Ctrl+Y", "redo"),
    ActionRow(
        "study", "&Edit", "Choices of the &study…", "Ctrl+T", "settings", group=True
    ),
    ActionRow("studies", "&Edit", "Choose another s&tudy…", "Ctrl+Shift+T"),
    ActionRow("preferences", "&Edit", "&Preferences…", "Ctrl+,"),
    ActionRow("search", "&View", "&Find a command…", "Ctrl+K", "search", group=True),
    ActionRow("warnings", "&View", "&Warnings", "Ctrl+I", "warning"),
    ActionRow("explain", "&View", "Where does the gap &come from?", "F1", "info"),
    ActionRow("busbar", "&View", "&Busbar figures…"),
    ActionRow("light", "&View", "&Light look", icon="light", group=True),
    ActionRow("dark", "&View", "&Dark look", icon="dark"),
    ActionRow("system", "&View", "Look of the &system"),
    ActionRow("shortcuts", "&Help", "&Shortcuts", "Ctrl+F1"),
    ActionRow("about", "&Help", "&About and cautions"),
)
"""Every action but the pages, which number themselves from Ctrl+1."""


def build_menus(bar: QMenuBar, target: QObject) -> Mapping[str, QAction]:
    """Make the actions and their menus; connects each to ``target.on_<name>``.

    Parameters
    ----------
    bar : QMenuBar
        Where the menus go.
    target : QObject
        The object that has the slots.

    Returns
    -------
    mapping of str to QAction
        The actions by name.
    """
    menus: dict[str, QMenu] = {}
    actions: dict[str, QAction] = {}
    for row in ACTIONS:
        if row.menu not in menus:
            menus[row.menu] = QMenu(row.menu, bar)
            bar.addMenu(menus[row.menu])
        if row.group:
            menus[row.menu].addSeparator()
        action = QAction(row.text, bar)
        menus[row.menu].addAction(action)
        action.setObjectName(row.name)
        if row.keys:
            action.setShortcuts([QKeySequence(key) for key in row.keys.split(";")])
        if row.icon:
            action.setIcon(icon(row.icon))
        action.triggered.connect(getattr(target, f"on_{row.name}"))
        actions[row.name] = action
        if row.name == "open_demo":
            recent = menus[row.menu].addMenu("Recent")
            actions[RECENT] = recent.menuAction()
    return actions
