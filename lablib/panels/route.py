"""The learner's route: lessons begun and done, and what comes next."""

import ipywidgets as widgets
from IPython.display import display

from lablib.errors import LabError
from lablib.panels import check_markup as markup
from lablib.panels import markup as panel_markup
from lablib.panels.tickets import ActionButton
from lablib.questions.course import Standing, standings, what_next
from lablib.study.record import Record


class Route:
    """A table of all lessons with how far the learner is.

    record: of the learner; the learner's own when not given.

    A record that cannot be opened is said in words where the table would stand.
    """

    def __init__(self, record: Record | None = None) -> None:
        self._record = record
        self._table = widgets.HTML()
        self._again = ActionButton(self.look, description="Look again")
        style = widgets.HTML(markup.STYLE, layout={"display": "none"})
        self.widget = widgets.VBox([style, self._table, self._again])
        self.widget.add_class("lab-route")
        self.look()

    def look(self) -> None:
        """Read the record again and show what it holds now."""
        try:
            self._record = self._record or Record.of_learner()
            found = standings(self._record)
        except LabError as fault:
            self._table.value = panel_markup.refusal(str(fault))
            return
        told = markup.trouble(self._record.trouble) if self._record.trouble else ""
        self._table.value = told + markup.route(found, _coming(found))

    def show(self) -> None:
        """Display the table under the cell."""
        display(self.widget)

    _ipython_display_ = show


def _coming(found: tuple[Standing, ...]) -> str:
    coming = what_next(found)
    if coming is None:
        return "All lessons that are written are done. Take other numbers in any of them to keep it fresh."
    needs = ", ".join(number for number in coming.needs if number not in {one.lesson.number for one in found})
    later = f" It builds on {needs}, not written yet." if needs else ""
    return f"What comes next: {coming.number} {coming.title}.{later}"
