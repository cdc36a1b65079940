"""How long a job takes on the bench, every turn of both eyes, and a redraw of its panel.

Run by `pytest tests/benchmarks/test_job_speed.py --benchmark-only`; the goals are medians on two cores.
"""

import itertools

import pytest

from lablib.job.demo import demo_ticket
from lablib.job.sheet import work
from lablib.panels.job_panel import JobPanel


@pytest.mark.parametrize("name", ["hard-minus", "hard-minus-cribbed"])
def test_a_job_of_two_with_all_turns_goal_30_ms(benchmark, name: str) -> None:
    ticket = demo_ticket(name)

    def all_turns() -> list[float]:
        return [sheet.cut.margin for sheet in work(ticket).eyes]

    assert len(benchmark(all_turns)) == 2


@pytest.mark.parametrize(
    ("control", "start"),
    [
        ("sphere_d", {}),
        ("blank_diameter_mm", {"cylinder_d": -2.0, "axis_deg": 30, "eye": "left"}),
        ("crib_mm", {"crib_mm": 4.0, "film": "yes"}),
        ("a_mm", {"outline": "pilot", "height_mm": 20.0, "blank_diameter_mm": 80}),
        ("axis_deg", {"cylinder_d": -2.0, "axis_deg": 30, "bite_mm": 0.75}),
    ],
    ids=["hard job", "toric, another blank", "cribbed", "another frame each time", "25 turns"],
)
def test_redraw_of_the_panel_goal_25_ms(benchmark, tmp_path, control: str, start: dict) -> None:
    panel = JobPanel(folder=tmp_path, **start)
    slider, begin, step = panel.handles[control].slider, panel.values[control], panel.ranges[control].step
    values = itertools.cycle([begin + step * number for number in (1, 2, 3, 2, 1, 0)])

    def move() -> None:
        slider.value = next(values)

    benchmark(move)
    assert panel.trouble is None
    assert bytes(panel.shown_png[1:4]) == b"PNG"
