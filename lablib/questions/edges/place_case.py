"""A lens that is to go into a rim, drawn so that one bevel is right and clear of every limit."""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from lablib.bench.bevel import Edge, at_share, bevel_wander_mm, following_front, short_for_rim_mm
from lablib.bench.bevel_choice import BevelChoice, TriedBevel, choose_bevel
from lablib.bench.edges import RIMS, edge_default, rim_give_mm
from lablib.study.draws import Draws

# Where a bevel may go.
PLACES = ("front", "rim", "middle", "back", "none")
# Every limit is clear by so much either way [mm].
_CLEAR_MM = 0.2
_POINTS = 72


@dataclass(frozen=True, kw_only=True)
class PlaceCase:
    """A lens in a rim.

    a_mm, b_mm: of its outline, an ellipse [mm]; rim: "plastic" or "metal".
    front_d, rim_d: curves of the lens front and of the rim, for index 1.530 [D].
    near_edge_mm: edge at the nearest place of the outline; far_edge_mm: at the farthest [mm].
    shown: keys of the options.
    """

    a_mm: float
    b_mm: float
    rim: str
    front_d: float
    rim_d: float
    near_edge_mm: float
    far_edge_mm: float
    shown: tuple[str, ...] = PLACES

    @property
    def wander_mm(self) -> float:
        """How far a bevel on the rim's curve wanders between the nearest and the farthest place [mm]."""
        return bevel_wander_mm(
            lens_curve_d=self.front_d,
            rim_curve_d=self.rim_d,
            away_mm=self.a_mm / 2.0,
            from_mm=self.b_mm / 2.0,
        )

    @cached_property
    def edge(self) -> Edge:
        """The edge, growing or thinning with the square of the distance as a sphere's does."""
        angle = np.arange(_POINTS) * (math.tau / _POINTS)
        far, near = self.a_mm / 2.0, self.b_mm / 2.0
        radius = 1.0 / np.hypot(np.cos(angle) / far, np.sin(angle) / near)
        share = (radius**2 - near**2) / (far**2 - near**2)
        return Edge(
            radius_mm=radius,
            thickness_mm=self.near_edge_mm + share * (self.far_edge_mm - self.near_edge_mm),
            front_curve_d=self.front_d,
        )

    @cached_property
    def choice(self) -> BevelChoice:
        """Every bevel, tried."""
        return choose_bevel(self.edge, rim=self.rim, rim_curve_d=self.rim_d)

    def tried(self, name: str) -> TriedBevel:
        """Return one of the bevels.

        name: of `lablib.bench.bevel_choice.BEVELS`.
        """
        return next(one for one in self.choice.tried if one.line.name == name)

    @property
    def told_mm(self) -> float:
        """The wander as it is told [mm]."""
        return round(self.wander_mm, 1)

    @property
    def middle_bends_mm(self) -> float:
        """How far a bevel in the middle of the edge would bend the rim [mm]."""
        return at_share(self.edge, share=0.5).departs_mm(self.rim_d)

    @property
    def right(self) -> str:
        """Where the bevel goes, of `PLACES`."""
        chosen = self.choice.chosen
        return "none" if chosen is None else chosen.line.name


def draw_place(draws: Draws) -> PlaceCase:
    """Return a lens in a rim, each answer but the back often enough.

    draws: to draw from.
    """
    wanted = draws.one_of(("front", "rim", "middle", "none", "none"))
    return draws.until("a bevel", lambda draws: _draw_one(draws, wanted), lambda case: _fits(case, wanted))


def _draw_one(draws: Draws, wanted: str) -> PlaceCase:
    """A lens of the kind that may lead to what is wanted; whether it does is looked at afterwards."""
    near = draws.step(1.1, 1.6, 0.1) if wanted in ("middle", "none") else draws.step(2.0, 3.0, 0.1)
    change = draws.step(0.0, 0.4, 0.1) if wanted in ("middle", "none") else draws.step(1.0, 3.0, 0.1)
    thick, is_minus = round(near + change, 1), draws.whole(2) == 0 or wanted in ("front", "rim")
    wrapped = wanted in ("rim", "none")
    return PlaceCase(
        a_mm=draws.step(50.0, 58.0, 1.0),
        b_mm=draws.step(30.0, 38.0, 1.0),
        rim=draws.one_of(RIMS),
        front_d=draws.step(2.0, 4.0, 0.5) if wrapped else draws.step(3.0, 5.0, 0.5),
        rim_d=draws.step(7.0, 8.5, 0.5) if wrapped else draws.step(4.0, 5.5, 0.5),
        near_edge_mm=near if is_minus else thick,
        far_edge_mm=thick if is_minus else near,
        shown=draws.shuffled(PLACES),
    )


def _fits(case: PlaceCase, wanted: str) -> bool:
    """Whether the wanted bevel is the right one, clear of every limit, and every other clearly wrong."""
    wander, give = case.wander_mm, rim_give_mm(case.rim)
    told_apart = abs(wander - give) >= _CLEAR_MM and case.told_mm >= _CLEAR_MM
    if case.right != wanted or not told_apart or case.near_edge_mm == case.far_edge_mm:
        return False
    if wanted in ("front", "middle"):
        return following_front(case.edge).departs_mm(case.rim_d) < give
    # At the far place the bevel on the rim's curve is nearest to the back.
    room = case.far_edge_mm - wander - 2.0 * edge_default("bevel_side_mm")
    short = short_for_rim_mm(case.edge, rim_curve_d=case.rim_d)
    return (room if wanted == "rim" else short) >= _CLEAR_MM
