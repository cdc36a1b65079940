"""The learner's record: what was answered, what was dealt, where one had got to. One small file a learner.

Answers are only ever added. A crash, a second window or a damaged file loses none that was acknowledged.
"""

import json
import sqlite3
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import TypeVar

from lablib import places
from lablib.errors import LabError
from lablib.study import record_checks as checks
from lablib.study.record_exchange import Merged, contents_of, export_text, take_in
from lablib.study.record_file import UnusableError, transaction
from lablib.study.record_opening import hopeless, open_record
from lablib.study.record_rows import put_row, read_rows
from lablib.study.record_schema import MIGRATIONS, Migrations
from lablib.study.record_values import Attempt, Beginning, Dealing, Note, new_id, now, now_after

__all__ = ["MIGRATIONS", "Attempt", "Merged", "Record"]

_ResultT = TypeVar("_ResultT")
_BY_TIME = "at, place"
_DEALT_LAST = "SELECT seed FROM dealing WHERE lesson = ? AND maker = ? ORDER BY at DESC, place DESC LIMIT 1"
_DRAFT_OF_QUESTION = "DELETE FROM draft WHERE lesson = ? AND maker = ? AND seed = ?"
# A clock that is set right by the network goes back by this much at most; by more, it was wrong before.
_CLOCK_SET_BACK = timedelta(minutes=1)


