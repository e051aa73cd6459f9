"""A library file as version 3 of the tables made it, written without the program.

Only the studies and the changes differ from version 2.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from tests.unit.files.version_2 import write_version_2

_PROPOSALS = """
DROP TABLE studies;
CREATE TABLE studies ( position INTEGER NOT NULL, name TEXT NOT NULL, subject TEXT
NOT NULL, reference TEXT NOT NULL, peers TEXT NOT NULL, basis TEXT NOT NULL,
exponent DOUBLE, trend TEXT NOT NULL, worth_low_per_kg DOUBLE, worth_likely_per_kg
DOUBLE, worth_high_per_kg DOUBLE, worth_reason TEXT NOT NULL, currency TEXT NOT
NULL, share_captured DOUBLE, target_kg DOUBLE, mass_unit TEXT NOT NULL, decimal_mark
TEXT NOT NULL, labour_rate_per_h DOUBLE, station_rate_per_h DOUBLE, takt_time_s
DOUBLE, thread_friction DOUBLE, head_friction DOUBLE, programme TEXT NOT NULL,
yearly_volume BIGINT, programme_years DOUBLE, discount_rate DOUBLE, tooling_budget
DOUBLE, PRIMARY KEY (position) );
CREATE TABLE changes ( id INTEGER NOT NULL, study_id INTEGER NOT NULL, position
BIGINT NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL, is_on BOOLEAN NOT NULL,
parts TEXT NOT NULL, joints TEXT NOT NULL, "into" TEXT NOT NULL, subsystem TEXT NOT
NULL, material TEXT NOT NULL, process TEXT NOT NULL, governs TEXT NOT NULL, wall_mm
DOUBLE, stiffness_shape DOUBLE, strength_shape DOUBLE, rib_allowance DOUBLE,
uses_data_sheet BOOLEAN NOT NULL, count BIGINT, length_mm DOUBLE, family TEXT NOT
NULL, designation TEXT NOT NULL, tightening TEXT NOT NULL, mass_kg_low DOUBLE,
mass_kg_likely DOUBLE, mass_kg_high DOUBLE, part_cost_low DOUBLE, part_cost_likely
DOUBLE, part_cost_high DOUBLE, joining_cost_low DOUBLE, joining_cost_likely DOUBLE,
joining_cost_high DOUBLE, seconds_low DOUBLE, seconds_likely DOUBLE, seconds_high
DOUBLE, tooling_low DOUBLE, tooling_likely DOUBLE, tooling_high DOUBLE,
validation_cost_low DOUBLE, validation_cost_likely DOUBLE, validation_cost_high
DOUBLE, lead_weeks_low DOUBLE, lead_weeks_likely DOUBLE, lead_weeks_high DOUBLE,
release_chance DOUBLE, programme TEXT NOT NULL, requires TEXT NOT NULL, excludes
TEXT NOT NULL, waived TEXT NOT NULL, rationale TEXT NOT NULL, note TEXT NOT NULL,
PRIMARY KEY (id), FOREIGN KEY(study_id) REFERENCES studies (position) ON DELETE
CASCADE );
CREATE INDEX ix_changes_study_id ON changes (study_id);
INSERT INTO studies VALUES (0, 'First', 'Avocet 81', 'Dunlin 74', '', 'at equal energy',
 0.5, 'least squares', 2.0, 3.0, 9.0, 'agreed', 'USD', 0.8, 12.0, 'kg', '.',
45.0, 60.0, 60.0, 0.12, 0.12, 'new programme', 20000, 5.0, 0.06, 1000000.0);
INSERT INTO studies VALUES (1, 'Second', '', '', '', 'at equal energy', 0.5,
'least squares', 1.0, 3.0, 6.0, '', 'EUR', 1.0, NULL, 'kg', '.', 45.0, 60.0, 60.0, 0.12,
0.12, '', NULL, 7.0, 0.08, NULL);
INSERT INTO changes VALUES (1, 0, 0, 'no tray', 'remove', 1, '["tray"]', '', '',
'other', '', '', '', NULL, 1.0, 1.0, 0.0, 0, NULL, NULL, '', '', '', 1.0, 2.0, 3.0,
NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL,
NULL, NULL, NULL, NULL, 1.0, '', '', '', '', 'why', '');
PRAGMA user_version = 3;
"""


def write_version_3(path: Path) -> None:
    """Write a library of two packs, two studies and a change as version 3 kept it.

    Parameters
    ----------
    path : Path
        A file that is not there yet.
    """
    write_version_2(path)
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(_PROPOSALS)
