"""The panel of blank and outline: a frame on a wearer, a round blank at each optical centre, what is left."""

from collections.abc import Sequence

from lablib.optics.blank_fit import BlankFit, prism_of_shifts
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape, outline_families
from lablib.optics.layout import decentration_mm
from lablib.optics.prescription import Prescription
from lablib.optics.prism import in_words
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.blank_fit import BlankFitPicture
from lablib.pictures.blank_fit_data import PairOfBlanks
from lablib.pictures.blank_fit_front import decentred

_FRAME, _WEARER, _LENSES = ({"group": words} for words in ("Frame", "Wearer", "Lenses"))
# Outlines that curves of one exponent give, beside the families of the table.
_SUPERELLIPSES = {shape.words: shape for shape in map(OutlineShape.superellipse, (2.6, 3.0))}


def _mm(
    name: str, label: str, ends: tuple[float, float], value: float, *, step: float = 0.5, group: str
) -> Slider:
    low, high = ends
    return Slider(name=name, label=label, unit="mm", low=low, high=high, step=step, value=value, group=group)


class BlankFitPanel(Panel):
    """Both lenses of a pair on their blanks; it starts with blanks that do not cover."""

    draws = BlankFitPicture
    note = (
        "An optical centre stays before its pupil. The shift is shown for what it costs, never to be made: "
        "a blank that does not cover means another blank, a surfaced lens or another frame. Outlines are "
        "shapes of our own."
    )
    controls = (
        _mm("a_mm", "Width A", (40.0, 62.0), 58.0, **_FRAME),
        _mm("b_mm", "Height B", (24.0, 50.0), 44.0, **_FRAME),
        _mm("dbl_mm", "Bridge DBL", (14.0, 24.0), 16.0, **_FRAME),
        Choice(
            name="outline",
            label="Outline",
            options=(*_SUPERELLIPSES, *outline_families()),
            value="superellipse 3",
            **_FRAME,
        ),
        _mm("right_pd_mm", "Right pupil", (26.0, 38.0), 29.0, **_WEARER),
        _mm("left_pd_mm", "Left pupil", (26.0, 38.0), 29.0, **_WEARER),
        _mm("right_height_mm", "Right height", (8.0, 40.0), 22.0, **_WEARER),
        _mm("left_height_mm", "Left height", (8.0, 40.0), 22.0, **_WEARER),
        _mm("blank_mm", "Blank diameter", (55.0, 85.0), 70.0, step=1.0, **_LENSES),
        Slider(
            name="sphere_d",
            label="Sphere, both lenses",
            unit="D",
            low=-8.0,
            high=8.0,
            step=0.25,
            value=-3.0,
            **_LENSES,
        ),
    )

    def compute(self, values: Values) -> PairOfBlanks:
        """Return both blanks laid on the frame.

        values: by the control's name.

        Raises LabError for a centration point outside a lens.
        """
        frame = Frame(
            a_mm=values["a_mm"],
            b_mm=values["b_mm"],
            dbl_mm=values["dbl_mm"],
            shape=_shape(values["outline"]),
        )
        fits = {eye.value: _fit(frame, eye, values) for eye in Eye}
        shifts = {f"{eye}_mm": fit.shift_mm for eye, fit in fits.items()}
        rx = Prescription(sphere_d=values["sphere_d"])
        return PairOfBlanks(
            frame=frame,
            **fits,
            **{f"{eye}_{what}_mm": values[f"{eye}_{what}_mm"] for eye in Eye for what in ("pd", "height")},
            cost=None if None in shifts.values() else prism_of_shifts(rx, rx, **shifts),
        )

    def numbers(self, data: PairOfBlanks) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        frame = data.frame
        return [
            ("Boxed centres apart", f"{2.0 * frame.bridge_to_boxed_centre_mm:.1f}", "mm"),
            ("Pupils apart", f"{data.right_pd_mm + data.left_pd_mm:.1f}", "mm"),
            ("Effective diameter", f"{data.right.outline.effective_diameter_mm:.1f}", "mm"),
            ("Circumference", f"{data.right.outline.perimeter_mm:.1f}", "mm"),
            ("Usable blank", f"{2.0 * data.right.usable_mm:.1f}", "mm"),
            ("Prism of shifts", *_cost(data)),
            *_lens_rows("Right", data.right),
            *_lens_rows("Left", data.left),
        ]

    def sentence(self, data: PairOfBlanks) -> str:
        """Return what lies where, and which blank covers.

        data: what is shown.
        """
        return " ".join(f"{eye.value.capitalize()} lens: {_said(data.fit(eye))}." for eye in Eye)


def _shape(words: str) -> OutlineShape:
    return _SUPERELLIPSES.get(words) or OutlineShape.named(words)


def _fit(frame: Frame, eye: Eye, values: Values) -> BlankFit:
    inward, up = decentration_mm(
        frame, monocular_pd_mm=values[f"{eye}_pd_mm"], height_mm=values[f"{eye}_height_mm"]
    )
    return BlankFit(eye=eye, outline=frame.outline(eye), in_mm=inward, up_mm=up, blank_mm=values["blank_mm"])


def _lens_rows(name: str, fit: BlankFit) -> list[tuple[str, str, str]]:
    least, spare = fit.least, fit.spare_mm
    return [
        (f"{name}, in or out", *_part(fit.in_mm, "in", "out")),
        (f"{name}, up or down", *_part(fit.up_mm, "up", "down")),
        (f"{name}, least blank", f"{least.exact_mm:.1f}", "mm"),
        (f"{name}, by rule", f"{least.rule_mm:.1f}", f"mm, {_more(least.rule_more_mm)}"),
        (f"{name}, blank", f"{abs(spare):.1f}", "mm to spare" if fit.blank_covers else "mm too small"),
        (f"{name}, shift", *_shift(fit)),
    ]


def _more(more_mm: float) -> str:
    figure = f"{abs(more_mm):.1f}"
    if figure == "0.0":
        return "the same"
    return f"{figure} {'over' if more_mm > 0.0 else 'under'}"


def _part(part: float, plus: str, minus: str) -> tuple[str, str]:
    figure = f"{abs(part):.1f}"
    return figure, "mm" if figure == "0.0" else f"mm {plus if part > 0.0 else minus}"


def _shift(fit: BlankFit) -> tuple[str, str]:
    if fit.blank_covers:
        return "none", ""
    if fit.shift_mm is None:
        return NOT_KNOWN, "no shift would do"
    ways = zip(fit.shift_mm, (("in", "out"), ("up", "down")), strict=True)
    moves = [f"{abs(part):.1f} {words[part < 0.0]}" for part, words in ways if f"{abs(part):.1f}" != "0.0"]
    return " and ".join(moves) or "0.0", "mm"


def _cost(data: PairOfBlanks) -> tuple[str, str]:
    if data.right.blank_covers and data.left.blank_covers:
        return "none", ""
    if data.cost is None:
        return NOT_KNOWN, ""
    sideways, upright = data.cost.between
    figure = f"{abs(upright):.2f}"
    amount, _, base = in_words(sideways, 0.0).partition(" ")
    return amount, base if figure == "0.00" else f"{base} and {figure} up or down"


def _said(fit: BlankFit) -> str:
    place = decentred(fit)
    stands = place if place.startswith("at ") else f"{place} from the boxed centre"
    needs = f"{stands}; it needs {fit.least.exact_mm:.1f} mm"
    if fit.blank_covers:
        return f"{needs}, and the {fit.blank_mm:g} mm blank covers"
    return f"{needs}, and the {fit.blank_mm:g} mm blank leaves {fit.beyond_mm.max():.1f} mm uncovered"
