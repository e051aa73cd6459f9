"""Masses of fasteners, welds and bars against printed tables and CAD volumes."""

from __future__ import annotations

import pytest

from benchpack.calc import fastener_mass

STEEL = 7850.0
HEAD_BELOW, HEAD_ABOVE = 0.06, 0.015
PITCHES = {
    5.0: 0.8,
    6.0: 1.0,
    8.0: 1.25,
    10.0: 1.5,
    12.0: 1.75,
    14.0: 2.0,
    16.0: 2.0,
    20.0: 2.5,
    24.0: 3.0,
}

# Head of ISO 4762: diameter, height, socket across flats, socket depth, mm.
SOCKET_HEADS = {
    5.0: (8.5, 5.0, 4.0, 2.5),
    6.0: (10.0, 6.0, 5.0, 3.0),
    8.0: (13.0, 8.0, 6.0, 4.0),
    10.0: (16.0, 10.0, 8.0, 5.0),
    12.0: (18.0, 12.0, 10.0, 6.0),
}

# Weight chart of DIN 912 (ISO 4762 weighs the same), kg per 1000, by length; a
# fastener handbook. It rounds to 0.1, and its M5 runs light.
SOCKET_CHART = {
    5.0: {12: 3.0, 16: 3.5, 20: 4.0, 25: 4.8, 30: 5.6, 40: 7.1, 50: 8.6},
    6.0: {12: 5.1, 16: 5.8, 20: 6.5, 25: 7.6, 30: 8.3, 40: 11.0, 50: 13.2, 60: 15.4},
    8.0: {
        12: 10.9,
        16: 12.1,
        20: 13.4,
        25: 15.0,
        30: 16.9,
        40: 20.9,
        50: 24.9,
        80: 37.0,
    },
    10.0: {16: 20.9, 20: 22.9, 25: 25.4, 30: 27.9, 40: 32.9, 50: 39.3, 80: 58.5},
    12.0: {20: 32.1, 25: 35.7, 30: 39.3, 40: 46.5, 50: 54.5, 80: 80.2},
}

# Volumes of heads by the CAD package bd-warehouse 0.4, mm3, with the sizes it drew
# them by, mm. It takes every dimension at its greatest.
HEX_HEADS = [
    (5.0, 8.0, 3.5, 193.73),
    (6.0, 10.0, 4.0, 345.91),
    (8.0, 13.0, 5.3, 774.59),
    (10.0, 16.0, 6.4, 1416.83),
    (12.0, 18.0, 7.5, 2101.50),
]
ROUND_HEADS = [
    (5.0, 8.72, 5.0, 4.0, 2.5, 263.15),
    (6.0, 10.22, 6.0, 5.0, 3.0, 425.88),
    (8.0, 13.27, 8.0, 6.0, 4.0, 978.56),
    (10.0, 16.27, 10.0, 8.0, 5.0, 1795.88),
    (12.0, 18.27, 12.0, 10.0, 6.0, 2616.55),
]
BUTTON_HEADS = [
    (5.0, 9.5, 2.75, 3.0, 1.56, 119.98),
    (6.0, 10.5, 3.3, 4.0, 2.08, 174.32),
    (8.0, 14.0, 4.4, 5.0, 2.6, 419.15),
    (10.0, 17.5, 5.5, 6.0, 3.12, 850.58),
    (12.0, 21.0, 6.6, 8.0, 4.16, 1416.17),
]
FLANGE_HEADS = [
    # EN 1665
    (5.0, 8.0, 5.8, 11.8, 1.0, 383.15),
    (6.0, 10.0, 6.6, 14.2, 1.1, 661.72),
    (8.0, 13.0, 8.1, 18.0, 1.2, 1338.06),
    (10.0, 16.0, 10.4, 22.3, 1.5, 2604.74),
    (12.0, 18.0, 11.8, 26.6, 1.8, 3929.75),
    # EN 1662
    (5.0, 7.0, 5.6, 11.4, 1.0, 310.04),
    (6.0, 8.0, 6.9, 13.6, 1.1, 509.83),
    (8.0, 10.0, 8.5, 17.0, 1.2, 966.49),
    (10.0, 13.0, 9.7, 20.8, 1.5, 1796.71),
    (12.0, 16.0, 12.1, 24.7, 1.8, 3265.93),
]
# EN 1661: flats, height, flange diameter and thickness, mm; volume with a plain hole
# of the nominal diameter, mm3.
FLANGE_NUTS = [
    (5.0, 8.0, 5.0, 11.8, 1.0, 240.63),
    (6.0, 10.0, 6.0, 14.2, 1.1, 440.11),
    (8.0, 13.0, 8.0, 17.9, 1.2, 916.07),
    (10.0, 15.0, 10.0, 21.8, 1.5, 1490.09),
    (12.0, 18.0, 12.0, 26.0, 1.8, 2555.87),
]

