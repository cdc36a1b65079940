"""The glossary and the lessons: no trade word is missing, and each stands in the lesson that teaches it."""

from pathlib import Path

import pytest
from nbformat.v4 import new_markdown_cell
from notebooks.known_words import Known
from notebooks.lesson import cells, headings, lesson_paths, prose, run
from notebooks.trade_words import in_prose, in_workings, on_panels, panel_labels, set_apart
from stand_ins import folded, lesson, save

from lablib.opening.lessons import find_lesson
from lablib.places import shipped
from lablib.questions.glossary import Entry, entries

KNOWN = Known(entries())
PAGE = "glossary.ipynb"
every_lesson = pytest.mark.parametrize("path", lesson_paths(), ids=lambda path: path.stem)


@every_lesson
def test_what_is_set_set_apart_is_a_word_of_the_glossary_or_stands_on_a_control(path: Path):
    assert set_apart(path, KNOWN) == []


@every_lesson
def test_what_stands_on_panels_is_in_the_glossary(path: Path):
    assert on_panels(path, KNOWN) == []


@every_lesson
def test_symbols_and_names_of_worked_examples_are_in_the_glossary(path: Path):
    assert in_workings(path, KNOWN) == []


@every_lesson
def test_terms_of_the_package_that_a_lesson_uses_are_in_the_glossary(path: Path):
    assert in_prose(path, KNOWN) == []


@every_lesson
def test_the_first_cell_leads_to_the_glossary(path: Path):
    assert f"({PAGE})" in cells(path)[0].source


def test_the_glossary_leads_back_to_every_lesson():
    links = [f"[{headings(path)[0][1]}]({path.name})" for path in lesson_paths()]
    page = prose(shipped("lessons") / PAGE)
    assert [link for link in links if link not in page] == []


def test_a_word_stands_in_the_lesson_that_is_said_to_teach_it():
    told = {path.stem[:2]: everything(path) for path in lesson_paths()}
    written = (entry for entry in entries() if entry.lesson in told)
    assert [entry.word for entry in written if not Known([entry]).holds(told[entry.lesson])] == []


def everything(path: Path) -> str:
    """Return all that a lesson says: its prose, its panels' labels, its worked examples."""
    return "\n".join([prose(path), *panel_labels(path), *map(str, run(path).printed)])


def test_the_glossary_opens_by_its_name_and_a_lesson_opens_first():
    folder = shipped("lessons")
    assert find_lesson(None, folder) == "01_start_here.ipynb"
    assert find_lesson("glossary", folder) == PAGE
    assert find_lesson("Glos", folder) == PAGE


# Stand-in lessons, each with something that no glossary holds.

STAND_IN_PANEL = """
# A panel with a control, a choice and a number that nobody has heard of.
from lablib.panels.panel import Panel
from lablib.panels.specs import Choice, Slider
from lablib.pictures.kept import KeptPicture

class Blank(KeptPicture):
    def build(self): pass
    def update(self, data): pass

class Quoins(Panel):
    draws = Blank
    controls = (
        Slider(name="quoin_mm", label="Quoin", unit="mm", low=0, high=1, step=1, value=0),
        Slider(name="axis_deg", label="Axis", unit="degrees", low=1, high=180, step=1, value=90),
        Choice(name="way", label="Sphere", options=("sphere", "trivet"), value="sphere"),
    )
    def compute(self, values): return values
    def numbers(self, data): return [("Axis of the mandrel", "1", "mm"), ("Axis", "2", "")]
    def sentence(self, data): return "Nothing."

panel = Quoins()
""".strip()
STAND_IN_WORKING = """
# A worked example with a symbol that nobody has heard of, and one with an unheard-of name.
from lablib.working import Term, Working
known = Term(symbol="S", value=1.0, unit="D", meaning="sphere")
strange = Term(symbol="Q_z", value=2.0, unit="mm", meaning="axis of the mandrel")
unnamed = Term(symbol="C", value=2.0, unit="D", meaning="trivet")
print(Working(what="sphere", symbol="S", formula="S * Q_z", terms=(known, strange), value=2.0, unit="D"))
print("So:", Working(what="sphere", symbol="S", formula="C", terms=(unnamed,), value=2.0, unit="mm"))
""".strip()


@pytest.fixture
def planted(tmp_path: Path) -> Path:
    """A lesson with planted words in its prose, on its panel and in its worked examples."""
    told = new_markdown_cell(
        "The *quoin* is on a panel; *second* and *the axis of a sphere* are known. **What happened.**\n"
        "Now move *mandrels* and the **trivet**. Its back vertex powers come from the front stack.\n\n"
        "## Sources\n\nFull circle."
    )
    made = lesson("99 Planted", told, folded(STAND_IN_PANEL), folded(STAND_IN_WORKING))
    return save(made, tmp_path / "99_planted.ipynb")


def test_a_planted_word_set_apart_is_found(planted: Path):
    assert set_apart(planted, KNOWN) == ["mandrels", "trivet"], "the quoin stands on a control"
    assert set_apart(planted, without("sphere")) == ["mandrels", "the axis of a sphere", "trivet"]


def test_a_planted_label_is_found_on_a_control_a_choice_and_a_number(planted: Path):
    assert on_panels(planted, KNOWN) == [
        "Axis of the mandrel (mandrel)",
        "Quoin (quoin)",
        "trivet (trivet)",
    ]


def test_a_planted_symbol_a_planted_unit_and_a_planted_name_are_found(planted: Path):
    assert in_workings(planted, KNOWN) == [
        "C [D], trivet",
        "Q_z [mm], axis of the mandrel",
        "S [mm], sphere",
    ]


def without(*words: str) -> Known:
    """Return the glossary without some of its entries."""
    return Known(entry for entry in entries() if entry.word not in words)


def test_a_term_of_the_package_is_found_when_its_entry_is_taken_away(planted: Path):
    assert in_prose(planted, KNOWN) == []
    assert in_prose(planted, without("back vertex power", "back vertex", "full circle")) == [
        "back vertex",
        "back vertex power",
    ]
    assert in_prose(planted, without("front stack")) == ["front stack"]


@pytest.mark.parametrize("word", ["effective diameter", "margin", "bevel"])
def test_an_entry_taken_away_is_missed_in_real_lessons(word: str):
    nets = (set_apart, on_panels, in_workings, in_prose)
    found = [missing for path in lesson_paths() for net in nets for missing in net(path, without(word))]
    assert found, word


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("lens", "lenses"),
        ("axis", "Axes"),
        ("base", "bases"),
        ("Prentice's rule", "PRENTICE’S RULES"),
        ("slab-off", "slab off"),
        ("pin", "the pin's"),
    ],
)
def test_a_word_is_known_in_the_plural_and_however_it_is_written(name: str, text: str):
    entry = Entry(word=name, meaning="It is.", lesson="01", standard="common practice")
    assert Known([entry]).left_over(text) == []
    assert Known([entry]).holds(text)
    assert not Known([entry]).holds("nothing of it")
