"""A library file as version 2 of the tables made it, written without the program.

Only what version 2 added to a study differs from version 1.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from tests.unit.files.version_1 import write_version_1

_STUDIES = """
DROP TABLE studies;
CREATE TABLE studies (position INTEGER NOT NULL, name TEXT NOT NULL, subject TEXT
NOT NULL, reference TEXT NOT NULL, peers TEXT NOT NULL, basis TEXT NOT NULL,
exponent DOUBLE, trend TEXT NOT NULL, worth_low_per_kg DOUBLE, worth_likely_per_kg
DOUBLE, worth_high_per_kg DOUBLE, worth_reason TEXT NOT NULL, currency TEXT NOT
NULL, share_captured DOUBLE, target_kg DOUBLE, mass_unit TEXT NOT NULL, decimal_mark
TEXT NOT NULL, labour_rate_per_h DOUBLE, station_rate_per_h DOUBLE, takt_time_s
DOUBLE, thread_friction DOUBLE, head_friction DOUBLE, PRIMARY KEY (position) );
INSERT INTO studies VALUES
(3, 'First', 'Avocet 81', 'Dunlin 74', '["Dunlin 74"]', 'scaled', 0.7, 'Theil-Sen',
 2, 3, 9, 'agreed', 'USD', 0.8, 12, 'lb', ',', 51.5, 80, 95, 0.1, 0.14),
(8, 'Second', '', '', '', 'at equal energy', 0.5, 'least squares',
 1, 3, 6, '', 'EUR', 1, NULL, 'kg', '.', 45, 60, 60, 0.12, 0.12);
PRAGMA user_version = 2;
"""


def write_version_2(path: Path) -> None:
    """Write a library of two packs as version 2 kept it.

    Parameters
    ----------
    path : Path
        A file that is not there yet.
    """
    write_version_1(path)
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(_STUDIES)
