"""Marking: what was understood, whether it is right, and which mistake gives that answer."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.study.question import Mistake, Question, Slip

_TRIES = 3
_REPEATS = 2


class State(StrEnum):
    """How an answer stands; the values are stable names, kept in records."""

    NOT_ANSWERED = "not-answered"
    NOT_UNDERSTOOD = "not-understood"
    RIGHT = "right"
    # The value is right and the writing is not.
    FAULTY = "faulty"
    WRONG = "wrong"

    @property
    def is_answer(self) -> bool:
        """Whether something was answered that can be marked."""
        return self in (State.RIGHT, State.FAULTY, State.WRONG)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A marked answer.

    state: how it stands.
    given: the answer as it was given.
    value: the value it was understood as; None where there is none, or where it may mean several.
    words: what is said to the learner, a paragraph each: what was understood and why it is right or wrong.
    slips: the mistakes that give this answer.
    is_guess: whether they are only a guess: two at once, or one of those that a doubtful writing can mean.
    """

    state: State
    given: Given
    value: object = None
    words: tuple[str, ...] = ()
    slips: tuple[Slip, ...] = ()
    is_guess: bool = False


def mark(question: Question, given: Given) -> Mark:
    """Return the mark of an answer; nothing that can be given makes it fail.

    question: what was asked.
    given: the answer as it was given.
    """
    if question.kind.is_blank(given):
        return Mark(state=State.NOT_ANSWERED, given=given, words=("Not answered yet.",))
    try:
        understood = question.kind.read(given)
    except NotUnderstood as fault:
        return Mark(state=State.NOT_UNDERSTOOD, given=given, words=(f"Not marked: {_ended(fault)}",))
    right = next(
        (value for value in understood.meanings if question.kind.matches(value, question.right)), None
    )
    if right is not None:
        return _right(understood, given, right)
    return _wrong(question, understood, given)


def _right(understood: Understood, given: Given, value: object) -> Mark:
    if understood.faults:
        faults = "; ".join(understood.faults)
        words = f"{_answered(understood)} The value can be right, the writing is not: {_ended(faults)}"
        return Mark(state=State.FAULTY, given=given, value=value, words=(words, *_said(understood)))
    words = (f"Right: {_ended(understood.words)}", *_said(understood))
    return Mark(state=State.RIGHT, given=given, value=value, words=words)


def _wrong(question: Question, understood: Understood, given: Given) -> Mark:
    made = _matching(question.mistakes, question, understood)
    guess = () if made else _matching(question.guesses, question, understood)[:1]
    slips = tuple(slip for mistake in (made or guess) for slip in mistake.slips)
    is_open = len(understood.meanings) > 1 and len(made) > 1
    why = _why_either(slips) if is_open else _why(slips, bool(guess))
    faults = tuple(f"Besides, {_ended(fault)}" for fault in understood.faults)
    value = understood.meanings[0] if len(understood.meanings) == 1 else None
    return Mark(
        state=State.WRONG,
        given=given,
        value=value,
        words=(
            f"{_answered(understood)} It is not right.",
            *why,
            *faults,
            *_said(understood),
        ),
        slips=slips,
        is_guess=bool(guess) or is_open,
    )


def _matching(mistakes: Sequence[Mistake], question: Question, understood: Understood) -> tuple[Mistake, ...]:
    return tuple(
        mistake
        for mistake in mistakes
        if any(question.kind.matches(value, mistake.value) for value in understood.meanings)
    )


def _why(slips: Sequence[Slip], is_guess: bool) -> tuple[str, ...]:
    if not slips:
        return (
            "It is not one of the usual slips. Find the first step of the worked solution that differs "
            "from yours.",
        )
    if is_guess:
        one, other = slips
        return (
            f"A guess: this comes out when two things go wrong at once. {one.words} {other.words}",
            f"Look at two steps: {one.step}, and {other.step}.",
        )
    return tuple(f"{slip.words} The step to look at: {slip.step}." for slip in slips)


def _why_either(slips: Sequence[Slip]) -> tuple[str, ...]:
    return ("A guess: as it is written, it can come from any one of these.", *_why(slips, False))


def _answered(understood: Understood) -> str:
    return f"Your answer: {_ended(understood.words)}"


def _said(understood: Understood) -> tuple[str, ...]:
    return tuple(f"Note: {_ended(note)}" for note in understood.notes)


def _ended(sentence: object) -> str:
    """Return a sentence with its full stop, which the words of an option may have brought along."""
    text = str(sentence)
    return text if text.endswith((".", "?", "!")) else f"{text}."


def is_repeated(slip: str, tries: Sequence[Sequence[str]]) -> bool:
    """Return whether a slip was made so often of late that it is no accident: in two of the last three tries.

    slip: its stable name.
    tries: the slips made in each try at such questions, oldest first; the first answer to each counts.
    """
    return sum(slip in made for made in tries[-_TRIES:]) >= _REPEATS


def open_hints(count: int, *, successes: int) -> int:
    """Return how many hints stand open from the start: they fade as the learner succeeds.

    count: how many there are; the last gives most away and is never open by itself.
    successes: right answers in a row, at the first try each, up to now.
    """
    return max(0, count - 1 - successes)
