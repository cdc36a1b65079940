"""The way from the cut lens on its block to the finished pair, as a question."""

from lablib.questions.steps import Steps, StepsCase, StepsMaker
from lablib.study.question import Solution


class OffTheBlock(StepsMaker):
    """Put the steps from the block to the frame in order."""

    name = "off-the-block"
    lesson = "13"
    skill = "order-of-mounting"
    steps = Steps.read("lablib.questions.edges", "off_the_block.toml")
    slips = steps.slips
    core = ("look", "deblock", "clean", "insert", "strain")
    more = 2

    def fits(self, more: tuple[str, ...]) -> bool:
        """Return whether two steps leave one order: some peel the film before the wheel, some after."""
        return not {"peel", "chamfer"} <= set(more)

    def prompt(self, case: StepsCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A lens with a coat is cut and still sits on its block. Here are some of the steps from there to "
            "the finished pair, mixed up. The others are left out, but they are done in their turn.",
            "Put them in the order in which they are done, the first on top.",
        )

    def solution(self, case: StepsCase) -> Solution:
        """Return the order and what decides it."""
        return Solution(
            words=(
                self.told(case),
                "What is read on the block cannot be read later. What makes swarf comes before what cleans, "
                "and what heats comes before the coated lens.",
                "Strain and a lens that turned in its rim show only once the rim is closed. Lens and frame "
                "makers may ask for another way; theirs goes first.",
            )
        )

    def hints(self, case: StepsCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Ask of each check: from when on can what it looks for be seen, and until when?",
            "Ask of each step that works on lens or frame: what would it spoil that is done already?",
        )
