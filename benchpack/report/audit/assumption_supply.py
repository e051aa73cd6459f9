"""Volume, years, interest and rates on the sheet of assumptions."""

from __future__ import annotations

import math

from benchpack.calc.tooling import capital_recovery_factor
from benchpack.model.study import Study
from benchpack.report.audit import names
from benchpack.report.audit.assumption_rows import NO, AssumptionRows
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.record import AuditCell, Format, formula, text
from benchpack.results.change_supply import Supply
from benchpack.results.explained_assumed import OF_STUDY, source_of

_MONEY = (0.0, 1e9)
_PACKS = (0.0, 1e9)
LEAST_ROWS = 20
"""Years that the table of years has at least, empty ones at its end."""


def rows_of_years(study: Study) -> int:
    """Give how many years the table of years has.

    Parameters
    ----------
    study : Study
        The study.
    """
    planned = max(math.ceil(study.programme_years), len(study.volumes))
    return max(LEAST_ROWS, planned)


def recovery_body(rate: str, years: str) -> str:
    """Give the formula of the yearly payment on a sum of 1.

    A rate near none keeps its digits.

    Parameters
    ----------
    rate, years : str
        Names or addresses.
    """
    near_none = f"(1+({years}+1)/2*{rate})/{years}"
    return f"IF({rate}<0.000001,{near_none},{rate}/(1-(1+{rate})^(-{years})))"


def supply_rows(
    rows: AssumptionRows, study: Study, supply: Supply, *, subject_volume: float | None
) -> None:
    """Write volume, years, interest and rates.

    Parameters
    ----------
    rows : AssumptionRows
        The sheet.
    study : Study
        The study.
    supply : Supply
        Its volume, years and interest.
    subject_volume : float or None
        Yearly volume of the subject.
    """
    _plan(rows, study, subject_volume)
    _what_counts(rows.draft, supply)
    for title, value, name in (
        ("labour rate", study.labour_rate_per_h, names.LABOUR_RATE),
        ("station rate", study.station_rate_per_h, names.STATION_RATE),
    ):
        where = "Joint costs" if name == names.STATION_RATE else "Joint and Part costs"
        rows.single(
            title,
            value,
            unit="CUR/h",
            name=name,
            source=OF_STUDY,
            where=where,
            limits=(0.0, 1e5),
        )
    rows.single(
        "tooling budget",
        study.tooling_budget,
        unit="CUR",
        number_format=Format.COUNT,
        name=names.TOOLING_BUDGET,
        source=f"{OF_STUDY}; empty: no limit",
        where="Value",
        limits=_MONEY,
    )
    for title, words in (
        ("programme", str(study.programme) or "unstated"),
        ("takt time", f"{study.takt_time_s:g} s"),
        ("friction in threads", f"{study.thread_friction:g}"),
        ("friction under heads", f"{study.head_friction:g}"),
    ):
        rows.single(
            title,
            words,
            source=OF_STUDY,
            where="in the program only; no figure of this workbook",
            changes=False,
        )


def _plan(rows: AssumptionRows, study: Study, subject_volume: float | None) -> None:
    """Write the even volume and its years, spread, start and interest."""
    volume, whose = study.yearly_volume or subject_volume, OF_STUDY
    if not study.yearly_volume:
        whose = "the record of the subject" if volume else "not known: fill it in"
    years, spread = (
        source_of(study, one) for one in ("programme_years", "volume_spread")
    )
    unless = "unless packs are entered year by year at the end of this sheet"
    rows.single(
        "packs a year, alike in all",
        volume,
        unit="packs/year",
        number_format=Format.COUNT,
        name=names.EVEN_VOLUME,
        source=whose,
        where=unless,
        limits=(1.0, 1e9),
    )
    rows.single(
        "years of the programme",
        study.programme_years,
        unit="years",
        number_format=Format.TENTH,
        name=names.EVEN_YEARS,
        source=f"{years}; a part of a year makes that part of its packs",
        where=unless,
        limits=(0.1, float(rows_of_years(study))),
    )
    rows.single(
        "spread of the volumes",
        study.volume_spread,
        unit="%",
        number_format=Format.SHARE,
        name=names.VOLUME_SPREAD,
        source=f"{spread}; by how much they may fall short or exceed",
        where="low and high value of the programme",
        limits=(0.0, 1.0),
    )
    rows.single(
        "year of the first packs",
        study.start_year,
        number_format=Format.NONE,
        name=names.START_YEAR,
        source=f"{OF_STUDY}; empty: years are numbered",
        where="By year",
        limits=(1900.0, 2200.0),
    )
    rows.single(
        "interest a year",
        study.discount_rate,
        unit="% a year",
        number_format=Format.SHARE,
        name=names.DISCOUNT_RATE,
        source=source_of(study, "discount_rate"),
        where="shares per pack, break-even, value of the programme",
        limits=(0.0, 1.0),
    )


