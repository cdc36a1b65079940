"""A ticket taken down the whole route of a job: read it, work it, print the job sheet.

`from lablib.job import Ticket, work` gives what lessons and others rely on.
"""

from importlib import import_module

_HOMES = {"Ticket": "lablib.job.ticket", "work": "lablib.job.sheet"}


def __getattr__(name: str) -> object:
    # Looked up late, so that importing one module of this package does not import them all.
    if name in _HOMES:
        return getattr(import_module(_HOMES[name]), name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
