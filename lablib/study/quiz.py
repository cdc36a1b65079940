"""A lesson's self-check: its questions, what was answered, and the next numbers; the record keeps it all."""

import hashlib
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

from lablib.errors import LabError
from lablib.study.answer import Given
from lablib.study.maker import Maker
from lablib.study.marking import Mark, State, is_repeated, mark, open_hints
from lablib.study.question import Question, Slip
from lablib.study.record import Attempt, Record

# Whole numbers up to here are exact in every program that may read the record.
_SEED_BYTES = 6
_ENDED_ELSEWHERE = "This question was ended in another window. What you wrote here was not marked."


def seed_for(*, learner_id: str, lesson: str, maker: str, count: int) -> int:
    """Return the seed of a question: another one for every learner and every new start.

    learner_id: of the record; lesson, maker: stable names.
    count: how many questions of this maker were dealt in this lesson before.
    """
    text = "\n".join((learner_id, lesson, maker, str(count)))
    return int.from_bytes(hashlib.sha256(text.encode()).digest()[:_SEED_BYTES], "big")


class Quiz:
    """The self-check of one lesson for one learner.

    record: where answers are kept; what it holds is taken up again.
    lesson: number of the lesson.
    makers: of its questions, in order, each once.

    Raises LabError when a maker comes twice.
    """

    def __init__(self, record: Record, *, lesson: str, makers: Sequence[Maker]) -> None:
        names = [maker.name for maker in makers]
        if len(set(names)) < len(names):
            raise LabError(f"self-check of lesson {lesson}: {', '.join(names)}: give each maker once")
        self.record = record
        self.lesson = lesson
        self.places = tuple(Place(self, maker) for maker in makers)
        record.begin(lesson)

    @property
    def right_once(self) -> int:
        """How many of the questions were right at least once, now or with other numbers."""
        names = {place.maker.name for place in self.places}
        return len(names & right_once(self.record.attempts(lesson=self.lesson)))


