"""A question about a polarised stock lens that is turned to bring its axis."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.polariser import filter_turned_deg, glare_let_through
from lablib.optics.terms import direction_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_FEWEST, _MOST = 15.0, 80.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FilterCase:
    """A polarised stock lens with a cylinder.

    packet_deg: its axis when the filter stands right [degrees]; ordered_deg: the axis ordered [degrees].
    """

    packet_deg: float
    ordered_deg: float

    @property
    def turned_deg(self) -> float:
        """How far the filter would turn, either way [degrees]."""
        return abs(filter_turned_deg(packet_axis_deg=self.packet_deg, ordered_axis_deg=self.ordered_deg))


class FilterTurned(Maker[FilterCase]):
    """How far the polarising plane turns with the blank."""

    name = "filter-turned"
    lesson = "04"
    skill = "polarising-plane"
    slips = (
        Slip(
            name="the-long-way-round",
            step="the shorter way from axis to axis",
            words="You went the long way. An axis comes again after 180 degrees, so no blank is turned by "
            "more than 90.",
        ),
        Slip(
            name="counted-from-180",
            step="from where the turn counts",
            words="You counted the turn from 180. The filter stands right when the axis is where the packet "
            "says: the turn counts from there.",
        ),
        Slip(
            name="counted-from-90",
            step="from where the turn counts",
            words="You counted the turn from 90. The filter stands right when the axis is where the packet "
            "says: the turn counts from there.",
        ),
    )

    def draw(self, draws: Draws) -> FilterCase:
        """Return a packet and an order that do not fit."""
        return draws.until("a polarised stock lens", _draw, lambda case: _FEWEST <= case.turned_deg <= _MOST)

    def kind(self, case: FilterCase) -> NumberAnswer:
        """Return the kind: whole degrees."""
        return NumberAnswer(unit="degrees", tolerance=1.0, digits=0)

    def slips_in(self, case: FilterCase) -> tuple[Slip, ...]:
        """Return the slips that change something: where the packet says 180 or 90, that is the right zero."""
        left_out = {
            "the-long-way-round": abs(case.ordered_deg - case.packet_deg) <= 90.0,
            "counted-from-180": case.packet_deg == 180.0,
            "counted-from-90": case.packet_deg == 90.0,
        }
        return tuple(slip for slip in self.slips if not left_out[slip.name])

    def answer(self, case: FilterCase, slips: Set[str] = NONE) -> float:
        """Return the turn, from another zero or by the plain difference where that was done."""
        start = case.packet_deg
        if "counted-from-180" in slips:
            start = 180.0
        elif "counted-from-90" in slips:
            start = 90.0
        if "the-long-way-round" in slips:
            return abs(case.ordered_deg - start)
        return abs(filter_turned_deg(packet_axis_deg=start, ordered_axis_deg=case.ordered_deg))

    def prompt(self, case: FilterCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented polarised stock lens: with its filter level, its packet gives the axis "
            f"{case.packet_deg:03.0f}. Ordered is the axis {case.ordered_deg:03.0f}. Somebody wants to turn "
            "the blank until the axis fits, the shorter way.",
            "By how many degrees would the filter be off? Answer without a sign, to 1 degree.",
        )

    def given(self, case: FilterCase) -> tuple[Term, ...]:
        """Return both axes."""
        return (
            direction_term("A_p", case.packet_deg, "axis in the packet"),
            direction_term("A_o", case.ordered_deg, "axis ordered"),
        )

    def solution(self, case: FilterCase) -> Solution:
        """Return what turns, what it costs, and what is done about it."""
        passed = 100.0 * glare_let_through(case.turned_deg)
        straight = "abs(A_o - A_p)"
        is_long = abs(case.ordered_deg - case.packet_deg) > 90.0
        return Solution(
            words=(
                "Cylinder and filter are in one blank and turn together. An axis comes again after 180 "
                "degrees, so the shorter way is 90 at most.",
                f"So turned, even a perfect filter would let {passed:.0f} % of the level glare through. The "
                "lens is not turned: it is surfaced, the cylinder worked where it is ordered and the filter "
                "level.",
            ),
            workings=(
                Working(
                    what="turn of the filter",
                    symbol="d",
                    formula=f"180 - {straight}" if is_long else straight,
                    terms=(
                        direction_term("A_o", case.ordered_deg, "axis ordered"),
                        direction_term("A_p", case.packet_deg, "axis in the packet"),
                    ),
                    value=case.turned_deg,
                    unit="degrees",
                    digits=0,
                ),
            ),
        )

    def hints(self, case: FilterCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What else turns when a blank is turned?",
            "How far is it from the one axis to the other? Is there a shorter way, past 180?",
        )


def _draw(draws: Draws) -> FilterCase:
    return FilterCase(
        packet_deg=draws.one_of((90.0, 180.0, draws.step(5.0, 175.0, 5.0))),
        ordered_deg=draws.step(5.0, 180.0, 5.0),
    )
