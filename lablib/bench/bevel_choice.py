"""Which bevel an edge and a rim allow: each tried in its order, with the reason for and against."""

import math
from dataclasses import dataclass

from lablib.bench.bevel import BevelLine, Edge, at_share, following_front, following_rim
from lablib.bench.edges import edge_default, least_edge_mm, rim_give_mm

# How a bevel may be placed, in words.
BEVELS = {
    "front": "following the front",
    "rim": "following the rim",
    "forward": "one third of the edge from the front",
    "middle": "in the middle of the edge",
}
_THICK_ORDER = ("front", "rim", "forward", "middle")
_THIN_ORDER = ("middle", "front", "rim", "forward")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TriedBevel:
    """A bevel that was tried.

    line: where it lies.
    departs_mm: how far the rim must bend to follow it [mm]; None where the rim's curve is not known.
    give_mm: how far this rim may be bent [mm].
    """

    line: BevelLine
    departs_mm: float | None
    give_mm: float

    @property
    def follows(self) -> bool:
        """Whether the rim takes its curve, as far as is known."""
        return self.departs_mm is None or round(self.departs_mm, 6) <= self.give_mm

    @property
    def holds(self) -> bool:
        """Whether it has room in the edge and the rim takes its curve."""
        return self.line.has_room and self.follows

    @property
    def words(self) -> str:
        """Where it lies, and what speaks against it if anything does."""
        against = []
        if not self.line.has_room:
            against.append(_room_words(self.line.least_side_mm))
        if not self.follows:
            against.append(_bend_words(self.departs_mm, self.give_mm))
        place = BEVELS[self.line.name]
        return f"{place} {' and '.join(against)}" if against else f"{place} holds"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BevelChoice:
    """Every bevel tried on one edge, the one that is wanted most first.

    tried: all of them, in that order.
    """

    tried: tuple[TriedBevel, ...]

    @property
    def chosen(self) -> TriedBevel | None:
        """The first that holds; None where none does."""
        return next((one for one in self.tried if one.holds), None)

    @property
    def words(self) -> str:
        """What is chosen and why, or why nothing is."""
        chosen = self.chosen
        passed = [one for one in self.tried if not one.holds]
        if chosen is None:
            return f"no bevel holds: {'; '.join(one.words for one in passed)}"
        before = [one.words for one in self.tried[: self.tried.index(chosen)]]
        because = f", because {'; '.join(before)}" if before else ""
        return f"bevel {BEVELS[chosen.line.name]}{because}"


def _room_words(least_side_mm: float) -> str:
    needed = edge_default("bevel_side_mm")
    if least_side_mm < 0.0:
        return f"would run {-least_side_mm:.2f} mm beside the edge"
    shown = round(least_side_mm, 2)
    if shown >= needed:
        # Short by a hair is short: it is not rounded up to what is needed.
        shown = math.floor(100.0 * least_side_mm) / 100.0
    return f"leaves {shown:.2f} mm beside its tip where {needed:g} mm are needed"


def _bend_words(departs_mm: float, give_mm: float) -> str:
    shown = f"{departs_mm:.1f}"
    if round(departs_mm, 1) <= give_mm:
        # Over by a hair is over: it is not rounded down to what the rim gives.
        shown = f"{math.ceil(100.0 * departs_mm) / 100.0:.2f}"
    return f"would bend the rim by {shown} mm where it gives {give_mm:g} mm"


def choose_bevel(edge: Edge, *, rim: str, rim_curve_d: float | None = None) -> BevelChoice:
    """Return the bevels an edge may be given, in the order in which they are wanted, each tried.

    edge: of the lens; rim: "plastic" or "metal".
    rim_curve_d: for index 1.530 [D]; None where it is not known, and then nothing is said about curves.

    On a thick edge the bevel goes forward: on the front's curve if the rim allows it, else on the rim's own
    if the edge is thick enough for that. A thin edge has room in its middle only.

    Raises LabError for another rim, or a rim curve that does not reach the outline.
    Source: common practice.
    """
    give = rim_give_mm(rim)
    thin = float(edge.thickness_mm.max()) <= edge_default("thin_edge_mm")
    lines = {
        "front": following_front(edge),
        "forward": at_share(edge, share=edge_default("forward_share"), name="forward"),
        "middle": at_share(edge, share=0.5, name="middle"),
    }
    if rim_curve_d is not None:
        lines["rim"] = following_rim(edge, rim_curve_d=rim_curve_d)
    return BevelChoice(
        tried=tuple(
            TriedBevel(
                line=lines[name],
                departs_mm=None if rim_curve_d is None else lines[name].departs_mm(rim_curve_d),
                give_mm=give,
            )
            for name in (_THIN_ORDER if thin else _THICK_ORDER)
            if name in lines
        )
    )


def is_too_thin_for_a_bevel(edge: Edge) -> bool:
    """Return whether some place of an edge has no room for a bevel, wherever it is put.

    edge: of the lens.
    """
    return round(float(edge.thickness_mm.min()), 6) < least_edge_mm("metal")
