"""A second program of the slip simulation, from its equations alone, sharing nothing with the package.

It has its own plan, lens, grip and forces, so that a figure both give is not one error made twice. Machine
and grip parameters are the slip model's defaults, teaching estimates nearly all. Run as a script it prints
the four worked vectors of the model beside its own figures.

Source: the equations of the slip model, its parameters and reference jobs; the grip is a disc under even
pressure, the force the power balance of Malkin and Guo, Grinding Technology.
"""

import math
from dataclasses import dataclass

import numpy as np

HALF_WIDTHS = (25.0, 18.0)  # mm, superellipse
EXPONENT = 2.6
OFFSET = 2.0  # mm, optical and blank centre from the chuck axis, on +x
WHEEL = 50.0  # mm, radius
SURFACE_SPEED = math.pi * 100 * 3000 / 60000  # m/s
PACE = 8 * math.tau / 60  # rad/s
BITE, STOCK, FINE_BITE = 2.0, 0.5, 1.0  # mm
ENERGY, RUBBING, FINISHING_WHEEL = 0.35, 0.15, 1.5  # J/mm3, N/mm, factor
RATIO = 0.5  # F_t / F_n
SIDEWAYS = math.sqrt(1 + 1 / RATIO**2)
PEAK, SURGE, SLIDING = 1.25, 1.5, 0.8
LARGEST_FORCE = 600 / SURFACE_SPEED  # N
WINDOW = math.radians(8)  # half of the 16 degrees the controller averages over
PAD, TIP = 12.0, 9.0  # mm, radii
STRESS, CURVED_LENS, CLAMP_LIMIT = 25.0, 0.2, 500.0  # MPa, factor, N
COATS = {"uncoated": (1, 0.55, 0.50), "coated": (0.6, 0.40, 0.35), "slick": (0.2, 0.22, 0.20)}
SKINS = {"clean": (1, 1), "fingerprint": (0.7, 0.85), "oily": (0.35, 0.5)}
RING = 0.25  # mm between the radii of the thickness table
MOST_TURNS = 60
HEAT_PER_VOLUME = 0.0018  # J/mm3 K

