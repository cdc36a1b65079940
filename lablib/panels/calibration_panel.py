"""The panel of a calibration: break-loose readings from a jig, their line, and what may be claimed."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import ipywidgets as widgets
import numpy as np

from lablib.bench.contact import block_contact, r_eff_mm
from lablib.bench.grip_fit import BreakLoose, fit_grip
from lablib.bench.grip_line import band_nmm, friction_through_zero, line_nmm, readings_from
from lablib.bench.jig import JigDay, held_nmm, jig_readings
from lablib.bench.machine import Bench
from lablib.bench.profile import BenchProfile, measured_grip
from lablib.errors import LabError
from lablib.panels.calibration_claim import Calibration, between, claim
from lablib.panels.calibration_row import ReadingsRow
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.calibration import MOST_N, CalibrationPicture

_JIG, _LINE = {"group": "Jig"}, {"group": "Line"}
INVENTED, OWN = "invented", "your own"
POOLED = "slick and coated"
_ROUND = block_contact("round")
_STEPS, _QUARTERS = 41, (0.25, 0.5, 0.75, 1.0)
_NONE = np.zeros((0, 2))


class CalibrationPanel(Panel):
    """One day at the jig, invented or your own, and what its readings say.

    folder: where a bench profile is saved; the working folder when not given.
    move, and what else a panel takes: see `Panel`. A panel that shows only some controls takes no readings
        of your own.
    """

    draws = CalibrationPicture
    note = (
        "Invented readings come from the workbook's own model with scatter put on. Break-loose readings are "
        "taken in a guarded hand jig on thick scrap, never in the machine and never on a job. Your own are "
        "of the round block, 24 mm across, and of one coat at a time."
    )
    controls = (
        Choice(name="readings", label="Readings", options=(INVENTED, OWN), value=INVENTED, **_JIG),
        Choice(
            name="coat",
            label="Coat",
            options=("slick", "coated", "uncoated", POOLED),
            value="slick",
            **_JIG,
        ),
        Slider(
            name="greatest_n", label="Greatest force", unit="N", low=80, high=400, step=40, value=400, **_JIG
        ),
        Slider(name="times", label="Readings at each", unit="", low=1, high=12, step=1, value=3, **_JIG),
        Slider(name="scatter", label="Scatter", unit="%", low=0, high=30, step=2, value=8, **_JIG),
        Slider(
            name="scrap_mm", label="Scrap lens", unit="mm", low=0.6, high=4.0, step=0.1, value=3.0, **_JIG
        ),
        Slider(name="day", label="Day", unit="", low=1, high=20, step=1, value=1, **_JIG),
        Choice(
            name="torque",
            label="Torque read",
            options=("break-loose", "sliding"),
            value="break-loose",
            **_LINE,
        ),
        Choice(
            name="origin",
            label="Line through the origin",
            options=("no", "yes"),
            value="no",
            **_LINE,
        ),
        Choice(name="behind", label="What is behind", options=("no", "yes"), value="no", **_LINE),
    )

    def __init__(
        self, *, move: Sequence[str] | None = None, folder: Path | None = None, **rest: float | str
    ) -> None:
        self._is_whole = move is None
        self._own = ReadingsRow(
            Path.cwd() if folder is None else folder, changed=self._own_changed, write=self.profile_text
        )
        super().__init__(move=move, **rest)

    def row_below(self) -> widgets.Widget | None:
        """Return where your own readings are typed and saved as a bench profile."""
        return self._own.widget if self._is_whole else None

    def _own_changed(self) -> None:
        if self.values["readings"] == OWN:
            self._redraw()

    def compute(self, values: Values) -> Calibration:
        """Return readings, line and band.

        values: by the control's name.

        Raises LabError where the readings are no ground for a line, with the reason.
        """
        fit = fit_grip(_as_read(self._readings(values), values["torque"]), _ROUND)
        shown = values["origin"] == "yes"
        low, high = fit.forces_n
        tried, whole = np.linspace(low, high, _STEPS), np.array([0.0, low, high])
        away, middle = band_nmm(fit, tried), line_nmm(fit, tried)
        through_zero = friction_through_zero(fit) if shown else None
        return Calibration(
            fit=fit,
            through_zero=through_zero,
            is_sliding=values["torque"] == "sliding",
            used=_points(fit.used),
            left_out=_points(fit.left_out),
            line=np.stack([whole, line_nmm(fit, whole) / 1000.0], axis=1),
            tried_n=(low, high),
            band=np.stack([tried, (middle - away) / 1000.0, (middle + away) / 1000.0], axis=1),
            zero_line=_NONE if through_zero is None else _zero_line(through_zero, high),
            behind=_behind(values),
        )

    def _readings(self, values: Values) -> tuple[BreakLoose, ...]:
        coats = POOLED.split(" and ") if values["coat"] == POOLED else [values["coat"]]
        if values["readings"] == OWN:
            if len(coats) > 1:
                raise LabError(f"coat {POOLED!r}: say which coat your own readings are of, and fit it alone")
            return readings_from(self._own.text, coats[0])
        days = [
            JigDay(
                coat=coat,
                forces_n=tuple(share * values["greatest_n"] for share in _QUARTERS),
                times=int(values["times"]),
                scatter=values["scatter"] / 100.0,
                scrap_mm=values["scrap_mm"],
                day=int(values["day"]),
            )
            for coat in coats
        ]
        return tuple(one for day in days for one in jig_readings(day, _ROUND, Bench()))

    def numbers(self, data: Calibration) -> Sequence[tuple[str, str, str]]:
        """Return both fitted numbers with their errors, and what they rest on.

        data: from `compute`.
        """
        fit, share = data.fit, data.fit.sliding_share
        zero = NOT_KNOWN if data.through_zero is None else f"{data.through_zero:.3f}"
        return [
            ("tau", fit.shear_mpa.stated(4), "MPa"),
            ("tau, 95 %", between(fit.shear_mpa, fit), "MPa"),
            ("mu", fit.friction.stated(3), ""),
            ("mu, 95 %", between(fit.friction, fit), ""),
            ("mu through the origin", zero, ""),
            ("r", share.stated(2) if share else NOT_KNOWN, ""),
            ("Readings used", f"{len(fit.used)}", ""),
            ("Readings left out", f"{len(fit.left_out)}", ""),
            ("Scatter about the line", f"{100.0 * fit.scatter:.0f}", "%"),
        ]

    def sentence(self, data: Calibration) -> str:
        """Return what may be claimed, and what not.

        data: from `compute`.
        """
        return claim(data)

    def profile_text(self) -> str:
        """Return the bench profile of your own readings.

        Raises LabError where the readings are invented, sliding ones, or no ground for a line.
        """
        values = self.values
        if values["readings"] != OWN:
            raise LabError(
                f"these readings are {INVENTED}, and a profile would pass them off as measured: set Readings "
                f"to {OWN!r}"
            )
        if values["torque"] != "break-loose":
            raise LabError(
                "a profile holds the torque at which the block gives: set Torque read to break-loose"
            )
        fit = self.compute(values).fit
        measured = measured_grip(fit, how="break-loose jig, round block, thick scrap")
        return BenchProfile(bench=self._own.bench, day=date.today(), measured=measured).text()


def _as_read(readings: Sequence[BreakLoose], torque: str) -> Sequence[BreakLoose]:
    """The readings; with the sliding torque in place of the break-loose one where that was taken."""
    if torque == "break-loose":
        return readings
    if any(one.sliding_nmm is None for one in readings):
        raise LabError("no sliding torque was read at some forces: write it as the third number of each line")
    return [BreakLoose(clamp_n=one.clamp_n, torque_nmm=one.sliding_nmm, coat=one.coat) for one in readings]


def _points(readings: Sequence[BreakLoose]) -> np.ndarray:
    points = [(one.clamp_n, one.torque_nmm / 1000.0) for one in readings]
    return np.array(points).reshape(-1, 2)


def _zero_line(friction: float, high_n: float) -> np.ndarray:
    return np.array([(0.0, 0.0), (high_n, friction * r_eff_mm(_ROUND) * high_n / 1000.0)])


def _behind(values: Values) -> np.ndarray:
    """What the model of the invented lens holds at every force; nothing where it is hidden or not known."""
    if values["behind"] != "yes" or values["readings"] != INVENTED:
        return _NONE
    forces = np.linspace(0.0, MOST_N, _STEPS)
    torques = [held_nmm(values["coat"], force, _ROUND, Bench()) for force in forces]
    return np.stack([forces, np.array(torques) / 1000.0], axis=1)
