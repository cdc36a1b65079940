"""Figures and findings of test tickets."""

from tickets import ticket

from lablib.job.figures import as_dict
from lablib.job.sheet import work


def figures(eye: str = "right", **parts: object) -> dict:
    """Return the figures of one eye of the ticket of `tickets.table`, single parts replaced."""
    return as_dict(work(ticket(**parts)))[eye]


def found(**parts: object) -> dict:
    """Return the words of every finding by its name and eye."""
    return {(one["name"], one["eye"]): one["text"] for one in as_dict(work(ticket(**parts)))["findings"]}


def eye_order(**parts: object) -> dict:
    """Return the order of one eye, -2.00 at 32 mm, single parts replaced."""
    return {"sphere_d": -2.0, "monocular_pd_mm": 32.0} | parts
