"""A question of nothing but its answer, and all that can be given as one."""

from hypothesis import strategies as st

from lablib.study.answer import AnswerKind
from lablib.study.marking import Mark, mark
from lablib.study.question import Mistake, Question, Solution

# What a file of answers can hold.
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=12,
)


def marked(given: object, kind: AnswerKind, right: object, *mistakes: Mistake) -> Mark:
    """Return the mark of an answer.

    given: the answer; kind: how it is answered; right: the right value; mistakes: with a name.
    """
    asked = Question(
        maker="bare",
        seed=0,
        prompt=("Write it.",),
        given=(),
        kind=kind,
        right=right,
        mistakes=mistakes,
        guesses=(),
        solution=Solution(),
    )
    return mark(asked, given)


def huge_answers() -> list[object]:
    """Return answers too long, too deep or too great to be written by anybody."""
    deep: list = []
    for _ in range(5000):
        deep = [deep]
    return [deep, [deep, "", ""], "9" * 1_000_000, ["+" * 1_000_000, "", ""], 10**5000, [10**5000, "", ""]]
