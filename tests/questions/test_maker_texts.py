"""Texts of the question makers: whole sentences in the house style, and no answer in them."""

import json
import re
from collections import defaultdict
from collections.abc import Iterator

import pytest
from made_questions import by_maker, questions, said, slips_made
from question_as_data import plain_data

from lablib.questions.makers import MAKERS
from lablib.study.question import Question

KEBAB = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
# What a learner is told to do at the end of a prompt that is not a question.
ASKS = r"(Give|Pick|Put|Mark|Move|Write|Choose|Transpose|Work out|Find)\b"
# What no text holds: marks of another language, praise, numbers as only a program prints them, odd spaces.
FAULTS = (
    r"  |\n|\t|!|[<>{}`]|&\w+;|\*\*",
    r"(?i)\b(simply|well done|great job|of course|obviously|as an exercise)\b",
    r"\b(nan|inf|None|True|False)\b|\d\.\d{5,}|\d[eE][+-]\d|-0(\.0+)?(?![\d.])",
    r"\.\.|\s[.,;:?]|\(\s|\s\)|\b(\w+) \1\b(?<!that that)",
)


@by_maker
def test_a_question_does_not_give_its_answer_away(name: str):
    # A text that stands there whatever is right gives nothing away.
    rights = defaultdict(set)
    for question in questions(name):
        for text in (*question.prompt, *question.hints):
            rights[_stays(question, text)].add(json.dumps(plain_data(question.right)))
    for question in questions(name):
        for text in (*question.prompt, *question.hints):
            if _holds_answer(question, text):
                assert len(rights[_stays(question, text)]) > 1, (said(question), text, question.right)


def _stays(question: Question, text: str) -> str:
    """Return what of a text does not change with the numbers; where a number is asked, those count too."""
    return text if question.kind.name in ("number", "marker") else re.sub(r"[+\-−]?\d+([.,]\d+)?", "#", text)


def _holds_answer(question: Question, text: str) -> bool:
    printed = question.kind.written(question.right)
    if question.kind.name not in ("number", "marker"):
        return printed.casefold() in text.casefold()
    if any(float(term.printed) == pytest.approx(question.right, abs=1e-9) for term in question.given):
        return False  # a given number that happens to be the answer too
    return re.search(rf"(?<![\w.,]){re.escape(printed)}(?![\w]|[.,]\d)", text) is not None


@by_maker
def test_options_can_be_told_apart_by_their_words(name: str):
    for question in questions(name):
        words = [option.words.casefold() for option in getattr(question.kind, "options", ())]
        assert len(set(words)) == len(words), said(question)
        assert all(text == text.strip() and text for text in words), said(question)


def texts(question: Question) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield everything a learner may read, with where it stands; what is read on end stands together."""
    yield "prompt", question.prompt
    yield from (("hint", (text,)) for text in question.hints)
    yield "solution", question.solution.words
    for mistake in question.mistakes:
        yield from ((f"slip {slip.name}", (slip.words,)) for slip in mistake.slips)


@by_maker
def test_texts_are_whole_sentences_in_the_house_style(name: str):
    for where, paragraphs in {one for question in questions(name) for one in texts(question)}:
        assert paragraphs[-1].endswith((".", "?")), (where, paragraphs)
        for text in paragraphs:
            # A colon may lead over to the next paragraph.
            assert text.endswith((".", "?", ":")), (where, text)
            assert text == text.strip(), (where, text)
            for fault in FAULTS:
                assert not re.search(fault, text), (where, text, fault)


@by_maker
def test_a_prompt_ends_with_what_is_asked(name: str):
    for question in questions(name):
        last = question.prompt[-1]
        assert "?" in last or re.search(rf"(^|\. ){ASKS}", last), (said(question), last)


@by_maker
def test_a_question_has_hints_and_a_way_there(name: str):
    for question in questions(name):
        assert 2 <= len(question.hints) <= 3, said(question)
        assert question.solution.words, said(question)
        assert question.prompt


@by_maker
def test_names_can_be_kept_for_ever(name: str):
    one = MAKERS[name]
    assert one.name == name
    assert re.fullmatch(r"\d\d", one.lesson)
    assert all(KEBAB.fullmatch(text) for text in (name, one.skill, *(slip.name for slip in one.slips)))
    names = [slip.name for slip in one.slips]
    assert len(set(names)) == len(names)


@by_maker
def test_the_step_of_a_slip_reads_on_after_the_step_to_look_at(name: str):
    for slip in slips_made(name):
        assert slip.step == slip.step.strip()
        assert not slip.step.endswith((".", "?", ":"))
        # A noun phrase begins small, unless a symbol or a name begins it.
        assert slip.step[0].islower() or slip.step.split()[0].isupper() or slip.step[0].isdigit(), slip.step
