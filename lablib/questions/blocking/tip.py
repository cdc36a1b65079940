"""Which back tip suits a back, as a question: each is pressed on the real surface."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.faces import LensFaces
from lablib.bench.tip_fit import TipFit, tip_fit
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import plain

_STEP = "where a tip bears on this back, and how hard"
_STEEP = Slip(
    name="steep-tip-trusted",
    step=_STEP,
    words="You took the tip with the smallest radius. It bears in the middle of its face: little arm, and "
    "all the pressure there.",
)
_FLAT = Slip(
    name="flat-tip-trusted",
    step=_STEP,
    words="You took the tip with the largest radius. On a hollow back it bears on its rim: it turns hard, "
    "but presses a ring into the coat.",
)
_STIFF = Slip(
    name="stiff-tip-trusted",
    step=_STEP,
    words="You took the stiff tip. On a back that it does not fit all over it bears in spots, and there it "
    "presses hardest.",
)
_RIGID = Slip(
    name="rigid-tip-trusted",
    step=_STEP,
    words="You took the tip that does not swivel. This back lies askew to the chuck, so such a tip bears "
    "on one side.",
)
_FORCE_N = 250.0
_KEYS = ("suits", "steep", "flat", "stiff", "rigid")
_SLIPS = {"steep": _STEEP, "flat": _FLAT, "stiff": _STIFF, "rigid": _RIGID}
# Radii of a back's two meridians, and the radius of the tip that suits [mm].
_BACKS = ((62.0, 62.0, 60.0), (80.0, 80.0, 80.0), (120.0, 70.0, 90.0), (150.0, 80.0, 105.0))
_TILT = 0.05
_LESS_PRESSURE = 1.15


@dataclass(frozen=True, slots=True, kw_only=True)
class Tip:
    """A back tip.

    face_mm: radius of its face [mm]; stiffness: "soft" or "stiff"; swivels: whether it sets itself square.
    """

    face_mm: float
    stiffness: str = "soft"
    swivels: bool = True

    @property
    def words(self) -> str:
        """The tip in words."""
        set_square = "on a swivel" if self.swivels else "without a swivel"
        return f"{self.stiffness}, {set_square}, radius of its face {self.face_mm:g} mm"


@dataclass(frozen=True, slots=True, kw_only=True)
class TipCase:
    """A back and tips to choose from.

    flat_mm, steep_mm: radii of its flatter and its steeper meridian [mm].
    askew: whether the back lies askew to the chuck.
    tips: by key; shown: keys in the order shown.
    """

    flat_mm: float
    steep_mm: float
    askew: bool
    tips: tuple[tuple[str, Tip], ...]
    shown: tuple[str, ...]

    @property
    def faces(self) -> LensFaces:
        """The lens at the chuck axis; its front does not matter to the tip."""
        return LensFaces(
            front_flat_per_mm=0.0,
            front_steep_per_mm=0.0,
            back_flat_per_mm=1.0 / self.flat_mm,
            back_steep_per_mm=1.0 / self.steep_mm,
            tilt_x=_TILT if self.askew else 0.0,
        )

    def fit(self, key: str) -> TipFit:
        """Return how a tip bears.

        key: of the tip.
        """
        tip = dict(self.tips)[key]
        return tip_fit(
            self.faces,
            tip_face_mm=tip.face_mm,
            stiffness=tip.stiffness,
            swivels=tip.swivels,
            force_n=_FORCE_N,
        )


class TipOnItsBack(Maker[TipCase]):
    """Choose the back tip that presses most evenly."""

    name = "tip-on-its-back"
    lesson = "10"
    skill = "back-tip"
    slips = (_STEEP, _FLAT, _STIFF, _RIGID)

    def draw(self, draws: Draws) -> TipCase:
        """Return a back, a tip that suits and three that attract, the best clearly the gentlest."""
        return draws.until("a tip that suits", _drawn, _is_clear)

    def kind(self, case: TipCase) -> ChoiceAnswer:
        """Return the tips in words."""
        tips = dict(case.tips)
        return ChoiceAnswer(options=tuple(Option(key=key, words=tips[key].words) for key in case.shown))

    def answer(self, case: TipCase, slips: Set[str] = NONE) -> str:
        """Return the tip with the least pressure at its worst place, or the one a slip leads to."""
        for key, slip in _SLIPS.items():
            if slip.name in slips:
                return key
        return min(case.shown, key=lambda key: round(case.fit(key).peak_mpa, 3))

    def slips_in(self, case: TipCase) -> tuple[Slip, ...]:
        """Return the slips whose tip is offered."""
        return tuple(slip for key, slip in _SLIPS.items() if key in case.shown)

    def pairs(self, case: TipCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: TipCase) -> tuple[str, ...]:
        """Return the back and what is asked."""
        back = (
            f"spherical, with a radius of {case.flat_mm:g} mm"
            if case.flat_mm == case.steep_mm
            else f"toric, with radii of {case.flat_mm:g} and {case.steep_mm:g} mm"
        )
        askew = " The lens has prism: its back lies askew to the chuck." if case.askew else ""
        return (
            f"The hollow back of an invented lens is {back}.{askew} Four back tips of the same width lie "
            "ready, all of them bulging.",
            "Which one presses most evenly, so that no place of the coat gets much more than another?",
        )

    def solution(self, case: TipCase) -> Solution:
        """Return what each tip does under the clamp."""
        return Solution(
            words=(
                f"Worked out for a clamp force of {_FORCE_N:g} N, with the workbook's stiffness of tips, "
                "which is a teaching estimate:",
                *(_told(case, key) for key in case.shown),
                "A tip of the back's own curve, soft and on a swivel, spreads the force. Pressure in a spot "
                "crazes coats, and rubber grips the less for each newton the harder it is pressed.",
            )
        )

    def hints(self, case: TipCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Lay each tip into the hollow in your mind. Where does it touch first?",
            "What can give way when tip and back differ: the rubber, or the way the tip stands?",
        )


def _drawn(draws: Draws) -> TipCase:
    flat, steep, suits = draws.one_of(_BACKS)
    askew = draws.one_of((False, True))
    best = Tip(face_mm=suits)
    # On a sphere that fits, a stiff tip on a swivel is as even as a soft one.
    offered = {
        "suits": best,
        "steep": replace(best, face_mm=draws.step(35.0, 45.0, 5.0)),
        "flat": replace(best, face_mm=draws.step(200.0, 300.0, 50.0)),
    }
    if flat != steep:
        offered["stiff"] = replace(best, stiffness="stiff")
    if askew:
        offered["rigid"] = replace(best, swivels=False)
    wrong = [key for key in offered if key != "suits"]
    shown = draws.shuffled(("suits", *draws.some(wrong, min(3, len(wrong)))))
    return TipCase(
        flat_mm=flat,
        steep_mm=steep,
        askew=askew,
        tips=tuple((key, offered[key]) for key in _KEYS if key in shown),
        shown=shown,
    )


def _is_clear(case: TipCase) -> bool:
    if len(case.shown) < 4:
        return False
    peaks = sorted((round(case.fit(key).peak_mpa, 3), key) for key in case.shown)
    return peaks[0][1] == "suits" and peaks[1][0] >= _LESS_PRESSURE * peaks[0][0]


def _told(case: TipCase, key: str) -> str:
    fit = case.fit(key)
    words = dict(case.tips)[key].words
    return (
        f"{words[0].upper()}{words[1:]}: up to {plain(fit.peak_mpa, 1)} MPa, on "
        f"{plain(100.0 * fit.contact_share, 0)} % of its face; it keeps "
        f"{plain(100.0 * fit.torque_share, 0)} % of an even contact's torque."
    )
