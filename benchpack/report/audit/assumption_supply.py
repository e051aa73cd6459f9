"""Volume, years, interest and rates on the sheet of assumptions."""

from __future__ import annotations

from benchpack.calc.tooling import capital_recovery_factor
from benchpack.model.study import Study
from benchpack.report.audit import names
from benchpack.report.audit.assumption_rows import NO, AssumptionRows
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.record import Format, formula, text
from benchpack.results.change_supply import Supply

_MONEY = (0.0, 1e9)


def supply_rows(rows: AssumptionRows, study: Study, supply: Supply) -> None:
    """Write volume, years, interest and rates.

    Parameters
    ----------
    rows : AssumptionRows
        The sheet.
    study : Study
        The study.
    supply : Supply
        Its volume, years and interest.
    """
    whose = "the study" if study.yearly_volume else "the record of the subject"
    enters = "shares per pack, break-even, tool sets"
    volume = supply.yearly_volume
    rows.single(
        "yearly volume",
        volume,
        unit="packs/year",
        number_format=Format.COUNT,
        name=names.YEARLY_VOLUME,
        source=whose if volume > 0 else "not known: fill it in",
        where=enters,
        limits=(1.0, 1e9),
    )
    rows.single(
        "years of the programme",
        supply.years,
        unit="years",
        number_format=Format.TENTH,
        name=names.PROGRAMME_YEARS,
        source="the study",
        where=enters,
        limits=(0.01, 100.0),
    )
    rows.single(
        "discount rate",
        supply.rate,
        unit="% a year",
        number_format=Format.SHARE,
        name=names.DISCOUNT_RATE,
        source="the study",
        where=enters,
        limits=(0.0, 1.0),
    )
    _capital_recovery(rows.draft, supply)
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
            source="the study",
            where=where,
            limits=(0.0, 1e5),
        )
    rows.single(
        "tooling budget",
        study.tooling_budget,
        unit="CUR",
        number_format=Format.COUNT,
        name=names.TOOLING_BUDGET,
        source="the study; empty: no limit",
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
            source="the study",
            where="in the program only; no figure of this workbook",
            changes=False,
        )


def _capital_recovery(draft: Draft, supply: Supply) -> None:
    """Give the yearly payment on a sum of 1; a rate near none keeps its digits."""
    n, i = names.PROGRAMME_YEARS, names.DISCOUNT_RATE
    body = f"IF({i}<0.000001,(1+({n}+1)/2*{i})/{n},{i}/(1-(1+{i})^(-{n})))"
    value = float(capital_recovery_factor(supply.rate, supply.years))
    found = formula(body, value, Format.THOUSANDTH, name=names.CAPITAL_RECOVERY)
    source = "i / (1 - (1 + i)^-n); textbooks of engineering economy (from memory)"
    words = (text("1/year"), text(NO), text(source), text("shares per pack"))
    draft.line(text("capital recovery factor"), None, found, None, *words)
