"""How far the bench figures of a job can be trusted, in words."""

from lablib.job.sheet import JobSheet

_ESTIMATE = (
    "Bench figures are teaching estimates. Which of two jobs is the harder, and by what factor, can be "
    "learned from them; the margin itself is uncertain about threefold either way until this bench has "
    "been calibrated."
)

_COVERED = (
    "The pad on this coat and the cutting energy were measured, so that the threefold doubt falls away; the "
    "rest is still a teaching estimate: on a thin lens, how far it bends under the clamp above all."
)
_NOT_COVERED = (
    "What decides these cuts was not all measured, so that the margin stays uncertain about threefold: the "
    "pad on this coat and the cutting energy of this material are needed."
)


def how_sure(sheet: JobSheet) -> str:
    """Return how far the bench figures of a job can be trusted: by the table, or by what was measured.

    sheet: a worked ticket.
    """
    profile = sheet.eyes[0].profile
    if profile is None:
        return _ESTIMATE
    cuts = [eye.cut for eye in sheet.eyes if eye.cut]
    covered = all(profile.covers(cut.setup, cut.material) for cut in cuts)
    measured = (
        f"Bench figures are those of {profile.bench}, measured up to {profile.day.isoformat()}: "
        f"{', '.join(profile.measured)}."
    )
    return f"{measured} {_COVERED if covered else _NOT_COVERED}"
