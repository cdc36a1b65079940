"""A question whose case is settled, in place of one drawn from a seed."""

from lablib.study.maker import Maker
from lablib.study.marking import Mark
from lablib.study.question import Question


def settled(maker: Maker, case: object) -> Question:
    """Return the question a maker makes of a case.

    maker: of the kind; case: as its `draw` would return it.
    """

    class Settled(type(maker)):
        """The same maker, with one case."""

        def draw(self, _: object) -> object:
            """Return the case."""
            return case

    return Settled().make(0)


def slips(answer: Mark) -> tuple[str, ...]:
    """Return the names of the slips in a mark."""
    return tuple(slip.name for slip in answer.slips)
