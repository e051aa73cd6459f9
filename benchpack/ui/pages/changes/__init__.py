"""The Changes page: a proposal from the subject's parts and joints."""

from __future__ import annotations
