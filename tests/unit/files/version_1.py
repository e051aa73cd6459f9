"""A library file as version 1 of the tables made it, written without the program."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

_TABLES = """
CREATE TABLE packs (id INTEGER NOT NULL, position BIGINT NOT NULL, name TEXT NOT
NULL, energy_kwh DOUBLE NOT NULL, energy_basis TEXT NOT NULL, energy_tolerance_kwh
DOUBLE, mass_kg DOUBLE NOT NULL, mass_known_by TEXT NOT NULL, mass_tolerance_kg
DOUBLE, cells_mass_kg DOUBLE, cells_volume_l DOUBLE, volume_l DOUBLE, voltage_v
DOUBLE, chemistry TEXT NOT NULL, cell_format TEXT NOT NULL, cell_count BIGINT,
enclosure_material TEXT NOT NULL, cooling TEXT NOT NULL, boundary TEXT NOT NULL,
state_of_health_pct DOUBLE, year BIGINT, yearly_volume BIGINT, source TEXT NOT NULL,
note TEXT NOT NULL, PRIMARY KEY (id) );
CREATE TABLE materials (position INTEGER NOT NULL, name TEXT NOT NULL, kind TEXT NOT
NULL, density_kg_m3 DOUBLE, modulus_gpa DOUBLE, strength_mpa DOUBLE, poisson_ratio
DOUBLE, conductivity_w_mk DOUBLE, expansion_1e6_k DOUBLE, service_temperature_degc
DOUBLE, flammability TEXT NOT NULL, price_per_kg DOUBLE, stiffness_knock_down
DOUBLE, strength_knock_down DOUBLE, minimum_wall_mm DOUBLE, source TEXT NOT NULL,
mark TEXT NOT NULL, PRIMARY KEY (position) );
CREATE TABLE sources (position INTEGER NOT NULL, name TEXT NOT NULL, kind TEXT NOT
NULL, date TEXT NOT NULL, reference TEXT NOT NULL, note TEXT NOT NULL, PRIMARY KEY
(position) );
CREATE TABLE studies (position INTEGER NOT NULL, name TEXT NOT NULL, subject TEXT
NOT NULL, reference TEXT NOT NULL, peers TEXT NOT NULL, basis TEXT NOT NULL,
exponent DOUBLE, trend TEXT NOT NULL, worth_low_per_kg DOUBLE, worth_likely_per_kg
DOUBLE, worth_high_per_kg DOUBLE, worth_reason TEXT NOT NULL, currency TEXT NOT
NULL, share_captured DOUBLE, target_kg DOUBLE, mass_unit TEXT NOT NULL, decimal_mark
TEXT NOT NULL, PRIMARY KEY (position) );
CREATE TABLE about ("key" TEXT NOT NULL, value TEXT NOT NULL, PRIMARY KEY ("key") );
CREATE TABLE parts (id INTEGER NOT NULL, pack_id INTEGER NOT NULL, position BIGINT
NOT NULL, name TEXT NOT NULL, inside TEXT NOT NULL, subsystem TEXT NOT NULL,
material TEXT NOT NULL, process TEXT NOT NULL, count BIGINT, mass_each_kg DOUBLE,
mass_tolerance_kg DOUBLE, known_by TEXT NOT NULL, thickness_mm DOUBLE, area_m2
DOUBLE, length_mm DOUBLE, governs TEXT NOT NULL, carry_over BOOLEAN NOT NULL, reason
TEXT NOT NULL, note TEXT NOT NULL, PRIMARY KEY (id), FOREIGN KEY(pack_id) REFERENCES
packs (id) ON DELETE CASCADE );
CREATE INDEX ix_parts_pack_id ON parts (pack_id);
CREATE TABLE joints (id INTEGER NOT NULL, pack_id INTEGER NOT NULL, position BIGINT
NOT NULL, name TEXT NOT NULL, family TEXT NOT NULL, designation TEXT NOT NULL,
property_class TEXT NOT NULL, count BIGINT, length_mm DOUBLE, mass_each_g DOUBLE,
known_by TEXT NOT NULL, role TEXT NOT NULL, joins TEXT NOT NULL, "to" TEXT NOT NULL,
subsystem TEXT NOT NULL, tightening TEXT NOT NULL, time_each_s DOUBLE, cost_each
DOUBLE, carry_over BOOLEAN NOT NULL, reason TEXT NOT NULL, note TEXT NOT NULL,
PRIMARY KEY (id), FOREIGN KEY(pack_id) REFERENCES packs (id) ON DELETE CASCADE );
CREATE INDEX ix_joints_pack_id ON joints (pack_id);
"""

_ROWS = """
INSERT INTO about VALUES ('revision', '7'), ('title', 'Small'), ('note', 'Invented.');
INSERT INTO packs VALUES
(3, 0, 'Avocet 81', 81, 'gross', NULL, 498.1, 'weighed', 0.5, 340, NULL, NULL, 400,
 'NMC', '', 186, '', '', 'coolant=out', NULL, 2024, NULL, 'scale', 'a note'),
(4, 1, 'Dunlin 74', 74.4, 'unknown', NULL, 447.2, '', NULL, NULL, NULL, NULL, NULL,
 '', '', NULL, '', '', '', NULL, NULL, NULL, '', '');
INSERT INTO parts VALUES
(1, 3, 0, 'tray', '', 'tray', 'steel', '', 1, 40, NULL, 'weighed', NULL, NULL, NULL,
 '', 0, '', '');
INSERT INTO joints VALUES
(1, 4, 0, 'lid screws', 'flange screw', 'EN 1665 M6x20', '8.8', 84, NULL, 8.7,
 'weighed batch', 'clamp', '', '', 'joints', 'torque', 6, 0.07, 1, 'pattern', '');
INSERT INTO materials VALUES
(0, 'steel', 'metal', 7850, 210, NULL, NULL, NULL, NULL, NULL, '', NULL, NULL, NULL,
 NULL, '', 'confirmed');
INSERT INTO sources VALUES (0, 'scale', '', '', '', '');
INSERT INTO studies VALUES
(0, 'First', 'Avocet 81', 'Dunlin 74', '["Dunlin 74"]', 'scaled', 0.7, 'Theil-Sen',
 2, 3, 9, 'agreed', 'USD', 0.8, 12, 'lb', ','),
(1, 'Second', '', '', '', 'at equal energy', 0.5, 'least squares',
 1, 3, 6, '', 'EUR', 1, NULL, 'kg', '.');
PRAGMA application_id = 0x42507031;
PRAGMA user_version = 1;
"""


def write_version_1(path: Path) -> None:
    """Write a library of two packs as version 1 kept it.

    Parameters
    ----------
    path : Path
        A file that is not there yet.
    """
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(_TABLES + _ROWS)
