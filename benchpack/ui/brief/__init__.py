"""The brief on paper, as a page of the web, and as pictures of its pages."""

from __future__ import annotations
