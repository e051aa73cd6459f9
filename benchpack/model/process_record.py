"""What is known of a process, the way a part is made."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.model.fields import Field, Kind
from benchpack.model.material import MARKS
from benchpack.model.range_columns import range_fields
from benchpack.model.ranges import Range

PROCESS_FIELDS: tuple[Field, ...] = (
    Field("name", "process", required=True, help="Name of the process."),
    *range_fields(
        "cycle_s",
        "cycle time",
        help_text="Seconds for one part",
        unit="s",
        quantity="time",
        ceiling=1e6,
        decimals=0,
    ),
    *range_fields(
        "tooling",
        "tooling",
        help_text="Money for a tool set",
        unit="CUR",
        quantity="money",
        ceiling=1e9,
        decimals=0,
    ),
    *range_fields(
        "tool_life", "tool life", help_text="Parts that a tool set makes", ceiling=1e9
    ),
    *range_fields(
        "scrap", "scrap", help_text="Share of the material bought", ceiling=1.0
    ),
    *range_fields(
        "machine_rate_per_h",
        "machine rate",
        help_text="Money for an hour of the machine",
        unit="CUR/h",
        ceiling=1e6,
    ),
    Field(
        "operators",
        "operators",
        Kind.NUMBER,
        "ratio",
        ceiling=100,
        help="People at the machine.",
    ),
    Field(
        "utilisation",
        "utilisation",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1,
        help="Share of paid time in which parts are made.",
        decimals=2,
    ),
    Field(
        "volume_from",
        "yearly volume from",
        Kind.NUMBER,
        "ratio",
        ceiling=1e9,
        help="Parts per year from which it is used.",
        decimals=0,
    ),
    Field(
        "volume_to",
        "yearly volume to",
        Kind.NUMBER,
        "ratio",
        ceiling=1e9,
        help="Parts per year up to which it is used; empty where there is no limit.",
        decimals=0,
    ),
    *range_fields(
        "lead_weeks",
        "lead time",
        help_text="Weeks from order to parts off the tool",
        unit="weeks",
        ceiling=1000,
        decimals=0,
    ),
    Field("source", "source", required=True, help="Where the figures come from."),
    Field(
        "mark",
        "mark",
        Kind.CHOICE,
        choices=MARKS,
        help="Whether the figures were confirmed, derived or recalled.",
    ),
)
"""The columns of a process in their order in files."""


@dataclass(frozen=True, slots=True)
class Process:
    """A way of making parts of the size of a tray or a lid; None is "not known".

    Parameters
    ----------
    name : str
        The process's word.
    cycle_s : Range
        Seconds for one part.
    tooling : Range
        EUR for a tool set.
    tool_life : Range or None
        Parts that a tool set makes; None where it does not wear out.
    scrap : Range or None
        Share of the material bought that is not in the part.
    machine_rate_per_h : Range
        EUR for an hour of the machine.
    operators : float
        People at the machine.
    utilisation : float
        Share of paid time in which parts are made.
    volume_from, volume_to : float or None
        Parts per year for which it is used; None where there is no limit.
    lead_weeks : Range or None
        Weeks from order to parts off the tool.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    synonyms : tuple of str
        Further names.
    """

    name: str
    cycle_s: Range
    tooling: Range
    tool_life: Range | None
    scrap: Range | None
    machine_rate_per_h: Range
    operators: float
    utilisation: float
    volume_from: float | None
    volume_to: float | None
    lead_weeks: Range | None
    source: str
    mark: str
    synonyms: tuple[str, ...] = ()

    def suits_volume(self, yearly: float) -> bool:
        """Tell whether a yearly number of parts is usual for the process.

        Parameters
        ----------
        yearly : float
            Parts per year.
        """
        least = 0.0 if self.volume_from is None else self.volume_from
        return least <= yearly and (self.volume_to is None or yearly <= self.volume_to)
