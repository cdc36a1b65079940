"""The panel of a calibration: invented and own readings, what may be claimed, and what is refused."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.profile import read_profile
from lablib.panels.calibration_panel import OWN, POOLED, CalibrationPanel
from lablib.panels.panel import NOT_KNOWN

TYPED = "\n".join(
    f"{force} {torque + off:.4f} {0.8 * torque:.4f}"
    for off in (-0.02, 0.02)
    for force, torque in ((100, 0.2846), (200, 0.4606), (300, 0.6366), (400, 0.8126))
)


@pytest.fixture
def own(tmp_path):
    panel = CalibrationPanel(folder=tmp_path, readings=OWN)
    panel._own.readings.value = TYPED
    return panel


def test_every_control_to_its_stops_and_back():
    trouble = {words for words in move_every_control(CalibrationPanel()) if words}
    assert all(":" in words or ";" in words for words in trouble), trouble


def test_known_numbers_lie_in_the_intervals_of_most_days():
    panel, inside = CalibrationPanel(), 0
    for day in range(1, 21):
        fit = panel.at(day=day).fit
        low, high = fit.friction.interval(freedom=fit.freedom)
        inside += low <= 0.22 <= high
    assert inside >= 17


def test_more_readings_make_the_fit_surer_by_their_root():
    panel = CalibrationPanel()
    few, many = (panel.at(times=times, day=3).fit.friction.error for times in (3, 12))
    assert many == pytest.approx(few / 2.0, rel=0.35)


def test_the_sentence_claims_what_was_tried_and_no_more():
    words = said(CalibrationPanel())
    assert words.startswith("Coat slick, round block, 100 to 400 N: with 95 % confidence tau is 0.0")
    assert words.endswith("Nothing is said of other coats or other forces.")


def test_a_torque_that_no_longer_rises_is_left_out_and_said():
    panel = CalibrationPanel(coat="coated")
    assert panel.at().fit.forces_n == (100.0, 300.0)
    assert "At 400 N the torque no longer rose" in said(panel)
    assert rows(panel)["Readings left out"] == "3"


@pytest.mark.parametrize(
    ("start", "words"),
    [
        ({"coat": POOLED}, "readings on coated, slick are pooled: fit each coat by itself"),
        ({"times": 1}, "4 readings at 4 forces fit any line"),
        ({"scrap_mm": 1.2}, "scrap of 1.2 mm does not bear 300 N"),
        ({"readings": OWN}, "0 readings at 0 forces fit any line"),
        ({"readings": OWN, "coat": POOLED}, "say which coat your own readings are of"),
    ],
)
def test_what_is_no_ground_for_a_line_is_refused_with_the_reason(start: dict, words: str):
    panel = CalibrationPanel(**start)
    assert words in str(panel.trouble)
    assert set(rows(panel).values()) <= {NOT_KNOWN}


def test_the_usual_mistakes_show():
    origin, sliding = CalibrationPanel(origin="yes"), CalibrationPanel(torque="sliding")
    assert rows(origin)["mu through the origin"] == "0.265"
    assert "taken for friction" in said(origin)
    assert rows(CalibrationPanel())["mu through the origin"] == NOT_KNOWN
    assert sliding.at().fit.friction.value < 0.9 * origin.at().fit.friction.value
    assert "slides already" in said(sliding)


def test_an_interval_that_reaches_below_0_says_nothing_of_its_lower_end():
    assert "tau is up to 0." in said(CalibrationPanel(scatter=30, day=4))


def test_what_is_behind_is_known_of_invented_readings_alone(own):
    assert len(CalibrationPanel().at(behind="yes").behind)
    assert not len(own.at(behind="yes").behind)


def test_own_readings_are_fitted_as_they_are_typed(own):
    assert own.at().fit.friction.value == pytest.approx(0.22)
    own._own.readings.value = "100 lots"
    assert "line 1, '100 lots', is not numbers" in str(own.trouble)


def test_typing_changes_nothing_while_invented_readings_are_shown():
    panel = CalibrationPanel()
    before = panel.shown_png
    panel._own.readings.value = TYPED
    assert panel.shown_png == before


def test_without_sliding_torques_there_are_none_to_fit(own):
    own._own.readings.value = "\n".join(" ".join(line.split()[:2]) for line in TYPED.splitlines())
    assert own.trouble is None
    assert rows(own)["r"] == NOT_KNOWN
    own.handles["torque"].box.value = "sliding"
    assert "no sliding torque was read at some forces" in str(own.trouble)


def test_a_profile_is_saved_from_own_readings_and_can_be_read(own, tmp_path):
    own._own.save.click()
    assert "lablib job TICKET --bench my-bench.toml" in own._own.status.value
    found = read_profile(tmp_path / "my-bench.toml")
    assert found.bench == "my bench"
    assert found.measured["coat.slick.pad_friction"].value == pytest.approx(0.22)
    assert found.measured["coat.slick.pad_shear_factor"].readings == 8
    own._own.save.click()
    assert "is there already and was left as it is" in own._own.status.value


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (
            {"readings": "invented"},
            "these readings are invented, and a profile would pass them off as measured",
        ),
        ({"torque": "sliding"}, "set Torque read to break-loose"),
    ],
)
def test_no_profile_of_what_was_not_measured(own, tmp_path, change: dict, words: str):
    for name, value in change.items():
        own.handles[name].box.value = value
    own._own.save.click()
    assert words in own._own.status.value
    assert not list(tmp_path.glob("*.toml"))


def test_a_bench_without_a_name_is_called_mine(own):
    own._own.bench_name.value = "  "
    assert 'bench = "my bench"' in own.profile_text()


def test_a_part_of_the_panel_takes_no_readings():
    assert CalibrationPanel(move=("day",)).row_below() is None
