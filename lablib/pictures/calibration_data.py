"""What the picture of a calibration shows: readings, the line through them, and where nobody has looked."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CalibrationView:
    """Break-loose readings and what was made of them.

    used, left_out: force [N] and torque [N m] of the readings the line goes through and of the others, shape
        (N, 2) each.
    line: the same of the fitted line, from no force at all to the greatest that was used.
    tried_n: the least and the greatest force the line goes through [N].
    band: force [N], least and greatest torque of the line [N m] where it was tried, shape (N, 3).
    zero_line: the line through the origin, shape (N, 2); no rows where it is not shown.
    behind: what the invented lens really holds, shape (N, 2); no rows where it is not shown.
    """

    used: np.ndarray
    left_out: np.ndarray
    line: np.ndarray
    tried_n: tuple[float, float]
    band: np.ndarray
    zero_line: np.ndarray
    behind: np.ndarray
