"""What is valued, and the prices of parts, on the sheet of assumptions."""

from __future__ import annotations

from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.report.audit import names
from benchpack.report.audit.assumption_rows import AssumptionRows
from benchpack.report.audit.record import Format
from benchpack.results.explained_assumed import OF_STUDY, source_of

_MONEY = (0.0, 1e6)
_SHARE = (0.0, 1.0)


def valued_rows(rows: AssumptionRows, study: Study) -> None:
    """Write which saving is valued, and the prices of old and new parts.

    Parameters
    ----------
    rows : AssumptionRows
        The sheet.
    study : Study
        The study.
    """
    rows.draft.section("Programme and price")
    rows.single(
        "which saving is valued",
        str(study.valued_mass),
        name=names.VALUED,
        source=f"{OF_STUDY}; one of: {', '.join(ValuedMass)}",
        where="Programme, Price; what is not there gives way to the share captured",
        choices=tuple(map(str, ValuedMass)),
    )
    rows.single(
        "customer's share of the gain",
        study.customer_share,
        unit="%",
        number_format=Format.SHARE,
        name=names.CUSTOMER_SHARE,
        source=source_of(study, "customer_share"),
        where="Price",
        limits=_SHARE,
    )
    for title, value, name, source in (
        (
            "saving that the customer asks for",
            study.required_saving,
            names.REQUIRED_SAVING,
            f"{OF_STUDY}; what they want to keep of each pack",
        ),
        (
            "price of the new parts",
            study.part_price,
            names.PART_PRICE,
            f"{OF_STUDY}; empty: none is given",
        ),
        (
            "price of the old parts",
            study.old_part_price,
            names.OLD_PART_PRICE,
            f"{OF_STUDY}; empty: what they cost by sheet Part costs",
        ),
    ):
        rows.single(
            title,
            value,
            unit="CUR/pack",
            name=name,
            source=source,
            where="Price",
            limits=_MONEY,
        )