# DIN 936: flats and height in mm, kg per 1000 for the coarse thread; the standard.
THIN_NUTS = [
    (8.0, 13.0, 5.0, 4.00),
    (10.0, 17.0, 6.0, 8.60),
    (12.0, 19.0, 7.0, 12.1),
    (14.0, 22.0, 8.0, 18.2),
    (20.0, 30.0, 9.0, 36.3),
    (24.0, 36.0, 10.0, 58.0),
]

# DIN 976: kg per 1000 by length, coarse pitch; a stud handbook.
RODS = [
    (10.0, 25.0, 12.6),
    (10.0, 100.0, 50.2),
    (12.0, 30.0, 21.8),
    (12.0, 100.0, 72.8),
    (14.0, 50.0, 49.7),
    (16.0, 80.0, 107.0),
]

# DIN 660: kg per 1000 by diameter and length, with head diameter and height; a
# collection of fastener standards.
RIVETS = [
    (2.0, 10.0, 3.5, 1.2, 0.299),
    (3.0, 10.0, 5.2, 1.8, 0.731),
    (4.0, 10.0, 7.0, 2.4, 1.41),
    (5.0, 16.0, 8.8, 3.0, 3.26),
    (6.0, 16.0, 10.5, 3.6, 4.99),
    (8.0, 25.0, 14.0, 4.8, 13.2),
]


@pytest.mark.parametrize("diameter", SOCKET_CHART)
def test_socket_screws_of_a_weight_chart(diameter: float) -> None:
    """Long ones have a plain shank, and the chart's masses show where it begins."""
    head = SOCKET_HEADS[diameter]
    lengths = list(SOCKET_CHART[diameter])
    printed = list(SOCKET_CHART[diameter].values())
    given = fastener_mass.socket_screw_mass_g(
        diameter,
        PITCHES[diameter],
        length_mm=lengths,
        head_diameter_mm=head[0],
        head_height_mm=head[1],
        drive_size_mm=head[2],
        drive_depth_mm=head[3],
        thread_length_mm=fastener_mass.usual_thread_length_mm(diameter),
    )
    off = given / printed - 1.0
    assert off.min() > -0.01
    assert off.max() < (0.13 if diameter == 5.0 else 0.07)
    if diameter in (6.0, 8.0):
        assert abs(off.mean()) < 0.015


def test_thread_lengths_of_socket_screws() -> None:
    """ISO 4762: 22, 24, 28, 32, 36 mm for M5 to M12; ISO 4014: 16 to 30 mm."""
    sizes = [5.0, 6.0, 8.0, 10.0, 12.0]
    socket = fastener_mass.usual_thread_length_mm(sizes)
    assert socket.tolist() == [22.0, 24.0, 28.0, 32.0, 36.0]
    hexagon = fastener_mass.usual_thread_length_mm(sizes, allowance_mm=6.0)
    assert hexagon.tolist() == [16.0, 18.0, 22.0, 26.0, 30.0]


def test_whole_screws_of_a_cad_package() -> None:
    """M8x25 and M6x25 of ISO 4017, and M8x25 of ISO 4762, with solid threads."""
    for diameter, flats, height, volume in (
        (8.0, 13.0, 5.54, 1844.4),
        (6.0, 10.0, 4.24, 940.9),
    ):
        given = fastener_mass.hex_screw_mass_g(
            diameter,
            PITCHES[diameter],
            length_mm=25.0,
            across_flats_mm=flats,
            head_height_mm=height,
        )
        assert -0.03 < given / (volume * STEEL * 1e-6) - 1.0 < 0.0
    socket = fastener_mass.socket_screw_mass_g(
        8.0,
        1.25,
        length_mm=25.0,
        head_diameter_mm=13.27,
        head_height_mm=8.0,
        drive_size_mm=6.0,
        drive_depth_mm=4.0,
    )
    assert -0.03 < socket / (2013.2 * STEEL * 1e-6) - 1.0 < 0.0


