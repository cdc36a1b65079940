"""Both rims of a frame as they were traced, and the frame that follows from them."""

from dataclasses import dataclass, field

from lablib.errors import LabError
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, Outline
from lablib.optics.limits import require_in_limits
from lablib.optics.practice import usual
from lablib.optics.trace import Trace
from lablib.optics.trace_boxing import NOTHING_STATED, Boxing, boxing_of, differences, outline_of

_HUNDREDTHS = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Something about traces that the bench should know.

    name: a stable name, for programs.
    text: the remark, and what to do.
    eye: whose rim it is about, None for the pair.
    """

    name: str
    text: str
    eye: Eye | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTraces:
    """What a trace file holds: one rim or both, and what the file states about them.

    right, left: the rims; None for one that was not traced.
    right_stated, left_stated: boxing numbers as the file states them.
    dbl_mm: distance between the lenses as the file states it [mm]; None where it does not.
    job: number of the job, empty where none stands there.
    not_read: labels of records that are not read here.
    file: the name it was read from, as a ticket gives it; it counts in no comparison.

    Raises LabError where no rim was traced, a rim stands at the other eye, or for a bridge no frame has.
    """

    right: Trace | None = None
    left: Trace | None = None
    right_stated: Boxing = NOTHING_STATED
    left_stated: Boxing = NOTHING_STATED
    dbl_mm: float | None = None
    job: str = ""
    not_read: tuple[str, ...] = ()
    file: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        if not self.traced_eyes:
            raise LabError("no rim was traced: give the trace of the right rim, the left rim or both")
        for eye in self.traced_eyes:
            if self.trace(eye).eye is not eye:
                raise LabError(f"trace of the {self.trace(eye).eye} rim is given for the {eye} one: exchange")
        if self.dbl_mm is not None:
            require_in_limits("DBL", self.dbl_mm, "dbl_mm")
            object.__setattr__(self, "dbl_mm", round(self.dbl_mm, _HUNDREDTHS))

    def trace(self, eye: Eye) -> Trace | None:
        """Return the trace of an eye's rim, None where it was not traced.

        eye: whose.
        """
        return self.right if eye is Eye.RIGHT else self.left

    def stated(self, eye: Eye) -> Boxing:
        """Return the boxing numbers the file states for an eye.

        eye: whose.
        """
        return self.right_stated if eye is Eye.RIGHT else self.left_stated

    @property
    def traced_eyes(self) -> tuple[Eye, ...]:
        """The eyes whose rims were traced, right first."""
        return tuple(eye for eye in EYES if self.trace(eye) is not None)

    def outline(self, eye: Eye) -> Outline:
        """Return the outline of an eye's lens: its own rim, or the mirror of the other where it has none.

        eye: whose.

        Raises LabError for a rim that folds back as seen from its boxed centre.
        """
        own = self.trace(eye)
        return outline_of(self.trace(eye.other)).mirrored() if own is None else outline_of(own)

    def boxing(self, eye: Eye) -> Boxing:
        """Return the boxing numbers of an eye's rim as traced; a mirrored rim has those of the other.

        eye: whose.
        """
        return boxing_of(self.trace(eye) or self.trace(eye.other))

    @property
    def a_mm(self) -> float:
        """Boxed width of the frame, the mean of both rims [mm]."""
        return self._mean("a_mm")

    @property
    def b_mm(self) -> float:
        """Boxed height of the frame, the mean of both rims [mm]."""
        return self._mean("b_mm")

    def _mean(self, name: str) -> float:
        return round(sum(getattr(self.boxing(eye), name) for eye in EYES) / len(EYES), _HUNDREDTHS)

    def remarks(self, *, dbl_mm: float | None = None) -> tuple[Remark, ...]:
        """Return what the bench should know about these traces.

        dbl_mm: the bridge as a ticket gives it [mm]; None where it gives none.
        """
        return (*self._rims(), *self._against_stated(), *self._bridge(dbl_mm))

    def _rims(self) -> list[Remark]:
        if len(self.traced_eyes) == 1:
            (eye,) = self.traced_eyes
            text = (
                f"only the {eye} rim was traced and the {eye.other} outline is its mirror: trace both, two "
                "rims are seldom quite alike"
            )
            return [Remark(name="one-rim-traced", text=text, eye=eye.other)]
        apart = differences(self.boxing(Eye.RIGHT), self.boxing(Eye.LEFT))
        return [
            Remark(
                name="rims-differ",
                text=f"right and left rim differ: {one.words}: look for a rim that is bent or sprung",
            )
            for one in apart
        ]

    def _against_stated(self) -> list[Remark]:
        return [
            Remark(
                name="trace-differs-from-boxing",
                text=f"as traced and as stated in the file: {one.words}: measure the rim by hand",
                eye=eye,
            )
            for eye in self.traced_eyes
            for one in differences(self.boxing(eye), self.stated(eye))
        ]

    def _bridge(self, dbl_mm: float | None) -> list[Remark]:
        if None in (dbl_mm, self.dbl_mm):
            return []
        if round(abs(dbl_mm - self.dbl_mm), _HUNDREDTHS) <= usual("boxing_differs"):
            return []
        text = f"DBL is {dbl_mm:g} mm on the ticket and {self.dbl_mm:g} mm in the trace file: measure it"
        return [Remark(name="bridge-differs", text=text)]


def traced_frame(traces: FrameTraces, *, dbl_mm: float | None = None, kind: str | None = None) -> Frame:
    """Return the frame that was traced, its boxing numbers from the traces.

    traces: of one rim or both.
    dbl_mm: distance between the lenses [mm]; None for the one the file states.
    kind: as in `Frame`, which also says what it raises.

    Raises LabError where neither tells the bridge.
    """
    bridge = traces.dbl_mm if dbl_mm is None else dbl_mm
    if bridge is None:
        raise LabError("dbl_mm is missing and the trace file states no DBL: measure the bridge and add it")
    for eye in EYES:
        traces.outline(eye)
    return Frame(a_mm=traces.a_mm, b_mm=traces.b_mm, dbl_mm=bridge, kind=kind, traces=traces)
