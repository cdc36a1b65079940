"""Which lesson is meant: by number, by the start of its name, or the first."""

from pathlib import Path

from lablib.errors import LabError


def find_lesson(wanted: str | None, folder: Path) -> str:
    """Return the file name of the lesson that is meant.

    wanted: a number ("7" or "07"), the start of a name ("07_lens"), a full name, or None for the first.
    folder: the folder the lessons stand in.

    Raises LabError naming the lessons there are when it is none or more than one of them.
    """
    names = sorted(lesson.stem for lesson in folder.glob("*.ipynb"))
    if not names:
        raise LabError(f"there is no lesson in {folder}: install the workbook again")
    found = names[:1] if wanted is None else _matching(wanted.removesuffix(".ipynb"), names)
    if len(found) == 1:
        return f"{found[0]}.ipynb"
    if found:
        raise LabError(f"{wanted!r} is the start of more than one lesson: give one of {', '.join(found)}")
    raise LabError(f"there is no lesson {wanted!r}: give one of {', '.join(names)}")


def _matching(wanted: str, names: list[str]) -> list[str]:
    if wanted in names:
        return [wanted]
    if wanted.isascii() and wanted.isdigit():
        return [name for name in names if name.partition("_")[0].lstrip("0") == wanted.lstrip("0")]
    return [name for name in names if wanted and name.lower().startswith(wanted.lower())]
