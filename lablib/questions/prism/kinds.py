"""Answers to which only one way of writing will do, where another would only repeat the question.

A direction that is given in words is asked for in degrees; two parts are asked for as one prism, and one
prism as two parts. An answer in the other writing is not marked, and the learner is told how to write it.
"""

from dataclasses import dataclass

from lablib.optics.base_notation import base_notations
from lablib.questions.answers.base import BaseAnswer
from lablib.questions.answers.prism import PrismAnswer
from lablib.study.answer import Given, NotUnderstood, Understood, quoted
from lablib.working import plain

# In a dataclass with slots super() without arguments does not work, so the parent is named.
_TURN_DEG = 360


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseInDegrees(BaseAnswer):
    """A base direction in degrees of the full circle; the word alone is no answer.

    Fields and errors are those of `BaseAnswer`.
    """

    def read(self, given: Given) -> Understood[float]:
        """Return the direction an answer means.

        given: a text such as "37" or "base at 37 degrees".

        Raises NotUnderstood with the way to write it, also for a direction in words.
        """
        understood = BaseAnswer.read(self, given)
        if not _has_figures(given):
            raise NotUnderstood(f"{quoted(given)} is a word, and degrees are asked for: write them like 37")
        return understood

    def written(self, value: float) -> str:
        """Return a direction in degrees."""
        return f"base at {plain(round(value, self.digits) % _TURN_DEG, self.digits)} degrees"


@dataclass(frozen=True, slots=True, kw_only=True)
class OnePrism(PrismAnswer):
    """A prism as one amount with its base in degrees; two parts are no answer.

    Fields and errors are those of `PrismAnswer`.
    """

    def read(self, given: Given) -> Understood[tuple[float, float]]:
        """Return the prism an answer means.

        given: a text such as "2.50 @ 37" or "2.50 base at 37 degrees".

        Raises NotUnderstood with the way to write it, also for parts and for a base in words.
        """
        understood = PrismAnswer.read(self, given)
        if any(understood.meanings[0]) and "degrees" not in understood.words:
            raise NotUnderstood(
                f"{quoted(given)} has its base in words, and one amount with its base in degrees is asked "
                "for: write it like 2.50 @ 37"
            )
        return understood

    def written(self, value: tuple[float, float]) -> str:
        """Return a prism as one amount with its base, "2.50 base at 37 degrees"."""
        return base_notations(eye=self.eye, in_prism_d=value[0], up_prism_d=value[1]).full_circle


@dataclass(frozen=True, slots=True, kw_only=True)
class PrismInParts(PrismAnswer):
    """A prism as a part in or out and a part up or down; a base in degrees is no answer.

    Fields and errors are those of `PrismAnswer`.
    """

    def read(self, given: Given) -> Understood[tuple[float, float]]:
        """Return the prism an answer means.

        given: a text such as "4.33 base in, 2.50 base up".

        Raises NotUnderstood with the way to write it, also for a base in degrees.
        """
        understood = PrismAnswer.read(self, given)
        if "degrees" in understood.words:
            raise NotUnderstood(
                f"{quoted(given)} has its base in degrees, and two parts are asked for: write them like "
                "1.50 base in, 0.50 base up"
            )
        return understood


def _has_figures(given: Given) -> bool:
    return any(sign.isdigit() for sign in given)
