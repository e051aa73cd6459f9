"""Look of the brief as a page of the web, on screen and in print."""

from __future__ import annotations

import base64

from benchpack.places import resources_folder
from benchpack.ui.palette import Roles

_FACES = (("Inter-Regular.otf", 400), ("Inter-SemiBold.otf", 600))
_FALLBACK = '"Inter", "Noto Sans", "Segoe UI", "Helvetica Neue", Arial, sans-serif'
_STYLE = """
:root {{ color-scheme: light; }}
* {{ box-sizing: border-box; }}
body {{
  margin: 0 auto; padding: 2rem 1.5rem; max-width: 60rem; background: {panel};
  color: {text}; font: 400 0.875rem/1.4 {family};
  font-feature-settings: "tnum" 1, "calt" 0; overflow-wrap: anywhere;
}}
h1 {{ font-size: 1.6rem; font-weight: 600; margin: 0 0 0.25rem; }}
h2 {{ font-size: 1.05rem; font-weight: 600; margin: 1.6rem 0 0.25rem; }}
header p, footer, .note, caption {{ color: {second}; font-size: 0.8rem; }}
p {{ margin: 0.35rem 0; }}
.lead {{ font-size: 1.05rem; font-weight: 600; }}
dl.figures {{
  display: grid; gap: 0.75rem 1.25rem; margin: 1rem 0;
  grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr));
  border-top: 1.5px solid {text}; padding-top: 0.4rem;
}}
dl.figures div {{ break-inside: avoid; }}
dt {{ color: {second}; font-size: 0.8rem; }}
dd {{ margin: 0; }}
dd.value {{ font-size: 1.5rem; font-weight: 600; line-height: 1.2; }}
dd.value small {{ font-size: 0.8rem; font-weight: 400; }}
.charts {{ display: flex; flex-wrap: wrap; gap: 1rem; margin: 1rem 0; }}
.charts > * {{ flex: 1 1 20rem; min-width: 0; }}
.charts .charts {{ margin: 0; }}
figure {{ margin: 0; break-inside: avoid; }}
figure svg {{ display: block; width: 100%; height: auto; }}
.scrolls {{ overflow-x: auto; }}
table {{
  border-collapse: collapse; width: 100%; font-size: 0.8rem; margin: 0.35rem 0;
}}
caption {{ text-align: left; font-weight: 600; }}
th, td {{
  text-align: left; vertical-align: top; padding: 0.2rem 0.6rem 0.2rem 0;
  border-top: 1px solid {hairline}; font-weight: 400; min-width: 3rem;
}}
thead th {{ color: {second}; border-top: 0; border-bottom: 1.5px solid {second}; }}
.right {{ text-align: right; overflow-wrap: normal; }}
tbody .right {{ white-space: nowrap; }}
tr.sum > * {{ border-top: 1.5px solid {text}; }}
tr.sum th, tr.sum .right, tr.group th, tr.group .right {{ font-weight: 600; }}
.fail {{ color: {fail}; }}
.look {{ color: {look}; }}
ul.cautions {{ margin: 0.35rem 0; padding-left: 1.1rem; font-size: 0.8rem; }}
footer {{ border-top: 1px solid {hairline}; margin-top: 2rem; padding-top: 0.5rem; }}
@page {{ size: {paper}; margin: 14mm 14mm 16mm; }}
@media print {{
  body {{ padding: 0; max-width: none; font-size: 8.5pt; }}
  table, .note, ul.cautions, dt, footer {{ font-size: 7.5pt; }}
  thead {{ display: table-header-group; }}
  tr, li {{ break-inside: avoid; }}
  h2 {{ break-after: avoid; }}
  .scrolls {{ overflow: visible; }}
}}
"""


def page_style(tokens: Roles, *, paper: str) -> str:
    """Give the style sheet with the typeface in it.

    Parameters
    ----------
    tokens : Roles
        The colours of print.
    paper : str
        ``A4`` or ``Letter``.
    """
    rules = _STYLE.format(
        family=_FALLBACK,
        paper=paper,
        panel=tokens.panel,
        text=tokens.text,
        second=tokens.second,
        hairline=tokens.hairline,
        fail=tokens.fail,
        look=tokens.look,
    )
    return "".join([*map(_face, _FACES), rules])


def _face(face: tuple[str, int]) -> str:
    name, weight = face
    data = (resources_folder() / "fonts" / name).read_bytes()
    text = base64.b64encode(data).decode("ascii")
    return (
        f'@font-face {{ font-family: "Inter"; font-weight: {weight}; '
        f'src: url("data:font/otf;base64,{text}") format("opentype"); }}\n'
    )
