"""A small ray tracer by Snell's law that shares no code with the package it checks.

Lengths are in mm. z runs from the front of the lens to the eye with the front vertex at z = 0, x to
the right of an observer facing the wearer, y up. A curvature is positive when the centre of curvature
lies on the eye side. Rays are arrays of shape (n, 3): points, and unit directions.
"""

from dataclasses import dataclass, field

import numpy as np

IDENTITY = np.eye(3)
ALONG_AXIS = np.array([0.0, 0.0, 1.0])


@dataclass(frozen=True)
class Sphere:
    """A sphere through the origin, or a plane where the curvature is zero: z = c (x2 + y2 + z2) / 2."""

    per_mm: float

    def value(self, p):
        """Return the implicit function at points (n, 3): negative in front of the surface."""
        return p[:, 2] - self.per_mm / 2 * np.sum(p * p, axis=1)

    def gradient(self, p):
        """Return its gradient at points (n, 3)."""
        return ALONG_AXIS - self.per_mm * p


@dataclass(frozen=True)
class Torus:
    """A surface of tyre formation: the arc of the steeper meridian swept along the flatter.

    With u along the flat meridian, v across it, and h(v) the sag of the steep arc, the sweep turns the
    arc about the line through the flat centre of curvature: (Rf - z)2 + u2 = (Rf - h)2. Multiplied out
    and divided by 2 Rf it holds for a flat meridian too: z - h = cf (u2 + z2 - h2) / 2.
    """

    flat_per_mm: float
    steep_per_mm: float
    flat_meridian_deg: float

    def _along_and_across(self):
        angle = np.radians(self.flat_meridian_deg)
        return np.array([np.cos(angle), np.sin(angle), 0.0]), np.array([-np.sin(angle), np.cos(angle), 0.0])

    def _arc(self, v):
        """Return sag and slope of the steep arc; not a number beyond its own radius."""
        with np.errstate(invalid="ignore"):
            root = np.sqrt(1 - (self.steep_per_mm * v) ** 2)
        return self.steep_per_mm * v**2 / (1 + root), self.steep_per_mm * v / root

    def value(self, p):
        """Return the implicit function at points (n, 3): negative in front of the surface."""
        along, across = self._along_and_across()
        h, _ = self._arc(p @ across)
        return p[:, 2] - h - self.flat_per_mm / 2 * ((p @ along) ** 2 + p[:, 2] ** 2 - h**2)

    def gradient(self, p):
        """Return its gradient at points (n, 3)."""
        along, across = self._along_and_across()
        h, slope = self._arc(p @ across)
        return (
            np.outer(1 - self.flat_per_mm * p[:, 2], ALONG_AXIS)
            - np.outer(self.flat_per_mm * (p @ along), along)
            - np.outer(slope * (1 - self.flat_per_mm * h), across)
        )


@dataclass(frozen=True)
class Placed:
    """A shape with its vertex at (0, 0, vertex_z_mm), turned about the vertex by a rotation matrix."""

    shape: Sphere | Torus
    vertex_z_mm: float = 0.0
    rotation: np.ndarray = field(default_factory=lambda: IDENTITY)

    def meet(self, points, directions):
        """Return where rays meet the surface, and the unit normals there towards the eye, (n, 3) each."""
        start = (points - [0.0, 0.0, self.vertex_z_mm]) @ self.rotation
        along = directions @ self.rotation
        start = start - along * (start[:, 2] / along[:, 2])[:, None]
        met = start + along * _distance_to(self.shape, start, along)[:, None]
        normals = self.shape.gradient(met)
        normals /= np.linalg.norm(normals, axis=1)[:, None]
        return met @ self.rotation.T + [0.0, 0.0, self.vertex_z_mm], normals @ self.rotation.T


def _distance_to(shape, start, along):
    """Return the signed distance along rays from the vertex plane to the surface: Newton inside a bracket."""
    low, high = _bracket(shape, start, along)
    t = np.zeros(len(start))
    for _ in range(100):
        at = start + along * t[:, None]
        value = shape.value(at)
        low, high = np.where(value < 0, t, low), np.where(value < 0, high, t)
        newton = t - value / np.sum(shape.gradient(at) * along, axis=1)
        # A hair of slack, or rounding at the root itself would throw the last steps back to halving.
        inside = (newton >= low - 1e-9) & (newton <= high + 1e-9)
        step = np.where(inside, newton, (low + high) / 2)
        if np.all(np.abs(step - t) <= 1e-13):
            return step
        t = step
    raise ArithmeticError("a ray and a surface were not brought together in 100 steps")


def _bracket(shape, start, along):
    """Return two distances with the surface between them, found by striding away from the vertex plane."""
    forward = np.where(along[:, 2] > 0, 1.0, -1.0)
    ends = []
    for side in (-1.0, 1.0):
        stride, end = 0.25, np.zeros(len(start))
        found = side * shape.value(start) > 0
        while not np.all(found):
            end = np.where(found, end, side * forward * stride)
            found |= side * shape.value(start + along * end[:, None]) > 0
            stride *= 1.25
            if stride > 200.0:
                raise ArithmeticError("a ray misses the surface")
        ends.append(end)
    return ends


def refract(directions, normals, n_before, n_after):
    """Return unit directions after a surface, by Snell's law as vectors; not a number if reflected."""
    ratio = n_before / n_after
    cos_in = np.sum(directions * normals, axis=1)
    normals, cos_in = normals * np.sign(cos_in)[:, None], np.abs(cos_in)
    with np.errstate(invalid="ignore"):
        cos_out = np.sqrt(1 - ratio**2 * (1 - cos_in**2))
    return ratio * directions + (cos_out - ratio * cos_in)[:, None] * normals


