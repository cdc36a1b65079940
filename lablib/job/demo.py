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


def file_named(name: str) -> Path:
    """Return the file that a word of the command line means.

    name: path of a file; a bare word that is no file names a demo ticket.

    Raises LabError with the names there are, for a bare word that is neither.
    """
    path = Path(name)
    try:
        is_there = path.exists()
    except OSError:
        # Whoever opens it learns why it cannot be had.
        is_there = True
    return path if path.suffix or is_there else demo_path(name)


def _folder() -> Path:
    return Path(str(resources.files("lablib.job") / "demo_tickets"))
