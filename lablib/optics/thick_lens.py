"""Powers of a lens with thickness, one meridian at a time.

Front and back surface powers are in air, in dioptres; distances in millimetres. Every function takes
numbers or numpy arrays. Source of the formulae: M. Jalie, The Principles of Ophthalmic Lenses (memory).
"""


def shape_power_d(front_d: float, thickness_mm: float, index: float) -> float:
    """Return what the front surface adds at the back vertex, F1 / (1 - t F1 / n) [D].

    front_d: front surface power [D]; thickness_mm: centre thickness [mm]; index: of the lens.
    """
    return front_d / (1.0 - thickness_mm / 1000.0 * front_d / index)


def back_vertex_power_d(front_d: float, back_d: float, thickness_mm: float, index: float) -> float:
    """Return the back vertex power [D].

    front_d, back_d: surface powers [D]; thickness_mm: centre thickness [mm]; index: of the lens.
    """
    return shape_power_d(front_d, thickness_mm, index) + back_d


def front_vertex_power_d(front_d: float, back_d: float, thickness_mm: float, index: float) -> float:
    """Return the front vertex power [D].

    front_d, back_d: surface powers [D]; thickness_mm: centre thickness [mm]; index: of the lens.
    """
    return front_d + shape_power_d(back_d, thickness_mm, index)


def equivalent_power_d(front_d: float, back_d: float, thickness_mm: float, index: float) -> float:
    """Return the equivalent power F1 + F2 - (t/n) F1 F2 [D].

    front_d, back_d: surface powers [D]; thickness_mm: centre thickness [mm]; index: of the lens.
    """
    return front_d + back_d - thickness_mm / 1000.0 / index * front_d * back_d


def back_surface_d(wanted_d: float, front_d: float, thickness_mm: float, index: float) -> float:
    """Return the back surface power that gives a wanted back vertex power [D].

    wanted_d: back vertex power [D]; front_d: front surface power [D]; thickness_mm: centre
    thickness [mm]; index: of the lens.
    """
    return wanted_d - shape_power_d(front_d, thickness_mm, index)


def vogel_front_curve_d(equivalent_d: float) -> float:
    """Return the front curve Vogel's rule of thumb gives [D].

    equivalent_d: spherical equivalent of the prescription [D].
    Source: plus: equivalent + 6; minus: half the equivalent + 6 (from memory). Other rules differ.
    """
    return equivalent_d + 6.0 if equivalent_d > 0.0 else equivalent_d / 2.0 + 6.0
