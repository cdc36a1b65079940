"""Marking: what was understood, whether it is right, and which mistake gives that answer."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.study.question import Mistake, Question, Slip

_NOTHING = "There is nothing to mark yet: write, pick or move something first."
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
    # No answers, but kept among them: a hint was opened; the worked solution was, which ends a question.
    HINTED = "hint-opened"
    SHOWN = "solution-shown"

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
        return Mark(state=State.NOT_ANSWERED, given=given, words=(_NOTHING,))
    try:
        understood = question.kind.read(given)
    except NotUnderstood as fault:
        return Mark(state=State.NOT_UNDERSTOOD, given=given, words=(f"Not marked: {_ended(fault)}",))
    right = next(
        (value for value in understood.meanings if question.kind.matches(value, question.right)), None
    )
    if right is not None:
        return _right(question, understood, given, right)
    made = _matching(question.mistakes, question, understood)
    if not made and _fits_coarsely(understood, question.right):
        words = f"{_answered(understood)} It fits as far as it goes: give it as exactly as is asked."
        return Mark(state=State.NOT_UNDERSTOOD, given=given, words=(words, *_said(understood)))
    return _wrong(question, understood, given, made)


def _fits_coarsely(understood: Understood, right: object) -> bool:
    return understood.stands_for is not None and understood.stands_for[0] <= right <= understood.stands_for[1]


def _right(question: Question, understood: Understood, given: Given, value: object) -> Mark:
    if understood.faults:
        faults = "; ".join(understood.faults)
        words = f"{_answered(understood)} The value can be right, the writing is not: {_ended(faults)}"
        return Mark(state=State.FAULTY, given=given, value=value, words=(words, *_said(understood)))
    exact = question.kind.written(question.right)
    worked = (f"Worked out: {_ended(exact)}",) if exact != question.kind.written(value) else ()
    words = (f"Right: {_ended(understood.words)}", *worked, *_said(understood))
    return Mark(state=State.RIGHT, given=given, value=value, words=words)


def _wrong(question: Question, understood: Understood, given: Given, made: tuple[Mistake, ...]) -> Mark:
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
            "It is not one of the usual slips. Go through your steps again, or take a hint. The worked "
            "solution ends the question.",
        )
    if is_guess:
        one, other = slips
        return (
            f"A guess: this comes out when two things go wrong at once. {one.words} {other.words}",
            f"Look at two steps: {one.step}, and {other.step}.",
        )
    first, *others = slips
    # One at a time: all of them together would be the answer.
    more = (f"There is more to mend after that: {len(others)} more.",) if others else ()
    return (_named(first), *more)


def _why_either(slips: Sequence[Slip]) -> tuple[str, ...]:
    either = "A guess: as it is written, it can come from any one of these."
    return (either, *(_named(slip) for slip in slips))


def _named(slip: Slip) -> str:
    return f"{slip.words} The step to look at: {slip.step}."


def _answered(understood: Understood) -> str:
    return f"Your answer: {_ended(understood.words)}"


def _said(understood: Understood) -> tuple[str, ...]:
    return tuple(f"Note: {_ended(note)}" for note in understood.notes)


def _ended(sentence: object) -> str:
    """Return a sentence with its full stop, which the words of an option may have brought along."""
    text = str(sentence)
    return text if text.endswith((".", "?", "!")) else f"{text}."


# The states of what was answered, as records name them.
ANSWERS = frozenset(state.value for state in State if state.is_answer)


def is_repeated(slip: str, tries: Sequence[Sequence[str]]) -> bool:
    """Return whether a slip was made so often of late that it is no accident: in two of the last three tries.

    slip: its stable name.
    tries: the slips made in each try at such questions, oldest first; the first answer to each counts.
    """
    return sum(slip in made for made in tries[-_TRIES:]) >= _REPEATS


def open_hints(count: int, *, tries: Sequence[bool]) -> int:
    """Return how many hints stand open from the start: one at first, more after misses, none after a success.

    count: how many there are; the last gives most away and is never open by itself.
    tries: whether the first answer to each question before was right, oldest first.
    """
    misses = 0
    for is_right in reversed(tries):
        if is_right:
            return max(0, min(count - 1, misses))
        misses += 1
    return max(0, min(count - 1, 1 + misses))
