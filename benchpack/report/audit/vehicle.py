"""The sheet of the vehicle: the worth of a kilogram that follows from it."""

from __future__ import annotations

import math

from benchpack.calc.derived_worth import MOST_BATTERY_SHARE
from benchpack.model.ranges import Range
from benchpack.model.words import EnergyBasis
from benchpack.model.worth_words import Sizing
from benchpack.report.audit import names
from benchpack.report.audit.assumption_supply import recovery_body
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.packs import PackColumn, Packs
from benchpack.report.audit.programme_saving import corners_body
from benchpack.report.audit.record import AuditSheet, Format, Look
from benchpack.report.audit.value_rows import HEADS, WIDTHS, ValueRows
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_derived import APART

_PURPOSE = (
    "The worth of a kilogram by the vehicle: a smaller battery at equal range. Low and "
    "high take all inputs at their low, or at their high ends. What the driver saves "
    "is another pocket and never added."
)
AGREES = "within a factor of 2 of what the vehicle supports"
ABOVE = "more than a factor of 2 above what the vehicle supports: write down why"
BELOW = "more than a factor of 2 below what the vehicle supports: write down why"
KEPT = "apart: with the battery kept the maker saves none, but gains range"
UNKNOWN = "alone: the vehicle does not say what a kilogram is worth"
_NAN = (math.nan, math.nan, math.nan)
_Cells = tuple[str, str, str]


def vehicle_sheet(case: WorthCase, packs: Packs) -> AuditSheet:
    """Build the sheet of the vehicle.

    Parameters
    ----------
    case : WorthCase
        The case.
    packs : Packs
        The sheet of packs.
    """
    draft = Draft("Vehicle", _PURPOSE, WIDTHS)
    draft.heads(*HEADS)
    writer = _Writer(ValueRows(draft, case.study.currency), case)
    draft.section("The maker: a smaller battery")
    worth = writer.maker(
        packs.at(packs.subject, PackColumn.DENSITY),
        packs.at(packs.subject, PackColumn.ENERGY_BASIS),
    )
    draft.section("The driver: less energy from the socket")
    writer.driver()
    draft.section("The battery kept: more range")
    writer.range_gain()
    draft.section("The worth that is entered, beside it")
    writer.compare(worth)
    return draft.sheet()


