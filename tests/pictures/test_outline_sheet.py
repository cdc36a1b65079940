"""The printable outlines: what stands on the page, in points of the PDF, and what the command says."""

import re
import zlib
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
from matplotlib.backends.backend_pdf import FigureCanvasPdf
from matplotlib.text import Text

from lablib.command import main
from lablib.errors import LabError
from lablib.job.demo import demo_path, demo_ticket
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.frame_traces import FrameTraces, traced_frame
from lablib.optics.trace import trace_of
from lablib.optics.trace_boxing import Boxing
from lablib.optics.trace_writing import trace_text
from lablib.pictures.outline_case import OutlineCase, case_of_ticket, case_of_traces, read_case
from lablib.pictures.outline_sheet import PAGES_MM, outline_figure, outline_pdf

# A point is 1/72 inch (PDF, ISO 32000).
MM = 72.0 / 25.4
PLACE = re.compile(r"(-?[\d.]+) (-?[\d.]+) ([ml])\b")
FRAME = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0)
LARGEST = Frame(a_mm=80.0, b_mm=70.0, dbl_mm=40.0, shape=OutlineShape.named("rectangle"))
SMALLEST = Frame(a_mm=20.0, b_mm=12.0, dbl_mm=5.0)
pages = pytest.mark.parametrize("page", PAGES_MM)


def content(pdf: bytes) -> str:
    """Return the drawing orders of the page."""
    streams = re.findall(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL)
    texts = []
    for stream in streams:
        try:
            texts.append(zlib.decompress(stream).decode("latin-1"))
        except zlib.error:
            continue
    (found,) = [text for text in texts if PLACE.search(text)]
    return found


def paths_mm(pdf: bytes) -> list[np.ndarray]:
    """Return every stroked path of the page as complex points from its lower left corner [mm]."""
    found: list[list[complex]] = []
    for x, y, order in PLACE.findall(content(pdf)):
        if order == "m":
            found.append([])
        found[-1].append(complex(float(x), float(y)) / MM)
    return [np.array(path) for path in found]


def straight(paths: list[np.ndarray]) -> list[np.ndarray]:
    """Return the paths of two points."""
    return [path for path in paths if path.size == 2]


@pages
def test_the_page_has_its_size(page: str):
    width, height = (float(one) * MM for one in PAGES_MM[page])
    (box,) = re.findall(rb"/MediaBox \[ ?0 0 ([\d.]+) ([\d.]+) ?\]", outline_pdf(case(FRAME), page=page))
    assert [float(one) for one in box] == pytest.approx([width, height], abs=0.01)


def case(frame: Frame, **more: object) -> OutlineCase:
    return OutlineCase(title="T-1", frame=frame, **more)


@pages
def test_the_line_to_measure_is_100_mm_long_and_the_upright_one_50(page: str):
    lines = straight(paths_mm(outline_pdf(case(FRAME), page=page)))
    spans = [line[1] - line[0] for line in lines]
    # A hundredth of a millimetre on 100: matplotlib writes points to six decimals, paper is worse.
    assert sum(abs(span - 100.0) < 0.01 for span in spans) == 1
    assert sum(abs(span - 50.0j) < 0.01 for span in spans) == 1


@pages
def test_the_ruler_has_a_stroke_at_every_millimetre(page: str):
    lines = straight(paths_mm(outline_pdf(case(FRAME), page=page)))
    base = next(line for line in lines if abs(line[1] - line[0] - 100.0) < 0.01)
    feet = sorted(
        line[0].real - base[0].real
        for line in lines
        if abs(line[0].imag - base[0].imag) < 0.001 and abs((line[1] - line[0]).real) < 1e-6
    )
    assert feet == pytest.approx(range(101), abs=0.005)


def rings(pdf: bytes) -> dict[Eye, np.ndarray]:
    """Return both outlines on the page, the right eye's the one on the left."""
    long = [path for path in paths_mm(pdf) if path.size > 500]
    assert len(long) == 2
    return dict(zip(EYES, sorted(long, key=lambda path: path.real.min()), strict=True))


