"""Paper tickets that a lesson lays out: sound ones, and ones in doubt for what stands beside a lens too."""

from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """One ticket on paper.

    right, left: texts of the fields of an eye, in the order of the drawing "ticket".
    frame, note: what is written of them, the note empty for none.
    doubtful: names of the fields in doubt, none where it is made.
    doubt: the same in words.
    says: the question to ask; or, of a sound ticket, why it is made.
    """

    right: tuple[str, ...]
    left: tuple[str, ...]
    frame: str
    says: str
    note: str = ""
    doubtful: tuple[str, ...] = ()
    doubt: str = ""

    @property
    def verdict(self) -> str:
        """Whether it is made or held, for what, and what is asked."""
        return f"Hold it for {self.doubt}. {self.says}" if self.doubtful else f"Make it. {self.says}"

    @property
    def values(self) -> dict[str, object]:
        """The values of the drawing "ticket"."""
        names = ("right", "left", "frame", "note", "doubtful", "doubt")
        return {name: getattr(self, name) for name in names}


@cache
def papers() -> tuple[Paper, ...]:
    """Return the tickets, in their order."""
    rows = read_table("lablib.questions.ticket_check", "papers.toml")["paper"]
    return tuple(Paper(**{key: _frozen(value) for key, value in row.items()}) for row in rows)


def _frozen(value: object) -> object:
    return tuple(value) if isinstance(value, list) else value
