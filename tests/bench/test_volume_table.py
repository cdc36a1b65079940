"""The table of volumes: against integration of the lens, and looked up both ways."""

import math

import numpy as np
import pytest
from reference_jobs import lens
from scipy.integrate import quad

from lablib.bench.volume_table import VolumeTable

PLUS = {"power_d": 5.0, "centre_mm": 6.0, "index": 1.6}


@pytest.mark.parametrize("parts", [{}, PLUS])
def test_volume_between_two_rims(parts: dict):
    uncut = lens(**parts)
    table = VolumeTable(uncut, uncut.rim_mm, 2.0)
    outer, inner = uncut.rim_mm, uncut.rim_mm - 1.7
    between = table.volume_mm3_per_rad(outer) - table.volume_mm3_per_rad(inner)
    for at in range(0, 720, 120):
        angle = 2.0 * math.pi * at / 720.0

        def moment(radius: float, angle: float = angle) -> float:
            x, y = np.array(radius * math.cos(angle)), np.array(radius * math.sin(angle))
            return float(uncut.thickness_mm(x, y)) * radius

        assert between[at] == pytest.approx(quad(moment, inner[at], outer[at])[0], rel=3e-4, abs=0.05)
    assert table.thickness_mm(inner) == pytest.approx(uncut.at_mm(inner), abs=2e-3)


@pytest.mark.parametrize("parts", [{}, PLUS])
@pytest.mark.parametrize("bite", [0.05, 0.7, 1.99])
def test_a_bite_is_found_from_its_volume(parts: dict, bite: float):
    uncut = lens(**parts)
    table = VolumeTable(uncut, uncut.rim_mm, 2.0)
    rim = uncut.rim_mm - 0.6
    volume = table.volume_mm3_per_rad(rim - bite)
    assert table.radius_mm(volume, rim - 2.0, rim) == pytest.approx(rim - bite, abs=5e-4)


def test_no_bite_is_deeper_than_it_may_be():
    uncut = lens()
    table = VolumeTable(uncut, uncut.rim_mm, 2.0)
    rim = uncut.rim_mm
    all_of_it, none = table.volume_mm3_per_rad(rim) - 1e6, table.volume_mm3_per_rad(rim) + 1.0
    assert table.radius_mm(all_of_it, rim - 2.0, rim) == pytest.approx(rim - 2.0)
    assert table.radius_mm(none, rim - 2.0, rim) == pytest.approx(rim)
