"""Tables of facts about materials: complete, readable, with their cautions and sources."""

import pytest

from lablib.optics.care import care_cautions
from lablib.optics.fitness import pairings
from lablib.optics.impact import impact_cautions
from lablib.optics.material import materials
from lablib.optics.operations import before_rules
from lablib.panels.material_tables import FactTable, care_facts, order_facts, pairing_facts

TABLES = {"care": care_facts, "order": order_facts, "pairings": pairing_facts}


@pytest.mark.parametrize("table", TABLES.values(), ids=TABLES.keys())
def test_every_cell_has_words_and_every_row_all_columns(table):
    shown = table()
    assert {len(row) for row in shown.rows} == {len(shown.heads)}
    assert sum(shown.heads.values()) == 100
    assert all(words.strip() == words != "" for row in shown.rows for words in row)
    assert all(note.endswith(".") for note in shown.notes)


def test_every_material_stands_in_its_row():
    shown = care_facts()
    assert [row[0].lower() for row in shown.rows] == [
        material.words.lower() for material in materials().values()
    ]
    assert set(care_cautions()) <= set(shown.notes)
    assert any("from memory" in note for note in shown.notes)


def test_every_rule_of_the_order_stands_in_its_row():
    shown = order_facts()
    assert [row[2] for row in shown.rows] == [rule.reason for rule in before_rules()]
    assert {row[3] for row in shown.rows} == {"all", "glass", "plastics"}


def test_what_is_refused_comes_first():
    decisions = [row[1] for row in pairing_facts().rows]
    assert len(decisions) == len(pairings())
    assert decisions == sorted(decisions, key=["refuse", "hold", "change"].index)
    assert set(impact_cautions()) <= set(pairing_facts().notes)


def test_words_are_written_so_that_no_sign_is_lost():
    shown = FactTable(heads={"a": 100}, rows=[("<b>",)], notes=("1 < 2.",))
    assert '<th scope="row">&lt;b&gt;</th>' in shown.html
    assert "1 &lt; 2." in shown.html


def test_it_is_shown_under_the_cell(monkeypatch):
    seen = []
    monkeypatch.setattr("lablib.panels.material_tables.display", seen.append)
    shown = care_facts()
    shown.show()
    assert seen == [shown.widget]
    assert "polycarbonate 1.59" in shown.widget.children[-1].value
