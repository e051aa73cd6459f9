"""The usual cautions about traction packs, the same wherever they are shown."""

from __future__ import annotations

_HANDLING = (
    "Traction packs are high-voltage, heavy and chemically energetic. Opening, "
    "lifting and discharging them is only for trained and authorised people under "
    "local rules."
)
_ESTIMATES = (
    "The figures are estimates for comparison and quotation, never a validation."
)
_VALIDATION = (
    "A changed enclosure must be validated again for crush, intrusion, fire, thermal "
    "propagation, ingress, bonding and vibration under the regulation that applies "
    "(for instance UN R100) by licensed practice."
)

CAUTIONS = (_HANDLING, _ESTIMATES, _VALIDATION)
"""What goes with every brief and every page that proposes a change."""

DEMO_CAUTION = "The demo data are invented. No pack in them exists."
"""What goes with the demo library."""
