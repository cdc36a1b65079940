"""Where a job is inspected on its route, as a question."""

from collections.abc import Set

from lablib.questions.start_here.route import RouteCase, Station, in_route_order, stations
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

# A job inspected only at its end, and one whose marks nobody reads, must always be possible answers.
_ALWAYS = ("on-block", "final")
_SOMETIMES = ("ticket", "uncut")
_NO_LOOKS = tuple(key for key, one in stations().items() if one.moment and not one.inspected)
_MOMENTS = 7
_NOT_LOOKED = "not-inspected-at-"
_TAKEN = "taken-for-inspection-"


def _inspection_slip(station: Station) -> Slip:
    if station.inspected:
        return Slip(
            name=f"{_NOT_LOOKED}{station.key}",
            step="what can be found at one moment only",
            words=f"You left out {station.noun}. {station.reason}",
        )
    return Slip(
        name=f"{_TAKEN}{station.key}",
        step="telling a look from the work",
        words=f"You took {station.noun} for one of the four inspections. {station.reason}",
    )


class FourInspections(Maker[RouteCase]):
    """Pick the moments at which a job is inspected."""

    name = "four-inspections"
    lesson = "01"
    skill = "where-a-job-is-inspected"
    # A job whose marks nobody reads comes first: of several slips the first is told.
    slips = tuple(_inspection_slip(stations()[key]) for key in (*_ALWAYS, *_SOMETIMES, *_NO_LOOKS))

    def draw(self, draws: Draws) -> RouteCase:
        """Return three or four looks and other moments of the route."""
        looks = (*_ALWAYS, *draws.some(_SOMETIMES, 1 + draws.whole(len(_SOMETIMES))))
        return RouteCase(shown=in_route_order({*looks, *draws.some(_NO_LOOKS, _MOMENTS - len(looks))}))

    def kind(self, case: RouteCase) -> AnswerKind:
        """Return the moments in the order of the route."""
        return SeveralAnswer(
            options=tuple(Option(key=key, words=stations()[key].moment) for key in case.shown)
        )

    def answer(self, case: RouteCase, slips: Set[str] = NONE) -> object:
        """Return the moments at which the job is inspected, or the one that a slip is about."""
        for slip in slips:
            is_missing = slip.startswith(_NOT_LOOKED)
            return WrongPick(
                key=slip.removeprefix(_NOT_LOOKED if is_missing else _TAKEN), picked=not is_missing
            )
        return frozenset(key for key in case.shown if stations()[key].inspected)

    def slips_in(self, case: RouteCase) -> tuple[Slip, ...]:
        """Return the slips about moments that are shown."""
        shown = {_inspection_slip(stations()[key]) for key in case.shown}
        return tuple(slip for slip in self.slips if slip in shown)

    def pairs(self, case: RouteCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each moment is seen by itself."""
        return ()

    def prompt(self, case: RouteCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "These are moments of one job on its route, from the first to the last. Lens rooms differ in "
            "when they look at what; this workbook's route has four inspections. Not all four need be here.",
            "At which of these moments does this workbook's route have one of its four inspections? Pick all "
            "of them.",
        )

    def solution(self, case: RouteCase) -> Solution:
        """Return every look with what only it can find."""
        shown = [stations()[key] for key in case.shown]
        return Solution(
            words=(
                *(f"{one.moment}: inspected. {one.reason}" for one in shown if one.inspected),
                *(f"{one.moment}: no. {one.reason}" for one in shown if not one.inspected),
                "This workbook's route has four inspections: of the ticket, of the uncut lens, on the block "
                "and of the finished pair. Other looks besides do no harm; leaving one of the four out does.",
            )
        )

    def hints(self, case: RouteCase) -> tuple[str, ...]:
        """Return what to ask of each moment."""
        return (
            "Ask of each moment: is something made here, or is something looked at?",
            "What can be found before cutting is never left to the end. And one thing can be seen only as "
            "long as the lens is held in place.",
        )
