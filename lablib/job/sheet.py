"""The job sheet: a ticket worked as far as it goes, with what must be asked and what was found."""

from dataclasses import dataclass
from pathlib import Path

from lablib.bench.profile import BenchProfile
from lablib.errors import LabError
from lablib.job.checks import Finding, findings, holds
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.fields import TicketFaults
from lablib.job.ticket import Hold, Ticket
from lablib.optics.eye import Eye


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobSheet:
    """A ticket, worked.

    ticket: what was ordered.
    right, left: the lenses; None for an eye that gets none.
    holds: questions that must be answered before the job goes on.
    findings: what the bench should know.
    """

    ticket: Ticket
    right: EyeSheet | None
    left: EyeSheet | None
    holds: tuple[Hold, ...]
    findings: tuple[Finding, ...]

    @property
    def eyes(self) -> tuple[EyeSheet, ...]:
        """The lenses there are, right first."""
        return tuple(sheet for sheet in (self.right, self.left) if sheet is not None)


def work(ticket: Ticket, profile: BenchProfile | None = None) -> JobSheet:
    """Work a ticket as far as it goes.

    ticket: the job; profile: of the bench it is cut on; None: the table's numbers.

    Raises TicketFaults, with a line for each eye whose order no lens can fill.
    """
    sheets, faults = {}, []
    for order in ticket.eyes:
        try:
            sheets[order.eye] = work_eye(ticket, order, profile)
            # Worked here, so that a lens that cannot be laid out or cut as ordered is a fault of its eye.
            _ = sheets[order.eye].multifocal, sheets[order.eye].cut
        except LabError as fault:
            faults.append(f"[{order.eye}] {fault}")
    if faults:
        raise TicketFaults(faults)
    return JobSheet(
        ticket=ticket,
        right=sheets.get(Eye.RIGHT),
        left=sheets.get(Eye.LEFT),
        holds=holds(ticket),
        findings=findings(ticket, tuple(sheets.values())),
    )


def work_file(path: str | Path, profile: BenchProfile | None = None) -> JobSheet:
    """Read a ticket file and work it.

    path: of a TOML file in format 1; profile: as in `work`.

    Raises TicketFaults, with one line for each fault, each beginning with the file's name.
    """
    ticket = Ticket.read(path)
    try:
        return work(ticket, profile)
    except TicketFaults as found:
        raise TicketFaults([f"{Path(path).name}: {line}" for line in found.faults]) from None