class _Writer:
    """Writes the rows."""

    def __init__(self, rows: ValueRows, case: WorthCase) -> None:
        self.rows, self.study, self.found = rows, case.study, case.derived
        self.saved_kg = case.saving.saved_kg
        self.kept = f'{names.SIZING}="{Sizing.BATTERY_KEPT}"'

    def _three(
        self,
        title: str,
        bodies: list[str],
        value: Range | None,
        *,
        unit: str,
        how: str,
        number_format: Format = Format.CENT,
        labels: _Cells = ("", "", ""),
        look: Look = Look.FORMULA,
    ) -> _Cells:
        return self.rows.three(
            title,
            bodies,
            _NAN if value is None else value.ends,
            unit=unit,
            how=how,
            number_format=number_format,
            labels=labels,
            look=look,
        )

    def maker(self, subject_density: str, subject_basis: str) -> _Cells:
        """Write the steps from the energy of mass to the maker's worth."""
        found = self.found
        way = f"{names.VEHICLE_RANGE}/(100*{names.USABLE_SHARE})"
        energy = self._three(
            "battery energy that a kilogram needs",
            [f"{end}/100*{way}" for end in names.MASS_ENERGY],
            found.battery_kwh,
            unit="kWh/kg",
            how="e x range / (100 x share used), e per kilogram: a hundredth of that "
            "per 100 kg",
            number_format=Format.FINE,
        )
        own = names.BATTERY_DENSITY
        usable = f'{subject_basis}="{EnergyBasis.USABLE}"'
        share = f"IF({usable},{names.USABLE_SHARE},1)"
        installed = f"{subject_density}/{share}"
        density = self.rows.one(
            "density of that battery",
            f'IF(COUNT({own})=1,{own},IF(COUNT({subject_density})=0,"",{installed}))',
            found.density_wh_per_kg,
            unit="Wh/kg",
            how="entered, else that of the subject: usable energy / share used; energy "
            "whose basis is not stated is taken as installed",
            number_format=Format.TENTH,
        )
        battery = self._three(
            "battery saved per kilogram, g",
            [f'IF(COUNT({density})=0,"",1000*{end}/{density})' for end in energy],
            found.battery_kg,
            unit="kg/kg",
            how="battery energy / density",
            number_format=Format.THOUSANDTH,
        )
        believed = f"{battery[1]}<{MOST_BATTERY_SHARE!r}"
        costs = ",".join(names.BATTERY_COST)
        lacks = f"OR(COUNT({density})=0,COUNT({costs})<3)"
        plain = [
            f"{dE}*{cost}*(1+{other})/(1-{g})"
            for dE, cost, other, g in zip(
                energy, names.BATTERY_COST, names.SECONDARY, battery, strict=True
            )
        ]
        plain[2] = f"IF({battery[2]}<{MOST_BATTERY_SHARE!r},{plain[2]},{plain[1]})"
        return self._three(
            "worth of a kilogram by the vehicle",
            [
                f'IF({self.kept},0,IF({lacks},"",IF({believed},{body},"")))'
                for body in plain
            ],
            found.worth_per_kg,
            unit="CUR/kg",
            how="battery energy x cost x (1 + other mass) / (1 - g); from g = 0.5 on "
            "it is not believed, a high end beyond it is left out",
            labels=names.DERIVED_WORTH,
            look=Look.SUM,
        )

    def driver(self) -> None:
        """Write what a kilogram saves the driver, as present value."""
        a_year = f"/100*{names.DRIVER_WAY}/(100*{names.CHARGING_EFFICIENCY})"
        factor = recovery_body(names.DRIVER_RATE, names.DRIVER_YEARS)
        price = names.ENERGY_PRICE
        self._three(
            "what a kilogram saves the driver",
            [
                f'IF(COUNT({price})=0,"",{e}{a_year}*{price}/{factor})'
                for e in names.MASS_ENERGY
            ],
            self.found.driver_per_kg,
            unit="CUR/kg",
            how="energy of a year from the socket x its price / capital recovery "
            "factor; another pocket, never added",
        )

    def range_gain(self) -> None:
        """Write which share the range gains where the battery is kept."""
        per_kg = self._three(
            "gain of range per kilogram",
            [f"{end}/100/{names.CONSUMPTION}" for end in names.MASS_ENERGY],
            self.found.mass_energy.scaled(0.01 / self.study.consumption_kwh),
            unit="share/kg",
            how="e / consumption",
            number_format=Format.FINE,
        )
        saved = names.VALUED_KG
        lacks = f"OR(NOT({self.kept}),COUNT({saved[1]})=0)"
        self._three(
            "gain of range by the saving that is valued",
            [f'IF({lacks},"",{corners_body(end, per_kg, saved)})' for end in range(3)],
            self.found.range_gain,
            unit="%",
            how="gain per kilogram x mass saved, the least and the greatest of all "
            "ends; only with the battery kept",
            number_format=Format.SHARE,
        )

    def compare(self, worth: _Cells) -> None:
        """Write the entered worth, how far both are apart, and say so."""
        entered, derived = names.WORTH[1], worth[1]
        found = self.found.worth_per_kg
        is_kept = self.study.sizing is Sizing.BATTERY_KEPT
        self._three(
            "worth of a kilogram that is entered",
            list(names.WORTH),
            Range(*self.study.worth_per_kg),
            unit="CUR/kg",
            how="sheet Assumptions, with its reason",
        )
        less, more = f"MIN({entered},{derived})", f"MAX({entered},{derived})"
        lacks = f"OR({self.kept},COUNT({derived})=0)"
        likely = math.nan if found is None or is_kept else found.likely
        both = sorted((self.study.worth_likely_per_kg, likely))
        times = both[1] / both[0] if both[0] > 0 and likely > 0 else math.nan
        self.rows.one(
            "times the greater is the smaller",
            f'IF({lacks},"",IF({less}>0,{more}/{less},""))',
            times,
            unit="factor",
            how=f"beyond {APART:g} it is said below",
        )
        side = f'IF({entered}>{derived},"{ABOVE}","{BELOW}")'
        apart = f'IF({more}<={APART!r}*{less},"{AGREES}",{side})'
        unknown = f'IF(COUNT({derived})=0,"{UNKNOWN}",{apart})'
        self.rows.said(
            "the worth that is entered lies",
            f'IF({self.kept},"{KEPT}",{unknown})',
            self._sentence(likely, is_kept=is_kept),
        )

    def _sentence(self, likely: float, *, is_kept: bool) -> str:
        if is_kept:
            return KEPT
        if math.isnan(likely):
            return UNKNOWN
        if self.found.disagreement is None:
            return AGREES
        return ABOVE if self.study.worth_likely_per_kg > likely else BELOW