def _what_counts(draft: Draft, supply: Supply) -> None:
    """Write the volume and years that count, and the capital recovery factor."""
    given, even = names.GIVEN_YEARS, names.EVEN_VOLUME
    packs, factor = names.PRESENT_PACKS, names.CAPITAL_RECOVERY
    by_year = f'IF({packs}=0,"",{packs}*{factor})'
    alike = f'IF(COUNT({even})=0,"",{even})'
    even_years = names.EVEN_YEARS
    uneven = f"OR({given}>0,{even_years}<>INT({even_years}))"
    years = f"IF({given}>0,{given},ROUNDUP({even_years},0))"
    enters = "shares per pack, break-even, tool sets"
    _worked_out(
        draft,
        "packs a year that count",
        formula(
            f"IF({uneven},{by_year},{alike})",
            supply.yearly_volume,
            Format.COUNT,
            name=names.YEARLY_VOLUME,
        ),
        unit="packs/year",
        source="of packs entered by year, or of a part of a year: the even volume of "
        "the same present value",
        where=enters,
    )
    _worked_out(
        draft,
        "years that count",
        formula(years, supply.years, Format.TENTH, name=names.PROGRAMME_YEARS),
        unit="years",
        source="those with packs entered, else the years of the programme, a part of "
        "one as a whole one",
        where=enters,
    )
    recovery = float(capital_recovery_factor(supply.rate, supply.years))
    body = recovery_body(names.DISCOUNT_RATE, names.PROGRAMME_YEARS)
    _worked_out(
        draft,
        "capital recovery factor",
        formula(body, recovery, Format.THOUSANDTH, name=names.CAPITAL_RECOVERY),
        unit="1/year",
        source="i / (1 - (1 + i)^-n); textbooks of engineering economy (from memory)",
        where="shares per pack",
    )


def _worked_out(
    draft: Draft, title: str, cell: AuditCell, *, unit: str, source: str, where: str
) -> None:
    words = (text(unit), text(NO), text(source), text(where))
    draft.line(text(title), None, cell, None, *words)


def volume_rows(rows: AssumptionRows, study: Study) -> tuple[str, ...]:
    """Write the packs of each year, and give where they stand.

    Parameters
    ----------
    rows : AssumptionRows
        The sheet.
    study : Study
        The study.
    """
    rows.draft.section("Packs by year, in place of the same packs in all years")
    given: list[int | None] = [*study.volumes]
    given += [None] * (rows_of_years(study) - len(given))
    said = iter((OF_STUDY if study.volumes else "empty: none are entered",))
    cells = tuple(
        rows.single(
            f"packs in year {year}",
            None if packs is None else float(packs),
            unit="packs",
            number_format=Format.COUNT,
            source=next(said, "as above"),
            where="By year; the last year with an entry ends the programme",
            limits=_PACKS,
        )
        for year, packs in enumerate(given, start=1)
    )
    counted = (f"{year}*COUNT({cell})" for year, cell in enumerate(cells, start=1))
    _worked_out(
        rows.draft,
        "years with packs entered",
        formula(
            f"MAX({','.join(counted)})",
            float(len(study.volumes)),
            Format.COUNT,
            name=names.GIVEN_YEARS,
        ),
        unit="years",
        source="the last year with an entry; an empty year before it has no packs",
        where="packs a year and years that count",
    )
    return cells
