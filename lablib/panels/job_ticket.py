"""The values of the job panel as a ticket, and a ticket as values; what the panel cannot show is refused."""

from dataclasses import replace

from lablib.bench.machine import lens_material
from lablib.errors import LabError
from lablib.job.bench_order import Blocking, Cut
from lablib.job.ticket import EyeOrder, Ticket
from lablib.panels import lens_ticket
from lablib.panels.panel import Values

# Where the slider says so, the blank is cut from its own rim.
NOT_CRIBBED_MM = 25.0
YES, NO = "yes", "no"


def ticket_for(values: Values) -> Ticket:
    """Return a ticket for one eye with its blocking and its cut.

    values: by the control's name.

    Raises LabError when they do not go together.
    """
    ticket = lens_ticket.ticket_for(values)
    order = ticket.eyes[0]
    order = replace(order, lens=replace(order.lens, coat=values["coat"]))
    return replace(
        ticket,
        number="from the job panel",
        blocking=Blocking(film=values["film"] == YES, block=values["block"], skin=values["skin"]),
        cut=Cut(
            crib_allowance_mm=None if values["crib_mm"] == NOT_CRIBBED_MM else values["crib_mm"],
            depth_per_turn_mm=values["bite_mm"],
            wheel=values["wheel"],
        ),
        **{order.eye.value: order},
    )


def values_of(ticket: Ticket) -> tuple[Values, str]:
    """Return the values of the right eye, or of the left where there is no right one, and a remark.

    ticket: the job.

    Raises LabError for a prescription that is held, and for what changes the margin and has no control.
    """
    values, remark = lens_ticket.values_of(ticket, shown=("coat", "blocking", "cut"))
    order = ticket.eyes[0]
    _require_shown(ticket, order)
    blocking, cut = ticket.blocking, ticket.cut
    values |= {
        "coat": order.lens.coat,
        "film": YES if blocking.film else NO,
        "block": blocking.block,
        "skin": blocking.skin,
        "crib_mm": NOT_CRIBBED_MM if cut.crib_allowance_mm is None else cut.crib_allowance_mm,
        "bite_mm": _bite_mm(order, cut),
        "wheel": cut.wheel,
    }
    return values, remark


def _bite_mm(order: EyeOrder, cut: Cut) -> float:
    if cut.depth_per_turn_mm is not None or order.lens.material.cuts_like is None:
        return cut.depth_per_turn_mm
    return lens_material(order.lens.material.cuts_like).depth_per_turn_mm


# Keys of the blocking that this panel does not show, in words.
_OF_THE_GRIP = {
    "grip_layer": "the maker's grip layer",
    "film_wrinkle": "a crease in the film",
    "block_face": "a block that is not clean",
    "key_play_mm": "play at the block's key",
    "block_curve_d": "a block curve",
    "tip_face_mm": "a back tip of its own",
}

# Likewise of the cut.
_OF_THE_CUT = {
    "feed": "another feed than depth",
    "lens_speed_rpm": "a lens speed of its own",
    "water": "roughing wet or dry of its own",
}


def _require_shown(ticket: Ticket, order: EyeOrder) -> None:
    """Refuse a ticket whose margin would be another than the one shown."""
    usual, blocking, usual_cut = Blocking(), ticket.blocking, Cut()
    hidden = {
        "the prescribed prism": bool(order.prism),
        f"blocking point {blocking.blocking_point!r}": blocking.blocking_point != usual.blocking_point,
        "tape on the back": blocking.back_tape,
        f"a pad of {blocking.pad_age_months:g} months": blocking.pad_age_months != usual.pad_age_months,
        f"{blocking.temperature_c:g} degrees C": blocking.temperature_c != usual.temperature_c,
        "a clamp force of its own": blocking.clamp_force_n is not None,
        **{words: getattr(blocking, key) != getattr(usual, key) for key, words in _OF_THE_GRIP.items()},
        **{words: getattr(ticket.cut, key) != getattr(usual_cut, key) for key, words in _OF_THE_CUT.items()},
        "a crib allowance of 25 mm, which here means not cribbed": ticket.cut.crib_allowance_mm
        == NOT_CRIBBED_MM,
    }
    found = [words for words, there in hidden.items() if there]
    if found:
        raise LabError(
            f"The ticket asks for {', '.join(found)}: this panel has no control for it and would show "
            f"another margin; take it off the ticket, or print the job sheet instead"
        )
