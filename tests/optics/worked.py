"""What holds for every chain of workings a learner is shown."""

from collections.abc import Iterable

from evaluation import assert_comes_out

from lablib.working import Working


def assert_worked(steps: Iterable[Working], *, plain: tuple[str, ...] = ()) -> None:
    """Check that each step comes out, and that no symbol stands for two numbers or goes unexplained.

    plain: symbols that may stand without a meaning.
    """
    known: dict[str, float] = {}
    for step in steps:
        for term in step.terms:
            assert known.setdefault(term.symbol, term.value) == term.value, f"{term.symbol} in {step.what}"
            assert term.meaning or term.symbol in plain, f"{term.symbol} in {step.what} says not what it is"
        assert_comes_out(step)
        assert step.symbol not in known, f"{step.symbol} stands for two things, the second {step.what}"
        known[step.symbol] = step.value
