"""Tickets drawn of each kind: two eyes that could be anybody's, with one thing wrong or odd about them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from lablib.optics.eye import EYES, Eye
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.questions.ticket_check.order import Order
from lablib.study.draws import Draws

# The first two words of a line.
_PARTS = ("sphere", "cylinder")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticket:
    """A ticket of one kind.

    kind: key of its kind.
    order: the lenses as written.
    sound_eye, sound: an eye whose line is in order, and its lens.
    axis_deg: an axis of one figure that can be misread, 0 for none [degrees].
    part: "sphere" or "cylinder", where either can be in doubt and this one is.
    """

    kind: str
    order: Order
    sound_eye: Eye
    sound: Prescription
    axis_deg: int = 0
    part: str = ""

    @property
    def odd_eye(self) -> Eye:
        """The eye that is not in order, or looks odd."""
        return self.sound_eye.other


def ticket(kind: str, draws: Draws) -> Ticket:
    """Return a ticket of a kind.

    kind: its key; draws: to draw its numbers from.
    """
    return _MADE[kind](draws, kind)


def _eyes(
    draws: Draws, *, sign: float = 0.0, cylinders_d: tuple[float, float] = (0.5, 1.25)
) -> tuple[Prescription, Prescription]:
    """Return two lenses of one sign that could be one wearer's, their cylinders minus and of some size."""
    sign, size = sign or draws.one_of((-1.0, -1.0, 1.0)), draws.step(1.5, 5.0, 0.25)
    sizes = (size, size + draws.one_of((-0.5, -0.25, 0.25, 0.5)))
    first, second = (
        Prescription(
            sphere_d=sign * one,
            cylinder_d=-draws.step(*cylinders_d, 0.25),
            axis_deg=draws.step(5.0, 180.0, 5.0),
        )
        for one in sizes
    )
    return first, second


def _placed(
    draws: Draws,
    kind: str,
    line: str,
    sound: Prescription,
    *,
    axis_deg: int = 0,
    part: str = "",
    sound_line: str = "",
    **more: object,
) -> Ticket:
    """Return the ticket with a line in either eye, and a lens that is in order in the other."""
    eye, other = draws.shuffled(EYES)
    lines = {eye.value: line, other.value: sound_line or str(sound)}
    if "prism_prism_d" in more:
        more["prism_eye"] = eye
    order = Order(**lines, **more)
    return Ticket(kind=kind, order=order, sound_eye=other, sound=sound, axis_deg=axis_deg, part=part)


def _axis_missing(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    return _placed(draws, kind, f"{written_power(lens.sphere_d)} {written_power(lens.cylinder_d)}", sound)


def _axis_without_cylinder(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    return _placed(draws, kind, f"{written_power(lens.sphere_d)} x {lens.axis_deg:03.0f}", sound)


def _sign_missing(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    words = str(lens).split(" ")
    part = draws.whole(2)
    words[part] = words[part].lstrip("+-")
    return _placed(draws, kind, " ".join(words), sound, part=_PARTS[part])


def _point_missing(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    words, figures = str(lens).split(" "), draws.one_of(("50", "75"))
    part = draws.whole(2)
    words[part] = words[part][0] + figures
    return _placed(draws, kind, " ".join(words), sound, part=_PARTS[part])


def _prism_without_base(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    return _placed(draws, kind, str(lens), sound, prism_prism_d=draws.step(1.0, 4.0, 0.5))


def _small_axis(draws: Draws, kind: str, mark: str) -> Ticket:
    lens, sound = _eyes(draws)
    axis = 1 + draws.whole(9)
    line = str(lens).partition("x")[0] + f"x {axis}{mark}"
    return _placed(draws, kind, line, sound, axis_deg=axis)


def _opposite_signs(draws: Draws, kind: str, note: str = "") -> Ticket:
    minus, _ = _eyes(draws, sign=-1.0)
    plus, _ = _eyes(draws, sign=1.0)
    return _placed(draws, kind, str(minus), plus, note=note)


def _additions(draws: Draws, kind: str, first_d: float, second_d: float, note: str = "") -> Ticket:
    lens, sound = _eyes(draws)
    lens, sound = replace(lens, addition_d=first_d), replace(sound, addition_d=second_d)
    return _placed(draws, kind, str(lens), sound, note=note)


def _additions_differ(draws: Draws, kind: str, note: str = "") -> Ticket:
    addition, more = draws.step(1.0, 2.25, 0.25), draws.one_of((0.25, 0.5, 0.75))
    return _additions(draws, kind, addition, addition + more, note)


def _addition_in_one_eye(draws: Draws, kind: str) -> Ticket:
    return _additions(draws, kind, draws.step(1.0, 2.75, 0.25), 0.0)


def _unsigned_addition(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    addition = f"{draws.step(1.0, 2.75, 0.25):.2f}"
    return _placed(draws, kind, f"{lens} add {addition}", sound, sound_line=f"{sound} add {addition}")


def _two_forms(draws: Draws, kind: str) -> Ticket:
    lens, sound = _eyes(draws)
    return _placed(draws, kind, str(lens.transposed()), sound)


def _plano_eye(draws: Draws, kind: str) -> Ticket:
    _, sound = _eyes(draws)
    return _placed(draws, kind, "plano", sound)


def _mixed_lens(draws: Draws, kind: str) -> Ticket:
    _, sound = _eyes(draws, sign=-1.0)
    lens = Prescription(
        sphere_d=draws.step(0.25, 0.75, 0.25),
        cylinder_d=-draws.step(1.75, 2.5, 0.25),
        axis_deg=draws.step(5.0, 180.0, 5.0),
    )
    return _placed(draws, kind, str(lens), sound)


def _commas(draws: Draws, kind: str) -> Ticket:
    # No figure but a whole one before the comma: -0,75 would be hard to read, and another matter.
    lens, sound = _eyes(draws, cylinders_d=(1.0, 1.75))
    return _placed(draws, kind, str(lens).replace(".", ","), sound, sound_line=str(sound).replace(".", ","))


_MADE: Mapping[str, Callable[[Draws, str], Ticket]] = MappingProxyType(
    {
        "axis-missing": _axis_missing,
        "axis-without-cylinder": _axis_without_cylinder,
        "sign-missing": _sign_missing,
        "point-missing": _point_missing,
        "prism-without-base": _prism_without_base,
        "degree-letter": lambda draws, kind: _small_axis(draws, kind, "o"),
        "opposite-signs": _opposite_signs,
        "additions-differ": _additions_differ,
        "addition-in-one-eye": _addition_in_one_eye,
        "two-forms": _two_forms,
        "noted-opposite-signs": lambda draws, kind: _opposite_signs(draws, kind, "opposite signs are meant"),
        "noted-additions": lambda draws, kind: _additions_differ(draws, kind, "two additions are meant"),
        "unsigned-addition": _unsigned_addition,
        "degree-sign": lambda draws, kind: _small_axis(draws, kind, "°"),
        "plano-eye": _plano_eye,
        "mixed-lens": _mixed_lens,
        "commas": _commas,
    }
)
