"""The glossary on the page: every word, found as it is typed, and nothing but plain text from the learner."""

from html import unescape

import pytest

from lablib.panels.glossary import Glossary
from lablib.questions.glossary import entries


@pytest.fixture
def glossary() -> Glossary:
    return Glossary()


def shown(glossary: Glossary) -> list[str]:
    """Return the words of the rows, in order."""
    rows = glossary._table.value.split('<th scope="row">')[1:]
    return [unescape(row.partition("<")[0]) for row in rows]


def said(glossary: Glossary) -> str:
    return unescape(glossary._count.value)


def test_at_first_every_word_is_there_with_all_its_parts(glossary: Glossary):
    assert shown(glossary) == [entry.word for entry in entries()]
    assert f"All {len(entries())} words." in said(glossary)
    row = next(part for part in glossary._table.value.split("<tr>") if ">vertex distance<" in part)
    assert "also: tested vertex distance; worn vertex distance" in row
    assert "<td>d, d1, d2 [mm]</td><td>03</td><td>ISO 13666</td>" in row


def test_the_table_has_a_heading_to_each_column_and_row(glossary: Glossary):
    assert glossary._table.value.count('<th scope="col">') == 5
    assert glossary._table.value.count('<th scope="row">') == len(entries())


def test_what_is_typed_is_found_at_each_key_and_counted_aloud(glossary: Glossary):
    assert glossary.box.continuous_update
    glossary.box.value = "sag"
    assert shown(glossary)[0] == "sagitta"
    assert len(shown(glossary)) < len(entries())
    assert f"{len(shown(glossary))} of {len(entries())} words for “sag”, the nearest first." in said(glossary)
    assert 'role="status" aria-live="polite"' in glossary._count.value
    glossary.box.value = ""
    assert len(shown(glossary)) == len(entries())


def test_show_all_empties_the_box(glossary: Glossary):
    glossary.box.value = "sag"
    glossary.all.click()
    assert glossary.box.value == ""
    assert len(shown(glossary)) == len(entries())


def test_what_is_not_there_is_said_and_stays_plain_text(glossary: Glossary):
    glossary.box.value = '<img src=x onerror="alert(1)">'
    assert glossary._table.value == ""
    assert "<img" not in glossary._count.value
    assert 'No word for “<img src=x onerror="alert(1)">”. Try its beginning, or fewer letters.' in said(
        glossary
    )


def test_every_standard_is_explained(glossary: Glossary):
    legend = glossary.widget.children[-1].value
    assert all(f"{standard}: " in legend for standard in {entry.standard for entry in entries()})