def test_heads_of_a_cad_package() -> None:
    """A head is what a screw weighs more than a rod of its length."""
    screws: list[tuple[float, float, float]] = []
    for diameter, flats, height, volume in HEX_HEADS:
        whole = fastener_mass.hex_screw_mass_g(
            diameter,
            PITCHES[diameter],
            length_mm=20.0,
            across_flats_mm=flats,
            head_height_mm=height,
        )
        screws.append((float(whole), diameter, volume))
    for heads, mass_g in (
        (ROUND_HEADS, fastener_mass.socket_screw_mass_g),
        (BUTTON_HEADS, fastener_mass.button_screw_mass_g),
    ):
        for diameter, across, height, size, depth, volume in heads:
            whole = mass_g(
                diameter,
                PITCHES[diameter],
                length_mm=20.0,
                head_diameter_mm=across,
                head_height_mm=height,
                drive_size_mm=size,
                drive_depth_mm=depth,
            )
            screws.append((float(whole), diameter, volume))
    for diameter, flats, height, across, edge, volume in FLANGE_HEADS:
        whole = fastener_mass.flange_screw_mass_g(
            diameter,
            PITCHES[diameter],
            length_mm=20.0,
            across_flats_mm=flats,
            head_height_mm=height,
            flange_diameter_mm=across,
            flange_thickness_mm=edge,
        )
        screws.append((float(whole), diameter, volume))
    assert len(screws) == 25
    for whole_g, diameter, volume in screws:
        rod = fastener_mass.stud_mass_g(diameter, PITCHES[diameter], length_mm=20.0)
        head_g = whole_g - float(rod)
        off = head_g / (volume * STEEL * 1e-6) - 1.0
        assert -HEAD_BELOW < off < HEAD_ABOVE, (diameter, volume, off)


@pytest.mark.parametrize(
    ("diameter", "flats", "height", "across", "edge", "volume"), FLANGE_NUTS
)
def test_flange_nuts_of_a_cad_package(
    diameter: float,
    flats: float,
    height: float,
    across: float,
    edge: float,
    volume: float,
) -> None:
    """The thread is what a rod lacks to a plain bar as wide as the hole."""
    bar = fastener_mass.round_section_mm2(diameter) * height * STEEL * 1e-6
    rod = fastener_mass.stud_mass_g(diameter, PITCHES[diameter], length_mm=height)
    given = fastener_mass.nut_mass_g(
        diameter,
        PITCHES[diameter],
        across_flats_mm=flats,
        height_mm=height,
        flange_diameter_mm=across,
        flange_thickness_mm=edge,
    )
    drawn = volume * STEEL * 1e-6 + bar - rod
    assert given == pytest.approx(float(drawn), rel=0.015)


@pytest.mark.parametrize(("diameter", "flats", "height", "printed"), THIN_NUTS)
def test_nuts_of_a_standard(
    diameter: float, flats: float, height: float, printed: float
) -> None:
    """The standard weighs nuts at their greatest size."""
    given = fastener_mass.nut_mass_g(
        diameter, PITCHES[diameter], across_flats_mm=flats, height_mm=height
    )
    assert -0.05 < given / printed - 1.0 < 0.0


@pytest.mark.parametrize(("diameter", "length", "printed"), RODS)
def test_rods_of_a_standard(diameter: float, length: float, printed: float) -> None:
    given = fastener_mass.stud_mass_g(diameter, PITCHES[diameter], length_mm=length)
    assert given == pytest.approx(printed, rel=0.02)


@pytest.mark.parametrize(("diameter", "length", "across", "height", "printed"), RIVETS)
def test_rivets_of_a_standard(
    diameter: float, length: float, across: float, height: float, printed: float
) -> None:
    given = fastener_mass.rivet_mass_g(
        diameter, length_mm=length, head_diameter_mm=across, head_height_mm=height
    )
    assert given == pytest.approx(printed, rel=0.015)
    usual = fastener_mass.rivet_mass_g(diameter, length_mm=length)
    assert usual == pytest.approx(printed, rel=0.015)


@pytest.mark.parametrize(
    ("leg", "printed"), [(6.35, 0.158), (9.53, 0.356), (12.70, 0.632), (19.05, 1.421)]
)
def test_welds_of_a_handbook(leg: float, printed: float) -> None:
    """Weld metal in kg/m: triangles of equal legs, and a gap half as wide as deep."""
    section = fastener_mass.fillet_section_mm2(leg / 2.0**0.5)
    given = fastener_mass.line_mass_g(section, 1000.0, density_kg_m3=STEEL)
    assert given / 1000.0 == pytest.approx(printed, rel=0.01)
    gap = fastener_mass.rectangle_section_mm2(leg, leg / 2.0)
    same = fastener_mass.line_mass_g(gap, 1000.0, density_kg_m3=STEEL)
    assert same / 1000.0 == pytest.approx(printed, rel=0.01)


@pytest.mark.parametrize(
    ("diameter", "printed"),
    [
        (6.0, 0.222),
        (8.0, 0.395),
        (10.0, 0.617),
        (12.0, 0.888),
        (16.0, 1.58),
        (20, 2.47),
    ],
)
def test_bars_of_a_standard(diameter: float, printed: float) -> None:
    section = fastener_mass.round_section_mm2(diameter)
    given = fastener_mass.line_mass_g(section, 1000.0, density_kg_m3=STEEL)
    assert given / 1000.0 == pytest.approx(printed, rel=0.005)
