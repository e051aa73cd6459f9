"""The register of outside checks for threads, tightening, fastener masses, joining."""

from __future__ import annotations

from tests.outside.check_record import Check, checks

JOINT_CHECKS: tuple[Check, ...] = (
    *checks(
        "test_threads_published.py::test_proof_loads_of_the_standard",
        "threads.proof_load_n threads.stress_area_mm2",
        source="load table of ISO 898-1, 9 classes, M5 to M16",
        tolerance="0.6 %, from the exact area 0.7 %",
        mark="published",
    ),
    *checks(
        "test_threads_published.py::test_stress_areas_of_the_standard",
        "threads.stress_area_mm2",
        source="load table of ISO 898-1, M3 to M39, three digits",
        tolerance="0.4 %",
        mark="published",
    ),
    *checks(
        "test_threads_published.py::test_threads_against_screw_thread_lib",
        "threads.pitch_diameter_mm threads.minor_diameter_mm "
        "threads.stress_diameter_mm threads.stress_area_mm2",
        source="screw-thread-lib",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *checks(
        "test_threads_published.py::test_the_diameters_that_a_chart_of_threads_prints",
        "threads.pitch_diameter_mm threads.minor_diameter_mm",
        source="ISO 724, DIN 13: M5 to M16",
        tolerance="0.0006 mm",
        mark="memory",
    ),
    *checks(
        "test_threads_published.py::test_solid_area_is_the_mean_over_the_profile",
        "threads.solid_area_mm2",
        source="basic profile of ISO 68-1, by scipy.integrate.quad",
        tolerance="1e-9 relative",
        mark="computed",
    ),
    *checks(
        "test_threads_published.py::test_solid_area_against_masses_of_threaded_rods",
        "threads.solid_area_mm2",
        source="masses of DIN 976 rods, M10 to M20",
        tolerance="2 %",
        mark="published",
    ),
    *checks(
        "test_tightening_published.py::test_fine_threads_of_a_handbook",
        "tightening.yield_preload_n tightening.tightening_torque_nm "
        "tightening.preload_at_torque_n tightening.friction_diameter_mm",
        source="VDI 2230 (2001) table in a handbook, M8x1 to M20x1.5",
        tolerance="preload 0.5 %, torque 1.5 %",
        mark="published",
    ),
    *checks(
        "test_tightening_published.py::test_the_worked_example_of_a_handbook",
        "tightening.yield_preload_n tightening.least_preload_n",
        source="handbook: M12 8.8 at 0.14: 41.9 kN, by 1.8: 23.3 kN",
        tolerance="0.4 %",
        mark="published",
    ),
    *checks(
        "test_tightening_published.py::test_torques_of_a_machine_manual",
        "tightening.yield_preload_n tightening.tightening_torque_nm",
        source="machine manual: 9.9, 24, 48, 85 Nm for M6 to M12 8.8 at 0.12",
        tolerance="4 %",
        mark="published",
    ),
    *checks(
        "test_tightening_published.py::test_the_table_of_coarse_threads",
        "tightening.yield_preload_n tightening.tightening_torque_nm",
        source="VDI 2230-1 table A1, M5 to M12, 8.8 and 10.9",
        tolerance="preload 0.7 %, torque 2 %",
        mark="memory",
    ),
    *checks(
        "test_tightening_published.py::test_spread_and_factor_of_each_method",
        "tightening.scatter_factor",
        source="VDI 2230-1 table A8 and handbook: spread and factor, by method",
        tolerance="one digit",
        mark="published",
    ),
    *checks(
        "test_tightening_published.py::test_torque_in_the_units_of_pint",
        "tightening.tightening_torque_nm tightening.preload_at_torque_n "
        "tightening.friction_diameter_mm tightening.least_preload_n",
        source="pint",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *checks(
        "test_fastener_mass_published.py::test_socket_screws_of_a_weight_chart",
        "screw_mass.socket_screw_mass_g screw_mass.usual_thread_length_mm",
        source="weight chart DIN 912/ISO 4762, M5 to M12",
        tolerance="-1 to +7 %, M5 to +13 %",
        mark="published",
    ),
    *checks(
        "test_fastener_mass_published.py::test_thread_lengths_of_socket_screws",
        "screw_mass.usual_thread_length_mm",
        source="ISO 4762 and ISO 4014, reference thread lengths",
        tolerance="exact",
        mark="memory",
    ),
    *checks(
        "test_fastener_mass_published.py::test_whole_screws_of_a_cad_package",
        "screw_mass.hex_screw_mass_g screw_mass.socket_screw_mass_g",
        source="CAD volumes of bd-warehouse, solid threads",
        tolerance="-3 to 0 %",
        mark="computed",
    ),
    *checks(
        "test_fastener_mass_published.py::test_heads_of_a_cad_package",
        "screw_mass.hex_screw_mass_g screw_mass.socket_screw_mass_g "
        "screw_mass.button_screw_mass_g screw_mass.flange_screw_mass_g "
        "fastener_mass.stud_mass_g",
        source="CAD volumes of bd-warehouse, heads at their greatest",
        tolerance="-6 to +1.5 % of the head",
        mark="computed",
    ),
    *checks(
        "test_fastener_mass_published.py::test_flange_nuts_of_a_cad_package",
        "fastener_mass.nut_mass_g",
        source="CAD volumes of bd-warehouse, EN 1661 nuts",
        tolerance="1.5 %",
        mark="computed",
    ),
    *checks(
        "test_fastener_mass_published.py::test_nuts_of_a_standard",
        "fastener_mass.nut_mass_g",
        source="masses of DIN 936 nuts, M8 to M24",
        tolerance="-5 to 0 %",
        mark="published",
    ),
    *checks(
        "test_fastener_mass_published.py::test_rods_of_a_standard",
        "fastener_mass.stud_mass_g",
        source="masses of DIN 976 rods, M10 to M16",
        tolerance="2 %",
        mark="published",
    ),
    *checks(
        "test_fastener_mass_published.py::test_rivets_of_a_standard",
        "fastener_mass.rivet_mass_g",
        source="masses of DIN 660 rivets, 2 to 8 mm",
        tolerance="1.5 %",
        mark="published",
    ),
    *checks(
        "test_fastener_mass_published.py::test_welds_of_a_handbook",
        "line_mass.line_mass_g line_mass.fillet_section_mm2 "
        "line_mass.rectangle_section_mm2",
        source="weld metal per metre in a welding handbook, steel",
        tolerance="1 %",
        mark="published",
    ),
    *checks(
        "test_fastener_mass_published.py::test_bars_of_a_standard",
        "line_mass.line_mass_g line_mass.round_section_mm2",
        source="reinforcing bars 6 to 20 mm, kg per metre (EN 10080)",
        tolerance="0.5 %",
        mark="memory",
    ),
    *checks(
        "test_joining_published.py::test_money_in_the_units_of_pint",
        "joining.joint_money",
        source="pint, with a currency of its own",
        tolerance="1e-12 relative",
        mark="computed",
    ),
    *checks(
        "test_joining_published.py::test_money_and_stations_by_hand",
        "joining.joint_money joining.station_count",
        source="worked by hand: 88 screws at 5 s are 7.3 minutes, 8 stations",
        tolerance="exact",
        mark="computed",
    ),
    *checks(
        "test_joining_published.py::test_shares_against_pandas",
        "joining.cumulative_share",
        source="pandas cumsum",
        tolerance="1e-12 relative",
        mark="computed",
    ),
)
"""Checks of the calculations behind the joining inventory."""
