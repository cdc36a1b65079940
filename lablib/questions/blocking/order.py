"""The order in which one lens is blocked, cut and taken off its block, as a question."""

from lablib.questions.steps import Steps, StepsCase, StepsMaker
from lablib.study.question import Solution


class BlockingOrder(StepsMaker):
    """Put the steps of blocking in order."""

    name = "blocking-steps"
    lesson = "10"
    skill = "order-of-blocking"
    steps = Steps.read("lablib.questions.blocking", "blocking_order.toml")
    slips = steps.slips
    core = ("inspect", "press", "scribe", "cut", "look")
    more = 2

    def prompt(self, case: StepsCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Here are some steps of one lens with a slick coat, mixed up, from the uncut lens on. The others "
            "are left out, but they are done in their turn.",
            "Put them in the order in which they are done, the first on top.",
        )

    def solution(self, case: StepsCase) -> Solution:
        """Return the order and what decides it."""
        return Solution(
            words=(
                self.told(case),
                "Whatever is between block and lens goes on clean and in its turn, and nothing that grips "
                "comes off before the last check.",
                "The line over block and lens is the one witness of a turn: scribed before the cut, read "
                "before the block comes off.",
            )
        )

    def hints(self, case: StepsCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Build the stack in your mind from the lens to the block. What lies nearer the lens goes on "
            "first.",
            "Ask of each check: until when can what it looks for still be seen?",
        )
