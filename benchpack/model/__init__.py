"""What things are: the records of packs, parts, joints, materials and studies."""

from __future__ import annotations
