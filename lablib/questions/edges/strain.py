"""What a lens shows in its frame, strain above all, and what is done about it, as a question."""

from lablib.questions.situation import SituationCase, SituationMaker, slips_of

TABLE = ("lablib.questions.edges", "strain.toml")


class StrainSigns(SituationMaker):
    """Say what a sign in the mounted lens means, and what is done."""

    name = "strain-signs"
    lesson = "13"
    skill = "strain"
    table = TABLE
    slips = slips_of(*TABLE)

    def hints(self, case: SituationCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What presses where, or what is missing? Size, shape and the frame itself are three causes.",
            "Which way takes the cause away, and which only hides the sign?",
        )
