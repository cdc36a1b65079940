"""A self-check: what stands in it comes back from the record, and two windows lose nothing."""

from pathlib import Path

import pytest
from stand_in_makers import EVERY_KIND, Drift, FirstLetter, LettersInOrder, Needle, OuterLetters, Shares

from lablib.errors import LabError
from lablib.study.maker import Maker
from lablib.study.marking import State
from lablib.study.quiz import Place, Quiz, first_answers, seed_for
from lablib.study.record import Record

MAKERS = (Shares(), LettersInOrder(), Needle())


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "record.sqlite"


def window(file: Path, *makers: Maker, lesson: str = "01") -> Quiz:
    """Return a self-check as a page shows it that is opened now."""
    return Quiz(Record(file), lesson=lesson, makers=makers or MAKERS)


def right(place: Place) -> object:
    """Return the right answer as it is given."""
    found = place.question.right
    match place.question.kind.name:
        case "order":
            return list(found)
        case "several":
            return sorted(found)
        case "number":
            return place.question.kind.written(found)
    return found


def wrong(place: Place, slip: str) -> str:
    """Return the number that comes out with a slip."""
    return next(
        place.question.kind.written(one.value) for one in place.question.mistakes if one.slips[0].name == slip
    )


def shares(quiz: Quiz) -> Place:
    return quiz.places[0]


def test_a_new_self_check_has_a_question_in_every_place_and_nothing_answered(file: Path):
    quiz = window(file)
    assert [place.maker.name for place in quiz.places] == ["shares", "letters-in-order", "needle"]
    assert [place.question.maker for place in quiz.places] == ["shares", "letters-in-order", "needle"]
    assert all(place.mark.state is State.NOT_ANSWERED for place in quiz.places)
    assert quiz.right_once == 0
    assert quiz.record.begun().keys() == {"01"}
    assert quiz.record.attempts() == ()


def test_a_question_that_was_right_once_stays_counted(file: Path):
    quiz = window(file)
    first, second, *_ = quiz.places
    first.answer(wrong(first, "not-halved"))
    second.answer(right(second))
    assert quiz.right_once == 1
    first.answer(right(first))
    assert quiz.right_once == 2
    first.new_numbers()
    first.answer(wrong(first, "not-halved"))
    assert (quiz.right_once, window(file).right_once) == (2, 2)


@pytest.mark.parametrize("maker", EVERY_KIND, ids=lambda maker: maker.name)
def test_a_page_opened_again_shows_what_stood_there(file: Path, maker: Maker):
    place = window(file, maker).places[0]
    place.open_hint()
    marked = place.answer(right(place))
    again = window(file, maker).places[0]
    assert again.question == place.question
    assert again.mark == marked
    assert again.mark.state is State.RIGHT
    assert (again.hints_open, again.tries_here, again.draft) == (place.hints_open, 1, None)


def test_a_wrong_answer_comes_back_with_its_slip(file: Path):
    place = shares(window(file))
    marked = place.answer(wrong(place, "in-three"))
    again = shares(window(file))
    assert again.mark == marked
    assert [slip.name for slip in again.mark.slips] == ["in-three"]


def test_a_half_written_answer_comes_back(file: Path):
    place = shares(window(file))
    place.keep("12.")
    again = shares(window(file))
    assert (again.draft, again.mark.state) == ("12.", State.NOT_ANSWERED)
    again.keep(None)
    assert shares(window(file)).draft is None


def test_an_answer_takes_the_half_written_one_away(file: Path):
    place = shares(window(file))
    place.keep("12.")
    place.answer("12.5")
    assert place.draft is None
    assert shares(window(file)).draft is None


def test_new_numbers_give_another_question_that_stays(file: Path):
    place = shares(window(file))
    first = place.question
    place.answer(right(place))
    place.keep("9")
    second = place.new_numbers()
    assert second is place.question
    assert second.seed != first.seed
    assert place.mark.state is State.NOT_ANSWERED
    assert (place.draft, place.tries_here) == (None, 0)
    assert shares(window(file)).question == second
    assert place.new_numbers().seed not in (first.seed, second.seed)


