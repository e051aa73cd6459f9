"""The register of outside checks: what each calculation was held against.

Print it as the table of DEVELOPERS.md with ``python -m tests.outside.checks``.
"""

from __future__ import annotations

from tests.outside.busbar_checks import BUSBAR_CHECKS
from tests.outside.chance_checks import CHANCE_CHECKS
from tests.outside.check_record import Check, Mark
from tests.outside.check_record import checks as _checks
from tests.outside.joint_checks import JOINT_CHECKS
from tests.outside.part_checks import PART_CHECKS
from tests.outside.worth_checks import WORTH_CHECKS

__all__ = ["CHECKS", "Check", "Mark", "markdown_table"]

CHECKS: tuple[Check, ...] = (
    *_checks(
        "test_densities_published.py::test_cell_to_pack_ratio_of_a_teaching_text",
        "densities.cell_to_pack_ratio",
        source="teaching texts: 72 kg of cells in 122 kg are 0.59",
        tolerance="0.005",
        mark="published",
    ),
    *_checks(
        "test_densities_published.py::test_density_of_an_inventoried_pack",
        "densities.gravimetric_density_wh_per_kg",
        source="published inventory: 26.6 kWh, 253 kg, 105 Wh/kg",
        tolerance="0.5 Wh/kg",
        mark="published",
    ),
    *_checks(
        "test_densities_published.py::test_residual_of_a_table_that_disagrees_with_itself",
        "densities.identity_residual",
        source="open life-cycle model: 0.23 * 0.5 against 0.14 kWh/kg",
        tolerance="1e-12 relative",
        mark="published",
    ),
    *_checks(
        "test_densities_published.py::test_densities_in_the_units_of_pint",
        "densities.gravimetric_density_wh_per_kg densities.volumetric_density_wh_per_l",
        source="pint",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_densities_published.py::test_amounts_per_energy_in_the_units_of_pint",
        "densities.structure_mass_kg densities.structure_mass_per_energy "
        "densities.per_energy",
        source="pint",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_gap_vectors.py::test_the_vector_in_which_the_sign_flips",
        "gap.gap_as_weighed_kg gap.energy_share_kg gap.density_share_kg "
        "gap.gap_scaled_kg",
        source="worked by hand: 460 kg, 70 kWh against 470 kg, 80 kWh",
        tolerance="0.005 kg",
        mark="computed",
    ),
    *_checks(
        "test_gap_vectors.py::test_gaps_against_exact_arithmetic",
        "gap.gap_as_weighed_kg gap.energy_share_kg gap.density_share_kg "
        "gap.gap_scaled_kg gap.gap_structure_kg",
        source="decimal arithmetic, 50 digits",
        tolerance="5e-13 kg",
        mark="computed",
    ),
    *_checks(
        "test_gap_vectors.py::test_a_split_against_exact_arithmetic",
        "groups.split_by_group",
        source="decimal arithmetic, 50 digits",
        tolerance="5e-13 kg",
        mark="computed",
    ),
    *_checks(
        "test_gap_vectors.py::test_a_case_of_the_trade",
        "gap.gap_as_weighed_kg gap.energy_share_kg gap.density_share_kg",
        source="no source: 82 kWh, 489 kg against 75 kWh, 439 kg",
        tolerance="0.005 kg",
        mark="common practice",
    ),
    *_checks(
        "test_gap_vectors.py::test_the_other_packs_of_the_case",
        "gap.gap_as_weighed_kg gap.energy_share_kg gap.density_share_kg",
        source="no source: 57 kWh, 429 kg and 75 kWh, 442 kg; by hand",
        tolerance="5e-5 kg",
        mark="common practice",
    ),
    *_checks(
        "test_gap_vectors.py::test_gap_to_the_trend_of_the_case",
        "gap.gap_to_trend_kg trend.fit_least_squares line.LinearTrend.predict_kg",
        source="no source: line through three packs; by hand",
        tolerance="5e-4 kg",
        mark="common practice",
    ),
    *_checks(
        "test_seal_line_published.py::test_pitches_of_the_table",
        "seal_line.greatest_pitch_mm",
        source="derived table of 8 flanges under 2 gaskets; constants recalled",
        tolerance="0.5 mm",
        mark="computed",
    ),
    *_checks(
        "test_seal_line_published.py::test_the_price_of_a_polymer_flange_in_pitch",
        "seal_line.greatest_pitch_mm",
        source="derived: 3 mm aluminium to 6 mm long-glass PP costs 20 % of pitch",
        tolerance="0.5 %",
        mark="computed",
    ),
    *_checks(
        "test_seal_line_published.py::test_against_a_boundary_value_solver",
        "seal_line.greatest_pitch_mm seal_line.compression_loss_mm",
        source="scipy.integrate.solve_bvp, clamped beam under parabolic pressure",
        tolerance="1e-7 relative",
        mark="computed",
    ),
    *_checks(
        "test_seal_line_published.py::test_one_pressure_is_the_beam_of_textbooks",
        "seal_line.greatest_pitch_mm seal_line.compression_loss_mm",
        source="Timoshenko, Roark: clamped beam, w = q L^4 / (384 E I)",
        tolerance="1e-12 relative",
        mark="memory",
    ),
    *_checks(
        "test_seal_line_published.py::test_a_lid_under_a_metre_of_water",
        "seal_line.water_pressure_kpa seal_line.lift_line_load_n_mm",
        source="by hand: 1 m of water, 1.7 m2, 6.6 m: 9.8 kPa, 16.7 kN, 2.5 N/mm",
        tolerance="last digit",
        mark="computed",
    ),
    *_checks(
        "test_seal_line_published.py::test_seal_force_of_a_screw",
        "seal_line.load_per_joint_n",
        source="no source: 0.3 to 5 N/mm at 80 to 150 mm are 45 to 400 N",
        tolerance="1e-12 relative",
        mark="common practice",
    ),
    *_checks(
        "test_seal_line_published.py::test_loads_in_the_units_of_pint",
        "seal_line.line_load_n_mm seal_line.load_per_joint_n "
        "seal_line.lift_line_load_n_mm seal_line.water_pressure_kpa",
        source="pint; its water column",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_seal_line_published.py::test_counts_against_exact_fractions",
        "seal_line.least_joint_count",
        source="rational arithmetic",
        tolerance="exact",
        mark="computed",
    ),
    *_checks(
        "test_trend_nist.py::test_norris",
        "trend.fit_least_squares",
        source="NIST StRD Norris, certified values",
        tolerance="1e-11 relative",
        mark="published",
    ),
    *_checks(
        "test_trend_packages.py::test_least_squares_against_linregress",
        "trend.fit_least_squares",
        source="scipy.stats.linregress",
        tolerance="1e-8 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_power_law_against_linregress_of_logarithms",
        "trend.fit_power_law",
        source="scipy.stats.linregress",
        tolerance="1e-8 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_least_squares_band_against_statsmodels",
        "line.LinearTrend.predict_kg line.LinearTrend.prediction_uncertainty_kg "
        "line.LinearTrend.prediction_interval_kg trend.fit_least_squares",
        source="statsmodels OLS, get_prediction",
        tolerance="1e-8 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_power_law_band_against_statsmodels",
        "line.LinearTrend.predict_kg line.LinearTrend.prediction_uncertainty_kg "
        "line.LinearTrend.prediction_interval_kg trend.fit_power_law",
        source="statsmodels OLS of logarithms, get_prediction",
        tolerance="1e-8 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_bands_hold_what_they_promise",
        "line.LinearTrend.prediction_interval_kg trend.fit_theil_sen",
        source="simulation, 4,000 seeded sets of peers",
        tolerance="1.2 to 2 % of coverage",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_theil_sen_against_theilslopes",
        "trend.fit_theil_sen",
        source="scipy.stats.theilslopes",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_sampled_theil_sen_is_near_every_pair",
        "trend.fit_theil_sen",
        source="scipy.stats.theilslopes, all pairs against the sample",
        tolerance="0.15 of the confidence interval",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_pair_slopes_and_their_limits_against_theilslopes",
        "slopes.pair_slopes slopes.slope_limits",
        source="scipy.stats.theilslopes",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_trend_packages.py::test_student_quantile_against_the_table_of_the_gum",
        "line.student_quantile",
        source="JCGM 100:2008, table G.2; scipy.stats.t",
        tolerance="0.005; 1e-10 relative",
        mark="memory",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_uncertainty_of_gaps_against_uncertainties",
        "gap_uncertainty.gap_as_weighed_uncertainty_kg "
        "gap_uncertainty.gap_equal_energy_uncertainty_kg "
        "gap_uncertainty.energy_share_uncertainty_kg "
        "scaled_uncertainty.gap_scaled_uncertainty_kg "
        "scaled_uncertainty.gap_structure_uncertainty_kg",
        source="package uncertainties",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_uncertainty_of_gaps_against_simulation",
        "gap_uncertainty.gap_equal_energy_uncertainty_kg "
        "gap_uncertainty.energy_share_uncertainty_kg "
        "scaled_uncertainty.gap_scaled_uncertainty_kg "
        "scaled_uncertainty.gap_structure_uncertainty_kg",
        source="simulation (JCGM 101:2008), 400,000 seeded draws",
        tolerance="1 %",
        mark="computed",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_density_of_75_kwh_over_480_kg",
        "uncertainty.density_uncertainty_wh_per_kg",
        source="75.0(5) kWh over 480(3) kg: u = 1.42785; package uncertainties",
        tolerance="5e-6 Wh/kg; 1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_rectangular_tolerance_of_the_gum",
        "uncertainty.standard_uncertainty_from_tolerance",
        source="JCGM 100:2008, 4.4.5; simulation",
        tolerance="0.05; 0.5 %",
        mark="memory",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_triangular_estimate_of_the_gum",
        "uncertainty.triangular_standard_uncertainty",
        source="JCGM 100:2008, 4.4.6; exact for (0, 1, 2)",
        tolerance="0.05; 5e-7",
        mark="memory",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_triangular_estimate_against_scipy",
        "uncertainty.triangular_standard_uncertainty",
        source="scipy.stats.triang",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *_checks(
        "test_uncertainty_packages.py::test_a_sum_of_four_standard_normals",
        "uncertainty.combine_kg",
        source="JCGM 101:2008, 9.2.2: u = 2.00; package uncertainties",
        tolerance="exact; 1e-12 relative",
        mark="published",
    ),
    *_checks(
        "test_uncertainty_packages.py"
        "::test_uncertainty_of_the_gap_to_a_trend_against_simulation",
        "gap_uncertainty.gap_to_trend_uncertainty_kg "
        "line.LinearTrend.prediction_uncertainty_kg",
        source="simulation, 20,000 seeded draws; package uncertainties",
        tolerance="2 %; 1e-12 relative",
        mark="computed",
    ),
    *JOINT_CHECKS,
    *BUSBAR_CHECKS,
    *PART_CHECKS,
    *CHANCE_CHECKS,
    *WORTH_CHECKS,
)


def markdown_table() -> str:
    """Give the register as a Markdown table, by function, without a line end."""
    head = [
        "| function of `benchpack.calc` | checked against | mark | tolerance | check |",
        "| --- | --- | --- | --- | --- |",
    ]
    rows = [
        f"| `{check.function}` | {check.source} | {check.mark} "
        f"| {check.tolerance} | `{check.check}` |"
        for check in sorted(CHECKS, key=lambda check: check.function)
    ]
    return "\n".join(head + rows)


if __name__ == "__main__":
    print(markdown_table())
