"""A request for the joints of one pack as it comes from the command line."""

from __future__ import annotations

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.inventory import Inventory, inventory
from benchpack.session.pack_names import lacking_pack


def take_inventory(
    library: Library, pack: str, *, currency: str = ""
) -> tuple[Inventory, Study]:
    """Take the inventory of the pack that is asked for.

    Parameters
    ----------
    library : Library
        The records. Joints may be there without the record of their pack.
    pack : str
        Name of the pack.
    currency : str
        Code of the file's money, where no study names it.

    Returns
    -------
    tuple
        The inventory, and the study whose rates and style it is shown with.

    Raises
    ------
    DataError
        When there is no such pack, no joints of it are recorded, or their money is in
        another currency than the study's.
    """
    if not library.packs.has(pack) and not library.joints_of(pack):
        raise DataError(lacking_pack(library, pack, purpose="to take stock of"))
    if not library.joints_of(pack):
        what = f"No joints of {pack} are recorded."
        raise DataError(Problem(what, "Enter what was counted, or read a table of it."))
    study = library.studies[0] if library.studies else Study(currency=currency or "CUR")
    if currency not in ("", "CUR", study.currency):
        raise DataError(
            Problem(
                f"The money of the joints is in {currency}, that of the study "
                f"{study.name} in {study.currency}; there are no exchange rates.",
                "Bring both to one currency.",
                column="currency",
            )
        )
    return inventory(library, study, pack), study
