"""The HTML in a self-check: style sheet, question, feedback, hints, worked solution, route."""

from collections.abc import Sequence
from html import escape
from importlib.resources import files

from lablib.questions.course import Progress, Standing
from lablib.study.marking import Mark, State
from lablib.study.question import Question, Slip, Solution

# A sign beside the words, so that colour is not the only difference.
_BADGES = {
    State.NOT_ANSWERED: ("○", "not answered yet"),
    State.NOT_UNDERSTOOD: ("?", "not marked"),
    State.RIGHT: ("✓", "right"),
    State.FAULTY: ("~", "value right, writing not"),
    State.WRONG: ("✗", "not right yet"),
}
STYLE = f"<style>{files('lablib.panels').joinpath('check.css').read_text(encoding='utf-8')}</style>"


def title(number: int, count: int, skill: str, mark: Mark) -> str:
    """Return the heading of a question, with how its answer stands.

    number, count: which of how many; skill: its stable name, shown as words; mark: of the answer.
    """
    sign, words = _BADGES[mark.state]
    about = escape(skill.replace("-", " "))
    return (
        f'<h3 class="lab-title"><span>{number} of {count}: {about}</span>'
        f'<span class="lab-badge">{sign} {words}</span></h3>'
    )


def prompt(question: Question) -> str:
    """Return what is asked and the numbers given."""
    *before, asked = question.prompt
    rows = "".join(
        f'<tr><th scope="row">{escape(term.meaning)}</th><td>{escape(term.stated)}</td></tr>'
        for term in question.given
    )
    given = f'<table class="lab-given"><tbody>{rows}</tbody></table>' if rows else ""
    return f"{_paragraphs(before)}{given}{_paragraphs((asked,))}"


def feedback(mark: Mark, repeated: Sequence[Slip]) -> str:
    """Return what is said about an answer; screen readers speak it when it changes.

    mark: of the answer.
    repeated: slips that came in two of the last three tries.
    """
    again = [
        f"The same slip came in two of your last three tries at this kind of question. Before you take new "
        f"numbers, work one example on paper and stop at this step: {slip.step}."
        for slip in repeated
    ]
    look = {State.RIGHT: "lab-right", State.NOT_ANSWERED: "", State.NOT_UNDERSTOOD: ""}.get(
        mark.state, "lab-wrong"
    )
    shown = f'<div class="lab-said {look}">{_paragraphs((*mark.words, *again))}</div>'
    return f'<div role="status" aria-live="polite">{shown}</div>'


def trouble(words: str) -> str:
    """Return what is said when an answer could not be kept.

    words: plain text.
    """
    return f'<div class="lab-said lab-wrong" role="alert">{_paragraphs((words,))}</div>'


def hints(shown: Sequence[str]) -> str:
    """Return the hints that are open."""
    return _paragraphs([f"Hint: {words}" for words in shown])


def solution(found: Solution, *, unfolded: bool) -> str:
    """Return the worked solution.

    found: the solution; unfolded: whether it stands open.
    """
    steps = "\n\n".join(str(working) for working in found.workings)
    numbers = f"<pre>{escape(steps)}</pre>" if steps else ""
    is_open = " open" if unfolded else ""
    return (
        f"<details{is_open}><summary>Worked solution</summary>{_paragraphs(found.words)}{numbers}</details>"
    )


def summary(*, right: int, count: int) -> str:
    """Return how far the learner is with the questions.

    right: how many were right once; count: how many there are.
    """
    left = f"{count - right} to go" if right < count else "this lesson is done"
    return f"<p>{right} of {count} questions right once: {left}. What you hand in is kept.</p>"


def route(standings: Sequence[Standing], coming: str) -> str:
    """Return the table of lessons with how far the learner is, and what comes next.

    standings: of every lesson; coming: what comes next, plain text.
    """
    signs = {Progress.NOT_BEGUN: "○", Progress.BEGUN: "…", Progress.DONE: "✓"}
    rows = "".join(
        f'<tr><th scope="row">{one.lesson.number} {escape(one.lesson.title)}</th>'
        f"<td>{signs[one.progress]} {one.progress}</td>"
        f"<td>{one.right} of {len(one.lesson.self_check)}</td>"
        f"<td>{one.lesson.screen_minutes} + {one.lesson.bench_minutes}</td></tr>"
        for one in standings
    )
    heads = "".join(
        f'<th scope="col">{words}</th>'
        for words in ("Lesson", "How far", "Questions right once", "Minutes, screen + bench")
    )
    return f"<table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>{_paragraphs((coming,))}"


def _paragraphs(texts: Sequence[str]) -> str:
    return "".join(f"<p>{escape(text)}</p>" for text in texts)