def test_new_numbers_in_one_place_leave_the_others(file: Path):
    quiz = window(file)
    before = [place.question for place in quiz.places]
    quiz.places[1].new_numbers()
    after = [place.question for place in window(file).places]
    assert [one == other for one, other in zip(before, after, strict=True)] == [True, False, True]


def test_learners_lessons_and_makers_have_different_seeds():
    seeds = {
        seed_for(learner_id=learner, lesson=lesson, maker=maker, count=count)
        for learner in ("one", "two")
        for lesson in ("01", "07")
        for maker in ("shares", "needle")
        for count in range(5)
    }
    assert len(seeds) == 40
    # Whole numbers up to 2^53 are exact in every program that may read the record.
    assert all(0 <= seed < 2**53 for seed in seeds)


def test_a_seed_stays_the_same_for_ever():
    # SHA-256 of "learner\n01\nshares\n0", its first six bytes: worked out apart with a command line tool.
    assert seed_for(learner_id="learner", lesson="01", maker="shares", count=0) == 0xE26481C2C0DB


def test_two_learners_get_different_numbers(tmp_path: Path):
    one, other = (shares(window(tmp_path / name)) for name in ("one.sqlite", "other.sqlite"))
    assert one.question.seed != other.question.seed


def test_two_windows_lose_no_answer(file: Path):
    one, other = window(file), window(file)
    shares(one).answer(wrong(shares(one), "not-halved"))
    other.places[1].answer(right(other.places[1]))
    shares(other).answer(right(shares(other)))
    assert shares(other).tries_here == 2
    after = window(file)
    assert after.right_once == 2
    assert [one.given for one in after.record.attempts(maker="shares")] == [
        wrong(shares(one), "not-halved"),
        right(shares(one)),
    ]


def test_a_window_goes_on_where_another_has_got_to(file: Path):
    one, other = shares(window(file)), shares(window(file))
    first = one.question.seed
    second = one.new_numbers().seed
    # The other window still shows the first question; its new numbers are new to both.
    assert other.question.seed == first
    third = other.new_numbers().seed
    assert len({first, second, third}) == 3
    assert shares(window(file)).question.seed == third
    assert one.new_numbers().seed not in (first, second, third)


def test_an_answer_to_the_question_a_window_still_shows_is_kept_for_that_question(file: Path):
    one, other = shares(window(file)), shares(window(file))
    one.new_numbers()
    assert other.answer(right(other)).state is State.RIGHT
    after = shares(window(file))
    assert after.question == one.question
    assert after.mark.state is State.NOT_ANSWERED
    assert [tried.seed for tried in after.quiz.record.attempts()] == [other.question.seed]


def test_a_window_left_behind_does_not_touch_what_is_half_written_in_the_other(file: Path):
    one, other = shares(window(file)), shares(window(file))
    other.keep("1")
    one.new_numbers()
    one.keep("22")
    other.keep("12")
    other.answer(right(other))
    assert shares(window(file)).draft == "22"


@pytest.mark.parametrize("given", [None, "", "  ", "twelve", "1e5", "3 kg"])
def test_what_is_no_answer_is_not_recorded(file: Path, given: object):
    place = shares(window(file))
    marked = place.answer(given)
    assert not marked.state.is_answer
    assert place.tries_here == 0
    assert place.quiz.record.attempts() == ()


def test_the_same_answer_again_is_recorded_again(file: Path):
    place = shares(window(file))
    text = wrong(place, "not-halved")
    place.answer(text)
    place.answer(text)
    assert [one.given for one in place.quiz.record.attempts()] == [text, text]
    assert place.tries_here == 2


def test_what_is_recorded(file: Path):
    place = shares(window(file))
    place.open_hint()
    place.answer(wrong(place, "loss-added"))
    hint, attempt = place.quiz.record.attempts()
    assert (hint.state, hint.given, hint.hints) == ("hint-opened", None, 2)
    assert (attempt.lesson, attempt.maker, attempt.seed) == ("01", "shares", place.question.seed)
    assert (attempt.given, attempt.state) == (wrong(place, "loss-added"), "wrong")
    assert (attempt.slips, attempt.hints) == (("loss-added",), 2)


