"""The panel of paper tickets: one lies on the bench, and what is in doubt on it is ringed when asked for."""

from collections.abc import Sequence
from dataclasses import dataclass

from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice
from lablib.pictures.asked import Asked
from lablib.pictures.asked_ticket import COLUMNS, TicketPicture
from lablib.questions.ticket_check.papers import Paper, papers

_COUNT = len(papers())


@dataclass(frozen=True, slots=True, kw_only=True)
class OnTheBench(Asked):
    """A ticket as its picture takes it, with the ticket itself.

    paper: the ticket; further: see `lablib.pictures.asked.Asked`.
    """

    paper: Paper


class PaperPanel(Panel):
    """Invented paper tickets one after the other: make or hold, and where the doubt is."""

    draws = TicketPicture
    note = "Which faults send a ticket back is common practice; workshops differ."
    controls = (
        Choice(
            name="ticket",
            label="Ticket",
            options=tuple(str(number) for number in range(1, _COUNT + 1)),
            value="1",
        ),
        Choice(name="ring", label="Ring the doubt", options=("no", "yes"), value="no"),
    )

    def compute(self, values: Values) -> OnTheBench:
        """Return a ticket, and whether its doubt is shown.

        values: by the control's name.
        """
        paper = papers()[int(values["ticket"]) - 1]
        return OnTheBench(values=paper.values, is_over=values["ring"] == "yes", paper=paper)

    def numbers(self, data: OnTheBench) -> Sequence[tuple[str, str, str]]:
        """Return what is written in each field, and what is ringed.

        data: from `compute`.
        """
        paper = data.paper
        return [
            ("Right", _read(paper.right), ""),
            ("Left", _read(paper.left), ""),
            ("Frame", paper.frame, ""),
            ("Note", paper.note or NOT_KNOWN, ""),
        ]

    def sentence(self, data: OnTheBench) -> str:
        """Return what is to be decided, or how it is decided.

        data: from `compute`.
        """
        return data.paper.verdict if data.is_over else "Make it or hold it? Which field would you ask about?"


def _read(texts: Sequence[str]) -> str:
    """Return the fields of an eye in words; an empty field is passed over, as on the paper."""
    return ", ".join(
        text if column == "sphere" else f"{column} {text}"
        for column, text in zip(COLUMNS, texts, strict=True)
        if text
    )
