"""The three rows of one change on the sheet of the proposal."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.report.audit import names
from benchpack.report.audit.draft import address
from benchpack.report.audit.joint_costs import JointColumn, JointCosts
from benchpack.report.audit.ledger import LedgerColumn, LedgerSheet
from benchpack.report.audit.part_costs import (
    PartCosts,
    costs_are_modelled,
    tools_are_modelled,
)
from benchpack.report.audit.proposal_columns import (
    ENDS,
    MONEY_PER_PACK,
    ONCE_PER_PACK,
    ProposalColumn,
)
from benchpack.report.audit.record import AuditCell, Format, formula, record, text
from benchpack.results.proposal_effect import NONE, Effect

Body = Callable[[int], str]
"""Gives the formula of one end: 0 for low, 1 for likely, 2 for high."""
LIKELY = 1


@dataclass(frozen=True, slots=True)
class Sources:
    """The sheets that the rows of a change draw on.

    Parameters
    ----------
    ledger : LedgerSheet
        Masses and add-backs.
    parts : PartCosts
        What parts cost.
    joints : JointCosts
        What joints cost and take.
    """

    ledger: LedgerSheet
    parts: PartCosts
    joints: JointCosts


def net_worth_body(at: Callable[[ProposalColumn, int], str], end: int) -> str:
    """Give worth x mass saved less all money, each at the end that makes it lowest.

    Parameters
    ----------
    at : callable
        Gives the address of a column at an end.
    end : int
        0 for low, 1 for likely, 2 for high.
    """
    costs = "".join(
        f"-{at(column, 2 - end)}" for column in (*MONEY_PER_PACK, *ONCE_PER_PACK)
    )
    return f"{names.WORTH[1]}*{at(ProposalColumn.SAVED, end)}{costs}"


def break_even_body(at: Callable[[ProposalColumn, int], str]) -> str:
    """Give the packs a year from which it pays, or the word never.

    Parameters
    ----------
    at : callable
        Gives the address of a column at an end.
    """
    column = ProposalColumn
    once = f"({at(column.TOOLS, LIKELY)}+{at(column.VALIDATION, LIKELY)})"
    money = "".join(f"-{at(one, LIKELY)}" for one in MONEY_PER_PACK)
    gained = f"({names.WORTH[1]}*{at(column.SAVED, LIKELY)}{money})"
    free = f'IF({gained}>=0,0,"never")'
    paid = f'IF({gained}<=0,"never",{once}*{names.CAPITAL_RECOVERY}/{gained})'
    return f"IF({once}<=0,{free},{paid})"


class ChangeRows:
    """Works out the cells of one change.

    Parameters
    ----------
    effect : Effect
        What the change comes to.
    sources : Sources
        The sheets that it draws on.
    first : int
        Row of its low ends; likely and high follow.
    """

    def __init__(self, effect: Effect, sources: Sources, *, first: int) -> None:
        self.effect, self.sources, self.first = effect, sources, first
        self.cells: dict[tuple[int, int], AuditCell] = {}

    def at(self, column: ProposalColumn, end: int) -> str:
        """Give the address of one column at one end."""
        return address(self.first + end, column)

    def write(
        self, number: int, chances: Mapping[str, str]
    ) -> dict[tuple[int, int], AuditCell]:
        """Give all cells, by row and column.

        Parameters
        ----------
        number : int
            Number of the change.
        chances : mapping of str to str
            Cells with the own chance of this change and of those that it needs.
        """
        self._words(number)
        self._masses()
        self._money()
        self._once()
        effect, column = self.effect, ProposalColumn
        self._three(
            column.NET_WORTH, effect.net_worth, lambda end: net_worth_body(self.at, end)
        )
        self._likely(
            column.OWN_CHANCE, record(effect.change.release_chance, Format.SHARE)
        )
        own = "*".join(chances.values())
        self._likely(column.CHANCE, formula(own, effect.release_chance, Format.SHARE))
        chance, saved = self.at(column.CHANCE, LIKELY), self.at(column.SAVED, LIKELY)
        expected = effect.release_chance * effect.saved_kg.likely
        self._likely(column.EXPECTED, formula(f"{chance}*{saved}", expected))
        pays = formula(break_even_body(self.at), effect.break_even_volume, Format.COUNT)
        self._likely(column.BREAK_EVEN, pays)
        self._likely(column.UNKNOWN, text(" ".join(effect.unknown)))
        return self.cells

    def _likely(self, column: ProposalColumn, cell: AuditCell) -> None:
        self.cells[self.first + LIKELY, column] = cell

    def _three(
        self,
        column: ProposalColumn,
        value: Range,
        body: Body | None,
        number_format: Format = Format.CENT,
    ) -> None:
        """Write the three ends; records where there is no formula."""
        for end, figure in enumerate(value.ends):
            self.cells[self.first + end, column] = (
                record(figure, number_format)
                if body is None
                else formula(body(end), figure, number_format)
            )

    def _words(self, number: int) -> None:
        for end, word in enumerate(ENDS):
            row, column = self.first + end, ProposalColumn
            self.cells[row, column.NUMBER] = text(str(number))
            self.cells[row, column.CHANGE] = text(self.effect.name)
            self.cells[row, column.KIND] = text(str(self.effect.change.kind))
            self.cells[row, column.END] = text(word)

    def _masses(self) -> None:
        effect, ledger, column = self.effect, self.sources.ledger, ProposalColumn
        entries, backs = ledger.entries[effect.name], ledger.add_backs[effect.name]
        own = effect.applied.entries
        before, after = LedgerColumn.BEFORE_LOW, LedgerColumn.AFTER_LOW
        self._three(
            column.BEFORE,
            _sum(entry.before_kg for entry in own),
            lambda end: ledger.sum(entries, before + end),
        )
        self._three(
            column.AFTER,
            _sum(entry.after_kg for entry in own),
            lambda end: ledger.sum(entries, after + end),
        )
        self._three(
            column.ADD_BACKS,
            effect.add_back_kg,
            lambda end: ledger.sum(backs, after + end),
        )

        def saved(end: int) -> str:
            taken = (column.AFTER, column.ADD_BACKS)
            less = "".join(f"-{self.at(one, 2 - end)}" for one in taken)
            return f"{self.at(column.BEFORE, end)}{less}"

        self._three(column.SAVED, effect.saved_kg, saved)

    def _money(self) -> None:
        effect, change, column = self.effect, self.effect.change, ProposalColumn
        name, joints = effect.name, self.sources.joints
        backs = self.sources.ledger.add_backs[name]

        def of_joints(first: JointColumn) -> Body:
            return lambda end: joints.sum(name, first, end)

        self._three(
            column.SECONDS,
            effect.seconds,
            None if change.seconds else of_joints(JointColumn.SECONDS_LOW),
            Format.TENTH,
        )
        self._three(
            column.PARTS,
            effect.part_cost,
            (lambda end: self.sources.parts.money(name, end))
            if costs_are_modelled(effect)
            else None,
        )
        self._three(
            column.JOINING,
            effect.joining_cost,
            None if change.joining_cost else of_joints(JointColumn.MONEY_LOW),
        )
        self._three(
            column.ADD_BACK_COST,
            effect.add_back_cost,
            lambda end: self.sources.ledger.sum(backs, LedgerColumn.COST_LOW + end),
        )

    def _once(self) -> None:
        effect, column = self.effect, ProposalColumn
        self._three(
            column.TOOLS,
            effect.tooling,
            (lambda end: self.sources.parts.tools(effect.name, end))
            if tools_are_modelled(effect)
            else None,
            Format.COUNT,
        )
        self._three(column.VALIDATION, effect.validation_cost, None, Format.COUNT)

        def share(once: ProposalColumn) -> Body:
            volume, factor = names.YEARLY_VOLUME, names.CAPITAL_RECOVERY

            def body(end: int) -> str:
                paid = f"{self.at(once, end)}*{factor}/{volume}"
                return f"IF(COUNT({volume})=0,0,{paid})"

            return body

        self._three(column.TOOLS_PER_PACK, effect.tooling_per_pack, share(column.TOOLS))
        self._three(
            column.VALIDATION_PER_PACK,
            effect.validation_per_pack,
            share(column.VALIDATION),
        )


def own_chances(
    effects: Iterable[Effect], cells: Mapping[str, str]
) -> dict[str, dict[str, str]]:
    """Give for each change the cells with its own chance and of all that it needs.

    Parameters
    ----------
    effects : iterable of Effect
        The changes that count.
    cells : mapping of str to str
        Cell with the own chance of each change.
    """
    needs = {one.name: one.applied.needs & set(cells) for one in effects}
    found = {}
    for name in needs:
        every, new = {name}, {name}
        while new:
            new = {other for one in new for other in needs[one]} - every
            every |= new
        found[name] = {one: cells[one] for one in cells if one in every}
    return found


def _sum(ranges: Iterable[Range]) -> Range:
    return sum(ranges, NONE)
