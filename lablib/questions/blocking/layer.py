"""What is done at the block, as a question: grip layer, wipe, film, cold pad, and what is no cure."""

from lablib.questions.situation import SituationCase, SituationMaker, slips_of

TABLE = ("lablib.questions.blocking", "decisions.toml")


class GripLayer(SituationMaker):
    """Say what is done before a lens goes on its block, and after it comes off."""

    name = "grip-layer"
    lesson = "10"
    skill = "surfaces-before-blocking"
    table = TABLE
    slips = slips_of(*TABLE)

    def hints(self, case: SituationCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Name the two surfaces that are to hold each other. What lies between them now?",
            "Which of the ways changes that, and which only presses harder on it, or spoils a surface?",
        )
