"""What is said against a bevel in the wrong place is true of the edge it was set on."""

import pytest

from lablib.bench.edges import edge_default
from lablib.questions.edges.place_case import PlaceCase
from lablib.questions.makers import MAKERS
from lablib.study.draws import Draws

BEVEL_PLACE = MAKERS["bevel-place"]


def cases() -> list[PlaceCase]:
    return [BEVEL_PLACE.draw(Draws(seed)) for seed in range(200)]


def is_true(case: PlaceCase, slip: str) -> bool:
    """Whether a slip's reason holds, worked out from edge and rim."""
    side, edge = edge_default("bevel_side_mm"), case.edge
    apart = edge.rim_apart_mm(case.rim_d)
    rim = side + apart - apart.min()
    give = 1.0 if case.rim == "plastic" else 0.5
    return {
        "rim-in-a-thin-edge": (edge.thickness_mm - rim).min() < side,
        "rim-without-need": (edge.thickness_mm - rim).min() >= side and case.wander_mm <= give,
        "front-against-the-rim": case.wander_mm > give,
        "middle-against-the-rim": case.middle_bends_mm > give,
        "middle-of-a-thick-edge": edge.thickness_mm.max() > edge_default("thin_edge_mm"),
        "forward-on-a-thin-edge": edge.thickness_mm.max() <= edge_default("thin_edge_mm"),
        "given-up-too-soon": case.choice.chosen is not None,
    }[slip]


@pytest.mark.parametrize("key", ["front", "rim", "middle", "none"])
def test_what_is_said_against_a_bevel_is_true_of_it(key: str):
    wrong = [case for case in cases() if case.right != key]
    told = {BEVEL_PLACE.slip_of(case, key).name for case in wrong}
    assert [case for case in wrong if not is_true(case, BEVEL_PLACE.slip_of(case, key).name)] == []
    assert len(told) == (1 if key == "none" else 2)