def test_a_guess_is_not_recorded_as_a_slip(file: Path):
    place = shares(window(file))
    pair = place.question.guesses[0]
    marked = place.answer(place.question.kind.written(pair.value))
    assert marked.is_guess
    assert [one.slips for one in place.quiz.record.attempts()] == [()]


def test_a_right_value_badly_written_is_recorded_as_such(file: Path):
    place = window(file, Drift()).places[0]
    place.answer(place.question.kind.written(abs(place.question.right)).removeprefix("+"))
    assert [one.state for one in place.quiz.record.attempts()] == ["faulty"]
    assert place.quiz.right_once == 0


class FullDisk(Record):
    """A record whose disk is full."""

    def add(self, **values: object) -> None:
        raise LabError("the disk is full: make room")


def test_an_answer_that_could_not_be_kept_does_not_look_as_if_it_were(file: Path):
    place = shares(Quiz(FullDisk(file), lesson="01", makers=MAKERS))
    with pytest.raises(LabError, match="the disk is full: make room"):
        place.answer(right(place))
    assert (place.mark.state, place.tries_here) == (State.NOT_ANSWERED, 0)


def tried(place: Place, slips: list[str | None]) -> list[list[str]]:
    """Answer one question after another with a slip or without; return what is called repeated each time."""
    found = []
    for slip in slips:
        place.answer(right(place) if slip is None else wrong(place, slip))
        found.append([one.name for one in place.repeated])
        place.new_numbers()
    return found


def test_a_slip_is_called_repeated_in_two_of_three_tries(file: Path):
    place = shares(window(file))
    slips = ["not-halved", None, "not-halved", None, None, "not-halved", "loss-added", "loss-added"]
    assert tried(place, slips) == [[], [], ["not-halved"], [], [], [], [], ["loss-added"]]


def test_trying_the_same_question_again_makes_no_slip_repeated(file: Path):
    place = shares(window(file))
    text = wrong(place, "not-halved")
    for _ in range(3):
        place.answer(text)
    # The first answer to a question counts; the others are corrections of it.
    assert place.repeated == ()


def test_a_slip_is_still_repeated_when_the_page_is_opened_again(file: Path):
    place = shares(window(file))
    tried(place, ["not-halved"])
    place.answer(wrong(place, "not-halved"))
    assert [slip.name for slip in shares(window(file)).repeated] == ["not-halved"]


def test_tries_in_another_lesson_count_as_well(file: Path):
    tried(shares(window(file)), ["in-three"])
    later = window(file, lesson="05").places[0]
    assert tried(later, ["in-three"]) == [["in-three"]]


def test_a_guess_is_never_called_repeated(file: Path):
    place = shares(window(file))
    tried(place, ["not-halved", "not-halved"])
    pair = next(one for one in place.question.guesses if one.slips[0].name == "not-halved")
    assert place.answer(place.question.kind.written(pair.value)).is_guess
    assert place.repeated == ()


def test_hints_fade_as_the_first_answers_come_out_right(file: Path):
    place = shares(window(file))
    shown = []
    for slip in [None, None, None, "in-three", None]:
        shown.append(place.hints_open)
        place.answer(right(place) if slip is None else wrong(place, slip))
        # A correction is no success of the first answer.
        place.answer(right(place))
        place.new_numbers()
    assert [*shown, place.hints_open] == [1, 0, 0, 0, 1, 0]


def test_hints_do_not_close_because_the_question_is_answered(file: Path):
    place = shares(window(file))
    before = place.hints_open
    place.answer(right(place))
    assert place.hints_open == before
    assert shares(window(file)).hints_open == before


