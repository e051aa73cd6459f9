"""The proposal of the demo by plain arithmetic, line by line from what changes say."""

from __future__ import annotations

import json
import math

from tests.unit.report.demo_files import (
    DUCTS,
    LID,
    PLATE,
    RIM,
    STUDY,
    SUBJECT,
    Ends,
    change,
    given,
    joint,
    joint_kg,
    less,
    material,
    number,
    pack,
    part,
    part_kg,
    rows,
    study,
    total,
)

# The new lid by hand: the plate bends as stiffly, and bears as much, as the steel.


def design(name: str) -> tuple[float, float, float, float]:
    row = material(name)
    return (
        number(row, "density [kg/m3]"),
        number(row, "modulus [GPa]") * number(row, "stiffness knock-down"),
        number(row, "strength [MPa]") * number(row, "strength knock-down"),
        number(row, "Poisson ratio"),
    )


def panel_ratio(
    old: str, new: str, *, wall_mm: float, ribs: float = 0.0, bears: bool = True
) -> float:
    """Give new mass over old for a panel as stiff, and as strong where it bears."""
    rho, modulus, strength, poisson = design(old)
    rho_2, modulus_2, strength_2, poisson_2 = design(new)
    stiff = modulus / (1 - poisson**2) / (modulus_2 / (1 - poisson_2**2))
    strong = strength / strength_2 if bears else 0.0
    wall = wall_mm * max(math.pow(stiff, 1 / 3), math.sqrt(strong))
    least = number(material(new), "minimum wall [mm]")
    return max(wall, least) / wall_mm * rho_2 / rho * (1 + ribs)


def lid_kg() -> Ends:
    ribs = number(change(LID), "rib allowance")
    likely = math.fsum(
        part_kg(name)
        * panel_ratio(
            part(name)["material"],
            change(LID)["material"],
            wall_mm=number(part(name), "thickness [mm]"),
            ribs=ribs,
        )
        for name in json.loads(change(LID)["parts"])
    )
    # A computed mass has 5 % below and 12 % above it.
    return 0.95 * likely, likely, 1.12 * likely


def lid_add_backs_kg() -> dict[str, Ends]:
    names = json.loads(change(LID)["parts"])
    area = math.fsum(
        number(part(name), "count") * number(part(name), "area [m2]") for name in names
    )
    screws = number(change(RIM), "count") + number(
        joint("service cover screws"), "count"
    )
    return {
        "shield foil": (0.16 * area, 0.27 * area, 0.40 * area),
        "bonding straps": (0.1, 0.2, 0.4),
        "compression limiters": (0.005 * screws, 0.010 * screws, 0.020 * screws),
    }


def screws_kg(count: float, each_g: float, u_share: float) -> Ends:
    """Give the mass of screws whose error is rectangular: a = u sqrt(3)."""
    mass, half = count * each_g / 1000, u_share * math.sqrt(3)
    return mass * (1 - half), mass, mass * (1 + half)


def saved_kg(name: str) -> Ends:
    """Give what each change saves by its own words."""
    if name == RIM:
        before = joint_kg("lid screws") + joint_kg("lid inserts")
        # The pack has this screw elsewhere, weighed; 15 % is what a table leaves open.
        each_g = number(joint("cross member to floor"), "mass each [g]")
        assert joint("cross member to floor")["designation"] == "M5x20"
        likely = number(change(RIM), "count") * each_g / 1000
        return less(before, (0.85 * likely, likely, 1.15 * likely))
    if name == LID:
        before = part_kg("lid panel") + part_kg("lid stiffener")
        return less(before, total([lid_kg(), *lid_add_backs_kg().values()]))
    if name == DUCTS:
        before = part_kg("cable duct") + joint_kg("cable duct clips")
        return less(before, given(DUCTS, "mass", "[kg]"))
    if name == PLATE:
        old = joint("connector plate screws")
        count, each_g = number(change(PLATE), "count"), number(old, "mass each [g]")
        # Known by a standard table: 7 %.
        new = screws_kg(count, each_g, 0.07)
        return less(joint_kg("connector plate screws"), new)
    (acted,) = json.loads(change(name)["parts"])
    return less(part_kg(acted), given(name, "mass", "[kg]"))


# Money and seconds, from the tables of families and processes and the study's rates.


def rate_per_s() -> float:
    row = study(STUDY)
    return (number(row, "labour rate per h") + number(row, "station rate per h")) / 3600


def seconds_of(name: str) -> float:
    return number(joint(name), "count") * number(joint(name), "time each [s]")


