"""What materials bear, and in which order a lens is worked."""

import itertools

import pytest

from lablib.datafile import GRADES
from lablib.errors import LabError
from lablib.optics.care import (
    SOLVENTS,
    TOUGHNESSES,
    WHEELS,
    bath_words,
    care,
    care_cautions,
    care_table,
    toughness_words,
)
from lablib.optics.material import materials
from lablib.optics.operations import (
    before_rules,
    broken_rules,
    in_order,
    is_settled,
    operations,
    operations_source,
)


def test_every_material_is_in_the_table_with_words_that_are_known():
    assert tuple(care_table()) == tuple(materials())
    for one in care_table().values():
        assert one.toughness in TOUGHNESSES
        assert one.bath in bath_words()
        assert one.wheel in WHEELS
        assert one.hard_coat in ("none", "advised", "needed")
        assert set(one.attacked_by) <= set(SOLVENTS)
        assert one.grade in GRADES
        assert "common practice" in one.source
        assert one.material.name == one.name


def test_what_the_trade_teaches_of_some():
    assert care("polycarbonate-1.59").attacked_by == ("acetone",)
    assert [name for name, one in care_table().items() if one.toughness == "tough"] == [
        "urethane-1.53",
        "polycarbonate-1.59",
    ]
    assert [name for name, one in care_table().items() if one.wheel == "glass"] == ["crown-glass-1.523"]
    assert not care("hard-resin-1.50").holes
    assert [name for name, one in care_table().items() if one.hardened] == ["crown-glass-1.523"]
    assert list(toughness_words()) == list(TOUGHNESSES)
    assert "Acetone destroys polycarbonate" in care_cautions()[0]


def test_what_is_not_in_the_table_is_asked_of_its_maker():
    with pytest.raises(
        LabError, match=r"what material 'wood' bears is not in the table: .* or ask its maker"
    ):
        care("wood")


RESIN = ("surface", "tint", "hard-coat", "anti-reflection", "edge", "mount")
GLASS = ("surface", "edge", "drill", "harden", "drop-ball", "mount")


@pytest.mark.parametrize(("steps", "kind"), [(RESIN, "plastics"), (GLASS, "glass")])
def test_the_usual_order_breaks_nothing_and_is_the_only_one_but_for_where_rules_leave_a_choice(
    steps: tuple[str, ...], kind: str
):
    assert broken_rules(steps, kind=kind) == ()
    assert in_order(steps[::-1], kind=kind) == steps
    sound = [one for one in itertools.permutations(steps) if not broken_rules(one, kind=kind)]
    assert (len(sound) == 1) == is_settled(steps, kind=kind)


def test_rules_are_named_with_their_reason():
    (tint,) = broken_rules(("anti-reflection", "tint"), kind="plastics")
    assert tint.name == "tint-before-anti-reflection"
    assert "no dye" in tint.reason
    assert broken_rules(("harden", "edge"), kind="glass")[0].name == "edge-before-hardening"
    assert broken_rules(("anti-reflection", "hard-coat"), kind="glass") == ()
    assert len({rule.name for rule in before_rules()}) == len(before_rules())
    for rule in before_rules():
        assert {rule.first, rule.then} <= set(operations())
    assert "from memory" in operations_source()


def test_any_set_of_operations_can_be_put_in_order():
    for kind in WHEELS:
        for count in range(1, len(operations()) + 1):
            for some in itertools.combinations(operations(), count):
                assert broken_rules(in_order(some, kind=kind), kind=kind) == ()


def test_operations_that_cannot_be_are_refused():
    with pytest.raises(LabError, match="operation 'polish' is not known: give one of surface"):
        broken_rules(("polish",), kind="plastics")
    with pytest.raises(LabError, match="operation tint comes twice: each is done once"):
        broken_rules(("tint", "tint"), kind="plastics")
    with pytest.raises(LabError, match="kind of material 'wood' is not known"):
        in_order(("tint",), kind="wood")