def test_no_hint_opens_because_the_answer_was_wrong_and_the_page_is_opened_again(file: Path):
    place = shares(window(file))
    tried(place, [None, None])
    assert place.hints_open == 0
    place.answer(wrong(place, "in-three"))
    assert shares(window(file)).hints_open == 0


def test_one_more_hint_opens_until_all_are_open(file: Path):
    place = window(file, FirstLetter()).places[0]
    assert place.hints_open == 1
    place.open_hint()
    place.open_hint()
    assert place.hints_open == 2 == len(place.question.hints)


def test_the_first_answer_to_each_question_counts(file: Path):
    place = shares(window(file))
    place.answer(wrong(place, "in-three"))
    place.answer(right(place))
    first = place.question.seed
    place.new_numbers()
    place.answer(right(place))
    firsts = first_answers(place.quiz.record.attempts(maker="shares"))
    assert [(one.seed, one.state) for one in firsts] == [(first, "wrong"), (place.question.seed, "right")]


def test_a_maker_twice_is_refused(file: Path):
    with pytest.raises(LabError) as caught:
        window(file, Shares(), Needle(), Shares())
    assert str(caught.value) == "self-check of lesson 01: shares, needle, shares: give each maker once"


def test_picks_come_back_in_the_order_they_were_given(file: Path):
    place = window(file, OuterLetters()).places[0]
    given = list(reversed(right(place)))
    place.answer(given)
    assert window(file, OuterLetters()).places[0].mark.given == given


def test_the_worked_solution_ends_the_question_in_every_window_and_is_no_answer(file: Path):
    here, other = shares(window(file)), shares(window(file))
    here.answer(wrong(here, "loss-added"))
    here.show_solution()
    assert here.is_over
    assert other.answer(right(other)).state is not State.RIGHT
    again = shares(window(file))
    assert (again.is_solved, again.is_over, again.tries_here) == (True, True, 1)
    assert again.mark.state is State.WRONG
    assert again.answer(right(again)).state is State.WRONG
    assert [one.state for one in again.quiz.record.attempts()] == ["wrong", "solution-shown"]
    again.new_numbers()
    assert not again.is_over


def test_a_question_that_was_right_is_over(file: Path):
    place = shares(window(file))
    place.answer(right(place))
    assert place.is_over
    assert place.answer(wrong(place, "loss-added")).state is State.RIGHT
    assert [one.state for one in place.quiz.record.attempts()] == ["right"]


def test_a_right_answer_counts_whatever_another_window_puts_after_it(file: Path):
    here, other = shares(window(file)), shares(window(file))
    here.answer(right(here))
    said = other.answer(wrong(other, "loss-added"))
    assert said.words == ("This question was ended in another window. What you wrote here was not marked.",)
    assert [one.state for one in here.quiz.record.attempts()] == ["right"]
    # Nor does one that slipped in, with a clock that was set back or not.
    record = here.quiz.record
    seed = here.question.seed
    record.add(lesson="01", maker="shares", seed=seed, given=wrong(here, "loss-added"), state="wrong")
    assert shares(window(file)).mark.state is State.RIGHT


def test_what_was_answered_is_shown_again_on_another_machine(file: Path, tmp_path: Path):
    place = shares(window(file))
    place.answer(wrong(place, "loss-added"))
    there = tmp_path / "there.sqlite3"
    Record(there).merge(place.quiz.record.export())
    again = shares(window(there))
    assert again.question == place.question
    assert again.mark == place.mark


def test_an_answer_takes_its_draft_away(file: Path):
    place = shares(window(file))
    place.keep("1")
    place.answer(wrong(place, "loss-added"))
    assert place.draft is None
    assert place.quiz.record.drafts("01") == {}


def test_hints_that_were_opened_stay_open_and_are_no_answers(file: Path):
    place = shares(window(file))
    for _ in place.question.hints:
        place.open_hint()
    again = shares(window(file))
    assert again.hints_open == place.hints_open == len(place.question.hints)
    assert (again.tries_here, again.mark.state) == (0, State.NOT_ANSWERED)
    again.new_numbers()
    assert again.hints_open == 1
