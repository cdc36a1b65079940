"""Numbers drawn from a seed, the same on every machine and on every Python.

Only `random.Random(seed).random()` is used: of all the generator's methods it alone is promised to stay the
same between versions (Python documentation, `random`, Notes on Reproducibility).
"""

import math
import random
from collections.abc import Callable, Sequence
from typing import TypeVar

from lablib.errors import LabError, require_finite

ThingT = TypeVar("ThingT")
# Enough for every grid used here; more would be rounding errors of the grid itself.
_DECIMALS = 6
# Where so many draws give nothing that fits, the ranges are at fault, not bad luck.
MOST_DRAWS = 400


class Draws:
    """A row of draws that is settled by its seed.

    seed: a whole number, 0 or more.

    Raises LabError for any other seed.
    """

    def __init__(self, seed: int) -> None:
        if isinstance(seed, bool) or not isinstance(seed, int) or seed < 0:
            raise LabError(f"seed {seed!r} is not a whole number of 0 or more: give one")
        self._random = random.Random(seed)

    def whole(self, below: int) -> int:
        """Return a whole number from 0 to one less than `below`.

        below: 1 or more.

        Raises LabError when there is nothing to draw from.
        """
        if below < 1:
            raise LabError(f"a draw of one out of {below}: give at least one thing to draw from")
        return math.floor(self._random.random() * below)

    def step(self, low: float, high: float, step: float) -> float:
        """Return a number on a grid, both ends among them.

        low, high: the ends; step: of the grid, above 0.

        Raises LabError for another step, or when the ends are not a whole number of steps apart.
        """
        if require_finite("step", step) <= 0.0:
            raise LabError(f"step {step:g} is not above 0: give one that is")
        steps = (require_finite("high end", high) - require_finite("low end", low)) / step
        count = round(steps)
        if count < 0 or abs(steps - count) > 10.0**-_DECIMALS:
            raise LabError(f"{low:g} to {high:g} is not a whole number of steps of {step:g}: change an end")
        return round(low + self.whole(count + 1) * step, _DECIMALS) + 0.0

    def one_of(self, things: Sequence[ThingT]) -> ThingT:
        """Return one of several things, each as likely as another.

        things: one or more.

        Raises LabError for none.
        """
        return things[self.whole(len(things))]

    def some(self, things: Sequence[ThingT], count: int) -> tuple[ThingT, ...]:
        """Return several different things in the order they were drawn.

        things: to draw from; count: how many, no more than there are.

        Raises LabError for more.
        """
        left = list(things)
        return tuple(left.pop(self.whole(len(left))) for _ in range(count))

    def shuffled(self, things: Sequence[ThingT]) -> tuple[ThingT, ...]:
        """Return all of them in an order that was drawn."""
        return self.some(things, len(things))

    def until(self, thing: str, draw: Callable[["Draws"], ThingT], fits: Callable[[ThingT], bool]) -> ThingT:
        """Return the first thing drawn that fits.

        thing: what is drawn, as it should appear in the message.
        draw: draws one, from the draws it is handed; fits: whether it will do.

        Raises LabError when none of many fits.
        """
        for _ in range(MOST_DRAWS):
            drawn = draw(self)
            if fits(drawn):
                return drawn
        raise LabError(f"{thing}: none of {MOST_DRAWS} draws fits what is asked of it: widen the draws")