def money_of(name: str) -> float:
    row = joint(name)
    pieces = number(row, "count") * number(row, "cost each [EUR]")
    return pieces + seconds_of(name) * rate_per_s()


def gone(name: str) -> list[str]:
    """Give the joints that a change takes away."""
    named = json.loads(change(name)["joints"] or "[]")
    if name == LID:
        return [*named, "lid stiffener spots", "lid stiffener clinches"]
    return [str(one) for one in named]


def new_joints(name: str) -> tuple[Ends, Ends]:
    """Give seconds and money of the joints that come."""
    count = float(change(name)["count"] or 0)
    if name == RIM:
        usual = rows("joining.csv", "family")["flow-drill screw"]
        ends = ("low", "likely", "high")
        each = [number(usual, f"time {end} [s]") for end in ends]
        costs = [number(usual, f"cost {end} [EUR]") for end in ends]
        low, likely, high = (count * one for one in each)
        money = [
            count * (cost + one * rate_per_s())
            for cost, one in zip(costs, each, strict=True)
        ]
        return (low, likely, high), (money[0], money[1], money[2])
    if name == PLATE:
        share = count / number(joint("connector plate screws"), "count")
        seconds = share * seconds_of("connector plate screws")
        money_each = share * money_of("connector plate screws")
        return (seconds,) * 3, (money_each,) * 3
    return (0.0,) * 3, (0.0,) * 3


def seconds(name: str) -> Ends:
    before = math.fsum(seconds_of(one) for one in gone(name))
    low, likely, high = new_joints(name)[0]
    return low - before, likely - before, high - before


def joining_cost(name: str) -> Ends:
    before = math.fsum(money_of(one) for one in gone(name))
    low, likely, high = new_joints(name)[1]
    return low - before, likely - before, high - before


def crf() -> float:
    """Give the yearly payment on 1 by its definition: what all payments are worth."""
    row = study(STUDY)
    rate, years = number(row, "discount rate"), int(row["programme years"])
    return 1 / math.fsum((1 + rate) ** -year for year in range(1, years + 1))


def per_pack(once: Ends) -> Ends:
    volume = number(pack(SUBJECT), "yearly volume")
    low, likely, high = (money * crf() / volume for money in once)
    return low, likely, high


def tooling(name: str) -> Ends:
    if name != LID:
        return given(name, "tooling")
    process = rows("processes.csv", "process")[change(LID)["process"]]
    years = int(study(STUDY)["programme years"])
    parts = number(pack(SUBJECT), "yearly volume") * years
    sets = math.ceil(parts / number(process, "tool life likely"))
    low, likely, high = (
        sets * number(process, f"tooling {end} [EUR]")
        for end in ("low", "likely", "high")
    )
    return low, likely, high


def bought(mass_kg: float, price_of: str, process: str) -> float:
    """Give what the material of a part costs, with what is scrapped."""
    scrap = number(rows("processes.csv", "process")[process], "scrap likely")
    return mass_kg * number(material(price_of), "price [EUR/kg]") / (1 - scrap)


def made(process: str) -> float:
    row = rows("processes.csv", "process")[process]
    labour = number(study(STUDY), "labour rate per h") * number(row, "operators")
    rate = number(row, "machine rate likely [EUR/h]") + labour
    return (
        number(row, "cycle time likely [s]") * rate / 3600 / number(row, "utilisation")
    )


def part_cost(name: str) -> float:
    if name != LID:
        return given(name, "part cost")[1]
    steel, polymer = "mild steel DC04", change(LID)["material"]
    new = change(LID)["process"]
    # Stiffeners are too small for the rates of a press line: no making is credited.
    before = made("stamping") + bought(part_kg("lid panel"), steel, "stamping")
    before += bought(part_kg("lid stiffener"), steel, "stamping")
    return made(new) + bought(lid_kg()[1], polymer, new) - before


def add_back_cost(name: str) -> float:
    if name != LID:
        return 0.0
    price = {"shield foil": 14, "bonding straps": 18, "compression limiters": 15}
    return math.fsum(price[key] * kg[1] for key, kg in lid_add_backs_kg().items())


def net_worth(name: str) -> float:
    worth = number(study(STUDY), "worth likely per kg") * saved_kg(name)[1]
    once = per_pack(tooling(name))[1] + per_pack(given(name, "validation cost"))[1]
    joining = joining_cost(name)[1]
    return worth - part_cost(name) - joining - add_back_cost(name) - once
