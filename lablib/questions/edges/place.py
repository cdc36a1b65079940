"""Where the bevel goes on an edge, on minus and plus, in flat and in wrapped rims, as a question."""

from lablib.bench.edges import edge_default, rim_give_mm
from lablib.optics.terms import distance_term
from lablib.questions.edges.place_case import PlaceCase, draw_place
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution
from lablib.working import Term

_OPTIONS = {
    "front": "Forward, at one distance from the front all round",
    "rim": "On the curve of the rim, wandering along the edge",
    "middle": "In the middle of the edge, all round",
    "back": "At the back, at one distance from the back all round",
    "none": "Nowhere: this lens does not go into this rim",
}
_HIDE_STEP = "where a bevel hides thickness and still has room"
_CURVE_STEP = "whether the rim can take the bevel's curve"
_ROOM_STEP = "whether the edge is thick enough where the bevel wanders"
_SLIPS = {
    "rim-in-a-thin-edge": Slip(
        name="rim-in-a-thin-edge",
        step=_ROOM_STEP,
        words="You let the bevel follow the rim where the edge is too thin for it. At the far place its tip "
        "comes too near the back of the lens, or runs out of it.",
    ),
    "rim-without-need": Slip(
        name="rim-without-need",
        step=_CURVE_STEP,
        words="You let the bevel wander along the edge. This rim gives enough for a bevel that keeps its "
        "place, and that one looks even all round.",
    ),
    "front-against-the-rim": Slip(
        name="front-against-the-rim",
        step=_CURVE_STEP,
        words="You let the bevel follow the front. The rim would have to bend farther than it gives: it "
        "springs open, or strains the lens.",
    ),
    "middle-against-the-rim": Slip(
        name="middle-against-the-rim",
        step=_CURVE_STEP,
        words="You set the bevel in the middle. There it follows the lens, not the rim, and the rim would "
        "have to bend farther than it gives.",
    ),
    "middle-of-a-thick-edge": Slip(
        name="middle-of-a-thick-edge",
        step=_HIDE_STEP,
        words="You set the bevel in the middle of a thick edge. Half of it then stands out in front of the "
        "rim.",
    ),
    "forward-on-a-thin-edge": Slip(
        name="forward-on-a-thin-edge",
        step=_HIDE_STEP,
        words="You set the bevel forward on a thin edge. There is nothing to hide, and both of its sides "
        "need the room they have in the middle.",
    ),
    "bevel-at-the-back": Slip(
        name="bevel-at-the-back",
        step=_HIDE_STEP,
        words="You set the bevel at the back. The lens then stands out of the front of its rim.",
    ),
    "given-up-too-soon": Slip(
        name="given-up-too-soon",
        step=_ROOM_STEP,
        words="You gave the lens up, although a bevel has room in it and the rim takes its curve.",
    ),
}


class BevelPlace(PickMaker[PlaceCase]):
    """Say where the bevel goes, or that it goes nowhere."""

    name = "bevel-place"
    lesson = "13"
    skill = "bevel-place"
    slips = tuple(_SLIPS.values())

    def draw(self, draws: Draws) -> PlaceCase:
        """Return a lens in a rim, each of the four answers often enough."""
        return draw_place(draws)

    def options(self, case: PlaceCase) -> tuple[Option, ...]:
        """Return where a bevel may go."""
        return tuple(Option(key=key, words=_OPTIONS[key]) for key in case.shown)

    def right(self, case: PlaceCase) -> str:
        """Return where it goes."""
        return case.right

    def slip_of(self, case: PlaceCase, key: str) -> Slip:
        """Return the slip behind a wrong option: what speaks against that bevel on this edge."""
        on_the_rim = case.tried("rim").line
        only_seen = self.right(case) == "front" or case.tried("middle").follows
        name = {
            "front": "forward-on-a-thin-edge" if case.tried("front").follows else "front-against-the-rim",
            "rim": "rim-without-need" if on_the_rim.has_room else "rim-in-a-thin-edge",
            "middle": "middle-of-a-thick-edge" if only_seen else "middle-against-the-rim",
            "back": "bevel-at-the-back",
            "none": "given-up-too-soon",
        }[key]
        return _SLIPS[name]

    def prompt(self, case: PlaceCase) -> tuple[str, ...]:
        """Return lens, rim, and what is asked."""
        lens = "minus" if case.far_edge_mm > case.near_edge_mm else "plus"
        return (
            f"A {lens} lens of an invented job is to go into a {case.rim} rim. Its edge is "
            f"{case.near_edge_mm:.1f} mm thick at top and bottom, the nearest places, and "
            f"{case.far_edge_mm:.1f} mm at the two sides, the farthest.",
            f"At the sides the rim's curve lies {case.told_mm:.1f} mm farther behind the lens's front than "
            f"at top and bottom. This rim can be made to give {rim_give_mm(case.rim):g} mm, and the tip of a "
            f"bevel needs {edge_default('bevel_side_mm'):g} mm to either face.",
            "Where does the bevel go?",
        )

    def given(self, case: PlaceCase) -> tuple[Term, ...]:
        """Return edges, the wander, and what rim and bevel need."""
        return (
            distance_term("e_near", case.near_edge_mm, "edge at top and bottom"),
            distance_term("e_far", case.far_edge_mm, "edge at the sides"),
            distance_term("w", case.told_mm, "how much farther back the rim lies at the sides"),
            distance_term("v", rim_give_mm(case.rim), "how far the rim gives"),
            distance_term("p", edge_default("bevel_side_mm"), "from the tip of a bevel to either face"),
        )

    def solution(self, case: PlaceCase) -> Solution:
        """Return where it goes, and why the others do not."""
        right, wander, side = case.right, case.told_mm, edge_default("bevel_side_mm")
        give, needed = rim_give_mm(case.rim), wander + 2.0 * side
        bends = (
            f"A bevel that keeps its place would bend the rim by {wander:.1f} mm, and it gives {give:g} mm."
        )
        why = {
            "front": (
                f"The rim gives {give:g} mm and would have to bend by {wander:.1f} mm only, so the bevel may "
                "follow the front. Forward it leaves most of the thick edge behind the rim, where it is not "
                "seen.",
            ),
            "middle": (
                f"Following the front would bend the rim by {wander:.1f} mm, in the middle of this edge by "
                f"{case.middle_bends_mm:.1f} mm, and it gives {give:g} mm. The edge is thin: in its middle "
                "both sides of the bevel have the most room.",
            ),
            "rim": (
                bends,
                f"On the rim's curve it needs {wander:.1f} and twice {side:g}, {needed:.1f} mm of edge at "
                f"the sides. There are {case.far_edge_mm:.1f} mm, so it may wander.",
            ),
            "none": (
                bends,
                f"On the rim's curve it needs {wander:.1f} and twice {side:g}, {needed:.1f} mm of edge at "
                f"the sides. There are {case.far_edge_mm:.1f} mm. The lens wants a front nearer the rim's "
                "curve, a thicker edge, or another frame.",
            ),
        }[right]
        return Solution(words=(f"{_OPTIONS[right]}.", *why))

    def hints(self, case: PlaceCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First the rim: does it give enough for a bevel that keeps its place on the lens?",
            "If it does not, the bevel has to wander. How much edge does it need at the sides then?",
            "If it does: is there thickness to hide, or is the edge so thin that both sides need their room?",
        )
