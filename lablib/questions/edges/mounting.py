"""Which edge goes with which frame, or why the lens is not cut as ordered, as a question."""

from dataclasses import dataclass

from lablib.bench.edges import MOUNTINGS, least_edge_mm
from lablib.optics.care import care
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution

_OPTIONS = {
    "bevel": "Cut a bevel",
    "groove": "Cut a groove for the cord",
    "drill": "Cut it flat and drill the holes",
    "thicker": "Stop: order it with a thicker edge",
    "material": "Stop: order it in another material",
}
_EDGE_FOR = {"plastic": "bevel", "metal": "bevel", "grooved": "groove", "drilled": "drill"}
_FRAMES = {
    "plastic": "a plastic frame with full rims",
    "metal": "a metal frame with full rims",
    "grooved": "a frame that holds its lenses by a cord round the edge",
    "drilled": "a three-piece frame, its parts held by holes through the lens",
}
_WHICH_STEP = "what holds the lens in this frame"
_ROOM_STEP = "what the thinnest place leaves room for"
_MATERIAL_STEP = "whether this material bears holes"
_OTHER_FRAME = {
    "bevel": Slip(
        name="bevel-without-a-rim",
        step=_WHICH_STEP,
        words="You cut a bevel. A bevel sits in the groove of a rim, and this frame has none.",
    ),
    "groove": Slip(
        name="groove-without-a-cord",
        step=_WHICH_STEP,
        words="You cut a groove. It is for a cord, and no cord holds this lens.",
    ),
    "drill": Slip(
        name="holes-without-need",
        step=_WHICH_STEP,
        words="You drilled it. Nothing in this frame goes through the lens.",
    ),
}
_TOO_THIN = Slip(
    name="cut-on-a-thin-edge",
    step=_ROOM_STEP,
    words="You cut it as ordered. Its thinnest place is under what this needs here, so a wall or a side "
    "breaks out there, however thick the edge is elsewhere.",
)
_THICK_ENOUGH = Slip(
    name="thicker-without-need",
    step=_ROOM_STEP,
    words="You sent it back for a thicker edge. A thicker edge is no gain here.",
)
_CRACKS = Slip(
    name="drills-what-bears-no-holes",
    step=_MATERIAL_STEP,
    words="You drilled a material that bears no holes. Cracks run from them, first at the bridge.",
)
_FIT_MATERIAL = Slip(
    name="another-material-without-need",
    step=_MATERIAL_STEP,
    words="You sent it back for another material. This one does what this frame asks of it.",
)
_MATERIALS = (
    "hard-resin-1.50",
    "urethane-1.53",
    "polycarbonate-1.59",
    "thiourethane-1.60",
    "episulfide-1.74",
)
# The thinnest place is clear of what is needed by so much either way [mm].
_CLEAR_MM = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class MountingCase:
    """An order for a frame.

    kind: of frame; material: name in the table; least_mm, greatest_mm: of the edge [mm].
    shown: keys of the options.
    """

    kind: str
    material: str
    least_mm: float
    greatest_mm: float
    shown: tuple[str, ...] = tuple(_OPTIONS)

    @property
    def is_thick_enough(self) -> bool:
        """Whether the thinnest place has what this frame needs."""
        return self.least_mm >= least_edge_mm(self.kind)

    @property
    def bears(self) -> bool:
        """Whether the material bears what this frame asks of it."""
        return self.kind != "drilled" or care(self.material).holes


class EdgeForAFrame(PickMaker[MountingCase]):
    """Choose bevel, groove or holes for a frame, or stop."""

    name = "edge-for-a-frame"
    lesson = "13"
    skill = "edge-for-a-frame"
    slips = (*_OTHER_FRAME.values(), _TOO_THIN, _THICK_ENOUGH, _CRACKS, _FIT_MATERIAL)

    def draw(self, draws: Draws) -> MountingCase:
        """Return an order with one thing wrong with it at most, and clear of every limit."""
        return draws.until("an order", self._draw_one, _is_clear)

    def _draw_one(self, draws: Draws) -> MountingCase:
        least = draws.step(0.6, 2.8, 0.1)
        return MountingCase(
            kind=draws.one_of((*MOUNTINGS, "grooved", "grooved", "drilled", "drilled")),
            material=draws.one_of(_MATERIALS),
            least_mm=least,
            greatest_mm=round(least + draws.step(0.8, 3.0, 0.1), 1),
            shown=draws.shuffled(tuple(_OPTIONS)),
        )

    def options(self, case: MountingCase) -> tuple[Option, ...]:
        """Return what can be done."""
        return tuple(Option(key=key, words=_OPTIONS[key]) for key in case.shown)

    def right(self, case: MountingCase) -> str:
        """Return what is done."""
        if not case.bears:
            return "material"
        return _EDGE_FOR[case.kind] if case.is_thick_enough else "thicker"

    def slip_of(self, case: MountingCase, key: str) -> Slip:
        """Return the slip behind a wrong option."""
        if key == "thicker":
            return _THICK_ENOUGH
        if key == "material":
            return _FIT_MATERIAL
        if key != _EDGE_FOR[case.kind]:
            return _OTHER_FRAME[key]
        return _TOO_THIN if case.bears else _CRACKS

    def prompt(self, case: MountingCase) -> tuple[str, ...]:
        """Return the order, the least edges of this lens room, and what is asked."""
        return (
            f"An invented order: {care(case.material).material.words}, in {_FRAMES[case.kind]}. Its edge "
            f"would come out between {case.least_mm:.1f} and {case.greatest_mm:.1f} mm thick.",
            f"In this lens room the thinnest place of the edge decides. A bevel needs "
            f"{least_edge_mm('metal'):g} mm there, a groove {least_edge_mm('grooved'):g} mm, and holes "
            f"{least_edge_mm('drilled'):g} mm.",
            "What do you do?",
        )

    def solution(self, case: MountingCase) -> Solution:
        """Return what is done, and why."""
        right = self.right(case)
        if right == "material":
            why = (
                f"{_begun(care(case.material).holes_words)}. Urethane 1.53, polycarbonate and 1.60 are the "
                "usual choices for holes, with the edge checked where they go."
            )
        elif right == "thicker":
            needed = least_edge_mm(case.kind)
            why = (
                f"The thinnest place decides: {case.least_mm:.1f} mm where {needed:g} mm are needed. It "
                "cannot be made good on the wheel, so the least edge goes on the order before the lens is "
                "made."
            )
        else:
            why = (
                f"The thinnest place has {case.least_mm:.1f} mm where {least_edge_mm(case.kind):g} mm are "
                "needed, and the material bears it. A fine safety chamfer on both edges goes with it."
            )
        return Solution(words=(f"{_OPTIONS[right]}.", why))

    def hints(self, case: MountingCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What of this frame touches the edge of the lens, and how?",
            "Take the thinnest place of the edge, not the thickest. And ask what the material bears.",
        )


def _begun(words: str) -> str:
    return words[0].upper() + words[1:]


def _is_clear(case: MountingCase) -> bool:
    """Whether the thinnest place is clear of its limit, and not too thin where the material is at fault."""
    clear = abs(case.least_mm - least_edge_mm(case.kind)) >= _CLEAR_MM
    return clear and (case.bears or case.is_thick_enough)
