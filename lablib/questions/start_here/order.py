"""The order of the stations of a job's route, as a question."""

from collections.abc import Set

from lablib.datafile import read_table
from lablib.questions.start_here.route import RouteCase, in_route_order, stations
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

# A slip, the station that came too early, and the one that belongs before it.
_EARLIER = tuple(
    (
        Slip(name=name, step=row["step"], words=row["words"]),
        Earlier(first=row["early"], second=row["late"]),
    )
    for name, row in read_table("lablib.questions.start_here", "order.toml")["slip"].items()
)
_CORE = ("uncut", "block", "on-block", "deblock")
_OFTEN = ("ticket", "layout")
# Two that would seldom come together by chance.
_END, _ONE_IN = ("insert", "final"), 5


class StationOrder(Maker[RouteCase]):
    """Put six or seven stations of the route in order."""

    name = "station-order"
    lesson = "01"
    skill = "order-of-stations"
    slips = tuple(slip for slip, _ in _EARLIER)

    def draw(self, draws: Draws) -> RouteCase:
        """Return the stations of the main slips and some more, never in their order at first."""
        one = draws.one_of(_OFTEN)
        # Some choose a blank before layout, some when layout has told its size: never both in one question.
        unclear = "choice" if one == "layout" else "layout"
        rest = [key for key in stations() if key not in (*_CORE, one, unclear)]
        more = _END if draws.whole(_ONE_IN) == 0 else draws.some(rest, 1 + draws.whole(2))
        shown = draws.shuffled((*_CORE, one, *more))
        if shown == in_route_order(set(shown)):
            shown = (*shown[1:], shown[0])
        return RouteCase(shown=shown)

    def kind(self, case: RouteCase) -> AnswerKind:
        """Return the stations as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=stations()[key].words) for key in case.shown))

    def answer(self, case: RouteCase, slips: Set[str] = NONE) -> object:
        """Return the order of the route, or which two stations a slip exchanges."""
        for slip, wrong in _EARLIER:
            if slip.name in slips:
                return wrong
        return in_route_order(set(case.shown))

    def slips_in(self, case: RouteCase) -> tuple[Slip, ...]:
        """Return the slips whose two stations are both shown."""
        return tuple(slip for slip, wrong in _EARLIER if {wrong.first, wrong.second} <= set(case.shown))

    def pairs(self, case: RouteCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def prompt(self, case: RouteCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Here are some stations of a job's route through the lens room, mixed up. The others are left "
            "out, but they are done in their turn.",
            "Put them in the order in which the job passes them, the first on top.",
        )

    def solution(self, case: RouteCase) -> Solution:
        """Return the order and what decides it."""
        order = ", then ".join(stations()[key].words.lower() for key in self.answer(case))
        return Solution(
            words=(
                f"In order: {order}.",
                "What can be found before cutting is never left to the end: paper first, then the uncut "
                "lens, and only then a pad goes on.",
                "Size, bevel and level are checked while the lens still sits on its block. Once the block is "
                "off, nobody can tell whether the lens turned on it or was laid out wrong.",
            )
        )

    def hints(self, case: RouteCase) -> tuple[str, ...]:
        """Return what to ask of each station."""
        return (
            "Ask of each station: what must be known or done before it can begin?",
            "A fault that can be found early is looked for early. Ask of each check: from when on would the "
            "fault cost a lens?",
            "Two stations lie between the block going on and the block coming off in every job: the cut, and "
            "a look.",
        )
