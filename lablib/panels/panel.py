"""The frame every panel stands in: controls and numbers at the left, picture and sentence at the right."""

from abc import ABC, abstractmethod
from collections.abc import Iterable, Mapping, Sequence
from threading import RLock
from types import MappingProxyType
from typing import ClassVar

import ipywidgets as widgets
from IPython.display import display
from traitlets import Unicode

from lablib.errors import LabError
from lablib.panels import markup
from lablib.panels.arrangement import Parts, arranged
from lablib.panels.controls import control_for
from lablib.panels.specs import Choice, Slider
from lablib.pictures.kept import KeptPicture

Values = dict[str, float | str]
NOT_KNOWN = "–"
# An image widget takes no text alternative, only a title; what it shows is said by the sentence.
PICTURE_NAME = "Picture: the sentence below says what it shows"


class NamedImage(widgets.Image):
    """An image whose tooltip names it: a widget without a description gets no title in the browser."""

    description = Unicode("").tag(sync=True)


class Panel(ABC):
    """Controls beside one picture that is redrawn in place.

    move: names of the controls to show; the others stay where they start. All are shown when it is not given.
    dots_per_pixel: see `KeptPicture`.
    start: values to begin with instead of the controls' own, by the control's name.

    A subclass gives `controls` and `draws`, and the three methods below. Nothing but a LabError is turned
    into words; any other exception is a fault of the program and comes out.

    Raises LabError for a control that is not there, or a start value that its control cannot take.
    """

    controls: ClassVar[tuple[Slider | Choice, ...]] = ()
    draws: ClassVar[type[KeptPicture]]
    ranges: ClassVar[Mapping[str, Slider | Choice]]
    # What must be known about every figure of the panel; it stands under the sentence all the time.
    note: ClassVar[str] = ""

    def __init_subclass__(cls, **kwargs: object) -> None:
        super().__init_subclass__(**kwargs)
        cls.ranges = MappingProxyType({spec.name: spec for spec in cls.controls})
        if len(cls.ranges) < len(cls.controls):
            names = [spec.name for spec in cls.controls]
            raise LabError(f"{cls.__name__}: control names {names} repeat: give each control its own name")

    def __init__(
        self,
        *,
        move: Sequence[str] | None = None,
        dots_per_pixel: float = 1,
        **start: float | str,
    ) -> None:
        self.shown = self._known(tuple(self.ranges) if move is None else move)
        self.handles = {spec.name: control_for(spec, self._redraw) for spec in self.controls}
        self._drawing = RLock()
        self.picture = self.draws(dots_per_pixel=dots_per_pixel)
        self.trouble: LabError | None = None
        self._image = NamedImage(format="png", tooltip=PICTURE_NAME)
        self._words, self._table, self._sentence = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self._labels: Sequence[str] = ()
        parts = Parts(
            controls=[self.handles[name] for name in self.shown],
            stage=[self._image, self._words],
            table=self._table,
            sentence=self._sentence,
            note=widgets.HTML(markup.note(self.note)) if self.note else None,
            whole=move is None,
            below=self.row_below(),
        )
        self.widget = arranged(parts, width_px=self.picture.width_px, height_px=self.picture.height_px)
        self._put(self._checked(start))
        self._redraw()

    @abstractmethod
    def compute(self, values: Values) -> object:
        """Return everything that picture, numbers and sentence need.

        values: by the control's name, each in the unit of its control.

        Raises LabError when the values do not go together.
        """

    @abstractmethod
    def numbers(self, data: object) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table: label, figure and unit, each as plain text.

        data: from `compute`.
        """

    @abstractmethod
    def sentence(self, data: object) -> str:
        """Return one plain sentence that says what the picture shows.

        data: from `compute`.
        """

    def row_below(self) -> widgets.Widget | None:
        """Return what stands below the whole panel; nothing unless a subclass has something."""
        return None

    @property
    def values(self) -> Values:
        """The last good value of every control, by its name."""
        return {name: handle.value for name, handle in self.handles.items()}

    def at(self, **changes: float | str) -> object:
        """Return what `compute` gives for other values, without moving anything.

        changes: values by the control's name, the shown ones otherwise.

        Raises LabError for a value its control cannot take, or where the values do not go together.
        """
        return self.compute(self.values | self._checked(changes))

    @property
    def shown_png(self) -> bytes:
        """The picture on the screen, empty while words stand in its place."""
        return b"" if self.trouble else bytes(self._image.value)

    def show(self) -> None:
        """Display the panel under the cell."""
        display(self.widget)

    _ipython_display_ = show

    def _known(self, names: Iterable[str]) -> tuple[str, ...]:
        """Return names that are all controls of this panel, or say which are not."""
        faults = [
            f"{name!r} is not a control of this panel: give any of {', '.join(self.ranges)}"
            for name in names
            if name not in self.ranges
        ]
        if faults:
            raise LabError("\n".join(faults))
        return tuple(names)

    def _checked(self, values: Values) -> Values:
        """Return values that their controls can take, or say about all that they cannot."""
        self._known(values)
        faults = []
        for name, value in values.items():
            try:
                self.ranges[name].check(value)
            except LabError as error:
                faults.append(str(error))
        if faults:
            raise LabError("\n".join(faults))
        return values

    def _put(self, values: Values) -> None:
        for name, value in values.items():
            self.handles[name].set(value)

    def _redraw(self) -> None:
        # A kernel may hear its page in a second thread: two drawings at once would lie over each other.
        with self._drawing:
            self._redraw_alone()

    def _redraw_alone(self) -> None:
        faults = [str(handle.fault) for handle in self.handles.values() if handle.fault]
        try:
            if faults:
                raise LabError("\n".join(faults))
            data = self.compute(self.values)
        except LabError as error:
            self._refuse(error)
        else:
            self._show(data)

    def _show(self, data: object) -> None:
        rows = self.numbers(data)
        self.picture.update(data)
        self._image.value = self.picture.png()
        self._labels = [label for label, _, _ in rows]
        self._table.value = markup.table(rows)
        self._sentence.value = markup.sentence(self.sentence(data))
        self._stage(None)

    def _refuse(self, error: LabError) -> None:
        self._words.value = markup.refusal(str(error))
        # A number that belongs to another picture must not stand beside the words.
        self._table.value = markup.table([(label, NOT_KNOWN, "") for label in self._labels])
        self._sentence.value = markup.sentence("")
        self._stage(error)

    def _stage(self, trouble: LabError | None) -> None:
        """Show the picture or the words, at the same place and size."""
        self.trouble = trouble
        self._image.layout.display = "none" if trouble else None
        self._words.layout.display = None if trouble else "none"
