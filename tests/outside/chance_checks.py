"""The register of outside checks of ranges, chance, what matters, and choosing."""

from __future__ import annotations

from tests.outside.check_record import Check, checks

CHANCE_CHECKS: tuple[Check, ...] = (
    *checks(
        "test_distributions_published.py::test_moments_against_scipy",
        "distributions.range_mean distributions.range_variance",
        source="scipy.stats triang, beta, uniform; five ranges",
        tolerance="1e-12; 1e-9 relative",
        mark="computed",
    ),
    *checks(
        "test_distributions_published.py::test_quantiles_against_scipy",
        "distributions.range_quantile distributions.quantile_of_range",
        source="scipy.stats triang, beta, uniform; 1e-9 to 1 - 1e-9",
        tolerance="1e-9 of the width",
        mark="computed",
    ),
    *checks(
        "test_distributions_published.py::test_draws_against_scipy",
        "distributions.range_draws",
        source="scipy.stats.kstest, 50,000 seeded draws",
        tolerance="p above 0.001",
        mark="computed",
    ),
    *checks(
        "test_distributions_published.py::test_a_triangle_in_closed_form",
        "distributions.range_mean distributions.range_variance "
        "distributions.range_quantile",
        source="exact for (0, 1, 2): 0.408248, 0.316228, 1.683772",
        tolerance="5e-7",
        mark="computed",
    ),
    *checks(
        "test_distributions_published.py::test_a_pert_estimate_of_the_textbooks",
        "distributions.range_mean distributions.range_variance",
        source="textbooks: 2, 5 and 14 days are 6; variance of the beta, 32/7",
        tolerance="1e-14 relative",
        mark="memory",
    ),
    *checks(
        "test_monte_carlo_published.py::test_four_normal_inputs_of_jcgm_101",
        "monte_carlo.propagate trials.Trials.symmetric_interval "
        "trials.Trials.shortest_interval",
        source="JCGM 101:2008, 9.2.2: 2.00, +-3.92; exactly 3.91993",
        tolerance="0.005; 0.02",
        mark="published",
    ),
    *checks(
        "test_monte_carlo_published.py::test_four_rectangular_inputs_of_jcgm_101",
        "monte_carlo.propagate trials.Trials.symmetric_interval",
        source="JCGM 101:2008, 9.2.3: 2.00, +-3.88; exactly 3.87941",
        tolerance="0.005; 0.02",
        mark="published",
    ),
    *checks(
        "test_monte_carlo_published.py::test_mass_calibration_of_jcgm_101",
        "monte_carlo.propagate trials.Trials.shortest_interval",
        source="JCGM 101:2008, 9.3: 1.2340, 0.0754, [1.0834, 1.3825] mg",
        tolerance="0.0004; 0.0002; 0.002 mg",
        mark="memory",
    ),
    *checks(
        "test_monte_carlo_published.py::test_a_logarithm_of_a_rectangle",
        "monte_carlo.propagate trials.Trials.symmetric_interval "
        "trials.Trials.shortest_interval",
        source="exact for ln X, X rectangular on (0.1, 1.1)",
        tolerance="0.003; 0.01",
        mark="computed",
    ),
    *checks(
        "test_monte_carlo_published.py"
        "::test_summaries_of_evenly_spread_trials_are_exact",
        "trials.summarise trials.Trials.quantile trials.Trials.symmetric_interval "
        "trials.Trials.shortest_interval trials.Trials.chance_of_at_least",
        source="exact for ln X, X rectangular on (0.1, 1.1)",
        tolerance="1e-5",
        mark="computed",
    ),
    *checks(
        "test_monte_carlo_published.py::test_quantiles_and_chances_against_scipy",
        "trials.summarise trials.Trials.quantile trials.Trials.chance_of_at_least",
        source="scipy.stats.triang",
        tolerance="1e-5; 2e-6",
        mark="computed",
    ),
    *checks(
        "test_simulation_published.py::test_four_rectangular_changes_of_jcgm_101",
        "simulation.simulate_changes trials.Trials.symmetric_interval",
        source="JCGM 101:2008, 9.2.3: 2.00, +-3.88; exactly 3.87941",
        tolerance="0.005; 0.02",
        mark="published",
    ),
    *checks(
        "test_simulation_published.py::test_releases_are_binomial",
        "simulation.simulate_changes trials.Trials.chance_of_at_least",
        source="scipy.stats.binom, 12 changes",
        tolerance="0.005",
        mark="computed",
    ),
    *checks(
        "test_simulation_published.py::test_both_targets_at_once_in_closed_form",
        "simulation.simulate_changes simulation.Simulation.chance_of_both",
        source="exact for one rectangular mass",
        tolerance="0.005",
        mark="computed",
    ),
    *checks(
        "test_simulation_published.py::test_the_worth_of_one_mass_in_closed_form",
        "simulation.simulate_changes trials.Trials.chance_of_at_least",
        source="exact for a product of rectangles: 1 - t + t ln t",
        tolerance="0.005",
        mark="computed",
    ),
    *checks(
        "test_simulation_published.py::test_a_proposal_against_the_generators_of_numpy",
        "simulation.simulate_changes",
        source="numpy Generator.triangular, .beta; scipy.stats.ks_2samp",
        tolerance="p above 0.001",
        mark="computed",
    ),
    *checks(
        "test_sensitivity_published.py::test_ishigami",
        "sensitivity.sobol_indices",
        source="Ishigami and Homma 1990, analytical indices",
        tolerance="0.01; 5 standard errors",
        mark="published",
    ),
    *checks(
        "test_sensitivity_published.py::test_the_g_function",
        "sensitivity.sobol_indices",
        source="Sobol g function, analytical indices; package SALib",
        tolerance="0.01; 5 standard errors",
        mark="published",
    ),
    *checks(
        "test_sensitivity_published.py::test_groups_against_salib",
        "sensitivity.sobol_indices",
        source="package SALib",
        tolerance="0.01",
        mark="computed",
    ),
    *checks(
        "test_sensitivity_published.py::test_indices_of_a_proposal_against_salib",
        "change_sensitivity.value_indices change_sensitivity.proposal_moments",
        source="package SALib, 65,536 evaluations of a model written out apart",
        tolerance="0.01; 1 %",
        mark="computed",
    ),
    *checks(
        "test_sensitivity_published.py::test_indices_of_the_mass_saved_against_salib",
        "change_sensitivity.saved_indices change_sensitivity.proposal_moments",
        source="package SALib, 65,536 evaluations of a model written out apart",
        tolerance="0.01; 1 %",
        mark="computed",
    ),
    *checks(
        "test_sensitivity_published.py::test_swings_by_hand",
        "sensitivity.swing_table change_sensitivity.value_swings",
        source="no source: one change of 20 kg, worked by hand",
        tolerance="exact",
        mark="common practice",
    ),
    *checks(
        "test_choosing_published.py::test_a_published_knapsack",
        "choosing.choose_changes",
        source="published knapsack: 240 with 0, 1, 3",
        tolerance="exact",
        mark="published",
    ),
    *checks(
        "test_choosing_published.py::test_the_knapsack_with_a_conflict",
        "choosing.choose_changes",
        source="the same by hand with a conflict: 220 with 1, 2",
        tolerance="exact",
        mark="computed",
    ),
    *checks(
        "test_choosing_published.py::test_against_every_subset",
        "choosing.choose_changes",
        source="all subsets of up to 15 changes",
        tolerance="1e-6",
        mark="computed",
    ),
)
