"""Opening any file that is chosen or dropped on the window."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QWidget

from benchpack.errors import DataError, Problem
from benchpack.files.descriptor import RESOURCES
from benchpack.files.encodings import kind_of
from benchpack.files.reading import Reading, read_any
from benchpack.files.sheet import Sheet
from benchpack.files.tables import read_sheet
from benchpack.session.document import Document
from benchpack.session.opening import open_library
from benchpack.ui.dialogs.frame import FormDialog
from benchpack.ui.dialogs.import_table import ImportDialog
from benchpack.ui.dialogs.taking_in import IMPORT_KEY, fail, show_document
from benchpack.ui.dialogs.whole_library import WholeLibraryDialog
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

_TABLES = frozenset(resource.name for resource in RESOURCES)


def open_any(workspace: Workspace, path: Path, parent: QWidget) -> None:
    """Open a library, or take in a Data Package, a workbook or a loose table.

    What cannot be opened is said in the problems panel.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        File or folder.
    parent : QWidget
        The window; questions belong to it.
    """
    Opening(workspace, Path(path), parent).start()


class Opening(QObject):
    """The opening of one file: read what it is, then ask what is to become of it.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        File or folder.
    parent : QWidget
        The window, which keeps this object until it is done.
    """

    def __init__(self, workspace: Workspace, path: Path, parent: QWidget) -> None:
        super().__init__(parent)
        self.workspace = workspace
        self.path = path
        self.dialog: FormDialog | None = None
        self._window = parent
        self._sheet_name: str | None = None

    def start(self) -> None:
        """Read the file in the background."""
        open_path = self.workspace.document.path
        if open_path is not None and open_path.resolve() == self.path.resolve():
            self.workspace.notifier.say(f"{self.path.name} is open already")
            self.deleteLater()
            return
        self.workspace.runner.start(
            IMPORT_KEY,
            self._read,
            done=self._on_read,
            failed=self._on_failed,
            words=f"Opening {self.path.name}",
            dropped=self._on_dropped,
        )

    def _read(self, token: Token) -> Document | Reading | Sheet:
        """Read a library file, a whole library, or one loose table."""
        if not self.path.exists():
            source = str(self.path)
            raise DataError(
                Problem("There is no such file.", "Check its name.", source=source)
            )
        kind = "folder" if self.path.is_dir() else kind_of(self.path)
        if kind == "database":
            return open_library(self.path)
        from benchpack.files.bundle_archive import is_bundle

        is_package = kind == "folder" or self.path.suffix.lower() == ".json"
        is_package = is_package or is_bundle(self.path)
        if not is_package:
            sheet = read_sheet(self.path, sheet=self._sheet_name)
            if self._sheet_name is not None or not _is_whole(sheet):
                return sheet
        return read_any(self.path, progress=token.progress, cancelled=token.cancelled)

    def _on_read(self, found: Document | Reading | Sheet) -> None:
        if isinstance(found, Document):
            show_document(self.workspace, found)
            self.workspace.notifier.say(f"Opened: {self.path.name}")
            self.deleteLater()
        elif isinstance(found, Reading):
            self._ask(
                WholeLibraryDialog(
                    self.workspace, self.path, reading=found, parent=self._window
                )
            )
        elif isinstance(self.dialog, ImportDialog):
            self.dialog.show_sheet(found)
        else:
            dialog = ImportDialog(
                self.workspace, self.path, sheet=found, parent=self._window
            )
            dialog.sheet_wanted.connect(self._on_sheet_wanted)
            self._ask(dialog)

    def _ask(self, dialog: FormDialog) -> None:
        self.dialog = dialog
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setWindowModality(Qt.WindowModality.WindowModal)
        dialog.finished.connect(self.deleteLater)
        dialog.open()

    def _on_sheet_wanted(self, name: str) -> None:
        self._sheet_name = name
        self.start()

    def _on_dropped(self, found: Document | Reading | Sheet | None) -> None:
        if isinstance(found, Document):
            found.close()
        if self.dialog is None:
            self.deleteLater()

    def _on_failed(self, error: BaseException) -> None:
        fail(self.workspace, f"Not opened: {self.path.name}", error)
        if self.dialog is None:
            self.deleteLater()


def _is_whole(sheet: Sheet) -> bool:
    """Tell whether a workbook holds several tables of a library by their names."""
    names = {name.strip().casefold() for name in sheet.sheet_names}
    return "packs" in names and len(names & _TABLES) > 1
