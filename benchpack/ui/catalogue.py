"""The pages in the order of the side list; each loads when it is first shown."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from benchpack.ui.page import Page
from benchpack.ui.workspace import Workspace


@dataclass(frozen=True, slots=True)
class PageEntry:
    """One page of the side list.

    Parameters
    ----------
    title : str
        Its name.
    make : callable
        Makes it; imports what it needs only then.
    """

    title: str
    make: Callable[[Workspace], Page]


def _packs(workspace: Workspace) -> Page:
    from benchpack.ui.pages.packs.page import PacksPage

    return PacksPage(workspace)


def _gap(workspace: Workspace) -> Page:
    from benchpack.ui.pages.gap.page import GapPage

    return GapPage(workspace)


def _joints(workspace: Workspace) -> Page:
    from benchpack.ui.pages.joints.page import JointsPage

    return JointsPage(workspace)


def _changes(workspace: Workspace) -> Page:
    from benchpack.ui.pages.changes.page import ChangesPage

    return ChangesPage(workspace)


def _worth(workspace: Workspace) -> Page:
    from benchpack.ui.pages.worth.page import WorthPage

    return WorthPage(workspace)


def _brief(workspace: Workspace) -> Page:
    from benchpack.ui.pages.brief.page import BriefPage

    return BriefPage(workspace)


PAGES = (
    PageEntry("Packs", _packs),
    PageEntry("Gap", _gap),
    PageEntry("Joints", _joints),
    PageEntry("Changes", _changes),
    PageEntry("Worth", _worth),
    PageEntry("Brief", _brief),
)
"""Every page."""
