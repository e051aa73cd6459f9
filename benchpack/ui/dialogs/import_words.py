"""What is said of a table and of its reading. No Qt."""

from __future__ import annotations

from benchpack.files.sheet import Sheet
from benchpack.ui.dialogs.import_plan import PACKS, Plan, TakenIn
from benchpack.ui.dialogs.import_preview import Preview

_MARKS = {",": "comma", ".": "point"}


def counted(number: int, noun: str) -> str:
    """Give a number with its noun, ``1 row``, ``14 packs``.

    Parameters
    ----------
    number : int
        How many.
    noun : str
        The noun in the singular.
    """
    digits = f"{number:,}".replace(",", "\u2009")
    return f"{digits}\u00a0{noun}{'' if number == 1 else 's'}"


def result_sentence(taken: TakenIn, plan: Plan, source: str) -> str:
    """Say how the reading went, ``14 packs read from x.csv, 3 rows refused``.

    Parameters
    ----------
    taken : TakenIn
        What was read.
    plan : Plan
        How it was read.
    source : str
        Name of the file.
    """
    noun = plan.kind.removesuffix("s")
    text = f"{counted(taken.accepted, noun)} read from {source}"
    if taken.replaced:
        text += f", {taken.replaced} of them in place of another"
    refused = counted(taken.refused, "row") if taken.refused else "no row"
    return f"{text}, {refused} refused"


def preview_sentence(preview: Preview, plan: Plan) -> str:
    """Say what will become of the rows of a preview.

    Parameters
    ----------
    preview : Preview
        The rows.
    plan : Plan
        How they are read.
    """
    read = counted(preview.rows_read, "row")
    lead = f"{read} read" if preview.is_whole else f"Of the first {read}"
    refused = f"{preview.refused} will be refused" if preview.refused else ""
    said = f"{lead}, {refused or 'none will be refused'}."
    if plan.kind == PACKS or not preview.replaced:
        return said
    noun = plan.kind.removesuffix("s")
    verb = "replaces" if preview.replaced == 1 else "replace"
    return f"{said} {preview.replaced} {verb} a {noun} of the same name in its pack."


def goal_text(plan: Plan) -> str:
    """Say where parts or joints go and what becomes of those that are there.

    Parameters
    ----------
    plan : Plan
        How the table is read.

    Returns
    -------
    str
        Empty for packs.
    """
    if plan.kind == PACKS:
        return ""
    noun = plan.kind.removesuffix("s")
    said = (
        f"The {plan.kind} join those of their packs; a {noun} whose name its pack has "
        "already takes that one's place."
    )
    if plan.is_of_one_pack:
        said = (
            f"No column names the pack: all rows are taken for {plan.pack}. Select "
            f"another pack first to take them for that one. {said}"
        )
    return said


def about_text(sheet: Sheet) -> str:
    """Say how a file is written, as far as that can surprise."""
    delimiters = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars"}
    words = [f"heads in row {sheet.header_row}"]
    if sheet.delimiter:
        by = delimiters.get(sheet.delimiter, repr(sheet.delimiter))
        words.append(f"cells parted by {by}")
    if sheet.encoding:
        words.append(f"text in {sheet.encoding}")
    text = ", ".join(words)
    return text[0].upper() + text[1:]


def found_marks(sheet: Sheet) -> str:
    """Say which decimal marks the first rows of a table speak for."""
    marks = {mark for mark in sheet.decimal_marks if mark}
    words = [_MARKS[mark] for mark in sorted(marks) if mark in _MARKS]
    return " and ".join(words) or "no mark"
