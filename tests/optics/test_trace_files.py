"""Trace files: what is written reads back as it was, and a bad file gives one error that names the line."""

import os
import re
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from traces import lines, raw

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.frame_traces import FrameTraces
from lablib.optics.trace import Trace, trace_format
from lablib.optics.trace_boxing import Boxing
from lablib.optics.trace_file import read_traces, traces_from
from lablib.optics.trace_writing import trace_text

BOX = ["JOB=T-7", "HBOX=50.00;50.20", "VBOX=50.00", "DBL=18", "FED=50;?", "CIRC=;157.1"]


def test_a_file_of_both_rims_is_read():
    found = traces_from(raw([*BOX, *lines(), *lines(eye="L", spacing="U")]), name="t")
    assert found.right == Trace(eye=Eye.RIGHT, radii=(2500,) * 40)
    assert found.left.angles == tuple(range(0, 36000, 900))
    assert found.right_stated == Boxing(a_mm=50.0, b_mm=50.0, effective_diameter_mm=50.0)
    assert found.left_stated == Boxing(a_mm=50.2, b_mm=50.0, circumference_mm=157.1)
    assert (found.dbl_mm, found.job, found.file, found.not_read) == (18.0, "T-7", "t", ())


@pytest.mark.parametrize("end", ["\r\n", "\n"])
def test_lines_end_with_or_without_carriage_return_and_empty_ones_are_passed_over(end: str):
    records = lines()
    found = traces_from(raw([records[0], "", *records[1:], "  "], end), name="t")
    assert found == traces_from(raw(records), name="t")
    # The last line need not be ended.
    assert traces_from(raw(records, end).removesuffix(end.encode()), name="t") == found


def test_other_records_are_left_unread_and_named():
    records = ["OMAV=3.0", *lines(), "Z=12;13;14", "Z=15", "_OWN=any; thing"]
    assert traces_from(raw(records), name="t").not_read == ("OMAV", "Z", "_OWN")


def test_a_letter_of_another_script_in_a_record_that_is_not_read_does_no_harm():
    assert traces_from(raw([*lines(), "CLIENT=M\xfcller"]), name="t").not_read == ("CLIENT",)


def test_what_was_traced_and_a_line_that_ends_with_its_separator():
    records = [one.replace("R;F", "R;L") for one in lines()]
    found = traces_from(raw([*records[:-1], f"{records[-1]};"]), name="t")
    assert (found.right.traced, len(found.right.radii)) == ("lens", 40)


def test_a_written_file_is_in_the_words_of_the_standard():
    text = trace_text(traces_from(raw([*BOX, *lines(), *lines(eye="L", spacing="U")]), name="t"))
    written = text.split("\r\n")
    assert written[:6] == [
        "JOB=T-7",
        "HBOX=50.00;50.20",
        "VBOX=50.00;50.00",
        "FED=50.00;?",
        "CIRC=?;157.10",
        "DBL=18.00",
    ]
    assert written[6] == "TRCFMT=1;40;E;R;F"
    assert written[7].startswith("R=2500;2500;")
    assert "TRCFMT=1;40;U;L;F" in written
    assert written[-1] == ""
    assert max(map(len, written)) <= trace_format()["bounds"]["longest_written"]
    assert "\n" not in text.replace("\r\n", "")


