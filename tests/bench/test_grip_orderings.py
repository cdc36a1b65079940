"""Orderings of the grip over random jobs, machines and grips: what each condition does to the margin."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from random_jobs import Job, job
from reference_jobs import lens

from lablib.bench.bearing_on import uneven_bending_share
from lablib.bench.contact import block_contact
from lablib.bench.faces import LensFaces
from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import work_cut
from lablib.bench.setup import Setup, block_faces

jobs = st.builds(job, st.integers(0, 10**9))
SLACK = 1.0 + 1e-9
FACES = LensFaces.spheres(front_d=4.0, back_d=-7.0)


def margin(one: Job, **setup: object) -> float:
    chosen = Setup(**({"coat": "slick"} | setup))
    parts = replace(lens(**one.parts), faces=FACES)
    return work_cut(parts, material=one.material, setup=chosen, bench=one.bench).margin


@settings(max_examples=40, deadline=None)
@given(one=jobs)
def test_a_grip_layer_helps_a_slick_coat_and_its_loss_does_not(one: Job):
    present, none = margin(one, grip_layer="present"), margin(one)
    assert present > none
    assert margin(one, grip_layer="stripped") == none
    assert present == margin(one, coat="coated")


@settings(max_examples=40, deadline=None)
@given(one=jobs, wrinkle=st.floats(0.0, 0.6), more=st.floats(0.0, 0.6), months=st.integers(0, 24))
def test_creases_and_worn_blocks_never_raise_the_margin(one: Job, wrinkle: float, more: float, months: int):
    film = {"film": True, "pad_age_months": float(months)}
    less, larger = sorted((wrinkle, more))
    assert margin(one, **film, film_wrinkle=larger) <= SLACK * margin(one, **film, film_wrinkle=less)
    found = [margin(one, **film, block_face=face) for face in block_faces()]
    assert found[2] <= SLACK * found[1] <= SLACK * SLACK * found[0]


@settings(max_examples=40, deadline=None)
@given(one=jobs, off=st.floats(0.0, 4.0), film=st.booleans())
def test_a_flatter_block_never_raises_the_margin(one: Job, off: float, film: bool):
    assert margin(one, film=film, block_curve_d=4.0 - off) <= SLACK * margin(one, film=film)


@settings(max_examples=40, deadline=None)
@given(one=jobs, off=st.floats(0.0, 8.0), tip=st.floats(30.0, 500.0), stiff=st.booleans())
def test_no_curve_lets_a_lens_bear_more_clamp_force(one: Job, off: float, tip: float, stiff: bool):
    # What bends the lens less presses on a spot: more clamp force is never granted for it.
    setup = Setup(block_curve_d=off, tip_face_mm=tip, tip_stiffness="stiff" if stiff else "soft")
    chi = uneven_bending_share(setup, one.bench, block_contact("round"), 250.0, FACES)
    assert chi >= one.bench.bending_share


def test_a_steeper_block_by_the_tables_defaults():
    # The pad bears on its rim: friction gains arm, the core loses W, and a thin lens is bent over its tip.
    one = replace(job(1), bench=Bench(), material=lens_material("thiourethane-1.67"))
    thick = replace(one, parts=one.parts | {"centre_mm": 2.2})
    thin = replace(one, parts=one.parts | {"centre_mm": 1.2})
    assert margin(thick, film=True, block_curve_d=8.0) < 0.9 * margin(thick, film=True)
    assert margin(thin, block_curve_d=8.0) < 0.8 * margin(thin)
    assert 1.0 < margin(thick, block_curve_d=8.0) / margin(thick) < 1.08
