"""``python -m benchpack``."""

from __future__ import annotations

import sys

from benchpack.cli import main

sys.exit(main())
