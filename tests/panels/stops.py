"""A check that every panel stands: each control to each of its stops and back."""

import io

from PIL import Image

from lablib.panels.specs import Slider


def move_every_control(panel):
    """Move each control to its stops by slider, by box and by list; every state shows a picture or words."""
    start = panel.values
    assert panel.trouble is None, f"the panel starts in trouble: {panel.trouble}"
    first = panel.shown_png
    seen = []
    for name, spec in panel.ranges.items():
        handle = panel.handles[name]
        moves = (_slide, _type) if isinstance(spec, Slider) else (_pick,)
        for move in moves:
            for value in (*spec.stops, start[name]):
                move(handle, value)
                assert panel.values == start | {name: value}
                seen.append(_shown(panel))
        assert panel.shown_png == first, f"{name} went back, but the picture did not"
    return seen


def _slide(handle, value):
    handle.slider.value = value
    assert handle.box.value == handle.spec.shown(value)


def _type(handle, value):
    handle.box.value = handle.spec.shown(value)
    assert handle.slider.value == value


def _pick(handle, value):
    handle.box.value = value


def _shown(panel):
    """The words in the picture's place, or None after checking that the picture is whole."""
    if panel.trouble:
        words = str(panel.trouble)
        assert words
        assert panel.shown_png == b""
        return words
    image = Image.open(io.BytesIO(panel.shown_png))
    assert (image.format, image.size) == ("PNG", panel.picture.size_dots)
    image.load()
    return None
