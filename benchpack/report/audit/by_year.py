"""The sheet of years: packs and money of a programme, year by year."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import Problem
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft, address, span
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    Look,
    fixed,
    formula,
)
from benchpack.results.change_supply import planned_volumes
from benchpack.results.worth_case import WorthCase

_PURPOSE = (
    "Packs and money of the programme by year. What is spent once falls into year 0, "
    "the money of the packs at the end of each year. Low has all that is worse at "
    "once, high all that is better; the interest stays. More packs of a loss are worse."
)
_WIDTHS = (8, 10, 12, 10, 14, *(14,) * 9, 12)
LAST_DIGIT = "0.000000000001"
"""What pays back at the very end of a year must not fail by its last digit."""
FloatArray = NDArray[np.float64]


class YearColumn(IntEnum):
    """The columns of the sheet; of three figures the low one."""

    YEAR = 0
    CALENDAR = 1
    PACKS = 2
    FACTOR = 3
    PRESENT_PACKS = 4
    CASH_LOW = 5
    PRESENT_LOW = 8
    SO_FAR_LOW = 11
    PAID_BACK = 14


_HEADS = (
    "year",
    "calendar year",
    "packs",
    "discount factor",
    "packs, discounted",
    "money low [CUR]",
    "money likely [CUR]",
    "money high [CUR]",
    "present value low [CUR]",
    "present value likely [CUR]",
    "present value high [CUR]",
    "so far, low [CUR]",
    "so far, likely [CUR]",
    "so far, high [CUR]",
    "likely paid back after [years]",
)


@dataclass(frozen=True, slots=True)
class ByYear:
    """The sheet, and where its years stand.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    draft : Draft
        Gives the addresses of its cells.
    first : int
        Row of year 0.
    last : int
        Row of the last year.
    """

    sheet: AuditSheet
    draft: Draft
    first: int
    last: int

    def span(self, column: int, *, start: int = 0) -> str:
        """Give the range of a column from a year on, for formulas on other sheets."""
        return self.draft.outside_span(column, (self.first + start, self.last))


def by_year_sheet(case: WorthCase, volumes: Sequence[str]) -> ByYear:
    """Build the sheet of years.

    Parameters
    ----------
    case : WorthCase
        The case.
    volumes : sequence of str
        Cells with the packs that are entered for each year.
    """
    draft = Draft("By year", _PURPOSE, _WIDTHS, fixed_columns=2)
    draft.heads(*(head.replace("CUR", case.study.currency) for head in _HEADS))
    writer = _Writer(case, draft.next_row, volumes)
    for year in range(len(volumes) + 1):
        draft.line(*writer.row(year))
    last = draft.next_row - 1
    _sums(draft, writer, last)
    return ByYear(draft.sheet(), draft, writer.first, last)


class _Writer:
    """Writes the years."""

    def __init__(self, case: WorthCase, first: int, volumes: Sequence[str]) -> None:
        study = case.study
        comparison = case.gap.comparison
        assert comparison is not None
        self.first, self.volumes = first, volumes
        self.start_year, self.rate = study.start_year, study.discount_rate
        own = comparison.subject.yearly_volume
        self.packs: FloatArray = planned_volumes(study, own)
        self.factors = (1.0 + self.rate) ** -np.arange(len(volumes) + 1.0)
        found = case.programme
        shape = (3, len(volumes) + 1)
        self.cash, self.present, self.so_far = (np.full(shape, np.nan) for _ in "123")
        self.payback = np.full(shape[1], np.nan)
        if not isinstance(found, Problem):
            count = found.cash.yearly.shape[1]
            self.cash[:, :count] = found.cash.yearly
            self.present[:, :count] = found.cash.discounted
            self.so_far[:, :count] = found.cash.cumulative
            if np.isfinite(found.payback_years):
                self.payback[int(np.ceil(found.payback_years))] = found.payback_years

    def at(self, year: int, column: int) -> str:
        return address(self.first + year, column)

    def row(self, year: int) -> Iterator[AuditCell | None]:
        yield fixed(float(year), Format.COUNT)
        yield self._calendar(year)
        yield from self._packs(year)
        for end in range(3):
            value = self.cash[end, year]
            yield formula(self._cash(year, end), value, Format.COUNT)
        factor = self.at(year, YearColumn.FACTOR)
        for end in range(3):
            money = self.at(year, YearColumn.CASH_LOW + end)
            body = f'IF(COUNT({money})=0,"",{money}*{factor})'
            yield formula(body, self.present[end, year], Format.COUNT)
        for end in range(3):
            body = self._so_far(year, YearColumn.PRESENT_LOW + end)
            yield formula(body, self.so_far[end, year], Format.COUNT)
        yield formula(self._paid_back(year), self.payback[year])

    def _calendar(self, year: int) -> AuditCell:
        known = self.start_year is not None and year <= len(self.packs)
        value = float(self.start_year + year - 1) if known and self.start_year else None
        named = f"{names.START_YEAR}+{self.at(year, YearColumn.YEAR)}-1"
        body = f'IF(COUNT({names.START_YEAR})=0,"",{named})'
        if year:
            body = f'IF(COUNT({self.at(year, YearColumn.PACKS)})=0,"",{body})'
        return formula(body, value, Format.NONE)

    def _packs(self, year: int) -> Iterator[AuditCell | None]:
        """Give the packs of a year, its discount factor, and both together."""
        number, packs = (
            self.at(year, one) for one in (YearColumn.YEAR, YearColumn.PACKS)
        )
        rate, factor = names.DISCOUNT_RATE, self.at(year, YearColumn.FACTOR)
        discount = f"(1+{rate})^(-{number})"
        if not year:
            yield from (None, formula(discount, 1.0, Format.THOUSANDTH), None)
            return
        value = self.packs[year - 1] if year <= len(self.packs) else np.nan
        share = self.factors[year] + 0.0 * value
        yield formula(self._volume(year), value, Format.COUNT)
        for body, found, form in (
            (discount, share, Format.THOUSANDTH),
            (f"{packs}*{factor}", value * share, Format.COUNT),
        ):
            yield formula(f'IF(COUNT({packs})=0,"",{body})', found, form)

    def _volume(self, year: int) -> str:
        """Give the packs entered for the year, else the same in all years."""
        number, entered = self.at(year, YearColumn.YEAR), self.volumes[year - 1]
        given, even, years = names.GIVEN_YEARS, names.EVEN_VOLUME, names.EVEN_YEARS
        one = f"IF(COUNT({entered})=1,{entered},0)"
        by_year = f'IF({number}<={given},{one},"")'
        rest = f'IF({number}-1<{years},({years}-INT({years}))*{even},"")'
        alike = f"IF({number}<=INT({years}),{even},{rest})"
        return f'IF({given}>0,{by_year},IF(COUNT({even})=0,"",{alike}))'

    def _cash(self, year: int, end: int) -> str:
        if not year:
            return f'IF({names.RECKONED}=0,"",-{names.SPENT[2 - end]})'
        packs = self.at(year, YearColumn.PACKS)
        money = f"{names.PACK_GAIN[end]}*{names.PLAN_SCALE[end]}*{packs}"
        return f'IF({names.RECKONED}=0,"",IF(COUNT({packs})=0,"",{money}))'

    def _so_far(self, year: int, column: int) -> str:
        present = span(column, (self.first, self.first + year))
        return f'IF(COUNT({self.at(year, column)})=0,"",SUM({present}))'

    def _paid_back(self, year: int) -> str:
        """Give the years in the row of the year in which the sum first is no loss."""
        so_far = YearColumn.SO_FAR_LOW + 1
        now, spent = self.at(year, so_far), names.SPENT[1]
        reached = f"{now}>=-{LAST_DIGIT}*{spent}"
        if not year:
            return f'IF(COUNT({now})=0,"",IF({reached},0,""))'
        above = span(YearColumn.PAID_BACK, (self.first, self.first + year - 1))
        lacked = f"-{self.at(year - 1, so_far)}"
        brought = self.at(year, YearColumn.PRESENT_LOW + 1)
        years = f"{self.at(year, YearColumn.YEAR)}-1+MIN(1,{lacked}/{brought})"
        open_yet = f'IF(COUNT({above})>0,"",IF({reached},{years},""))'
        return f'IF(COUNT({now})=0,"",{open_yet})'


def _sums(draft: Draft, writer: _Writer, last: int) -> None:
    """Write all packs, and all of them discounted."""
    rows = (writer.first + 1, last)
    draft.section("All years")
    planned = len(writer.packs)
    cells: list[AuditCell | None] = [None] * (YearColumn.PRESENT_PACKS + 1)
    cells[YearColumn.PACKS] = formula(
        f"SUM({span(YearColumn.PACKS, rows)})",
        float(writer.packs.sum()),
        Format.COUNT,
        look=Look.SUM,
    )
    cells[YearColumn.PRESENT_PACKS] = formula(
        f"SUM({span(YearColumn.PRESENT_PACKS, rows)})",
        float(writer.packs @ writer.factors[1 : planned + 1]),
        Format.COUNT,
        name=names.PRESENT_PACKS,
        look=Look.SUM,
    )
    draft.line(*cells)
