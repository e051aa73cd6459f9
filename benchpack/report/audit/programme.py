"""The sheet of the programme: what is valued, and what it brings over the years."""

from __future__ import annotations

import math

from benchpack.errors import Problem
from benchpack.report.audit import names
from benchpack.report.audit.by_year import ByYear, YearColumn
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.gaps import Gaps
from benchpack.report.audit.programme_saving import money_rows, saving_rows
from benchpack.report.audit.record import NEVER, AuditSheet, Format, Look
from benchpack.report.audit.value_rows import HEADS, WIDTHS, ValueRows
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import volume_ends

_PURPOSE = (
    "What the saving that is valued brings over the programme. Low has all that is "
    "worse at once, high all that is better; the interest stays."
)
_NAN = (math.nan, math.nan, math.nan)


def programme_sheet(case: WorthCase, gaps: Gaps, years: ByYear) -> AuditSheet:
    """Build the sheet of the programme.

    Parameters
    ----------
    case : WorthCase
        The case.
    gaps : Gaps
        The sheet of gaps.
    years : ByYear
        The sheet of years.
    """
    draft = Draft("Programme", _PURPOSE, WIDTHS)
    draft.heads(*HEADS)
    rows = ValueRows(draft, case.study.currency)
    draft.section("The saving that is valued")
    saving_rows(rows, case, gaps)
    money_rows(rows, case)
    draft.section("Packs")
    _packs(rows, case, years)
    draft.section("Value over the years")
    _value(rows, case, years)
    return draft.sheet()


def _packs(rows: ValueRows, case: WorthCase, years: ByYear) -> None:
    """Write how many packs there are, and against the plan in each case."""
    packs = years.span(YearColumn.PACKS, start=1)
    found = case.programme
    planned = math.nan if isinstance(found, Problem) else found.packs
    rows.one(
        "it is reckoned",
        f"IF(COUNT({names.VALUED_KG[1]})=0,0,IF(SUM({packs})>0,1,0))",
        0.0 if isinstance(found, Problem) else 1.0,
        unit="",
        how="1 where there is a saving and packs; 0: all below stays empty",
        name=names.RECKONED,
        number_format=Format.COUNT,
    )
    rows.one(
        "packs in all years",
        _reckoned(f"SUM({packs})"),
        planned,
        unit="packs",
        how="sheet By year",
        number_format=Format.COUNT,
    )
    spread = names.VOLUME_SPREAD
    fewer, more = f"1-{spread}", f"1+{spread}"
    low, _, high = names.PACK_GAIN
    rows.three(
        "packs against the plan",
        [
            _reckoned(f"IF({low}<0,{more},{fewer})"),
            _reckoned("1"),
            _reckoned(f"IF({high}<0,{fewer},{more})"),
        ],
        _scales(case),
        unit="factor",
        how="more packs of a loss are a greater loss: the low case has what is worse",
        labels=names.PLAN_SCALE,
        number_format=Format.THOUSANDTH,
    )


def _reckoned(body: str) -> str:
    return f'IF({names.RECKONED}=0,"",{body})'


def _scales(case: WorthCase) -> tuple[float, float, float]:
    found = case.programme
    if isinstance(found, Problem):
        return _NAN
    low, high = volume_ends(found.gain_per_pack, case.study.volume_spread)
    return low, 1.0, high


def _value(rows: ValueRows, case: WorthCase, years: ByYear) -> None:
    """Write value, payback, break-even and internal rate."""
    found, spent, gain = case.programme, names.SPENT[1], names.PACK_GAIN[1]
    known = None if isinstance(found, Problem) else found
    rows.three(
        "programme value (net present value)",
        [
            _reckoned(f"SUM({years.span(YearColumn.PRESENT_LOW + end)})")
            for end in range(3)
        ],
        _NAN if known is None else known.npv.ends,
        unit="CUR",
        how="sum of the present values of all years, from sheet By year",
        labels=names.NPV,
        number_format=Format.COUNT,
        look=Look.SUM,
    )
    back = years.span(YearColumn.PAID_BACK)
    rows.one(
        "paid back after",
        _reckoned(f'IF(COUNT({back})=0,"{NEVER}",MAX({back}))'),
        math.nan if known is None else known.payback_years,
        unit="years",
        how="likely; when what is spent is back with interest, within a year evenly",
    )
    packs, present = years.span(YearColumn.PACKS, start=1), names.PRESENT_PACKS
    mean = f"SUM({packs})/COUNT({packs})*{spent}/({gain}*{present})"
    rows.one(
        "pays from",
        _reckoned(f'IF({spent}=0,0,IF({gain}<=0,"{NEVER}",{mean}))'),
        math.nan if known is None else known.break_even_packs,
        unit="packs/year",
        how="mean packs a year x spent / (gain x packs, discounted)",
        number_format=Format.COUNT,
    )
    flows = years.span(YearColumn.CASH_LOW + 1)
    year, cash = (
        years.span(column, start=1)
        for column in (YearColumn.YEAR, YearColumn.CASH_LOW + 1)
    )
    start = f"(SUM({cash})/{spent})^(SUM({cash})/SUMPRODUCT({year},{cash}))-1"
    rows.one(
        "internal rate",
        _reckoned(f'IF(AND({spent}>0,{gain}>0),IRR({flows},{start}),"")'),
        math.nan if known is None else known.internal_rate,
        unit="% a year",
        how="IRR of the likely money by year; empty where nothing is spent or gained",
        number_format=Format.SHARE,
    )
