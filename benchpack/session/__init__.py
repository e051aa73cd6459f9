"""The open document: state, changes, undo, settings. No Qt."""

from __future__ import annotations