@pages
@pytest.mark.parametrize(
    "frame",
    [FRAME, LARGEST, SMALLEST, Frame(a_mm=52.0, b_mm=42.0, dbl_mm=17.0, shape=OutlineShape.named("pilot"))],
)
def test_outlines_are_drawn_at_true_size_as_the_pair_is_worn(page: str, frame: Frame):
    found = rings(outline_pdf(case(frame), page=page))
    for eye, ring in found.items():
        outline = frame.outline(eye)
        middle = complex(
            PAGES_MM[page][0] / 2.0 - eye.nasal_sign * frame.bridge_to_boxed_centre_mm, ring[0].imag
        )
        expected = outline.x_mm + 1j * outline.y_mm
        np.testing.assert_allclose(ring[:-1] - middle, expected, atol=0.001)
        assert ring[0] == pytest.approx(ring[-1])
    gap = found[Eye.LEFT].real.min() - found[Eye.RIGHT].real.max()
    assert gap == pytest.approx(frame.dbl_mm, abs=0.02)


@pages
@pytest.mark.parametrize("frame", [FRAME, LARGEST, SMALLEST])
def test_everything_lies_on_the_sheet_with_a_rim_that_printers_leave_white(page: str, frame: Frame):
    width, height = PAGES_MM[page]
    notes = ("Note: " + "a word " * 16,) * 4
    sheet = case(frame, right_mm=(3.0, 2.0), left_mm=(-3.0, -2.0), notes=notes, source="where from")
    points = np.concatenate(paths_mm(outline_pdf(sheet, page=page)))
    assert 6.0 < points.real.min() < points.real.max() < width - 6.0
    assert 6.0 < points.imag.min() < points.imag.max() < height - 6.0
    boxes = word_boxes(outline_figure(sheet, page=page))
    for text, (left, low, right, high) in boxes:
        assert 6.0 < left < right < width - 6.0, text
        assert 6.0 < low < high < height - 6.0, text
    for (one, box), (other, other_box) in combinations(boxes, 2):
        assert not over(box, other_box), (one, other)


def word_boxes(figure) -> list[tuple[str, tuple[float, ...]]]:
    """Return every text with its box on the page [mm]."""
    canvas = FigureCanvasPdf(figure)
    figure.dpi = 72
    renderer = canvas.get_renderer() if hasattr(canvas, "get_renderer") else None
    return [
        (text.get_text(), tuple(part / MM for part in text.get_window_extent(renderer).extents))
        for text in figure.findobj(Text)
        if text.get_text()
    ]


