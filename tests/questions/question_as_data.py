"""A question as plain data and as a digest, to compare what two machines or two versions make of a seed."""

import hashlib
import json
import math
import sys
from collections.abc import Iterable, Mapping, Set
from dataclasses import fields, is_dataclass

from made_questions import questions
from simulated_learners import as_given

from lablib.study.question import Question


def plain_data(thing: object) -> object:
    """Return value objects as mappings, sets in order, and numbers rounded so that the last bit is no matter.

    thing: a question, or any part of it.
    """
    if is_dataclass(thing):
        return {one.name: plain_data(getattr(thing, one.name)) for one in fields(thing)}
    if isinstance(thing, Mapping):
        return {str(key): plain_data(value) for key, value in thing.items()}
    if isinstance(thing, Set):
        return sorted(plain_data(one) for one in thing)
    if isinstance(thing, list | tuple):
        return [plain_data(one) for one in thing]
    if isinstance(thing, float) and math.isfinite(thing):
        return round(thing, 9) + 0.0
    return thing


def digest(things: Iterable[object]) -> str:
    """Return a digest of plain data."""
    hashed = hashlib.sha256()
    for thing in things:
        hashed.update(json.dumps(plain_data(thing), default=str, sort_keys=True).encode())
    return hashed.hexdigest()


def numbers_of(question: Question) -> dict[str, object]:
    """Return what a kept answer is marked against: the numbers that were given, and what is right.

    question: with its numbers; its words are left out, they may be mended.
    """
    given = [[term.symbol, term.printed, term.unit] for term in question.given]
    right = as_given(question.kind, question.right)
    return {"given": given, "right": [question.kind.name, right]}


if __name__ == "__main__":
    # For another interpreter: a digest of every question of every maker named.
    names = sys.argv[1:]
    print(json.dumps({name: digest(questions(name)) for name in names}))
