"""The register of outside checks of busbars."""

from __future__ import annotations

from tests.outside.check_record import Check, checks

BUSBAR_CHECKS: tuple[Check, ...] = (
    *checks(
        "test_busbar_published.py::test_ampacity_of_the_published_example",
        "busbar.ampacity_a",
        source="Copper Development Association, Publication 22, section 10: "
        "100 x 6.3 mm, 1570 A",
        tolerance="5 A",
        mark="published",
    ),
    *checks(
        "test_busbar_published.py::test_ampacity_of_sizes_worked_by_hand",
        "busbar.ampacity_a busbar.current_density_a_mm2",
        source="worked by hand: six sizes from 20 x 2 to 100 x 6.3 mm",
        tolerance="0.6 A; 0.06 A/mm2",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_ampacity_against_din_43671",
        "busbar.ampacity_a",
        source="DIN 43671 as reprinted in a switchgear manual, 18 sizes, with its "
        "factor for 90 degC in air of 40 degC",
        tolerance="5 %",
        mark="published",
    ),
    *checks(
        "test_busbar_published.py::test_ampacity_against_a_catalogue_in_inches",
        "busbar.ampacity_a",
        source="direct-current ratings of a copper maker's catalogue, brought from "
        "30 to 50 K",
        tolerance="10 %",
        mark="published",
    ),
    *checks(
        "test_busbar_published.py::test_aluminium_against_din_43670",
        "busbar.ampacity_a",
        source="DIN 43670 over DIN 43671, aluminium over copper of eleven sizes",
        tolerance="2 %",
        mark="memory",
    ),
    *checks(
        "test_busbar_published.py::test_the_ampere_before_2019",
        "busbar.bar_force_n_m",
        source="SI definition of the ampere before 2019: 2e-7 N/m; CODATA 2022 mu_0",
        tolerance="1e-12 relative; 1e-9 relative",
        mark="published",
    ),
    *checks(
        "test_busbar_published.py::test_force_of_a_published_short_circuit",
        "busbar.bar_force_n_m busbar.bar_force_n",
        source="article on IEC 60865: 50 kA at 0.15 m, 3.3 kN on a metre",
        tolerance="50 N",
        mark="published",
    ),
    *checks(
        "test_busbar_published.py::test_force_between_bars_against_biot_savart",
        "busbar.bar_force_n_m busbar.bar_force_n",
        source="law of Biot and Savart summed over a long wire",
        tolerance="1e-6 relative",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_growth_worked_by_hand",
        "busbar_growth.free_growth_mm",
        source="worked by hand: 1 m by 60 K, 1.02 mm of copper, 1.41 of aluminium",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_stress_of_a_held_bar_worked_by_hand",
        "busbar_growth.held_stress_mpa busbar_growth.held_force_n",
        source="worked by hand: 60 K, copper 117 MPa, aluminium 99 MPa",
        tolerance="0.5 MPa",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_legs_of_a_u_loop_worked_by_hand",
        "busbar_growth.leg_travel_mm busbar_growth.least_leg_mm "
        "busbar_growth.leg_force_n",
        source="worked by hand: legs of 66, 77, 94 mm; 14, 21, 38 N",
        tolerance="0.5 mm; 0.5 N",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_a_leg_against_finite_elements",
        "busbar_growth.leg_force_n busbar_growth.leg_stress_mpa "
        "busbar_growth.least_leg_mm",
        source="Euler-Bernoulli finite elements, one end shifted without turning",
        tolerance="1e-9 relative",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_bowing_out_against_finite_elements",
        "busbar_growth.bowing_force_n",
        source="least eigenvalue of finite elements with geometric stiffness",
        tolerance="1e-4 relative",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_constants_of_the_short_circuit_worked_by_hand",
        "busbar.adiabatic_constant",
        source="formula of IEC 60949 worked by hand: 135 and 89 A s^0.5/mm2",
        tolerance="0.5 A s^0.5/mm2",
        mark="computed",
    ),
    *checks(
        "test_busbar_published.py::test_a_short_circuit_against_its_heat_balance",
        "busbar.adiabatic_constant busbar.short_time_current_a",
        source="heat balance of copper in 20,000 steps",
        tolerance="1.5 K of 130 K",
        mark="memory",
    ),
)
