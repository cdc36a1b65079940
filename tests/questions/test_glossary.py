"""The glossary: its data are complete, a word is found by what people type, and a faulty entry is named."""

import pytest

from lablib.datafile import read_table
from lablib.errors import LabError
from lablib.questions.glossary import Entry, entries, found, glossary_of

GOOD = {"meaning": "What it is.", "lesson": "07", "standard": "common practice"}


def words(wanted: str) -> list[str]:
    return [entry.word for entry in found(wanted)]


def test_the_entries_stand_in_the_order_of_the_alphabet_in_the_file_too():
    table = read_table("lablib.questions", "glossary.toml")["entry"]

    assert [entry.word for entry in entries()] == list(table)
    assert len(table) > 100


def test_an_entry_has_its_parts():
    entry = next(entry for entry in entries() if entry.word == "vertex distance")

    assert entry.names[:2] == ("vertex distance", "tested vertex distance")
    assert (entry.symbols, entry.unit, entry.lesson) == (("d", "d1", "d2"), "mm", "03")
    assert entry.standard == "ISO 13666"


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("axis", "axis"),
        ("AXIS", "axis"),
        (" axis ", "axis"),
        ("F_c", "cross curve"),
        ("PD", "monocular distance"),
        ("least blank, by rule", "least blank by rule"),
        ("least blank", "least blank"),
        ("sagi", "sagitta"),
        ("blank least", "least blank"),
        ("plunger fixed", "lens measure"),
    ],
)
def test_the_nearest_word_comes_first(typed: str, first: str):
    assert words(typed)[0] == first


def test_the_whole_word_comes_before_its_beginning_and_both_before_a_mention():
    assert words("pin")[0] == "pin"
    assert words("pin").index("pin") < words("pin").index("plunger")
    assert "spectacle magnification" not in words("tacle"), "the middle of a word is not looked for"


def test_a_lesson_and_a_standard_are_found_with_all_their_words():
    assert set(words("06")) == {entry.word for entry in entries() if entry.lesson == "06"}
    assert set(words("ISO 8624")) == {entry.word for entry in entries() if entry.standard == "ISO 8624"}


def test_a_letter_finds_the_symbol_in_its_own_case():
    symbols = {entry.word for entry in entries() if "S" in entry.symbols}

    assert set(words("S")[: len(symbols)]) == symbols
    assert not set(words("s")[:1]) & symbols


@pytest.mark.parametrize("typed", ["", "   "])
def test_an_empty_box_finds_everything(typed: str):
    assert found(typed) == entries()


@pytest.mark.parametrize("typed", ["quoin", "axis quoin", "((", "a**", "\\", "<b>"])
def test_what_is_not_there_is_not_found(typed: str):
    assert found(typed) == ()


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"word": ""}, "glossary: '' has the name or symbol '': give one without spaces around it"),
        (
            {"other": ("pin ",)},
            "glossary: 'pin' has the name or symbol 'pin ': give one without spaces around it",
        ),
        ({"symbols": (3,)}, "glossary: 'pin' has the name or symbol 3: give one without spaces around it"),
        (
            {"meaning": "A foot"},
            "glossary: 'pin' has the meaning 'A foot': give 1 to 45 words that end with a full stop",
        ),
        ({"lesson": "7"}, "glossary: 'pin' has the lesson '7': give its number in two digits"),
        (
            {"standard": "ISO 1"},
            "glossary: 'pin': standard 'ISO 1' is not known: give one of ISO 13666, ISO 8624, ISO 8429, "
            "common practice, our own word",
        ),
    ],
)
def test_a_faulty_part_is_named(change: dict, said: str):
    with pytest.raises(LabError) as raised:
        Entry(**({"word": "pin"} | GOOD | change))
    assert str(raised.value) == said


def test_a_meaning_that_goes_on_is_refused():
    Entry(word="pin", **GOOD | {"meaning": f"{'so ' * 44}on."})
    with pytest.raises(LabError, match="give 1 to 45 words that end with a full stop"):
        Entry(word="pin", **GOOD | {"meaning": f"{'so ' * 45}on."})


def test_a_name_that_two_entries_have_is_refused():
    with pytest.raises(LabError) as raised:
        glossary_of({"pin": GOOD | {"other": ["foot"]}, "plunger": GOOD | {"other": ["Foot"]}})
    assert str(raised.value) == ("glossary: 'Foot' stands under 'pin' and under 'plunger': leave it with one")


@pytest.mark.parametrize("row", [GOOD | {"colour": "red"}, {"meaning": "What it is."}])
def test_a_part_too_many_or_missing_is_named(row: dict):
    with pytest.raises(LabError, match=r"glossary: 'pin' has not the parts of an entry \(.*\): see Entry"):
        glossary_of({"pin": row})
