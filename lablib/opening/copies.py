"""The learner's working copies of the lessons: made, renewed while untouched, never written over.

A copy is touched when its source cells are no longer those that were given. Outputs and execution
counts do not count, because the page saves those by itself; nor does an empty cell, because running the
last cell leaves one.
"""

import hashlib
import json
import os
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import nbformat
from nbformat import NotebookNode

from lablib.errors import LabError

# Under this key a working copy carries what it was made from.
_KEY = "lablib"


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """What was done to the working copies.

    offered: names of touched lessons of which a newer one came with the workbook.
    kept: where the learner's own copy went when a fresh one was asked for.
    """

    offered: tuple[str, ...] = ()
    kept: Path | None = None


def prepare(shipped: Path, copies: Path, *, renew: str | None = None) -> Prepared:
    """Bring the learner's copies of all lessons up to date and return what there is to tell.

    shipped: folder of the lessons that came with the workbook.
    copies: folder of the learner's copies.
    renew: name of a lesson to replace even if it was touched; the learner's own is kept beside it.

    Raises LabError when a lesson cannot be read or the folder cannot be written.
    """
    try:
        copies.mkdir(parents=True, exist_ok=True)
        kept = _put_aside(shipped / renew, copies / renew) if renew else None
        lessons = sorted(shipped.glob("*.ipynb"))
        offered = tuple(lesson.name for lesson in lessons if _bring_up_to_date(lesson, copies / lesson.name))
    except OSError as fault:
        raise LabError(
            f"the working copies in {copies} cannot be written ({fault.strerror}): "
            "make room there, or set LABLIB_FOLDER to another folder"
        ) from None
    return Prepared(offered=offered, kept=kept)


def sign(copies: Path, data: Path) -> None:
    """Sign the working copies, so that the page runs them without asking whether they are trusted.

    Only notebooks without any output are signed: then nothing that came from elsewhere is trusted with them.

    copies: folder of the copies.
    data: Jupyter's data folder, where signatures are kept.
    """
    from nbformat.sign import NotebookNotary

    notary = NotebookNotary(data_dir=str(data))
    for copy in copies.glob("*.ipynb"):
        notebook = _read(copy)
        if notebook is not None and not _strip(notebook):
            notary.sign(notebook)
    notary.store.close()


def require_readable(copy: Path) -> None:
    """Say so if a working copy is no notebook any more.

    Raises LabError with the command that puts a fresh one in place.
    """
    if _read(copy) is None:
        raise LabError(
            f"your copy {copy} cannot be read as a notebook: `lablib open {copy.stem} --renew` keeps it "
            "under another name and puts a fresh one in place"
        )


def _bring_up_to_date(lesson: Path, copy: Path) -> bool:
    """Make, renew or clean one copy, and return whether a newer lesson is to be offered."""
    fresh = _fresh_copy(lesson)
    if not copy.exists():
        _write(fresh, copy)
        return False
    own = _read(copy)
    if own is None:
        return True
    newer = _given(own).get("file") != _given(fresh)["file"]
    if newer and not _touched(own, fresh):
        _write(fresh, copy)
        return False
    if _strip(own):
        _write(own, copy)
    return newer


def _fresh_copy(lesson: Path) -> NotebookNode:
    notebook = _read(lesson)
    if notebook is None:
        raise LabError(f"the lesson {lesson} cannot be read as a notebook: install the workbook again")
    _strip(notebook)
    file = hashlib.sha256(lesson.read_bytes()).hexdigest()
    notebook.metadata[_KEY] = NotebookNode(file=file, sources=_digest(notebook))
    return notebook


def _put_aside(lesson: Path, copy: Path) -> Path | None:
    """Rename a touched or unreadable copy to one with the date in its name, and return that."""
    if not copy.exists():
        return None
    own = _read(copy)
    if own is not None and not _touched(own, _fresh_copy(lesson)):
        return None
    stem = f"{copy.stem}.kept-{date.today().isoformat()}"
    kept = copy.with_name(f"{stem}.ipynb")
    count = 1
    while kept.exists():
        count += 1
        kept = copy.with_name(f"{stem}-{count}.ipynb")
    return copy.rename(kept)


def _touched(own: NotebookNode, fresh: NotebookNode) -> bool:
    return _digest(own) not in (_given(own).get("sources"), _given(fresh)["sources"])


def _given(notebook: NotebookNode) -> dict:
    given = notebook.metadata.get(_KEY)
    return given if isinstance(given, dict) else {}


def _digest(notebook: NotebookNode) -> str:
    cells = [[cell.cell_type, cell.source] for cell in notebook.cells if cell.source.strip()]
    return hashlib.sha256(json.dumps(cells).encode()).hexdigest()


def _strip(notebook: NotebookNode) -> bool:
    """Take out outputs, execution counts and stored widget state, and return whether there were any."""
    found = notebook.metadata.pop("widgets", None) is not None
    for cell in notebook.cells:
        if cell.cell_type == "code" and (cell.outputs or cell.execution_count is not None):
            cell.outputs, cell.execution_count, found = [], None, True
    return found


def _read(path: Path) -> NotebookNode | None:
    """Return a notebook, or None when the file is none."""
    try:
        text = path.read_text(encoding="utf-8")
        raw = json.loads(text)
        if not isinstance(raw, dict) or raw.get("nbformat") != nbformat.current_nbformat:
            return None
        nbformat.validate(raw)
        return nbformat.v4.reads(text)
    except (ValueError, nbformat.ValidationError):
        return None


def _write(notebook: NotebookNode, path: Path) -> None:
    """Write a notebook so that a crash leaves either the old file or the new one."""
    beside = path.with_name(f".{path.name}.{os.getpid()}")
    beside.write_text(nbformat.writes(notebook) + "\n", encoding="utf-8")
    beside.replace(path)
