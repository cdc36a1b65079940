"""Traces of known outlines: boxing numbers, the outline about the boxed centre, directions and eyes."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ellipe
from traces import ellipse, rectangle, traced, traced_off_centre

from lablib.errors import LabError
from lablib.job.report import where
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import POINTS, Frame, OutlineShape
from lablib.optics.frame_traces import FrameTraces, traced_frame
from lablib.optics.trace import Trace, require_angle, require_radius, trace_of
from lablib.optics.trace_boxing import Boxing, boxed_centre_mm, boxing_of, differences, outline_of


def ellipse_mm(a_mm: float, b_mm: float) -> float:
    """The circumference of an ellipse: 4 a E(1 - b^2/a^2) with half axes (complete elliptic integral)."""
    return 2.0 * a_mm * float(ellipe(1.0 - (b_mm / a_mm) ** 2))


@pytest.mark.parametrize("radii", [36, 180, 400, 1000])
def test_a_traced_circle(radii: int):
    boxing = boxing_of(traced(ellipse(50.0, 50.0), radii=radii))
    # With 36 radii the sides still meet the box, since radii lie at 0, 90, 180 and 270 degrees.
    assert (boxing.a_mm, boxing.b_mm, boxing.effective_diameter_mm) == (50.0, 50.0, 50.0)
    # A polygon of N sides is shorter by a share of (pi / N)^2 / 6.
    short = math.pi * 50.0 * (math.pi / radii) ** 2 / 6.0
    assert boxing.circumference_mm == pytest.approx(math.pi * 50.0 - short, abs=0.006)


@pytest.mark.parametrize(("a_mm", "b_mm"), [(50.0, 36.0), (56.0, 30.0)])
def test_a_traced_ellipse(a_mm: float, b_mm: float):
    boxing = boxing_of(traced(ellipse(a_mm, b_mm)))
    found = (boxing.a_mm, boxing.b_mm, boxing.effective_diameter_mm)
    # A radius rounded up can stand out by a hundredth.
    assert found == pytest.approx((a_mm, b_mm, a_mm), abs=0.0101)
    assert boxing.circumference_mm == pytest.approx(ellipse_mm(a_mm, b_mm), abs=0.03)


def test_rounding_to_hundredths_lengthens_a_fine_trace():
    """Zigzag of half a hundredth: measured 0.06 mm at 1,000 radii, and under 0.01 mm at 400."""
    true = ellipse_mm(50.0, 36.0)
    fine, usual = (boxing_of(traced(ellipse(50.0, 36.0), radii=n)).circumference_mm for n in (1000, 400))
    assert 0.04 < fine - true < 0.09
    assert abs(usual - true) < 0.02


def test_the_effective_diameter_of_a_sharp_rectangle():
    """50 x 36: hypot(50, 36) = 61.61 mm (computed; published-values table)."""
    corner = math.degrees(math.atan2(36.0, 50.0))
    corners = [corner, 180.0 - corner, 180.0 + corner, 360.0 - corner]
    angles = sorted({*range(0, 36000, 50), *(round(one * 100) for one in corners)})
    found = rectangle(50.0, 36.0)(np.radians(np.array(angles) / 100.0))
    met = Trace(eye=Eye.RIGHT, radii=tuple(np.rint(found * 100).astype(int).tolist()), angles=tuple(angles))
    assert boxing_of(met).effective_diameter_mm == pytest.approx(61.61, abs=0.011)
    # Equal angles miss the corner: 400 radii leave the diameter 0.37 mm short, 3,600 at most 0.1 mm.
    missed, fine = (
        boxing_of(traced(rectangle(50.0, 36.0), radii=radii)).effective_diameter_mm for radii in (400, 3600)
    )
    assert missed == pytest.approx(61.61 - 0.37, abs=0.01)
    assert 0.0 <= 61.61 - fine < 0.1
    assert boxing_of(met).circumference_mm == pytest.approx(172.0, abs=0.2)


@settings(max_examples=60)
@given(x_mm=st.floats(-4.0, 4.0), y_mm=st.floats(-4.0, 4.0), a_mm=st.floats(44.0, 58.0))
def test_the_origin_of_the_tracer_does_not_count(x_mm: float, y_mm: float, a_mm: float):
    trace = traced_off_centre(ellipse(a_mm, 36.0), x_mm=x_mm, y_mm=y_mm)
    assert boxed_centre_mm(trace) == pytest.approx(complex(-x_mm, -y_mm), abs=0.01)
    boxing = boxing_of(trace)
    assert (boxing.a_mm, boxing.b_mm) == pytest.approx((a_mm, 36.0), abs=0.02)
    expected = ellipse(a_mm, 36.0)(np.arange(POINTS) * 2.0 * np.pi / POINTS)
    np.testing.assert_allclose(outline_of(trace).radius_mm, expected, atol=0.02)


@pytest.mark.parametrize("family", ["panto", "pilot", "rectangle", "round"])
@pytest.mark.parametrize("eye", EYES)
def test_a_trace_of_an_outline_gives_the_outline_again(family: str, eye: Eye):
    outline = Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0, shape=OutlineShape.named(family)).outline(eye)
    again = outline_of(trace_of(outline, eye))
    # A sharp bend between two radii is cut off a little; the smooth parts agree to the hundredth.
    np.testing.assert_allclose(again.radius_mm, outline.radius_mm, atol=0.03)


def pointed(eye: Eye) -> Trace:
    """A round rim with a corner at 45 degrees, the tenth of 72 radii, and a bump at the first."""
    radii = [2500] * 72
    radii[0], radii[9] = 2600, 3400
    return Trace(eye=eye, radii=tuple(radii))


@pytest.mark.parametrize(("eye", "corner"), [(Eye.RIGHT, "upper nasal"), (Eye.LEFT, "upper temporal")])
def test_the_first_radius_points_to_the_observers_right_and_the_next_follow_anticlockwise(
    eye: Eye, corner: str
):
    """ISO 8429 and, from memory, ISO 16284. To the right is the nose of a right eye, the temple of a left."""
    trace = pointed(eye)
    assert trace.points_mm[0] == pytest.approx(26.0)
    # The box reaches 26 mm to the right and 25 to the left, so its centre lies half a millimetre right.
    assert boxed_centre_mm(trace) == pytest.approx(0.5)
    outline = outline_of(trace)
    at = int(outline.radius_mm.argmax())
    x, y = outline.x_mm[at], outline.y_mm[at]
    assert math.degrees(math.atan2(y, x)) == pytest.approx(45.5, abs=1.0)
    assert where(outline.angle_deg[at], eye) == corner


def test_one_traced_rim_is_mirrored_and_said_so():
    traces = FrameTraces(right=pointed(Eye.RIGHT))
    right, left = traces.outline(Eye.RIGHT), traces.outline(Eye.LEFT)
    at = (POINTS // 2 - np.arange(POINTS)) % POINTS
    np.testing.assert_allclose(left.x_mm[at], -right.x_mm, atol=1e-9)
    np.testing.assert_allclose(left.y_mm[at], right.y_mm, atol=1e-9)
    (remark,) = traces.remarks()
    assert (remark.name, remark.eye) == ("one-rim-traced", Eye.LEFT)
    assert remark.text.startswith("only the right rim was traced and the left outline is its mirror")
    assert traces.boxing(Eye.LEFT) == traces.boxing(Eye.RIGHT)


def test_a_traced_frame_has_the_numbers_of_its_rims():
    right = traced(ellipse(50.0, 36.0))
    left = traced(ellipse(50.4, 36.2), eye=Eye.LEFT)
    frame = traced_frame(FrameTraces(right=right, left=left, dbl_mm=18.0), kind="metal")
    assert (frame.a_mm, frame.b_mm, frame.dbl_mm, frame.kind) == (50.2, 36.1, 18.0, "metal")
    assert frame.outline(Eye.RIGHT).effective_diameter_mm == pytest.approx(50.0)
    assert frame.outline(Eye.LEFT).effective_diameter_mm == pytest.approx(50.4)
    assert frame.outline_words == "as traced"
    assert traced_frame(FrameTraces(right=right, left=left, dbl_mm=18.0), dbl_mm=17.5).dbl_mm == 17.5


def test_frames_of_equal_traces_are_equal():
    one, other = (
        traced_frame(FrameTraces(right=traced(ellipse(50.0, 36.0)), dbl_mm=18.0, file=name)) for name in "ab"
    )
    assert one == other
    assert hash(one) == hash(other)


def test_what_a_file_states_is_held_against_its_trace():
    trace = traced(ellipse(50.0, 36.0))
    stated = Boxing(a_mm=50.6, b_mm=36.5, effective_diameter_mm=50.0, circumference_mm=140.0)
    remarks = FrameTraces(right=trace, left=traced(ellipse(50.0, 36.0), eye=Eye.LEFT), right_stated=stated)
    names = [(one.name, one.eye) for one in remarks.remarks()]
    assert names == [("trace-differs-from-boxing", Eye.RIGHT)] * 2
    first, second = (one.text for one in remarks.remarks())
    assert first == (
        "as traced and as stated in the file: A 50.00 and 50.60 mm, 0.60 mm apart where up to 0.5 mm passes "
        "without a word: measure the rim by hand"
    )
    assert "circumference 135.99 and 140.00 mm, 4.01 mm apart" in second


def test_rims_that_differ_are_mentioned():
    traces = FrameTraces(
        right=traced(ellipse(50.0, 36.0)), left=traced(ellipse(51.0, 36.0), eye=Eye.LEFT), dbl_mm=18.0
    )
    found = [one.text for one in traces.remarks() if one.name == "rims-differ"]
    assert found[0].startswith("right and left rim differ: A 50.00 and 51.00 mm, 1.00 mm apart")
    assert all(text.endswith("look for a rim that is bent or sprung") for text in found)


def test_a_bridge_that_differs_is_mentioned():
    rims = {"right": traced(ellipse(50.0, 36.0)), "left": traced(ellipse(50.0, 36.0), eye=Eye.LEFT)}
    traces = FrameTraces(**rims, dbl_mm=17.0)
    (remark,) = traces.remarks(dbl_mm=18.0)
    assert remark.name == "bridge-differs"
    assert remark.text == "DBL is 18 mm on the ticket and 17 mm in the trace file: measure it"
    assert traces.remarks(dbl_mm=17.5) == ()
    # 0.5 mm in tenths: the last bit of a machine decides nothing.
    assert FrameTraces(**rims, dbl_mm=15.6).remarks(dbl_mm=16.1) == ()
    assert traces.remarks() == ()


def test_a_limit_of_ones_own():
    one, other = Boxing(a_mm=50.0), Boxing(a_mm=50.3, b_mm=36.0)
    assert differences(one, other) == ()
    (found,) = differences(one, other, limit_mm=0.2)
    assert (found.name, found.first_mm, found.second_mm, found.limit_mm) == ("a_mm", 50.0, 50.3, 0.2)
    # Exactly at the limit passes, however the machine rounds the difference.
    assert differences(one, other, limit_mm=0.3) == ()


FINE = traced(ellipse(50.0, 36.0), radii=72)
ROUND = (2500,) * 40
STEPS = tuple(range(0, 36000, 900))


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: Trace(eye=Eye.RIGHT, radii=(2500,) * 8),
            "trace of a rim with 8 is out of range: give from 36",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=(2500, -3, *ROUND)),
            "radius 2: -3 hundredths or -0.03 is out of range: give from 1 to 80 mm",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=(25.0, *ROUND)),
            "radius 1: 25.0 is not a whole number: give hundredths of a millimetre",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=ROUND, traced="face"),
            "what was traced 'face' is not known: give one of frame, pattern, lens",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=ROUND, angles=STEPS[:-1]),
            "39 angles and 40 radii: give one angle for each radius",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=ROUND, angles=(0, 900, 900, *STEPS[3:])),
            "angle 3 of 900 follows 900: angles rise all the way round",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=ROUND[:38], angles=(*STEPS[:20], *STEPS[22:])),
            r"gap after angle 20 of 27 is out of range: give above 0 and up to 15 degrees from radius",
        ),
        (
            lambda: Trace(eye=Eye.RIGHT, radii=ROUND, angles=(*STEPS[:-1], 36000)),
            "angle 40: 36000 is out of range: give 0 to 35999 hundredths of a degree",
        ),
        (lambda: require_radius("radius 7", True), "radius 7: True is not a whole number"),
        (
            lambda: require_angle("angle 7", "9"),
            "angle 7: '9' is not a whole number: give hundredths of a deg",
        ),
        (lambda: trace_of(outline_of(FINE), Eye.RIGHT, radii=5), "trace of a rim with 5 is out of range"),
        (lambda: FrameTraces(), "no rim was traced: give the trace of the right rim, the left rim or both"),
        (
            lambda: FrameTraces(left=FINE),
            "trace of the right rim is given for the left one: exchange",
        ),
        (lambda: FrameTraces(right=FINE, dbl_mm=90.0), "DBL 90 is out of range: give from 5 to 40 mm"),
        (
            lambda: traced_frame(FrameTraces(right=FINE)),
            "dbl_mm is missing and the trace file states no DBL: measure the bridge and add it",
        ),
        (
            lambda: Frame(a_mm=49.0, b_mm=36.0, dbl_mm=18.0, traces=FrameTraces(right=FINE)),
            "frame 49 x 36 mm was traced as 50 x 36 mm: take A and B from its traces",
        ),
        (lambda: Boxing(a_mm=0.001), "A 0 is out of range: give above 0 and up to 300 mm"),
        (lambda: differences(Boxing(), Boxing(), limit_mm=-1.0), "limit -1 is out of range: give from 0"),
    ],
)
def test_what_no_trace_can_be_is_said_in_words(make, words: str):
    with pytest.raises(LabError, match=words):
        make()


def test_a_rim_that_folds_back_is_refused():
    """Seen from the tracer's origin this is an outline, from its boxed centre it is not."""
    angle = np.arange(72) * 5
    hook = np.where((angle > 20) & (angle < 60), 700, np.where(angle <= 20, 6000, 600))
    with pytest.raises(LabError, match="trace of the left rim folds back as seen from its boxed centre: an"):
        outline_of(Trace(eye=Eye.LEFT, radii=tuple(hook.tolist())))
