"""The command pictures: every page of the window as PNG."""

from __future__ import annotations

import os
from collections.abc import Sequence

from benchpack.commands.exit_codes import DONE
from benchpack.commands.source_file import file_parser, path_of
from benchpack.commands.speech import report, write_line
from benchpack.errors import RequestError


def run(arguments: Sequence[str]) -> int:
    """Write every page, light and dark.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.

    Raises
    ------
    RequestError
        When size or scale cannot be so.
    """
    parser = file_parser(
        "pictures", "Write every page as PNG, light and dark. Needs no display."
    )
    parser.add_argument("--out", type=path_of, required=True, metavar="DIR")
    parser.add_argument(
        "--size",
        default="1280x800",
        metavar="WIDTHxHEIGHT",
        help="size of the window in pixels, 1280x800 by default",
    )
    parser.add_argument(
        "--scale", type=float, default=1.0, help="pixels per pixel, 1 to 3"
    )
    options = parser.parse_args(arguments)
    size = _size(options.size)
    if not 1 <= options.scale <= 3:
        raise RequestError(f"--scale is {options.scale:g}; it has to be 1 to 3")
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["QT_SCALE_FACTOR"] = f"{options.scale:g}"
    from benchpack.ui.pictures import write_pictures

    reading_problems, paths = write_pictures(options.file, options.out, size=size)
    report(reading_problems)
    for path in paths:
        write_line(str(path))
    return DONE


def _size(text: str) -> tuple[int, int]:
    width, _, height = text.partition("x")
    if not (width.isdecimal() and height.isdecimal()):
        raise RequestError(f"--size is {text!r}; give it as 1280x800")
    size = int(width), int(height)
    if not all(300 <= side <= 10_000 for side in size):
        raise RequestError(f"--size is {text}; each side has to be 300 to 10000")
    return size