def over(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def ends_of(figure, gid: str) -> np.ndarray:
    """Return a line of the figure by its name, as complex points [mm]."""
    (line,) = figure.findobj(lambda artist: artist.get_gid() == gid)
    return line.get_xdata() + 1j * np.asarray(line.get_ydata())


@pages
@pytest.mark.parametrize("eye", EYES)
def test_the_centration_point_lies_in_and_up_from_the_boxed_centre(page: str, eye: Eye):
    figure = outline_figure(case(FRAME, **{f"{eye}_mm": (3.0, 2.0)}), page=page)
    across = ends_of(figure, f"centration-across-{eye}").mean()
    middle = complex(ends_of(figure, f"upright-{eye}").mean().real, ends_of(figure, "midline").mean().imag)
    assert across - middle == pytest.approx(complex(3.0 * eye.nasal_sign, 2.0))
    # Nearer to the bridge than the boxed centre.
    bridge = ends_of(figure, "bridge").mean().real
    assert abs(across.real - bridge) == pytest.approx(abs(middle.real - bridge) - 3.0)
    assert not figure.findobj(lambda artist: artist.get_gid() == f"centration-across-{eye.other}")


def texts(figure) -> str:
    return " ".join(text.get_text() for text in figure.findobj(Text))


def test_the_sheet_of_a_ticket_says_whose_it_is_and_how_to_print_it():
    words = texts(outline_figure(case_of_ticket(demo_ticket("traced-frame"))))
    for part in (
        "Outlines at true size: HS-008 traced frame",
        "Measure this line: it is 100 mm long. Print at 100 %, not fitted to the page.",
        "the wearer's right lens is on the left",
        "A 51.11, B 41.05, DBL 18.00 mm, as traced",
        "centration point 3.1 mm in, 2.0 mm up",
        "It is not a pattern to cut by.",
        "Measure the frame itself",
        "from memory (ISO 16284)",
    ):
        assert part in words


def test_a_shape_of_our_own_is_said_to_be_one():
    words = texts(outline_figure(case_of_ticket(demo_ticket("easy-minus"))))
    assert "Outlines of a shape of our own, fitted to A and B: they are no frame that can be bought." in words
    assert "centration point 2.0 mm in, 0.0 mm up" in words


def test_what_the_traces_have_to_say_stands_on_the_sheet():
    trace = trace_of(FRAME.outline(Eye.RIGHT), Eye.RIGHT)
    words = case_of_traces(FrameTraces(right=trace, dbl_mm=18.0, job="T-5"))
    assert words.title == "T-5"
    assert " ".join(words.notes).startswith(
        "Note: left eye: only the right rim was traced and the left outline"
    )
    assert words.words(Eye.LEFT) == ("left lens", "A 50.00, B 36.00, ED 50.3 mm", "no centration point given")
    far_off = Boxing(a_mm=60.0, b_mm=60.0, effective_diameter_mm=60.0, circumference_mm=60.0)
    many = case_of_traces(FrameTraces(right=trace, right_stated=far_off, dbl_mm=18.0, file="t.txt"))
    assert many.notes[-1] == "Note: 4 further remarks on the traces; measure the frame by hand."
    assert many.title == "t.txt"


def test_the_same_case_gives_the_same_file():
    frame = traced_frame(FrameTraces(right=trace_of(FRAME.outline(Eye.RIGHT), Eye.RIGHT), dbl_mm=18.0))
    assert outline_pdf(case(frame)) == outline_pdf(case(frame))


def test_a_page_that_is_not_known_is_refused():
    with pytest.raises(LabError, match="page 'a3' is not known: give one of a4, letter"):
        outline_figure(case(FRAME), page="a3")


def test_traces_that_state_no_bridge_are_refused(tmp_path: Path):
    trace = trace_of(FRAME.outline(Eye.RIGHT), Eye.RIGHT)
    (tmp_path / "t.txt").write_bytes(trace_text(FrameTraces(right=trace)).encode())
    with pytest.raises(LabError, match=r"t\.txt: states no DBL, so it is not known how far apart the lenses"):
        read_case(str(tmp_path / "t.txt"))


def test_a_centre_outside_the_lens_is_refused_with_the_tickets_name(tmp_path: Path):
    path = tmp_path / "job.toml"
    text = demo_path("easy-minus").read_text(encoding="utf-8")
    path.write_text(text.replace("a_mm = 50.0", "a_mm = 20.0").replace("= 32.0", "= 45.0"), encoding="utf-8")
    with pytest.raises(
        LabError, match=r"job\.toml: monocular_pd_mm 45 puts the optical centre 26 mm from the"
    ):
        read_case(str(path))


def test_the_command_writes_a_file_and_never_over_another(tmp_path: Path, capsys: pytest.CaptureFixture):
    out = tmp_path / "outlines.pdf"
    assert main(["outline", "traced-frame", "--out", str(out), "--page", "letter"]) == 0
    assert capsys.readouterr().out == (
        f"Written to {out}. Print it at 100 %, then measure its line of 100 mm before the outlines are "
        "trusted.\n"
    )
    written = out.read_bytes()
    assert written == outline_pdf(case_of_ticket(demo_ticket("traced-frame")), page="letter")
    assert main(["outline", "easy-minus", "--out", str(out)]) == 2
    assert capsys.readouterr().err == f"{out} is there already and was left as it is: give another name\n"
    assert out.read_bytes() == written


def test_the_command_takes_a_trace_by_its_file(tmp_path: Path, capsys: pytest.CaptureFixture):
    out, trace = tmp_path / "outlines.pdf", demo_path("traced-frame").with_name("traced-frame-rims.txt")
    assert main(["outline", str(trace), "--out", str(out)]) == 0
    assert out.read_bytes() == outline_pdf(read_case(str(trace)))


@pytest.mark.parametrize(
    ("what", "out", "words"),
    [
        ("traced-frame", "outlines.txt", "outlines.txt does not end in .pdf: give the name of a PDF file"),
        ("nothing", "new.pdf", "demo ticket 'nothing' is not there: give one of blank-too-small, "),
        ("none.toml", "new.pdf", "none.toml: cannot be opened (no such file or directory): check the name"),
        ("none.txt", "new.pdf", "none.txt: cannot be opened (no such file or directory): check the name"),
        (
            "traced-frame",
            "nowhere/new.pdf",
            "cannot be written (No such file or directory): give a file in a",
        ),
    ],
)
def test_what_the_command_cannot_do_it_says_in_words(
    what: str, out: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    assert main(["outline", what, "--out", out]) == 2
    assert words in capsys.readouterr().err
    assert not (tmp_path / out).exists()