@dataclass(frozen=True)
class TracedLens:
    """Two placed surfaces in air with a refractive index between them."""

    front: Placed
    back: Placed
    index: float

    def towards_eye(self, points, directions):
        """Return points on the back surface and directions behind it, for rays from in front."""
        return self._through(self.front, self.back, points, directions)

    def away_from_eye(self, points, directions):
        """Return points on the front surface and directions before it, for rays sent out from the eye."""
        return self._through(self.back, self.front, points, directions)

    def _through(self, first, second, points, directions):
        points, normals = first.meet(np.atleast_2d(points), np.atleast_2d(directions))
        inside = refract(np.atleast_2d(directions), normals, 1.0, self.index)
        points, normals = second.meet(points, inside)
        return points, refract(inside, normals, self.index, 1.0)

    def thickness_mm(self, x_mm, y_mm):
        """Return the distance along z between the surfaces at points (n,)."""
        points = np.column_stack([x_mm, y_mm, np.zeros(len(x_mm))])
        lines = np.tile(ALONG_AXIS, (len(points), 1))
        return self.back.meet(points, lines)[0][:, 2] - self.front.meet(points, lines)[0][:, 2]


def rotation_about(axis, angle_deg):
    """Return the matrix that turns points about an axis (3,) through the origin, by the right-hand rule."""
    x, y, z = np.asarray(axis, dtype=float) / np.linalg.norm(axis)
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    angle = np.radians(angle_deg)
    return IDENTITY + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross


def deviation_prism_d(lens, x_mm, y_mm):
    """Return 100 tan of the deviation of rays parallel to z, (n, 2): the components towards the base."""
    points = np.column_stack([x_mm, y_mm, np.full(len(x_mm), -10.0)])
    _, out = lens.towards_eye(points, np.tile(ALONG_AXIS, (len(points), 1)))
    return 100 * out[:, :2] / out[:, 2:]


def _vergence(lens, point, direction, frame, reference, half_width_mm):
    """Return the vergence matrix [1/mm] at a reference point, from four rays parallel to a chief ray."""
    _, chief = lens.towards_eye(point, direction)
    across = frame(chief[0])
    ends = np.array([[half_width_mm, 0], [-half_width_mm, 0], [0, half_width_mm], [0, -half_width_mm]])
    out_points, out = lens.towards_eye(point + ends @ frame(direction), np.tile(direction, (4, 1)))
    reach = np.sum((reference - out_points) * chief[0], axis=1) / (out @ chief[0])
    places = (out_points + out * reach[:, None] - reference) @ across.T
    slopes = (out @ across.T) / (out @ chief[0])[:, None]
    return -(slopes[::2] - slopes[1::2]).T @ np.linalg.inv((places[::2] - places[1::2]).T)


def _power_matrix_d(lens, point, direction, frame, reference):
    """Return the limit of the vergence for a bundle of no width, in dioptres: Richardson's extrapolation."""
    wide, narrow = (_vergence(lens, point, direction, frame, reference, width) for width in (0.2, 0.1))
    return 1000 * (4 * narrow - wide) / 3


def _level(direction):
    """Return unit vectors square to a direction, the first level and to the right, the second up."""
    right = np.array([direction[2], 0.0, -direction[0]])
    right /= np.linalg.norm(right)
    return np.array([right, np.cross(direction, right)])


def back_vertex_power_matrix_d(lens):
    """Return the power matrix (2, 2) at the back vertex for light along the axis, in observer axes x, y."""
    back_vertex = np.array([0.0, 0.0, lens.back.vertex_z_mm])
    return _power_matrix_d(lens, np.array([0.0, 0.0, -10.0]), ALONG_AXIS, _level, back_vertex)


def square_to_back(lens):
    """Return 100 tan of the deviation, and the power matrix, for light that leaves along the back normal.

    This is how a lens is held with its back against a stop, its back vertex at the middle.
    """
    back_vertex, normal = np.array([0.0, 0.0, lens.back.vertex_z_mm]), lens.back.rotation[:, 2]
    front_points, outwards = lens.away_from_eye(back_vertex, -normal)
    start = front_points[0] + 10.0 * outwards[0]
    power = _power_matrix_d(lens, start, -outwards[0], _level, back_vertex)
    return 100 * np.tan(np.arccos(-outwards[0] @ normal)), power


def rotating_eye_power_matrix_d(lens, rotation_deg, centre_of_rotation_mm, meridian_deg=90.0):
    """Return the power matrix (tangential, sagittal) for an eye turned along a meridian.

    The eye turns about a centre so far behind the back vertex; light comes from infinity along the ray
    that leaves for the centre, and powers count from the sphere about the centre through the back vertex.
    """
    turn, meridian = np.radians(rotation_deg), np.radians(meridian_deg)
    radial = np.array([np.cos(meridian), np.sin(meridian), 0.0])
    across = np.cross(ALONG_AXIS, radial)
    centre = np.array([0.0, 0.0, lens.back.vertex_z_mm + centre_of_rotation_mm])
    gaze = np.sin(turn) * radial - np.cos(turn) * ALONG_AXIS

    def tangential_first(direction):
        first = np.cross(across, direction)
        first /= np.linalg.norm(first)
        return np.array([first, np.cross(direction, first)])

    front_points, outwards = lens.away_from_eye(centre, gaze)
    start = front_points[0] + 10.0 * outwards[0]
    return _power_matrix_d(lens, start, -outwards[0], tangential_first, centre + centre_of_rotation_mm * gaze)
