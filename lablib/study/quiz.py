"""A lesson's self-check: its questions, what was answered, and the next numbers; the record keeps it all."""

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import replace

from lablib.errors import LabError
from lablib.study.answer import Given
from lablib.study.maker import Maker
from lablib.study.marking import ANSWERS, Mark, State, is_repeated, mark, open_hints
from lablib.study.question import Question, Slip
from lablib.study.record import Attempt, Record

# Whole numbers up to here are exact in every program that may read the record.
_SEED_BYTES = 6
# By maker, as `Record.dealt` and `Record.drafts` give them.
Dealt = Mapping[str, tuple[int, int]]
Drafts = Mapping[str, tuple[int, object]]
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
        dealt, drafts = record.dealt(lesson), record.drafts(lesson)
        self.places = tuple(Place(self, maker, dealt=dealt, drafts=drafts) for maker in makers)
        record.begin(lesson)

    @property
    def right_once(self) -> int:
        """How many of the questions were right at least once, now or with other numbers."""
        wanted = {(self.lesson, place.maker.name) for place in self.places}
        return len(wanted & right_once(self.record))


class Place:
    """One place of a self-check, with the question that stands there now.

    quiz: it is part of; maker: of its questions.
    dealt, drafts: of the lesson, as the record has them.
    """

    def __init__(self, quiz: Quiz, maker: Maker, *, dealt: Dealt, drafts: Drafts) -> None:
        self.quiz = quiz
        self.maker = maker
        self._take_up(dealt, drafts)

    def _take_up(self, dealt: Dealt, drafts: Drafts) -> None:
        """Take up from the record what stands here: question, last answer, draft, hints."""
        name = self.maker.name
        self._events = self._events_kept()
        seed, self._dealt = dealt.get(name, (None, 0))
        if seed is None:
            # What was answered stays on the page, also in a record that was taken in from another machine.
            kept = (one.seed for one in reversed(self._events) if one.lesson == self.quiz.lesson)
            seed = next(kept, self._seed())
        self.question: Question = self.maker.make(seed)
        before = [one.state == State.RIGHT for one in first_answers(self._events) if one.seed != seed]
        at_first = open_hints(len(self.question.hints), tries=before)
        self.hints_open = max([at_first, *(one.hints for one in self._here())])
        self.mark = self._mark_that_counts()
        draft_seed, draft = drafts.get(name, (None, None))
        self.draft: Given = draft if draft_seed == seed else None

    def answer(self, given: Given) -> Mark:
        """Mark an answer, keep it if it is one, and return the mark.

        given: as it was given.

        When this returns, the answer is on the disk. A question that is over stays as it is. What is no
        answer leaves the mark of the last one in its place.
        """
        if self.is_over:
            return self.mark
        # Another window may have ended the question meanwhile.
        self._events = self._events_kept()
        self.mark = self._mark_that_counts()
        if self.is_over:
            return replace(self.mark, words=(_ENDED_ELSEWHERE,))
        marked = mark(self.question, given)
        if marked.state.is_answer:
            self._keep_event(given, marked.state, _sure(marked))
            # Only now: what could not be kept must not look as if it had been.
            self.mark, self.draft = marked, None
        return marked

    def keep(self, draft: Given) -> None:
        """Keep an answer that is not handed in yet, unless another window has put other numbers here.

        draft: as far as it is written; None for nothing.
        """
        if draft != self.draft:
            self.quiz.record.keep_draft(
                lesson=self.quiz.lesson, maker=self.maker.name, seed=self.question.seed, given=draft
            )
            self.draft = draft

    def open_hint(self) -> None:
        """Open the next hint, if there is one, and note it."""
        if self.hints_open < len(self.question.hints):
            self.hints_open += 1
            self._keep_event(None, State.HINTED, ())

    @property
    def tries_here(self) -> int:
        """How many answers there were to the question that stands here."""
        return sum(one.state in ANSWERS for one in self._here())

    @property
    def is_solved(self) -> bool:
        """Whether the worked solution of this question was opened."""
        return any(one.state == State.SHOWN for one in self._here())

    @property
    def is_over(self) -> bool:
        """Whether there is nothing more to answer here: it was right, or the worked solution was opened."""
        return self.is_solved or self.mark.state is State.RIGHT

    def show_solution(self) -> None:
        """Note that the worked solution was opened: it ends the question, in every window."""
        self._keep_event(None, State.SHOWN, ())

    def new_numbers(self) -> Question:
        """Put a question with new numbers here, and return it."""
        record, lesson, name = self.quiz.record, self.quiz.lesson, self.maker.name
        # Another window may have gone on meanwhile: count what the record holds, not what was seen here.
        self._dealt = record.dealt(lesson).get(name, (None, 0))[1] + 1
        record.deal(lesson=lesson, maker=name, seed=self._seed())
        self._take_up(record.dealt(lesson), record.drafts(lesson))
        return self.question

    @property
    def repeated(self) -> tuple[Slip, ...]:
        """The slips of the last answer that came in two of the last three tries at such questions."""
        sure, made = _sure(self.mark), [one.slips for one in first_answers(self._events)]
        return tuple(slip for slip in self.mark.slips if slip.name in sure and is_repeated(slip.name, made))

    def _events_kept(self) -> list[Attempt]:
        """Return what the record holds of questions of this maker, in any lesson."""
        return list(self.quiz.record.attempts(maker=self.maker.name))

    def _here(self) -> list[Attempt]:
        return [
            one for one in self._events if one.lesson == self.quiz.lesson and one.seed == self.question.seed
        ]

    def _mark_that_counts(self) -> Mark:
        """Mark the last answer here, or the right one: that ends a question, whatever came after it."""
        answers = [one for one in self._here() if one.state in ANSWERS]
        right = (one for one in answers if one.state == State.RIGHT)
        counts = next(right, answers[-1] if answers else None)
        return mark(self.question, counts.given if counts else None)

    def _keep_event(self, given: Given, state: State, slips: tuple[str, ...]) -> None:
        event = self.quiz.record.add(
            lesson=self.quiz.lesson,
            maker=self.maker.name,
            seed=self.question.seed,
            given=given,
            state=state.value,
            slips=slips,
            hints=self.hints_open,
        )
        self._events.append(event)

    def _seed(self) -> int:
        return seed_for(
            learner_id=self.quiz.record.learner_id,
            lesson=self.quiz.lesson,
            maker=self.maker.name,
            count=self._dealt,
        )


def first_answers(events: Sequence[Attempt]) -> list[Attempt]:
    """Return the first answer to each question of one maker, oldest first: the rest are corrections.

    events: of one maker, oldest first; hints and solutions that were opened are left out.
    """
    firsts: dict[int, Attempt] = {}
    for one in events:
        if one.state in ANSWERS:
            firsts.setdefault(one.seed, one)
    return list(firsts.values())


def right_once(record: Record) -> frozenset[tuple[str, str]]:
    """Return lesson and maker of every question that was right at least once.

    record: of the learner.
    """
    return record.makers_with(State.RIGHT.value)


def _sure(marked: Mark) -> tuple[str, ...]:
    """Names of the slips an answer shows; a guess shows none."""
    return () if marked.is_guess else tuple(slip.name for slip in marked.slips)
