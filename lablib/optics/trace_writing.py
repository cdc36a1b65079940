"""Traces written as a trace file in the open data-exchange standard; reading it gives equal traces.

What is written of ISO 16284 is from memory; `trace_format.toml` says what each label is taken to mean.
"""

from collections.abc import Iterator, Sequence

from lablib.errors import LabError
from lablib.optics.eye import EYES
from lablib.optics.frame_traces import FrameTraces
from lablib.optics.trace import Trace, trace_format
from lablib.optics.trace_records import BOXING_LABELS

_END = "\r\n"


def trace_text(traces: FrameTraces) -> str:
    """Return traces as the text of a trace file, lines ended by carriage return and line feed.

    traces: of one rim or both. Labels that were not read are not written.

    Raises LabError for a job number that does not fit on one line.
    """
    lines = [*_head(traces)]
    for eye in traces.traced_eyes:
        lines += _rim(traces.trace(eye))
    return "".join(f"{line}{_END}" for line in lines)


def _head(traces: FrameTraces) -> Iterator[str]:
    if traces.job:
        yield f"JOB={_checked_job(traces.job)}"
    for label, name in BOXING_LABELS.items():
        values = [getattr(traces.stated(eye), name) for eye in EYES]
        if values != [None, None]:
            yield f"{label}={';'.join('?' if one is None else f'{one:.2f}' for one in values)}"
    if traces.dbl_mm is not None:
        yield f"DBL={traces.dbl_mm:.2f}"


def _checked_job(job: str) -> str:
    longest = trace_format()["bounds"]["longest_written"]
    if not (job.isascii() and job.isprintable() and job == job.strip()) or len(job) > longest - len("JOB="):
        raise LabError(
            f"job {job!r} does not fit on a line of a trace file: give up to {longest - len('JOB=')} plain "
            "characters"
        )
    return job


def _rim(trace: Trace) -> Iterator[str]:
    known = trace_format()
    spacing = "equal angles" if trace.angles is None else "unequal angles"
    words = (("spacing", spacing), ("eye", trace.eye.value), ("traced", trace.traced))
    letters = [_letter(known[kind], wanted) for kind, wanted in words]
    yield f"TRCFMT={';'.join([known['format']['plain'], str(len(trace.radii)), *letters])}"
    yield from _numbers("R", trace.radii)
    yield from _numbers("A", trace.angles or ())


def _letter(known: dict[str, str], wanted: str) -> str:
    return next(letter for letter, words in known.items() if words == wanted)


def _numbers(label: str, numbers: Sequence[int]) -> Iterator[str]:
    """Records of one label, each as long as the standard allows."""
    longest = trace_format()["bounds"]["longest_written"]
    line = ""
    for number in numbers:
        longer = f"{line};{number}" if line else f"{label}={number}"
        if len(longer) > longest:
            yield line
            longer = f"{label}={number}"
        line = longer
    if line:
        yield line
