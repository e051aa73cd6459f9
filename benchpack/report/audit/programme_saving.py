"""The saving that is valued on the sheet of the programme: kilograms and money."""

from __future__ import annotations

import math
from dataclasses import replace

from benchpack.model.ranges import Range
from benchpack.model.words import Basis
from benchpack.model.worth_words import ValuedMass
from benchpack.report.audit import names
from benchpack.report.audit.draft import address
from benchpack.report.audit.gaps import GapColumn, Gaps
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import Format, Look
from benchpack.report.audit.value_rows import LIKELY, ValueRows
from benchpack.results.gap_uncertainty import COVERAGE_FACTOR
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.results import Results, compute
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import gain_of, product

VALUED_ORDER = (ValuedMass.PROPOSAL, ValuedMass.SHARE, ValuedMass.TARGET)
"""What can be valued, in the order of its numbers."""
_TREND = list(Basis).index(Basis.TREND) + 1
_NAN = (math.nan, math.nan, math.nan)


def corners_body(end: int, one: Triple, other: Triple) -> str:
    """Give the formula of the least, likely or greatest product of two ranges.

    Parameters
    ----------
    end : int
        0 for low, 1 for likely, 2 for high.
    one, other : tuple of str
        Cells of both ranges.
    """
    likely = f"{one[1]}*{other[1]}"
    if end == 1:
        return likely
    every = [f"{a}*{b}" for a in one[::2] for b in other[::2]]
    return f"{('MIN', '', 'MAX')[end]}({','.join((*every, likely))})"


def of_what_is_valued(body: str, otherwise: str = "0") -> str:
    """Give a formula that counts for a proposal only."""
    return f"IF({names.VALUED_NUMBER}=1,{body},{otherwise})"


def saving_rows(rows: ValueRows, case: WorthCase, gaps: Gaps) -> None:
    """Write what is valued, and how many kilograms that is.

    Parameters
    ----------
    rows : ValueRows
        The sheet.
    case : WorthCase
        The case.
    gaps : Gaps
        The sheet of gaps.
    """
    saving, has_proposal = case.saving, _has_proposal(case)
    asked, target = names.VALUED, names.TARGET
    body = f'IF(AND({asked}="{ValuedMass.TARGET}",COUNT({target})=1),3,2)'
    if has_proposal:
        body = f'IF({asked}="{ValuedMass.PROPOSAL}",1,{body})'
    rows.one(
        "what there is to value",
        body,
        float(VALUED_ORDER.index(saving.valued) + 1),
        unit="",
        how=", ".join(f"{n} {word}" for n, word in enumerate(VALUED_ORDER, start=1)),
        name=names.VALUED_NUMBER,
        number_format=Format.COUNT,
    )
    shares: list[str] = ['""'] * 3
    if gaps.row is not None:
        shares = _shares_of_gap(rows, case.gap, gaps)
    bodies = [
        f"CHOOSE({names.VALUED_NUMBER},{proposed},{share},{target})"
        for proposed, share in zip(
            names.SAVED if has_proposal else ['""'] * 3, shares, strict=True
        )
    ]
    saved = saving.saved_kg
    rows.three(
        "mass saved that is valued",
        bodies,
        _NAN if saved is None else saved.ends,
        unit="kg",
        how="of the proposal, the share captured of the gap with its range, or the "
        "target; empty where the gap is next to nothing",
        labels=names.VALUED_KG,
    )


def _shares_of_gap(rows: ValueRows, results: Results, gaps: Gaps) -> list[str]:
    """Write the half width of the gap, and give the share captured at each end."""
    u, number = gaps.at(GapColumn.GAP_U), names.BASIS_NUMBER
    rows.values(
        "factor of the range to the trend",
        (None, _student_factor(results), None),
        unit="",
        how="Student t for 95 %, JCGM 100:2008 G.4.1; value of the program",
        number_format=Format.THOUSANDTH,
    )
    student = address(rows.draft.next_row - 1, LIKELY)
    to_trend = f'IF(COUNT({student})=0,"",{student})'
    factor = rows.one(
        "factor of the range of the gap",
        f"IF({number}={_TREND},{to_trend},{COVERAGE_FACTOR!r})",
        _factor(results),
        unit="",
        how="expanded over standard uncertainty: 2, or that to the trend",
        number_format=Format.THOUSANDTH,
    )
    gap, share = names.GAP, names.SHARE_CAPTURED
    half = f"IF(COUNT({u},{factor})=2,{factor}*{u},0)"
    found = []
    for offset in (f"-{half}", "", f"+{half}"):
        some = f'IF({gap}>={NOTHING_KG!r},{share}*({gap}{offset}),"")'
        found.append(f'IF(COUNT({gap})=0,"",{some})')
    return found


def _student_factor(results: Results) -> float:
    """Give the factor of the gap to the trend, on whichever basis the study counts."""
    study = replace(results.study, basis=Basis.TREND)
    return _factor(compute(results.library, study, previous=results))


def _factor(results: Results) -> float:
    assert results.comparison is not None
    assert results.place is not None
    return results.comparison.uncertain.coverage_factor(results.place)


def money_rows(rows: ValueRows, case: WorthCase) -> None:
    """Write worth, money and gain per pack, and what is spent once.

    Parameters
    ----------
    rows : ValueRows
        The sheet.
    case : WorthCase
        The case.
    """
    saving, saved = case.saving, case.saving.saved_kg
    worth = None if saved is None else product(Range(*case.study.worth_per_kg), saved)
    known = f"COUNT({names.VALUED_KG[LIKELY - 1]})=0"
    worths = rows.three(
        "worth of the mass saved",
        [
            f'IF({known},"",{corners_body(end, names.WORTH, names.VALUED_KG)})'
            for end in range(3)
        ],
        _NAN if worth is None else worth.ends,
        unit="CUR/pack",
        how="worth x mass saved, the least and the greatest of all ends",
    )
    money = rows.three(
        "money per pack for parts, joining and add-backs",
        [of_what_is_valued(name) for name in _of_proposal(case, names.MONEY)],
        saving.money.ends,
        unit="CUR/pack",
        how="after less before; only a proposal has it",
    )
    gain = gain_of(saving, Range(*case.study.worth_per_kg))
    rows.three(
        "gain per pack",
        [f'IF({known},"",{worths[end]}-{money[2 - end]})' for end in range(3)],
        _NAN if gain is None else gain.ends,
        unit="CUR/pack",
        how="worth - money, each at the end that makes it lowest or highest",
        labels=names.PACK_GAIN,
        look=Look.SUM,
    )
    once = zip(
        _of_proposal(case, names.TOOLS),
        _of_proposal(case, names.VALIDATION),
        strict=True,
    )
    rows.three(
        "spent once: tools and validation",
        [of_what_is_valued(f"{tools}+{validation}") for tools, validation in once],
        saving.spend.ends,
        unit="CUR",
        how="in year 0; only a proposal has it",
        labels=names.SPENT,
        number_format=Format.COUNT,
    )


def _has_proposal(case: WorthCase) -> bool:
    return case.proposal is not None and bool(case.proposal.effects)


def _of_proposal(case: WorthCase, labels: Triple) -> Triple:
    """Give names that only stand where there is a proposal."""
    return labels if case.proposal is not None else ("0", "0", "0")
