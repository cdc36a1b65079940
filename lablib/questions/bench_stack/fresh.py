"""What each joint bears new and clean, and what age and dirt leave of it: enough to weigh stacks by hand."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache

from lablib.bench.holding import Joint
from lablib.bench.setup import Setup
from lablib.questions.bench_stack.words import NMM_PER_NM, held
from lablib.working import Term

# By joint, in the order of the table: its symbol and what it is.
_TOLD = {
    "block to pad": ("T_block", "block to pad"),
    "pad core": ("T_core", "pad core"),
    "pad to uncoated": ("T_bare", "pad to a lens with no coat"),
    "pad to coated": ("T_coat", "pad to an ordinary coat"),
    "pad to slick": ("T_slick", "pad to a slick coat"),
    "pad to film": ("T_pf", "pad to film"),
    "film to lens": ("T_film", "film to the lens, coated or not"),
}
# By what lies on the lens: the symbol of the share it leaves, and its name.
_DIRT = {"fingerprint": ("f", "a fingerprint"), "oily": ("o", "oil")}
# On these the shares are measured: a pad on each ground, and a film.
_MEASURED = (Setup(coat="uncoated"), Setup(coat="coated"), Setup(coat="slick"), Setup(film=True))


def fresh(setup: Setup) -> Setup:
    """Return a stack as it would be with a new pad on a clean lens.

    setup: the stack.
    """
    return replace(setup, pad_age_months=0.0, skin="clean")


def fresh_nmm(setup: Setup, joint: Joint) -> float:
    """Return what a joint of a stack would bear new and clean [N mm].

    setup: the stack; joint: one of its front.
    """
    return next(one.torque_nmm for one in held(fresh(setup)).joints if one.name == joint.name)


@cache
def monthly_loss() -> float:
    """Return the share of its torque that a face of the pad loses a month, to half a per cent.

    Stickiness and friction age differently, so that no two faces lose the same: this is the mean.
    """
    lost = [1.0 - left for one in _MEASURED for left in _left(one, pad_age_months=1.0) if left < 1.0]
    return round(200.0 * sum(lost) / len(lost)) / 200.0


@cache
def left_by(skin: str) -> float:
    """Return the share of its torque that dirt leaves to the joint on the lens, to a hundredth: the mean.

    skin: what lies on the lens, "fingerprint" or "oily".
    """
    left = [list(_left(one, skin=skin))[-1] for one in _MEASURED]
    return round(sum(left) / len(left), 2)


def _left(setup: Setup, **changed: object) -> Iterator[float]:
    """Yield the share of its torque that each joint keeps when something is changed."""
    for new, now in zip(held(setup).joints, held(replace(setup, **changed)).joints, strict=True):
        yield now.torque_nmm / new.torque_nmm


def told_terms(setups: Iterable[Setup]) -> tuple[Term, ...]:
    """Return the joints of several stacks, new and clean, and what age and dirt do where there are such.

    setups: the stacks.
    """
    setups = tuple(setups)
    found = {_key(one, joint): joint for one in setups for joint in held(fresh(one)).joints}
    joints = (_torque(*_TOLD[key], found[key]) for key in _TOLD if key in found)
    age = Term(
        symbol="a",
        value=monthly_loss(),
        digits=3,
        meaning="share of its torque that a joint at a face of the pad loses each month, about",
    )
    dirt = (
        Term(symbol=symbol, value=left_by(skin), meaning=f"share {name} leaves to the joint on it, about")
        for skin, (symbol, name) in _DIRT.items()
        if any(one.skin == skin for one in setups)
    )
    return (
        *joints,
        *((age,) if any(one.pad_age_months for one in setups) else ()),
        *dirt,
    )


def _key(setup: Setup, joint: Joint) -> str:
    """Return under which name a joint is told: for the pad on a lens the coat makes the difference."""
    if joint.name in _TOLD:
        return joint.name
    return "film to lens" if setup.film else f"pad to {setup.coat}"


def _torque(symbol: str, words: str, joint: Joint) -> Term:
    told_nm = round(joint.torque_nmm, -1) / NMM_PER_NM
    return Term(symbol=symbol, value=told_nm, unit="N m", meaning=words)
