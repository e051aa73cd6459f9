"""Check of the heat path of a tray or cooling part, with the plate that it needs."""

from __future__ import annotations

import math

from benchpack.model.add_backs import HEAT_PLATE
from benchpack.model.change import ChangeKind
from benchpack.model.part import Part
from benchpack.results.change_checks_heat import HeatCase, HeatPath
from benchpack.results.change_checks_layers import (
    added_plate,
    layer_of,
    layers_of,
    path_of,
)
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_plate import (
    HEAT_PATH,
    case_figures,
    kelvin,
    plate_check,
)
from benchpack.results.change_checks_state import Proposed
from benchpack.results.change_checks_words import (
    amount,
    capital,
    material_source,
    record_words,
    wall_words,
)
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.heat_layers import own_filler
from benchpack.results.ledger_record import AddedBack
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording

LITTLE_K, MUCH_K = 1.0, 5.0
"""More rise of the cells that goes unnoticed, and that is all of the spread of a pack
(5 K, from memory)."""


def cooling_check(made: PartChange, proposed: Proposed, case: HeatCase) -> Check | None:
    """Check the heat path through a part, or the plate that is added to it.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    proposed : Proposed
        The pack before and after.
    case : HeatCase
        What the path is checked with; a recorded gap filler goes before its own.

    Returns
    -------
    Check or None
        None for parts that are not beneath cells in tray or cooling.
    """
    wording = proposed.wording
    if made.change.kind is ChangeKind.ADD:
        return plate_check(made, case, wording)
    lead, plate = layer_of(made, proposed)
    if lead is None:
        return None
    if plate is not None:
        words = (
            f"{capital(plate.name)} leads the heat away on the cells' side of "
            f"{lead.name}, which is not in its path."
        )
        return Check(HEAT_PATH, made.after.name, Grade.GOOD, words)
    return _judged(made, lead, proposed, case)


def _judged(made: PartChange, lead: Part, proposed: Proposed, case: HeatCase) -> Check:
    wording, added = proposed.wording, added_plate(proposed)
    parts = proposed.today.parts
    case = own_filler(case, parts, proposed.materials)
    today, after = layers_of(made, lead, proposed)
    path = path_of(made, lead, proposed, case)
    figures = _figures(made, case, (today, after), path, lead)
    name = made.after.name
    if math.isnan(path.after_k):
        words = "What it does to the heat path is not known."
        remedy = record_words(_lacking(made, after))
        return Check(HEAT_PATH, name, Grade.NONE, words, figures, remedy)
    said = [_rise(made, path, case, wording)]
    grade, remedy = Grade.GOOD, ""
    if math.isnan(path.added_k):
        grade = Grade.LOOK
        lacking = [f"the thickness of {lead.name}"] * math.isnan(today[0])
        lacking += [f"the conductivity of {lead.material}"] * math.isnan(today[1])
        remedy = record_words(lacking)
    elif path.added_k > LITTLE_K and added:
        said.append(
            f"{capital(added)} is added: where it leads the heat to the coolant on the "
            f"cells' side, {name} is out of the path."
        )
    elif path.added_k > LITTLE_K:
        grade = Grade.LOOK if path.added_k <= MUCH_K else Grade.FAIL
        said.append(_plate(path, case, wording))
        added_back, remedy = _in_the_sum(made, proposed)
        said += filter(None, (added_back,))
    return Check(HEAT_PATH, name, grade, " ".join(said), figures, remedy)


def _rise(made: PartChange, path: HeatPath, case: HeatCase, wording: Wording) -> str:
    flux = amount(case.flux_w_m2 / 1000.0, "kW/m²", wording)
    filler = millimetres(case.filler_mm, wording)
    layer = kelvin(path.layer_after_k, wording)
    today = ""
    if not math.isnan(path.layer_today_k):
        today = f", today {kelvin(path.layer_today_k, wording)}"
    whole = f"{kelvin(path.after_k, wording)} from coolant to cells"
    if not math.isnan(path.today_k):
        whole += f", today {kelvin(path.today_k, wording)}"
    return (
        f"At {flux} there are {layer} across {wall_words(made.after, wording)}{today}; "
        f"with {filler} of gap filler and the film {whole}."
    )


def _plate(path: HeatPath, case: HeatCase, wording: Wording) -> str:
    thick = millimetres(path.plate_mm, wording)
    apart = millimetres(2.0 * case.half_pitch_mm, wording)
    rise = amount(case.allowed_rise_k, "K", wording)
    mass = "" if math.isnan(path.plate_kg) else f", {wording.mass(path.plate_kg)} of it"
    return (
        f"An aluminium plate on the cells' side keeps within {rise} midway between "
        f"coolant lines {apart} apart from {thick} on{mass}; twice the distance takes "
        "four times that."
    )


def _in_the_sum(made: PartChange, proposed: Proposed) -> tuple[str, str]:
    """Say whether the plate is among the add-backs, and what to do."""
    own = made.change.name
    backs = (b for b in proposed.ledger.add_backs if b.change == own)
    back: AddedBack | None = next(
        (b for b in backs if b.add_back.key == HEAT_PLATE), None
    )
    if back is not None and back.waived:
        said = f"The heat plate is taken out of the sum: {back.waived.rstrip('.')}."
        return said, "Put it back, or bring the coolant to the cells' side."
    if back is not None and back.is_counted:
        said = "The proposal has it in the sum as an add-back."
        return said, "Add it as a part, or bring the coolant to the cells' side."
    return "", "Add the plate, or bring the coolant to the cells' side."


def _lacking(made: PartChange, after: tuple[float, float]) -> list[str]:
    found = []
    if math.isnan(after[0]):
        whose = made.lead.name if made.lead is not None else made.after.name
        found.append(f"the thickness of {whose}")
    if math.isnan(after[1]):
        found.append(f"the conductivity of {made.after.material}")
    return found


def _figures(
    made: PartChange,
    case: HeatCase,
    layers: tuple[tuple[float, float], tuple[float, float]],
    path: HeatPath,
    lead: Part,
) -> tuple[Input, ...]:
    (wall, k_today), (new_wall, k_after) = layers
    new = "" if made.new is None else material_source(made.new)
    area = math.nan if lead.area_m2 is None else lead.area_m2 * lead.count
    return (
        *case_figures(case),
        Input("gap filler", case.filler_mm, "mm", case.filler_source),
        Input("k of the gap filler", case.filler_w_mk, "W/(m K)", case.filler_source),
        Input("h, film of the coolant", case.film_w_m2k, "W/(m2 K)", case.source),
        Input("wall today", wall, "mm", "parts"),
        Input("k today", k_today, "W/(m K)", f"materials, {lead.material}"),
        Input("wall after", new_wall, "mm", "at equal function, or by its mass"),
        Input("k after", k_after, "W/(m K)", new),
        Input("path today", path.today_k, "K", "q (sum(t / k) + 1 / h)"),
        Input("path after", path.after_k, "K", "q (sum(t / k) + 1 / h)"),
        Input("path with the plate", path.with_plate_k, "K", "midway between lines"),
        Input("area", area, "m2", "parts"),
        Input("spreading plate", path.plate_mm, "mm", "q L^2 / (2 k dT), k = 190"),
        Input("mass of the plate", path.plate_kg, "kg", "rho A t"),
    )
