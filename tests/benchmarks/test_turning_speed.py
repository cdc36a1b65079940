"""How long a step of the panel of a turning lens takes, and a move of a control that simulates it again.

Run by `pytest tests/benchmarks/test_turning_speed.py --benchmark-only`; the goal of a step is 25 ms.
"""

import itertools

import pytest

from lablib.panels.turning_panel import TurningPanel

# How the lens is set up, by how it comes out.
STARTS = {
    "turns a little": {},
    "bumped, flat top": {"crib_mm": 3.0, "skin": "oily", "wheel": "used", "marks": "flat top 28"},
    "spins, progressive": {"wheel": "glazed", "skin": "oily", "marks": "progressive"},
}


def moved(panel: TurningPanel, name: str, values: list) -> None:
    handle, rest = panel.handles[name], itertools.cycle(values)
    return lambda: setattr(handle.slider, "value", next(rest))


@pytest.mark.parametrize("start", STARTS.values(), ids=STARTS)
def test_one_step_goal_25_ms(benchmark, start: dict) -> None:
    panel = TurningPanel(**start)
    benchmark(moved(panel, "turn", [1, 2, 3, 4, 60, 0]))
    assert panel.trouble is None
    assert bytes(panel.shown_png[1:4]) == b"PNG"


@pytest.mark.parametrize("start", STARTS.values(), ids=STARTS)
def test_another_lens_simulated_and_drawn(benchmark, start: dict) -> None:
    panel = TurningPanel(turn=3, **start)
    benchmark(moved(panel, "blank_diameter_mm", [71.0, 72.0, 73.0, 72.0]))
    assert panel.trouble is None
