"""A bench profile: written and read back, replaces what it names alone; bad files are refused."""

from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.bench.contact import block_contact
from lablib.bench.cutting_fit import CuttingFit
from lablib.bench.fitted import Fitted
from lablib.bench.grip_fit import BreakLoose, fit_grip
from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import log_scatter
from lablib.bench.parameter import parameters
from lablib.bench.profile import BenchProfile, Measured, measured_cutting, measured_grip, read_profile
from lablib.bench.setup import Setup
from lablib.command import main
from lablib.errors import LabError

MATERIAL = "thiourethane-1.67"
FRICTION, SHEAR = "coat.slick.pad_friction", "coat.slick.pad_shear_factor"
ENERGY = f"material.{MATERIAL}.specific_energy_j_per_mm3"


def one(value: float, how: str = "jig, invented readings") -> Measured:
    return Measured(value=value, error=0.01, readings=12, how=how)


def profile(**values: float) -> BenchProfile:
    named = {"friction": FRICTION, "shear": SHEAR, "energy": ENERGY, "core": "core_shear_mpa"}
    measured = {named[name]: one(value) for name, value in values.items()}
    return BenchProfile(bench="corner bench", day=date(2026, 3, 27), measured=measured)


WHOLE = profile(friction=0.25, shear=0.3, energy=0.5)


def test_it_replaces_what_it_names_and_nothing_else():
    bench = profile(friction=0.25, core=0.4).on(Bench())
    assert bench.coats["slick"].pad_friction == 0.25
    assert bench.core_shear_mpa == 0.4
    assert bench.coats["slick"].pad_shear_factor == Bench().coats["slick"].pad_shear_factor
    assert bench.coats["coated"] == Bench().coats["coated"]
    assert bench.pad_shear_mpa == Bench().pad_shear_mpa


def test_a_material_cuts_as_measured_and_keeps_its_bite():
    table = lens_material(MATERIAL)
    cuts = WHOLE.cuts(table)
    assert cuts.specific_energy_j_per_mm3 == 0.5
    assert (cuts.kappa, cuts.depth_per_turn_mm) == (table.kappa, table.depth_per_turn_mm)
    assert WHOLE.cuts(lens_material("hard-resin-1.50")) == lens_material("hard-resin-1.50")


@pytest.mark.parametrize(
    ("known", "setup", "covered"),
    [
        (WHOLE, Setup(coat="slick"), True),
        (WHOLE, Setup(coat="coated"), False),
        (WHOLE, Setup(coat="slick", film=True), False),
        (WHOLE, Setup(coat="slick", grip_layer="present"), False),
        (profile(friction=0.25, shear=0.3), Setup(coat="slick"), False),
    ],
)
def test_the_doubt_falls_away_only_where_what_decides_was_measured(known, setup, covered):
    material = lens_material(MATERIAL)
    assert known.covers(setup, material) == covered
    doubt = known.bench_for(setup, material).doubt
    assert doubt == (1.0 if covered else Bench().doubt)
    scatter = log_scatter(known.bench_for(setup, material), calibrated=False)
    assert (scatter == Bench().scatter) == covered


def test_fits_become_a_profile():
    readings = [
        BreakLoose(clamp_n=force, torque_nmm=torque)
        for force, torque in ((100.0, 284.6), (200.0, 460.6), (300.0, 636.6))
        for _ in range(2)
    ]
    grip = measured_grip(fit_grip(readings, block_contact("round")), how="jig")
    assert grip[FRICTION].value == pytest.approx(0.22)
    # tau 0.03 of the pad's 0.15 MPa.
    assert grip[SHEAR].value == pytest.approx(0.2, abs=1e-3)
    assert grip[SHEAR].readings == 6
    fit = CuttingFit(
        specific_energy_j_per_mm3=Fitted(value=0.5, error=0.02),
        rubbing_n_per_mm=Fitted(value=0.2, error=0.05),
        weighings=8,
    )
    cutting = measured_cutting(fit, MATERIAL, how="scales and meter")
    both = BenchProfile(bench="corner bench", day=date(2026, 3, 27), measured=grip | cutting)
    assert both.covers(Setup(coat="slick"), lens_material(MATERIAL))


def test_what_fits_give_is_written_with_six_figures():
    fit = CuttingFit(
        specific_energy_j_per_mm3=Fitted(value=0.5123456789, error=0.0212345678),
        rubbing_n_per_mm=Fitted(value=0.2, error=0.0),
        weighings=8,
    )
    found = measured_cutting(fit, MATERIAL, how="scales and meter")
    assert (found[ENERGY].value, found[ENERGY].error) == (0.512346, 0.0212346)
    text = BenchProfile(bench="corner bench", day=date(2026, 3, 27), measured=found).text()
    assert "value = 0.512346\nerror = 0.0212346\n" in text


