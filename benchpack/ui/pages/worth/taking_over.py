"""What of a place on the map can be taken over into the study."""

from __future__ import annotations

from typing import Any

from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.worth_case import WorthCase
from benchpack.units.formatting import KG_PER_LB

_WORTH, _SHARE, _VOLUME, _INTEREST = "worth", "share", "volume", "interest"


def taken_over(case: WorthCase, key: str, value: float) -> dict[str, Any]:
    """Give the assumptions of the study that a value on the map stands for.

    Parameters
    ----------
    case : WorthCase
        The case of the map.
    key : str
        Key of a side of the map.
    value : float
        The value along it, in the assumption's own unit.

    Returns
    -------
    dict
        Attributes of a study, rounded as they are shown; none where the study assumes
        no such thing.
    """
    study = case.study
    if key == _WORTH:
        return _worth(study, max(0.0, value))
    if key == _SHARE and case.saving.valued is ValuedMass.SHARE:
        return {"share_captured": min(1.0, max(0.0, round(value, 2)))}
    if key == _INTEREST:
        return {"discount_rate": min(1.0, max(0.0, round(value, 3)))}
    if key == _VOLUME and study.yearly_volume is not None and not study.volumes:
        return {"yearly_volume": max(1, round(round(value, 2) * study.yearly_volume))}
    return {}


def _worth(study: Study, worth_per_kg: float) -> dict[str, float]:
    per_unit = KG_PER_LB if study.mass_unit == "lb" else 1.0
    likely = round(worth_per_kg * per_unit, 2) / per_unit
    return {
        "worth_low_per_kg": min(study.worth_low_per_kg, likely),
        "worth_likely_per_kg": likely,
        "worth_high_per_kg": max(study.worth_high_per_kg, likely),
    }