class Place:
    """One place of a self-check, with the question that stands there now.

    quiz: it is part of; maker: of its questions.
    """

    def __init__(self, quiz: Quiz, maker: Maker) -> None:
        self.quiz = quiz
        self.maker = maker
        self.refresh()

    def refresh(self) -> None:
        """Take up from the record what stands here: question, last answer, draft, hints."""
        lesson, name = self.quiz.lesson, self.maker.name
        tries = self.quiz.record.attempts(maker=name)
        seed, self._dealt = self.quiz.record.dealt(lesson).get(name, (None, 0))
        if seed is None:
            # What was answered stays on the page, also in a record that was taken in from another machine.
            seed = next((one.seed for one in reversed(tries) if one.lesson == lesson), self._seed())
        self.question: Question = self.maker.make(seed)
        self._take_up(tries)
        before = [one.state == State.RIGHT for one in self._firsts() if one.seed != seed]
        at_first = open_hints(len(self.question.hints), tries=before)
        self.hints_open = max([at_first, *(one.hints for one in self._here())])
        kept = self.quiz.record.drafts(lesson).get(name)
        self.draft: Given = kept[1] if kept and kept[0] == seed else None

    def answer(self, given: Given) -> Mark:
        """Mark an answer, keep it if it is one, and return the mark.

        given: as it was given.

        When this returns, the answer is on the disk. A question that is over stays as it is. What is no
        answer leaves the mark of the last one in its place.
        """
        if self.is_over:
            return self.mark
        # Another window may have ended the question meanwhile.
        self._take_up(self.quiz.record.attempts(maker=self.maker.name))
        if self.is_over:
            return replace(self.mark, words=(_ENDED_ELSEWHERE,))
        marked = mark(self.question, given)
        if marked.state.is_answer:
            self._tries.append(self._add(given, marked.state, _sure(marked)))
            self.mark = marked
            # The answer is kept: that its draft is left behind does no harm.
            with suppress(LabError):
                self.keep(None)
        return marked

    def keep(self, draft: Given) -> None:
        """Keep an answer that is not handed in yet.

        draft: as far as it is written; None for nothing. It is not kept when another window has put other
            numbers here meanwhile, where it would stand in the way of what is written there.
        """
        if draft != self.draft and self._stands():
            self.quiz.record.keep_draft(
                lesson=self.quiz.lesson, maker=self.maker.name, seed=self.question.seed, given=draft
            )
        self.draft = draft

    def open_hint(self) -> None:
        """Open the next hint, if there is one."""
        self.hints_open = min(self.hints_open + 1, len(self.question.hints))

    @property
    def tries_here(self) -> int:
        """How many answers there were to the question that stands here."""
        return len(self._here())

    @property
    def is_solved(self) -> bool:
        """Whether the worked solution of this question was opened."""
        return any(one.state == State.SHOWN for one in self._tries if self._is_here(one))

    @property
    def is_over(self) -> bool:
        """Whether there is nothing more to answer here: it was right, or the worked solution was opened."""
        return self.is_solved or self.mark.state is State.RIGHT

    def show_solution(self) -> None:
        """Note that the worked solution was opened: it ends the question, in every window."""
        self._tries.append(self._add(None, State.SHOWN, ()))

    def new_numbers(self) -> Question:
        """Put a question with new numbers here, and return it."""
        lesson, name = self.quiz.lesson, self.maker.name
        # Another window may have gone on meanwhile: count what the record holds, not what was seen here.
        self._dealt = self.quiz.record.dealt(lesson).get(name, (None, 0))[1] + 1
        self.keep(None)
        self.quiz.record.deal(lesson=lesson, maker=name, seed=self._seed())
        self.refresh()
        return self.question

    @property
    def repeated(self) -> tuple[Slip, ...]:
        """The slips of the last answer that came in two of the last three tries at such questions."""
        sure, made = _sure(self.mark), [one.slips for one in self._firsts()]
        return tuple(slip for slip in self.mark.slips if slip.name in sure and is_repeated(slip.name, made))

    def _take_up(self, tries: Sequence[Attempt]) -> None:
        """Take what was answered to questions of this maker, and the mark of the answer that counts here."""
        self._tries = list(tries)
        here = self._here()
        # A right answer ends a question, whatever another window or a wrong clock put after it.
        counts = next((one for one in here if one.state == State.RIGHT), here[-1] if here else None)
        self.mark: Mark = mark(self.question, counts.given if counts else None)

    def _is_here(self, one: Attempt) -> bool:
        return one.lesson == self.quiz.lesson and one.seed == self.question.seed

    def _here(self) -> list[Attempt]:
        return [one for one in self._tries if self._is_here(one) and one.state != State.SHOWN]

    def _firsts(self) -> list[Attempt]:
        return first_answers([one for one in self._tries if one.state != State.SHOWN])

    def _add(self, given: Given, state: State, slips: tuple[str, ...]) -> Attempt:
        return self.quiz.record.add(
            lesson=self.quiz.lesson,
            maker=self.maker.name,
            seed=self.question.seed,
            given=given,
            state=state.value,
            slips=slips,
            hints=self.hints_open,
        )

    def _stands(self) -> bool:
        """Whether the question here is the one that a page opened now would show."""
        seed, _ = self.quiz.record.dealt(self.quiz.lesson).get(self.maker.name, (self.question.seed, 0))
        return seed == self.question.seed

    def _seed(self) -> int:
        return seed_for(
            learner_id=self.quiz.record.learner_id,
            lesson=self.quiz.lesson,
            maker=self.maker.name,
            count=self._dealt,
        )


def first_answers(attempts: Sequence[Attempt]) -> list[Attempt]:
    """Return the first answer to each question of one maker, oldest first: the rest are corrections.

    attempts: of one maker, oldest first.
    """
    firsts: dict[int, Attempt] = {}
    for one in attempts:
        firsts.setdefault(one.seed, one)
    return list(firsts.values())


def right_once(attempts: Sequence[Attempt]) -> set[str]:
    """Return the makers whose questions were right at least once.

    attempts: of one lesson.
    """
    return {one.maker for one in attempts if one.state == State.RIGHT}


def _sure(marked: Mark) -> tuple[str, ...]:
    """Names of the slips an answer shows; a guess shows none."""
    return () if marked.is_guess else tuple(slip.name for slip in marked.slips)