@given(
    value=st.floats(0.12, 0.3),
    error=st.floats(0.0, 1.0),
    readings=st.integers(1, 100),
    how=st.text(min_size=1).filter(str.strip),
    bench=st.text(st.characters(codec="utf-8"), min_size=1).filter(str.strip),
)
def test_what_is_written_is_read_back(tmp_path_factory, value, error, readings, how, bench):
    written = BenchProfile(
        bench=bench,
        day=date(2026, 3, 27),
        measured={FRICTION: Measured(value=value, error=error, readings=readings, how=how)},
    )
    path = tmp_path_factory.mktemp("profile") / "bench.toml"
    path.write_text(written.text(), encoding="utf-8")
    assert read_profile(path) == written


GOOD = WHOLE.text()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("format = 2\n" + GOOD.partition("\n")[2], "format 2 is not known: this workbook reads 1"),
        (GOOD.partition("\n")[2], "format is missing: there are format, bench, date, measured"),
        (GOOD.replace("2026-03-27", '"March"'), "date 'March' is no day"),
        (GOOD.replace("corner bench", "corner\nbench"), "is not TOML"),
        (GOOD.replace('bench = "corner bench"', "bench = 3"), "bench is a name in quotes"),
        (GOOD.replace("readings = 12\n", "", 1), f"[measured.{FRICTION}] readings is missing"),
        (GOOD.replace("readings = 12", "readings = 12\nby = 1", 1), "by is not known"),
        (GOOD.replace("readings = 12", "readings = 0", 1), f"[measured.{FRICTION}] readings"),
        (GOOD.replace("error = 0.01", "error = -1.0", 1), "error"),
        (GOOD.replace("jig, invented readings", " ", 1), "how is empty"),
        (GOOD.replace("value = 0.25", "value = 0.9"), f"{FRICTION}: "),
        (
            GOOD.replace("value = 0.25", "value = nan"),
            f"[measured.{FRICTION}] value nan is not a finite number",
        ),
        (GOOD.replace("value = 0.25", "value = true"), f"[measured.{FRICTION}] value True is not a number"),
        (GOOD.replace(f'"{FRICTION}"', FRICTION), "[measured.coat] is split at its points"),
        (GOOD.replace("2026-03-27", "2026-03-27T10:00:00"), "date '2026-03-27 10:00:00' is no day"),
        ('format = 1\nbench = "a"\ndate = 2026-03-27\n[measured]\n', "nothing was measured: give a table"),
        (GOOD.replace('bench = "corner bench"', 'bench = " "'), "bench is empty: name the bench"),
        (GOOD.replace("slick.pad_friction", "wet.pad_friction"), "measured number 'coat.wet.pad_friction'"),
        (GOOD.replace(FRICTION, "doubt"), "measured number 'doubt'"),
        (GOOD.replace(FRICTION, "pad_age_months"), "measured number 'pad_age_months'"),
        ("x" * 200_001, "over 200 kB"),
    ],
)
def test_a_bad_file_is_refused_with_the_reason(tmp_path: Path, text: str, said: str):
    path = tmp_path / "bench.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(LabError) as found:
        read_profile(path)
    assert str(found.value).startswith("bench profile bench.toml")
    assert said in str(found.value)


def test_a_file_that_is_not_there_is_said_to_be_missing(tmp_path: Path):
    with pytest.raises(LabError, match=r"bench profile none.toml cannot be read \(No such file"):
        read_profile(tmp_path / "none.toml")


def test_every_number_of_the_bench_can_be_measured():
    rows = {name for name in parameters() if name.partition(".")[0] in ("coat", "skin", "wheel", "material")}
    for name in rows | {"core_shear_mpa", "dynamic_factor", "scatter"}:
        BenchProfile(bench="b", day=date(2026, 1, 1), measured={name: one(parameters()[name].default)})


def said_by(capsys: pytest.CaptureFixture[str]) -> str:
    return " ".join(capsys.readouterr().out.split())


def test_the_job_sheet_says_what_was_measured_and_drops_the_doubt(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    path = tmp_path / "bench.toml"
    path.write_text(WHOLE.text(), encoding="utf-8")
    assert main(["job", "hard-minus"]) == 0
    plain = said_by(capsys)
    assert "Bench figures are teaching estimates" in plain
    assert main(["job", "hard-minus", "--bench", str(path)]) == 0
    measured = said_by(capsys)
    assert "those of corner bench, measured up to 2026-03-27: coat.slick.pad_friction" in measured
    assert "the threefold doubt falls away" in measured
    assert plain.partition("Bench figures")[0] != measured.partition("Bench figures")[0]
    assert ("not calibrated" in plain, "not calibrated" in measured) == (True, False)
    assert "on a thin lens, how far it bends" in measured
    assert main(["job", "hard-minus", "--bench", str(path), "--remedies"]) == 0
    listed = said_by(capsys)
    assert "those of corner bench" in listed
    assert "until this bench has been calibrated" not in listed
    path.write_text(profile(friction=0.25).text(), encoding="utf-8")
    assert main(["job", "hard-minus", "--bench", str(path), "--remedies"]) == 0
    assert "Remedies for the right lens" in said_by(capsys)
    assert main(["job", "hard-minus", "--bench", str(path)]) == 0
    assert "stays uncertain about threefold" in said_by(capsys)