EASY = {"power_d": -1.0, "index": 1.5, "centre_mm": 2.0, "blank_mm": 70.0, "clamp_n": 300.0}
HARD = {"power_d": -8.0, "index": 1.67, "centre_mm": 1.2, "blank_mm": 72.0}
VECTORS = {
    "1 easy, slick": (EASY, (979, 136.6, 2.784, 0, 0, 0, 0)),
    "2 hard, slick": (HARD, (951, 132.6, 0.930, 14.2, 0.005, 0.182, 0.6)),
    "3 hard, crib +3, oily, used wheel": (
        HARD | {"crib_mm": 3.0, "skin": "oily", "k_wheel": 1.4},
        (459, 64.3, 0.645, 11.5, 0.605, 0.069, 0.5),
    ),
    "4 hard, slick, glazed wheel": (HARD | {"k_wheel": 2.5}, (951, 132.6, 0.372, 1406, 2.5, 17.9, 30)),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What one simulated cut came to.

    torque [N mm] and side [N] are T_0 and F_0; margin [-]; slip [degrees]; lags [degrees] after each turn;
    shortfall [mm]; heat [J]; seconds [s] sliding; rise [K]; turns [-] made, repeats among them; begins (turn
    [-], angle [degrees]) where sliding starts, or None.
    """

    torque: float
    side: float
    margin: float
    slip: float
    lags: tuple[float, ...]
    shortfall: float
    heat: float
    seconds: float
    rise: float
    turns: int
    begins: tuple[int, float] | None


def outlines(blank_mm, crib_mm, k_wheel, points):
    """Return the outlines rho_0, rho_1 ... [mm] of shape (points,), and the wheel factor [-] of each turn.

    blank_mm [mm] is the blank's diameter, crib_mm [mm] how far beyond the outline it was cribbed, or None,
    k_wheel [-] the roughing wheel's factor, points [-] the number of equal angles.
    """
    phi = np.arange(points) * math.tau / points
    across, up = np.abs(np.cos(phi) / HALF_WIDTHS[0]), np.abs(np.sin(phi) / HALF_WIDTHS[1])
    finished = (across**EXPONENT + up**EXPONENT) ** (-1 / EXPONENT)
    blank = OFFSET * np.cos(phi) + np.sqrt((blank_mm / 2) ** 2 - (OFFSET * np.sin(phi)) ** 2)
    rims = [np.maximum(finished, blank if crib_mm is None else np.minimum(blank, finished + crib_mm))]
    wheels = []
    for floor, bite, factor in ((finished + STOCK, BITE, k_wheel), (finished, FINE_BITE, FINISHING_WHEEL)):
        while np.any(rims[-1] > floor + 1e-9):
            rims.append(np.maximum(floor, rims[-1] - bite))
            wheels.append(factor)
    return rims, wheels


def central(values):
    """Return the derivative [per rad] by central differences of values at equal angles, shape (points,)."""
    return (np.roll(values, -1) - np.roll(values, 1)) * len(values) / (2 * math.tau)


def contact(rho):
    """Return the normal's lean [rad], gamma [-] and x_low [-], shape (points,), of the outline rho [mm]."""
    step = math.tau / len(rho)
    lean = np.arctan(central(rho) / rho)
    arm, lead = rho * np.cos(lean), rho * np.sin(lean)
    travel = 1 + central(np.arctan(lead / (arm + WHEEL)) - lean)
    half = round(WINDOW / step)
    weights = np.ones(2 * half + 1)
    weights[[0, -1]] = 0.5
    smooth = sum(w * np.roll(travel, half - i) for i, w in enumerate(weights)) / weights.sum()
    return lean.tolist(), np.maximum(smooth, 1 / SURGE).tolist(), np.maximum(0, 1 - smooth).tolist()


def lens(power_d, index, centre_mm, largest_mm, points):
    """Return thickness t [mm] and the integral of t r dr [mm3 per rad] as lists, an angle a row, RING apart.

    power_d [D], index [-] and centre_mm [mm] give the lens; largest_mm [mm] is the greatest radius read,
    points [-] the number of angles.
    """
    phi, r = np.arange(points) * math.tau / points, np.arange(0, largest_mm + 2 * RING, RING)
    off = np.hypot(r * np.cos(phi)[:, None] - OFFSET, r * np.sin(phi)[:, None])
    front = power_d / 2 + 6
    t = np.full_like(off, centre_mm)
    for power in (front, power_d - front):
        curve = power / (1000 * (index - 1))
        t -= curve * off**2 / (1 + np.sqrt(np.maximum(0, 1 - (curve * off) ** 2)))
    rings = (t[:, 1:] * r[1:] + t[:, :-1] * r[:-1]) / 2 * RING
    return t.tolist(), np.hstack([np.zeros((points, 1)), np.cumsum(rings, axis=1)]).tolist()


def grip(centre_mm, clamp_n=None, coat="slick", skin="clean"):
    """Return T_front and T_back [N mm] and F_0 [N].

    centre_mm [mm] caps the clamp force clamp_n [N] (None is the cap itself); coat and skin name table rows.
    """
    cap = min(CLAMP_LIMIT, STRESS * centre_mm**2 / (0.62 * CURVED_LENS))
    n = cap if clamp_n is None else min(clamp_n, cap)
    (factor, mu, mu_back), (skin_tau, skin_mu) = COATS[coat], SKINS[skin]
    faces = ((0.15, 0.55), (0.35, 0.0), (0.15 * factor * skin_tau, mu * skin_mu))
    area, reach = math.tau * PAD**3 / 3, 2 * PAD / 3
    front = min(tau * area + friction * n * reach for tau, friction in faces)
    back = mu_back * skin_mu * n * 0.95
    return front, back * 2 * TIP / 3, front / reach + back


def read(row, radius):
    """Return a row of the table at a radius [mm], linearly."""
    i = int(radius / RING)
    return row[i] + (radius / RING - i) * (row[i + 1] - row[i])


def push(t, g, rim, r, lean, gamma, k, torque, side):
    """Return F_t, the rubbing in it, C [N] and the arm [mm] of one bite.

    t [mm] and g [mm3 per rad] are rows of the lens, rim and r [mm] the radius before and after, lean [rad]
    and gamma [-] the contact's, k [-] the wheel's, torque [N mm] and side [N] the hold.
    """
    rub = k * RUBBING * read(t, r)
    rate = PACE * (read(g, rim) - read(g, r)) / gamma
    force = min(k * ENERGY * rate / SURFACE_SPEED + rub, LARGEST_FORCE)
    h, lead = r * math.cos(lean), r * math.sin(lean)
    beta = 2 / 3 * math.sqrt(2 * (rim - r) * r / (WHEEL * (WHEEL + r)))
    a_t = (h + WHEEL) * math.cos(beta) - lead * math.sin(beta) - WHEEL
    arm = a_t + ((h + WHEEL) * math.sin(beta) + lead * math.cos(beta)) / RATIO
    return force, rub, 1 / math.hypot(arm / torque, SIDEWAYS / side), arm


def least_margin(rims, contacts, wheels, table, hold):
    """Return the least C / (k_dyn F_t) [-] of the plan, every turn and angle of it, with no slip."""
    least = math.inf
    for k, wheel in enumerate(wheels):
        lean, gamma, _ = contacts[k]
        for i in np.flatnonzero(rims[k] - rims[k + 1] > 1e-6):
            bite = (float(rims[k][i]), float(rims[k + 1][i]), lean[i], gamma[i], wheel)
            force, _, carried, _ = push(table[0][i], table[1][i], *bite, *hold)
            least = min(least, carried / (PEAK * force))
    return least


def slide(rims, contacts, wheels, table, hold):
    """Return the lens's outline [mm], lags [steps], heat [N mm], seconds [s] and beginning."""
    left, points, step = rims[0].tolist(), len(rims[0]), math.tau / len(rims[0])
    lam, low, heat, seconds, sliding = 0.0, math.inf, 0.0, 0.0, False
    lags, begins, removed = [], None, True
    while (len(lags) < len(wheels) or removed) and len(lags) < MOST_TURNS:
        k, removed = min(len(lags), len(wheels) - 1), False
        rho, (lean, gamma, lowest) = rims[k + 1].tolist(), contacts[k]
        for i in range(points):
            element = math.floor(lam)
            j, f, x = element % points, lam - element, 1.0
            r = rho[i] - f * (rho[i] - rho[i - 1])
            if left[j] - r <= 1e-6:
                sliding = False
            else:
                bite = (left[j], r, lean[i], gamma[i], wheels[k])
                force, rub, carried, arm = push(table[0][j], table[1][j], *bite, *hold)
                sliding = arm > 0 and (PEAK * force > carried or (sliding and force > SLIDING * carried))
                if sliding:
                    begins = begins or (len(lags) + 1, math.degrees(i * step))
                    share = (SLIDING * carried - rub) / (force - rub) if force > rub else 0.0
                    # Where outline meets round gamma averages below 0 and x_low passes 1; x never does.
                    x = min(1.0, max(lowest[i], share))
                    heat += SLIDING * carried * arm * (1 - x) * step
                    seconds += gamma[i] * step / PACE
                low = min(low, r)
            lam += x
            if math.floor(lam) != element:
                removed = removed or low < left[j]
                left[j], low = min(left[j], low), math.inf
        lags.append((len(lags) + 1) * points - lam)
    return left, lags, heat, seconds, begins


def warming(heat, seconds, centre_mm, front, back):
    """Return the rise [K] at the tip's edge from heat [J], seconds [s], centre_mm [mm], T [N mm] a side."""
    areal = heat * TIP * 3 / math.tau * (front / PAD**3 + back / TIP**3) / (front + back)
    return areal / (HEAT_PER_VOLUME * min(centre_mm, 0.3 * math.sqrt(seconds))) if seconds else 0.0


def run(*, power_d, index, centre_mm, blank_mm, points=720, k_wheel=1.0, crib_mm=None, **held):
    """Cut one lens with the lens free to turn, and return the Result.

    power_d [D], index [-], centre_mm [mm] thickness and blank_mm [mm] diameter give the lens; points [-] is
    the number of equal angles, k_wheel [-] the roughing wheel's factor, crib_mm [mm] as in
    outlines; held is clamp_n [N], coat and skin, as grip takes them.
    """
    rims, wheels = outlines(blank_mm, crib_mm, k_wheel, points)
    table = lens(power_d, index, centre_mm, rims[0].max(), points)
    front, back, side = grip(centre_mm, **held)
    plan = (rims, [contact(rho) for rho in rims[1:]], wheels, table, (front + back, side))
    left, lags, heat, seconds, begins = slide(*plan)
    cut = np.interp((np.arange(points) - lags[-1]) % points, np.arange(points + 1), [*left, left[0]])
    degrees = tuple(lag * 360 / points for lag in lags)
    return Result(
        torque=front + back,
        side=side,
        margin=least_margin(*plan),
        slip=degrees[-1],
        lags=degrees,
        shortfall=float(np.max(rims[-1] - cut)),
        heat=heat / 1000,
        seconds=seconds,
        rise=warming(heat / 1000, seconds, centre_mm, front, back),
        turns=len(lags),
        begins=begins,
    )


if __name__ == "__main__":
    for name, (given, expected) in VECTORS.items():
        print(name, *expected)
        for count in (720, 1440, 2880):
            got = run(**given, points=count)
            values = (got.torque, got.side, got.margin, got.slip, got.shortfall, got.heat, got.rise)
            print(f"{count:5}", *(f"{value:.4f}" for value in values), got.turns, got.begins)
