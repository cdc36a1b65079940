"""A panel that saves what it is set to as a ticket, and opens one."""

from abc import abstractmethod
from collections.abc import Sequence
from pathlib import Path
from typing import ClassVar

import ipywidgets as widgets

from lablib.panels.panel import Panel, Values
from lablib.panels.tickets import TicketRow


class TicketPanel(Panel):
    """A panel with a row for tickets below it, shown only with the whole panel.

    folder: where tickets are saved and looked for; the working folder when not given.
    move, and what else a panel takes: see `Panel`. A panel that shows only some controls has no such row.

    A subclass gives two methods more, to and from a ticket.
    """

    ticket_name: ClassVar[str] = "my-ticket"

    def __init__(
        self, *, move: Sequence[str] | None = None, folder: Path | None = None, **rest: float | str
    ) -> None:
        self._is_whole = move is None
        self._tickets = TicketRow(
            Path.cwd() if folder is None else folder,
            name=self.ticket_name,
            write=self._ticket_text,
            take=self._take_ticket,
        )
        super().__init__(move=move, **rest)

    @abstractmethod
    def to_ticket(self, values: Values) -> str:
        """Return the text of a ticket that holds the values.

        values: by the control's name.
        """

    @abstractmethod
    def from_ticket(self, path: Path) -> tuple[Values, str]:
        """Return a value for every control from a ticket, and a remark on what the panel leaves out.

        path: the ticket file.

        Raises LabError when it cannot be read or holds what this panel cannot show.
        """

    def row_below(self) -> widgets.Widget | None:
        """Return the row that saves and opens tickets."""
        return self._tickets.widget if self._is_whole else None

    def _ticket_text(self) -> str:
        if self.trouble:
            raise self.trouble
        return self.to_ticket(self.values)

    def _take_ticket(self, path: Path) -> str:
        values, remark = self.from_ticket(path)
        wanted = self.values | self._checked(values)
        # Nothing is set before it is known to work: a faulty ticket leaves the panel as it was.
        data = self.compute(wanted)
        self._put(wanted)
        self._show(data)
        return remark
