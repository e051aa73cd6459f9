"""The defined names of the audit workbook, by which all sheets find its figures."""

from __future__ import annotations

Triple = tuple[str, str, str]

WORTH: Triple = ("Worth_low", "Worth_likely", "Worth_high")
"""Worth of one kilogram, the study's currency."""
SHARE_CAPTURED = "Share_captured"
BASIS, BASIS_NUMBER = "Basis", "Basis_number"
"""The basis as its word, and its place from 1 in the order of `model.words.Basis`."""
EXPONENT = "Exponent"
TARGET = "Target_kg"
"""The saving that is promised, empty where none is."""
EVEN_VOLUME, EVEN_YEARS = "Even_volume", "Even_years"
"""The same packs in every year, empty where not known, and for how many years."""
GIVEN_YEARS = "Given_years"
"""Years whose packs are entered one by one, 0 where none are."""
PRESENT_PACKS = "Present_packs"
"""All packs of the programme, those of each year discounted."""
YEARLY_VOLUME = "Yearly_volume"
"""Packs a year that count, empty where it is not known: the even ones, or those that
are worth as much today as the packs entered year by year."""
PROGRAMME_YEARS = "Programme_years"
"""Years that count."""
DISCOUNT_RATE = "Discount_rate"
"""Interest a year as a fraction."""
CAPITAL_RECOVERY = "Capital_recovery"
"""Yearly payment on a sum of 1, from years and interest."""
LABOUR_RATE, STATION_RATE = "Labour_rate", "Station_rate"
"""Money per hour."""
TOOLING_BUDGET = "Tooling_budget"
"""One-time money that may be spent, empty where there is no limit."""
GAP = "Gap_kg"
"""Gap to the study's reference on the basis."""
GAP_VALUE: Triple = ("Gap_value_low", "Gap_value_likely", "Gap_value_high")
"""What that gap is worth per pack at the low, likely and high worth."""
SAVED: Triple = ("Saved_kg_low", "Saved_kg_likely", "Saved_kg_high")
"""What the proposal saves per pack, kg."""
MONEY: Triple = ("Money_low", "Money_likely", "Money_high")
"""Money per pack for parts, joining and add-backs, after less before."""
TOOLS: Triple = ("Tools_low", "Tools_likely", "Tools_high")
VALIDATION: Triple = ("Validation_low", "Validation_likely", "Validation_high")
"""One-time money of the proposal."""
NET_WORTH: Triple = ("Net_worth_low", "Net_worth_likely", "Net_worth_high")
"""Net worth of the proposal per pack at the likely worth per kilogram."""
VALUED, VALUED_NUMBER = "Valued", "Valued_number"
"""What is valued as its word, and what there is to value: 1 the proposal, 2 the share
captured, 3 the target."""
VOLUME_SPREAD, START_YEAR = "Volume_spread", "Start_year"
"""Share by which volumes may be off, and calendar year of the first packs."""
CUSTOMER_SHARE, REQUIRED_SAVING = "Customer_share", "Required_saving"
"""Share of the whole gain that the customer keeps, and what they ask to keep."""
PART_PRICE, OLD_PART_PRICE = "Part_price", "Old_part_price"
"""Prices of the new and the old parts per pack, empty where none is given."""
MASS_ENERGY: Triple = ("Mass_energy_low", "Mass_energy_likely", "Mass_energy_high")
"""What mass costs on the road, kWh per 100 km and 100 kg."""
VEHICLE_RANGE, USABLE_SHARE = "Vehicle_range", "Usable_share"
BATTERY_COST: Triple = ("Battery_cost_low", "Battery_cost_likely", "Battery_cost_high")
"""Money for one more kWh of pack."""
BATTERY_DENSITY = "Battery_density"
"""Wh/kg of the battery that becomes smaller, empty for that of the subject."""
SIZING, CONSUMPTION = "Sizing", "Consumption"
"""What stays the same, and kWh per 100 km of the vehicle."""
SECONDARY: Triple = ("Secondary_low", "Secondary_likely", "Secondary_high")
"""Kilograms that go elsewhere per kilogram saved."""
DRIVER_WAY, DRIVER_YEARS = "Driver_way", "Driver_years"
"""Kilometres of a year, and years of driving."""
ENERGY_PRICE, CHARGING_EFFICIENCY = "Energy_price", "Charging_efficiency"
DRIVER_RATE = "Driver_rate"
"""Interest that the driver reckons with."""
VALUED_KG: Triple = ("Valued_kg_low", "Valued_kg_likely", "Valued_kg_high")
"""The saving that is valued, kg per pack; empty where there is none."""
PACK_GAIN: Triple = ("Pack_gain_low", "Pack_gain_likely", "Pack_gain_high")
"""Worth of that saving less money per pack."""
SPENT: Triple = ("Spent_low", "Spent_likely", "Spent_high")
"""One-time money of what is valued."""
PLAN_SCALE: Triple = ("Plan_scale_low", "Plan_scale_likely", "Plan_scale_high")
"""Packs against the plan in the low, likely and high case."""
RECKONED = "Programme_reckoned"
"""1 where there is a saving and packs, else 0."""
NPV: Triple = ("Programme_npv_low", "Programme_npv_likely", "Programme_npv_high")
"""Net present value of the programme."""
EVEN_PRICE: Triple = ("Even_price_low", "Even_price_likely", "Even_price_high")
"""Price of the new parts at which the customer is even, by the worth of a kilogram."""
DERIVED_WORTH: Triple = (
    "Derived_worth_low",
    "Derived_worth_likely",
    "Derived_worth_high",
)
"""Worth of a kilogram by the vehicle."""
