"""A stack in its condition, as questions ask about it: one joint, and what age and dirt leave of it."""

from dataclasses import dataclass, replace

from lablib.bench.contact import Contact, r_eff_mm
from lablib.bench.holding import holding
from lablib.bench.joints import Joint, pad_age_factors
from lablib.bench.setup import Setup, block_face_left
from lablib.questions.bench_stack.words import BENCH, CENTRE_MM

# A joint by the place it has in the stack, and what of age, lens and block lies at it.
JOINTS = {
    "block to pad": ("age", "block"),
    "pad to coat": ("age", "skin"),
    "film to coat": ("skin",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _AsPrinted:
    """A contact with W and effective radius as they are printed."""

    w_mm3: float
    area_mm2: float

    @classmethod
    def of(cls, contact: Contact) -> "_AsPrinted":
        w = round(contact.w_mm3)
        return cls(w_mm3=w, area_mm2=w / round(r_eff_mm(contact), 1))


@dataclass(frozen=True, slots=True, kw_only=True)
class ConditionCase:
    """A stack and one joint of it.

    setup: the stack; joint: name of the joint, one of `JOINTS`.
    """

    setup: Setup
    joint: str

    @property
    def shares(self) -> dict[str, tuple[float, float]]:
        """What each condition leaves of shear strength and of friction."""
        skin = BENCH.skins[self.setup.skin]
        found = {
            "age": pad_age_factors(self.setup.pad_age_months, BENCH),
            "skin": (skin.shear_factor, skin.friction_factor),
            "block": block_face_left(self.setup.block_face),
        }
        return {name: tuple(round(left, 4) for left in shares) for name, shares in found.items()}

    @property
    def here(self) -> tuple[str, ...]:
        """Conditions that lie at the joint."""
        return JOINTS[self.joint]

    def found(self) -> Joint:
        """Return the joint as it is."""
        held = holding(self.setup, centre_thickness_mm=CENTRE_MM, bench=BENCH)
        joint = next(one for one in held.joints if one.name == self.joint)
        return replace(joint, contact=_AsPrinted.of(joint.contact))