@st.composite
def traces(draw: st.DrawFn, eye: Eye) -> Trace:
    count = draw(st.integers(36, 120))
    radii = draw(st.lists(st.integers(100, 8000), min_size=count, max_size=count))
    angles = None
    if draw(st.booleans()):
        first = draw(st.integers(0, 36000 // count - 1))
        steps = draw(st.lists(st.integers(0, 200), min_size=count, max_size=count))
        angles = tuple(
            first + at * 36000 // count + step % max(36000 // count, 1) // 2 for at, step in enumerate(steps)
        )
        angles = tuple(min(one, 35999) for one in angles)
    return Trace(eye=eye, radii=tuple(radii), angles=angles, traced=draw(st.sampled_from(["frame", "lens"])))


boxing = st.builds(
    Boxing, **{name: st.none() | st.floats(0.01, 299.0) for name in Boxing.__dataclass_fields__}
)
both = st.builds(
    FrameTraces,
    right=traces(Eye.RIGHT),
    left=st.none() | traces(Eye.LEFT),
    right_stated=boxing,
    left_stated=boxing,
    dbl_mm=st.none() | st.floats(5.0, 40.0),
    job=st.text(alphabet="ABCxyz0123456789-. ;=", max_size=20).map(str.strip),
)


@settings(max_examples=60, deadline=None)
@given(written=both)
def test_what_is_written_reads_back_equal(written: FrameTraces):
    assert traces_from(trace_text(written).encode("ascii"), name="t") == written


def test_a_job_number_that_fits_on_no_line_is_refused():
    written = traces_from(raw(lines()), name="t")
    for job in ("T\n7", "x" * 80, "T-\xe9", " T"):
        with pytest.raises(
            LabError, match="does not fit on a line of a trace file: give up to 76 plain char"
        ):
            trace_text(FrameTraces(right=written.right, job=job))


HEAD = "TRCFMT=1;40;E;R;F"
NUMBERS = lines()[1:]


@pytest.mark.parametrize("end", [b"\n", b"\r", b"\r\n", b"\r\r\n"])
@pytest.mark.parametrize("before", [b"", b"\xef\xbb\xbf"])
def test_lines_end_as_on_any_machine_and_a_mark_before_the_text_is_passed_over(end: bytes, before: bytes):
    given = end.join(one.encode("ascii") for one in lines())
    assert traces_from(before + given, name="t") == traces_from(raw(lines()), name="t")


@pytest.mark.parametrize(
    ("records", "words"),
    [
        ([], "line 1: the file ends here and no TRCFMT stood in it: a trace begins with one"),
        (
            ["JOB=1", "DBL=18"],
            "line 2: the file ends here and no TRCFMT stood in it: a trace begins with one",
        ),
        ([*NUMBERS, HEAD], "line 1: R stands before any TRCFMT: a trace begins with its header"),
        ([HEAD], "line 1: TRCFMT promises 40 radii, 0 follow"),
        ([HEAD, *NUMBERS[:-1]], "line 1: TRCFMT promises 40 radii, 30 follow"),
        ([HEAD, *NUMBERS, "R=1"], "line 5: more than the 40 of line 1: radius too many"),
        (
            [*lines(spacing="U")[:-1]],
            "line 1: TRCFMT promises 40 angles, 36 follow",
        ),
        (
            [HEAD, *NUMBERS, "A=0;900"],
            "line 5: A gives angles, line 1 says equal angles (E): make them agree",
        ),
        (
            [HEAD, "R=2500;-3"],
            "line 2: radius 2: -3 hundredths or -0.03 is out of range: give from 1 to 80 mm",
        ),
        ([HEAD, "R=2500;;2500"], "line 2: radius 2 '' is not a whole number: write figures alone"),
        ([HEAD, "R=2500;25.5"], "line 2: radius 2 '25.5' is not a whole number: write figures alone"),
        ([HEAD, "R=nan"], "line 2: radius 1 'nan' is not a whole number: write figures alone"),
        (
            [HEAD, f"R={'9' * 70}"],
            f"line 2: radius 1 '{'9' * 40}' is not a whole number: write figures alone",
        ),
        (
            [*lines(), *lines()],
            "line 5: the right rim is traced a second time, the first in line 1: keep one, or mend the eye",
        ),
        (
            ["TRCFMT=1;40;E;R"],
            "line 1: TRCFMT has 4 field(s): give five: format, number of radii, E or U, R or L, F",
        ),
        (["TRCFMT=4;40;E;R;F"], "line 1: format '4' is not read here: ask the tracer for format 1"),
        (["TRCFMT=1;x;E;R;F"], "line 1: number of radii 'x' is not a whole number: write figures alone"),
        (
            ["TRCFMT=1;8;E;R;F"],
            "line 1: trace of a rim with 8 is out of range: give from 36 to 3600 radii",
        ),
        (
            ["TRCFMT=1;40;E;B;F"],
            "line 1: TRCFMT has 'B' for eye: give one of R (right), L (left)",
        ),
        (
            ["TRCFMT=1;40;E;R;X"],
            "line 1: TRCFMT has 'X' for traced: give one of F (frame), P (pattern), L (lens)",
        ),
        (["A=0;900", *lines()], "line 1: A stands before any TRCFMT: a trace begins with its header"),
        (
            [one.replace("A=0;900", "A=0;0") for one in lines(spacing="U")],
            "line 1: angle 2 of 0 follows 0: angles rise all the way round, in hundredths of a degree",
        ),
        (["HBOX=50;50;50", *lines()], "line 1: HBOX has 3 values: give right and left"),
        (["HBOX=wide", *lines()], "line 1: HBOX 'wide' is not a number: give millimetres"),
        (["HBOX=-5", *lines()], "line 1: HBOX -5 is not above 0: give millimetres"),
        (
            ["CIRC=900", *lines()],
            "line 1: circumference 900 is out of range: give above 0 and up to 300 mm",
        ),
        (["DBL=18", "DBL=18", *lines()], "line 2: DBL stands in line 1 already: give it once"),
        (["DBL=90", *lines()], "line 1: DBL 90 is out of range: give from 5 to 40 mm"),
        (["hello", *lines()], "line 1: 'hello' is no record: write LABEL=value;value"),
        ([HEAD, "R=2500\x00"], "line 2: a byte that is no text: a frame trace is plain text; check the name"),
        (["JOB=a\x86b", *lines()], r"line 1: JOB 'a\x86b' cannot be printed: write plain characters"),
        (
            [HEAD, f"R={'2500;' * 300}"],
            "line 2: 1502 characters long, 1000 at most: begin a further R record",
        ),
    ],
)
def test_a_bad_file_gives_one_error_that_names_the_file_and_the_line(records: list[str], words: str):
    with pytest.raises(LabError) as found:
        traces_from(raw(records), name="frame.txt")
    assert str(found.value).startswith(f"frame.txt: {words}")
    assert "\n" not in str(found.value)


@settings(max_examples=200, deadline=None)
@given(junk=st.binary(max_size=400))
@example(junk=b"\xff\xfeT\x00R\x00")
@example(junk=b"\x7fELF\x02\x01\x01")
def test_binary_junk_gives_one_error_with_a_line(junk: bytes):
    with pytest.raises(LabError, match=r"^t: line \d+: [^\n]+$"):
        traces_from(junk, name="t")


@settings(max_examples=150, deadline=None)
@given(
    at=st.integers(0, 7),
    text=st.text(alphabet="0123456789;=.-RALTCFMEUBHOX\r\n\x00 ", max_size=40),
)
def test_whatever_stands_in_a_line_the_answer_is_traces_or_one_error(at: int, text: str):
    records = [*BOX[:2], *lines()]
    records.insert(at, text)
    try:
        answer = traces_from(raw(records), name="t")
    except LabError as fault:
        answer = str(fault)
    assert isinstance(answer, FrameTraces) or re.fullmatch(r"t: line \d+: [^\n]+", answer)


def test_files_that_are_no_traces(tmp_path: Path):
    with pytest.raises(LabError, match=r"^none\.txt: cannot be opened \(no such file or directory\): check"):
        read_traces(tmp_path / "none.txt")
    with pytest.raises(LabError, match=r"not a file: give the name of a frame trace"):
        read_traces(tmp_path)
    pipe = tmp_path / "pipe"
    if hasattr(os, "mkfifo"):
        os.mkfifo(pipe)
        with pytest.raises(LabError, match=r"^pipe: not a file"):
            read_traces(pipe)


def test_of_a_file_of_50_megabytes_no_more_is_read_than_the_bound(tmp_path: Path, monkeypatch):
    path = tmp_path / "huge.txt"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    asked = []
    opened = Path.open

    def watched(self: Path, *given: object, **more: object):
        file = opened(self, *given, **more)
        read = file.read
        file_like = type("Watched", (), {"read": staticmethod(lambda size: asked.append(size) or read(size))})
        return type("Opened", (), {"__enter__": lambda _: file_like(), "__exit__": lambda *_: file.close()})()

    monkeypatch.setattr(Path, "open", watched)
    with pytest.raises(
        LabError, match=r"^huge\.txt: larger than 200000 bytes: a frame trace is short: check"
    ):
        read_traces(path)
    assert asked == [200_001]


def test_a_name_of_the_tickets_is_used_in_messages(tmp_path: Path):
    path = tmp_path / "frame.txt"
    path.write_bytes(raw(lines()))
    assert read_traces(path).file == "frame.txt"
    assert read_traces(path, named="rims/frame.txt").file == "rims/frame.txt"


def test_the_table_of_the_format_says_that_it_is_from_memory():
    table = trace_format()
    assert table["source"] == "ISO 16284, from memory"
    assert table["grade"] == "teaching estimate"
    assert set(table["label"]) >= {"TRCFMT", "R", "A", "HBOX", "VBOX", "DBL", "FED", "CIRC", "JOB"}
    assert "anticlockwise" in table["direction"]["words"]
