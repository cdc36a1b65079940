"""The level scale of powers: its ends, its ticks, and its numbers where their powers stand."""

import pytest
from picture_words import words

from lablib.pictures.kept import KeptPicture
from lablib.pictures.level_scale import LevelScale


class _Scale(KeptPicture):
    width_px, height_px = 400, 80

    def build(self) -> None:
        self.scale = LevelScale(
            self, (40.0, 20.0, 360.0, 60.0), most_d=8, every_d=2, numbered_d=4, numbers_y_px=12.0
        )

    def update(self, data: object) -> None:
        """Nothing moves."""


@pytest.fixture(scope="module")
def picture() -> _Scale:
    return _Scale()


def test_powers_stand_evenly_from_end_to_end(picture):
    assert [picture.scale.px(power) for power in (-8.0, -4.0, 0.0, 8.0)] == [40.0, 120.0, 200.0, 360.0]


def test_there_is_a_tick_at_every_step_and_a_taller_one_at_every_number(picture):
    _, *ticks = (line.get_xydata() for line in picture.scale.axes.lines)
    reach = {tick[0, 0]: tick[1, 1] for tick in ticks}

    assert list(reach) == [-8, -6, -4, -2, 0, 2, 4, 6, 8]
    assert {power for power, up in reach.items() if up == max(reach.values())} == {-8, -4, 0, 4, 8}


def test_numbers_stand_below_their_ticks_with_their_signs(picture):
    middles = {text: (box[0] + box[2]) / 2.0 for text, box in words(picture)}

    assert list(middles) == ["-8", "-4", "0", "+4", "+8"]
    for text, middle in middles.items():
        assert middle == pytest.approx(picture.scale.px(float(text)), abs=1.0)
