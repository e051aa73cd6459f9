"""What is said of a table and of its reading. No Qt."""

from __future__ import annotations

from benchpack.files.sheet import Sheet
from benchpack.ui.dialogs.import_plan import Plan, TakenIn

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
