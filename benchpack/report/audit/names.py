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
YEARLY_VOLUME = "Yearly_volume"
"""Packs a year, empty where it is not known."""
PROGRAMME_YEARS = "Programme_years"
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
