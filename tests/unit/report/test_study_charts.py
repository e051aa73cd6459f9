"""The charts of a study, by name."""

from __future__ import annotations

from dataclasses import replace

from benchpack.files.demo import demo_library
from benchpack.model.library import Library
from benchpack.report.study_charts import NamedChart, study_charts
from benchpack.results.proposal import proposal
from benchpack.results.results import compute


def charts_of(library: Library) -> tuple[NamedChart, ...]:
    study = library.first_study()
    results = compute(library, study)
    found = proposal(library, study, gap=results)
    charts = study_charts(results, found)
    assert all(not chart.spec.is_empty for chart in charts)
    return charts


def chart_names(library: Library) -> list[str]:
    return [chart.name for chart in charts_of(library)]


def test_the_demo_has_a_chart_of_everything_by_a_name_of_its_own() -> None:
    names = chart_names(demo_library())
    assert len(names) == len(set(names))
    wanted = {
        "energy and mass",
        "gaps",
        "gap by subsystem",
        "joints by count",
        "joints by mass",
        "proposal",
        "worth",
    }
    assert wanted <= set(names)


def test_what_a_customer_does_not_see_is_marked() -> None:
    charts = charts_of(demo_library())
    internal = {chart.name for chart in charts if chart.is_internal}
    assert internal == {"programme", "price", "what matters"}


def test_what_matters_tells_the_value_with_every_change_released() -> None:
    (found,) = [
        chart.spec
        for chart in charts_of(demo_library())
        if chart.name == "what matters"
    ]
    assert "5.61" in found.note
    assert "with all of them released 5.85" in found.note
    assert found.explain_key == "expected programme value"


def test_what_has_nothing_to_draw_is_left_out() -> None:
    library = replace(demo_library(), joints={}, changes={})
    names = chart_names(library)
    assert "gaps" in names
    assert not [name for name in names if name.startswith(("joints", "proposal"))]