class Record:
    """A learner's record in its file, which is made if it is not there and rescued if it is damaged.

    path: the file.
    migrations: as in `record_schema`.

    `learner_id` tells its learner from others; `trouble` says in words what was wrong with the file, "" if
    nothing was. Several processes may use one record at once.

    Raises LabError, here and in every method, when the file cannot be made, read or written; when a later
    workbook made it; or for an argument that cannot be kept.
    """

    def __init__(self, path: Path, *, migrations: Migrations = MIGRATIONS) -> None:
        if not isinstance(path, Path):
            raise LabError(f"record {path!r} is no path: give a pathlib.Path")
        self.path = path.absolute()
        self.trouble = ""
        self._migrations = migrations
        self._open()

    @classmethod
    def of_learner(cls) -> "Record":
        """Return the record of the learner at work here."""
        return cls(places.record_file())

    def add(
        self,
        *,
        lesson: str,
        maker: str,
        seed: int,
        given: object,
        state: str,
        slips: tuple[str, ...] | list[str] = (),
        hints: int = 0,
    ) -> Attempt:
        """Add an answer and return it once it is on the disk; a draft of it is gone then.

        lesson, maker, seed, given, state, slips, hints: as in `Attempt`.
        """
        attempt = Attempt(
            id=new_id(),
            at=now(),
            lesson=lesson,
            maker=maker,
            seed=seed,
            given=given,
            state=state,
            slips=slips,
            hints=hints,
        )

        def write(db: sqlite3.Connection) -> Attempt:
            last = db.execute("SELECT at FROM attempt ORDER BY place DESC LIMIT 1").fetchone()
            timed = replace(attempt, at=now_after(last and last[0], within=_CLOCK_SET_BACK))
            put_row(db, timed)
            db.execute(_DRAFT_OF_QUESTION, (timed.lesson, timed.maker, timed.seed))
            return timed

        return self._write(write)

    def attempts(self, *, lesson: str | None = None, maker: str | None = None) -> tuple[Attempt, ...]:
        """Return the answers in the order of their times.

        lesson, maker: to return only those of one lesson, of one question maker, or of both.
        """
        if lesson is not None:
            checks.require_name("lesson", lesson)
        if maker is not None:
            checks.require_name("question maker", maker)
        return self._read(lambda db: read_rows(db, Attempt, order=_BY_TIME, lesson=lesson, maker=maker))

    def makers_with(self, state: str) -> frozenset[tuple[str, str]]:
        """Return lesson and maker of every answer that was marked so.

        state: the mark's stable name.
        """
        query = "SELECT DISTINCT lesson, maker FROM attempt WHERE state = ?"
        return frozenset(self._read(lambda db: db.execute(query, (state,)).fetchall()))

    def deal(self, *, lesson: str, maker: str, seed: int) -> None:
        """Note that a maker's place in a lesson shows another question from now on.

        lesson, maker, seed: of the question.
        """
        dealing = Dealing(id=new_id(), at=now(), lesson=lesson, maker=maker, seed=seed)

        def write(db: sqlite3.Connection) -> None:
            # Later than any other for this place, whatever the clock was when that was noted.
            (last,) = db.execute(
                "SELECT max(at) FROM dealing WHERE lesson = ? AND maker = ?", (dealing.lesson, dealing.maker)
            ).fetchone()
            put_row(db, replace(dealing, at=now_after(last)))

        self._write(write)

    def dealt(self, lesson: str) -> dict[str, tuple[int, int]]:
        """Return, for each maker, the seed dealt last in a lesson and how many were dealt."""
        checks.require_name("lesson", lesson)
        found: dict[str, tuple[int, int]] = {}
        for one in self._read(lambda db: read_rows(db, Dealing, order=_BY_TIME, lesson=lesson)):
            found[one.maker] = (one.seed, found.get(one.maker, (0, 0))[1] + 1)
        return found

    def keep_draft(self, *, lesson: str, maker: str, seed: int, given: object) -> None:
        """Keep a half-typed answer in place of the one before it.

        lesson, maker, seed: of the question. Where another was dealt since, its draft is left as it is.
        given: as far as it is typed, as JSON data; None removes it.
        """
        checks.require_name("lesson", lesson)
        checks.require_name("question maker", maker)
        checks.require_whole("seed", seed, high=checks.GREATEST_SEED)
        text = checks.json_text(checks.json_data(given))

        def write(db: sqlite3.Connection) -> None:
            dealt = db.execute(_DEALT_LAST, (lesson, maker)).fetchone()
            if dealt is not None and dealt[0] != seed:
                return
            db.execute("DELETE FROM draft WHERE lesson = ? AND maker = ?", (lesson, maker))
            if given is not None:
                row = (lesson, maker, seed, text)
                db.execute("INSERT INTO draft (lesson, maker, seed, given) VALUES (?, ?, ?, ?)", row)

        self._write(write)

    def drafts(self, lesson: str) -> dict[str, tuple[int, object]]:
        """Return, for each maker, the seed of a half-typed answer in a lesson and the answer."""
        checks.require_name("lesson", lesson)

        def read(db: sqlite3.Connection) -> list[tuple]:
            return db.execute("SELECT maker, seed, given FROM draft WHERE lesson = ?", (lesson,)).fetchall()

        found = {}
        for maker, seed, text in self._read(read):
            # A draft that came to harm is not worth a rescue.
            with suppress(ValueError):
                found[maker] = (seed, json.loads(text))
        return found

    def begin(self, lesson: str) -> None:
        """Note that a lesson is begun; only the first call for a lesson changes anything."""
        beginning = Beginning(lesson=lesson, at=now())

        def write(db: sqlite3.Connection) -> None:
            if not read_rows(db, Beginning, lesson=beginning.lesson):
                put_row(db, beginning)

        if beginning.lesson not in self.begun():
            self._write(write)

    def begun(self) -> dict[str, str]:
        """Return when each lesson was begun, in the order of those times."""
        found: dict[str, str] = {}
        for one in self._read(lambda db: read_rows(db, Beginning, order="at, lesson")):
            found.setdefault(one.lesson, one.at)
        return found

    def notes(self) -> tuple[tuple[str, str], ...]:
        """Return time and words of what happened to the record itself: damage, records taken in."""
        found = self._read(lambda db: read_rows(db, Note, order=_BY_TIME))
        return tuple((note.at, note.words) for note in found)

    def export(self) -> str:
        """Return all but the drafts as JSON text, for another machine or for safe keeping."""
        return self._read(export_text)

    def merge(self, text: str) -> Merged:
        """Take in what another record exported, and return how many answers were new.

        text: as `export` gives it; nothing is written unless all of it is good.
        """
        contents = contents_of(text)
        return self._write(lambda db: take_in(db, contents))

    def _open(self) -> None:
        opened = open_record(self.path, self._migrations)
        self.learner_id, self.trouble = opened.learner_id, opened.trouble

    def _open_again(self) -> None:
        opened = open_record(self.path, self._migrations, thorough=True)
        if opened.trouble:
            self.trouble = opened.trouble
        elif opened.learner_id != self.learner_id:
            self.trouble = f"The record {self.path} was taken away. A new one was begun in its place."
        self.learner_id = opened.learner_id

    def _read(self, work: Callable[[sqlite3.Connection], _ResultT]) -> _ResultT:
        return self._done(work, "DEFERRED")

    def _write(self, work: Callable[[sqlite3.Connection], _ResultT]) -> _ResultT:
        return self._done(work, "IMMEDIATE")

    def _done(self, work: Callable[[sqlite3.Connection], _ResultT], kind: str) -> _ResultT:
        """Do one piece of work; where the file turns out to be damaged, once more when it is put right."""
        with suppress(UnusableError), transaction(self.path, kind) as db:
            return work(db)
        self._open_again()
        try:
            with transaction(self.path, kind) as db:
                return work(db)
        except UnusableError as fault:
            raise hopeless(self.path, fault) from None
