"""The sheet of the price: what the new parts may cost, and who keeps what."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.names import Triple
from benchpack.report.audit.price_parts import PriceParts
from benchpack.report.audit.programme_saving import of_what_is_valued
from benchpack.report.audit.proposal_columns import ProposalColumn
from benchpack.report.audit.record import AuditSheet, Look
from benchpack.report.audit.value_rows import HEADS, WIDTHS, ValueRows
from benchpack.results.change_supply import per_pack
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price, price_of

_PURPOSE = (
    "What the new parts may cost per pack, and who keeps what of the gain: at a given "
    "price the customer's gain, at a given gain the price. Low and high have the worth "
    "of a kilogram at its ends, all else likely."
)
_PACK = "CUR/pack"


def price_sheet(case: WorthCase, parts: PriceParts | None) -> AuditSheet:
    """Build the sheet of the price.

    Parameters
    ----------
    case : WorthCase
        The case.
    parts : PriceParts or None
        What it draws from the proposal, None where there is none.
    """
    draft = Draft("Price", _PURPOSE, WIDTHS)
    draft.heads(*HEADS)
    writer = _Writer(ValueRows(draft, case.study.currency), case, parts)
    draft.section("Up to the price at which the customer is even")
    writer.ladder()
    draft.section("What the new parts may cost")
    writer.headroom()
    draft.section("Who keeps what of the whole gain")
    writer.shares()
    draft.section("At a given price, and at a given gain")
    writer.both_ways()
    return draft.sheet()


def _at_worth(case: WorthCase, end: float) -> Price | None:
    """Give the price with the worth of a kilogram at one end, None where none is."""
    study = replace(
        case.study, worth_low_per_kg=end, worth_likely_per_kg=end, worth_high_per_kg=end
    )
    found = price_of(study, case.saving, case.supply)
    return None if isinstance(found, Problem) else found


class _Writer:
    """Writes the rows."""

    def __init__(
        self, rows: ValueRows, case: WorthCase, parts: PriceParts | None
    ) -> None:
        self.rows, self.case, self.saving = rows, case, case.saving
        self.parts = parts
        self.prices = [_at_worth(case, end) for end in case.study.worth_per_kg]
        self.reckoned = self.old = self.cost = ""
        self.even: Triple = ("", "", "")

    def _known(self, name: str, end: int = 1) -> float:
        """Give a figure of the price, not known where there is no price."""
        found = self.prices[end]
        return math.nan if found is None else float(getattr(found, name))

    def _three(
        self,
        title: str,
        body: Callable[[int], str],
        name: str,
        how: str,
        *,
        unit: str = _PACK,
        labels: Triple = ("", "", ""),
        look: Look = Look.FORMULA,
    ) -> Triple:
        """Write a figure of the price at the low, likely and high worth."""
        return self.rows.three(
            title,
            [body(end) for end in range(3)],
            [self._known(name, end) for end in range(3)],
            unit=unit,
            how=how,
            labels=labels,
            look=look,
        )

    def ladder(self) -> None:
        """Write the steps from the old parts to the even price."""
        study, saving, valued = self.case.study, self.saving, names.VALUED_KG[1]
        old = self._old_parts()
        saved = math.nan if saving.saved_kg is None else saving.saved_kg.likely
        worth = self.rows.three(
            "worth of the mass saved",
            [f'IF(COUNT({valued})=0,"",{end}*{valued})' for end in names.WORTH],
            [end * saved for end in study.worth_per_kg],
            unit=_PACK,
            how="worth x likely mass saved",
        )
        removed = self.rows.one(
            "joining that goes",
            self.parts.sum(ProposalColumn.JOINING, sign="-") if self.parts else "0",
            -saving.joining_cost.likely,
            unit=_PACK,
            how="cost of the joints that go less that of those that come",
        )
        once = self._once()
        self.even = self._three(
            "price at which the customer is even",
            lambda end: (
                f'IF(COUNT({worth[end]},{once},{old})<3,"",'
                f"{old}+{worth[end]}+{removed}-{once})"
            ),
            "even_price",
            "old parts + worth + joining that goes - tools and validation",
            labels=names.EVEN_PRICE,
            look=Look.SUM,
        )

    def _once(self) -> str:
        low, likely, high = names.SPENT
        volume, factor = names.YEARLY_VOLUME, names.CAPITAL_RECOVERY
        share = f'IF(COUNT({volume})=0,"",{likely}*{factor}/{volume})'
        shared = per_pack(self.saving.spend, self.case.supply)
        return self.rows.one(
            "tools and validation per pack",
            f"IF(AND({low}=0,{likely}=0,{high}=0),0,{share})",
            math.nan if shared is None else shared.likely,
            unit=_PACK,
            how="spent once x capital recovery factor / packs a year that count",
        )

    def _old_parts(self) -> str:
        """Write what the parts that go cost: by sheet Part costs, or entered."""
        given, entered = names.OLD_PART_PRICE, self.case.study.old_part_price
        self.reckoned = self.rows.one(
            "old parts, as reckoned",
            self.parts.old_parts(self.rows) if self.parts else '""',
            self.saving.old_cost,
            unit=_PACK,
            how="parts of today that go; empty where material or making is not known",
        )
        self.old = self.rows.one(
            "old parts",
            f"IF(COUNT({given})=1,{given},{self.reckoned})",
            self.saving.old_cost if entered is None else entered,
            unit=_PACK,
            how="the price that is entered, else as reckoned",
        )
        return self.old

    def headroom(self) -> None:
        """Write the price headroom per pack and per kilogram of new parts."""
        even, asked = self.even, names.REQUIRED_SAVING
        headroom = self._three(
            "price headroom",
            lambda end: f'IF(COUNT({even[end]})=0,"",{even[end]}-{asked})',
            "headroom",
            "even price - saving that the customer asks for",
        )
        new = self.rows.one(
            "mass of the new parts",
            self.parts.new_kg() if self.parts else '""',
            self.saving.new_kg,
            unit="kg/pack",
            how="likely mass of what is made new, as it stands in the end",
        )
        self._three(
            "headroom per kilogram of new parts",
            lambda end: (
                f'IF(COUNT({headroom[end]},{new})<2,"",'
                f'IF({new}>0,{headroom[end]}/{new},""))'
            ),
            "per_kg",
            "headroom / mass of the new parts",
            unit="CUR/kg",
        )

    def shares(self) -> None:
        """Write what it costs to make, the whole gain, and both shares."""
        share, even = names.CUSTOMER_SHARE, self.even
        columns = (ProposalColumn.PARTS, ProposalColumn.ADD_BACK_COST)
        dearer = self.parts.sum(*columns) if self.parts else "0"
        made = f"IF(COUNT({self.reckoned})=1,{self.reckoned},{self.old})+{dearer}"
        proposed = of_what_is_valued(made, '""')
        self.cost = self.rows.one(
            "cost of making the new parts",
            f'IF(COUNT({even[1]})=0,"",{proposed})',
            self._known("cost"),
            unit=_PACK,
            how="old parts + what parts and add-backs cost more; only a proposal says",
        )
        cost = self.cost
        whole = self._three(
            "whole gain",
            lambda end: f'IF(COUNT({cost})=0,"",IF({cost}<0,"",{even[end]}-{cost}))',
            "whole_gain",
            "even price - cost of making; below 0: nothing to share",
        )
        for title, body, name, how in (
            (
                "customer's part",
                f"{share}*",
                "customer_part",
                "their share of it",
            ),
            (
                "our part",
                f"(1-{share})*",
                "supplier_part",
                "the rest of it",
            ),
            (
                "price that shares it so",
                f"{cost}+(1-{share})*",
                "shared_price",
                "cost of making + our part",
            ),
        ):
            bodies = [f'IF(COUNT({one})=0,"",{body}{one})' for one in whole]
            self._three(title, bodies.__getitem__, name, how)

    def both_ways(self) -> None:
        """Write the gain at a given price, and the price at a given gain."""
        price, asked, even = names.PART_PRICE, names.REQUIRED_SAVING, self.even
        self._three(
            "customer's gain at the price given",
            lambda end: f'IF(COUNT({even[end]},{price})<2,"",{even[end]}-{price})',
            "customer_gain",
            "even price - price of the new parts",
            look=Look.SUM,
        )
        self.rows.one(
            "what then stays over the cost of making",
            f'IF(COUNT({self.cost},{price})<2,"",{price}-{self.cost})',
            self._known("supplier_margin"),
            unit=_PACK,
            how="price of the new parts - cost of making",
        )
        self._three(
            "price at the saving asked for",
            lambda end: (
                f'IF(COUNT({even[end]})=0,"",'
                f'IF({even[end]}-{asked}<0,"",{even[end]}-{asked}))'
            ),
            "price_at_saving",
            "even price - saving asked for; empty where it would be below zero",
            look=Look.SUM,
        )
