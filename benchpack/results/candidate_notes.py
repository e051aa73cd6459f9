"""What has to be known of a comparison of candidate materials, said plainly."""

from __future__ import annotations

from collections.abc import Mapping

from benchpack.model.material import Material
from benchpack.results.candidate_record import PRICE_SHARE, Candidate, Candidates
from benchpack.results.change_checks_function import HEAVIER
from benchpack.results.ledger_resizing import is_metal, lacks_knock_down
from benchpack.results.ledger_today import folded
from benchpack.results.wording import listed

_NAMED = 6
_RECALLED = "from memory"


def candidate_notes(
    compared: Candidates, materials: Mapping[str, Material]
) -> tuple[str, ...]:
    """Give the notes of a comparison, most important first.

    Parameters
    ----------
    compared : Candidates
        The comparison.
    materials : mapping of str to Material
        The materials by folded name.
    """
    old = materials.get(folded(compared.part.material))
    found = (
        _stays(compared),
        _no_function(compared),
        _heavier(compared),
        _by_data_sheet_only(compared),
        _least_wall(compared),
        _without_knock_down(compared),
        _add_backs(compared, old),
        _cost(compared),
        _not_computed(compared),
    )
    return tuple(filter(None, found))


def _names(rows: list[Candidate]) -> str:
    return listed(tuple(row.name for row in rows), most=_NAMED)


def _stays(compared: Candidates) -> str:
    if not compared.part.carry_over:
        return ""
    reason = compared.part.reason.strip() or "no reason is recorded"
    return (
        f"{compared.part.name} has to stay ({reason}): a proposal refuses to change it."
    )


def _no_function(compared: Candidates) -> str:
    if compared.governs:
        return ""
    return f"What sizes {compared.part.name} is not recorded: choose what governs."


def _heavier(compared: Candidates) -> str:
    is_heavier, is_lighter = compared.is_heavier, compared.is_lighter
    heavier = [row for row, yes in zip(compared.rows, is_heavier, strict=True) if yes]
    if not heavier:
        return ""
    verb = "is" if len(heavier) == 1 else "are"
    said = f"{_names(heavier)} {verb} {HEAVIER}."
    if not is_lighter.any():
        said = f"No candidate makes {compared.part.name} lighter. {said}"
    return said


def _by_data_sheet_only(compared: Candidates) -> str:
    today = compared.today.mass_kg
    rows = [row for row in compared.rows if row.sheet_mass_kg < today < row.mass_kg]
    if not rows:
        return ""
    verb = "saves" if len(rows) == 1 else "save"
    return (
        f"{_names(rows)} {verb} by the data sheet alone: hot and in the long term the "
        "part needs more."
    )


def _least_wall(compared: Candidates) -> str:
    rows = [row for row in compared.rows if row.wall_is_minimum]
    if not rows:
        return ""
    return (
        f"The wall of {_names(rows)} is the least that can be made, not what the "
        "function asks for."
    )


def _without_knock_down(compared: Candidates) -> str:
    rows = [
        row
        for row in compared.rows
        if row.material is not None and lacks_knock_down(row.material, compared.governs)
    ]
    if not rows:
        return ""
    return f"{_names(rows)} without knock-downs: taken at their data sheet."


def _add_backs(compared: Candidates, old: Material | None) -> str:
    if not is_metal(old):
        return ""
    rows = [
        row
        for row in compared.rows
        if row.material is not None and not is_metal(row.material) and row.mass_kg > 0
    ]
    if not rows:
        return ""
    return (
        "What metal did and plastic does not (shield, bonding, limiters, fire barrier, "
        "heat plate) is not in these masses: the proposal adds it back."
    )


def _cost(compared: Candidates) -> str:
    rows = [row for row in (*compared.rows, compared.today) if row.cost > 0]
    if not rows:
        return ""
    said = (
        f"Cost is material in the part at its recorded price, plus and minus "
        f"{PRICE_SHARE:.0%} ({_RECALLED}); scrap, process and tooling are not in it."
    ).replace("%", " %")
    recalled = [
        row
        for row in rows
        if row.material is not None
        and (row.material.mark == _RECALLED or _RECALLED in row.material.source)
    ]
    if recalled:
        said += " Recalled prices are among them: enter your own."
    if compared.currency != "EUR":
        said += f" Prices count as {compared.currency}: nothing is exchanged."
    return said


def _not_computed(compared: Candidates) -> str:
    rows = [row for row in compared.rows if row.problem is not None]
    reasons = dict.fromkeys(row.problem.what for row in rows if row.problem is not None)
    if not rows:
        return ""
    why = listed(tuple(reason.rstrip(".") for reason in reasons), most=2)
    return f"Not computed: {_names(rows)}. {why}."
