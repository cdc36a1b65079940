"""Demo tickets that come with the workbook: invented jobs of an invented lab."""

from importlib import resources
from pathlib import Path

from lablib.errors import LabError
from lablib.job.ticket import Ticket


def demo_names() -> tuple[str, ...]:
    """Return the names of the demo tickets, in alphabetical order."""
    return tuple(sorted(path.stem for path in _folder().iterdir() if path.suffix == ".toml"))


def demo_path(name: str) -> Path:
    """Return the file of a demo ticket.

    name: as in `demo_names`.

    Raises LabError with the names there are.
    """
    if name not in demo_names():
        raise LabError(f"demo ticket {name!r} is not there: give one of {', '.join(demo_names())}")
    return _folder() / f"{name}.toml"


def demo_ticket(name: str) -> Ticket:
    """Return a demo ticket.

    name: as in `demo_names`.

    Raises LabError with the names there are.
    """
    return Ticket.read(demo_path(name))


def _folder() -> Path:
    return Path(str(resources.files("lablib.job") / "demo_tickets"))
