"""How long one lens takes: its thickness round, a job of two, a redraw of its panel, and the import.

Run by `pytest tests/benchmarks/test_lens_speed.py --benchmark-only`; the goals are medians on two cores.
"""

import itertools
import subprocess
import sys

import pytest

from lablib.job.demo import demo_ticket
from lablib.job.eye_sheet import work_eye
from lablib.job.figures import eye_dict
from lablib.optics.eye import Eye
from lablib.optics.frame import POINTS, Frame
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.panels.lens_panel import LensPanel

TORIC = Prescription(sphere_d=-4.0, cylinder_d=-2.0, axis_deg=30)


@pytest.mark.parametrize("prism_prism_d", [0.0, 3.0])
def test_thickness_round_720_points_goal_1_ms(benchmark, prism_prism_d: float) -> None:
    outline = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0).outline(Eye.RIGHT)
    x, y = outline.x_mm - 2.0, outline.y_mm
    lens = lens_for(
        TORIC, index=1.592, front_curve_d=4.0, centre_thickness_mm=1.5, prism_x_prism_d=prism_prism_d
    )

    assert benchmark(lens.thickness_mm, x, y).size == POINTS


@pytest.mark.parametrize("name", ["easy-minus", "plus-toric-raised"])
def test_lens_part_of_a_job_of_two_goal_10_ms(benchmark, name: str) -> None:
    ticket = demo_ticket(name)

    def lens_part() -> list[dict]:
        return [eye_dict(work_eye(ticket, order)) for order in ticket.eyes]

    figures = benchmark(lens_part)
    assert len(figures) == 2
    assert all(eye["weight_g"] > 0.0 for eye in figures)


@pytest.mark.parametrize(
    ("control", "start"),
    [
        ("sphere_d", {}),
        ("sphere_d", {"cylinder_d": -2.0, "axis_deg": 30, "blank_diameter_mm": 52}),
        ("blank_diameter_mm", {"sphere_d": 5.0, "thickness_at": "thinnest edge", "supply": "stock"}),
        ("a_mm", {"outline": "pilot", "height_mm": 20.0}),
    ],
    ids=["minus", "toric, blank too small", "plus from stock", "another frame each time"],
)
def test_redraw_of_the_panel_goal_20_ms(benchmark, tmp_path, control: str, start: dict) -> None:
    panel = LensPanel(folder=tmp_path, **start)
    slider, begin, step = (
        panel.handles[control].slider,
        panel.values[control],
        panel.ranges[control].step,
    )
    values = itertools.cycle([begin + step * number for number in (1, 2, 3, 2, 1, 0)])

    def move() -> None:
        slider.value = next(values)

    benchmark(move)
    assert panel.trouble is None
    assert bytes(panel.shown_png[1:4]) == b"PNG"


@pytest.mark.parametrize("code", ["pass", "import lablib"], ids=["bare Python", "import lablib"])
def test_import_goal_20_ms_over_bare_python(benchmark, code: str) -> None:
    def start() -> int:
        return subprocess.run([sys.executable, "-c", code], check=True).returncode

    assert benchmark.pedantic(start, rounds=30, warmup_rounds=3) == 0
