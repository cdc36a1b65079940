"""What the sheet finds on the edge of a lens in its frame."""

import pytest
from tickets import FRAME, LENS, ticket

from lablib.bench.edges import least_edge_mm
from lablib.errors import LabError
from lablib.job.edge_findings import bevel_of, edge_findings, edge_of
from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import threshold
from lablib.job.sheet import work


def sheet(kind: str | None, sphere_d: float = -2.0, **lens: object) -> EyeSheet:
    frame = FRAME | ({"kind": kind} if kind else {})
    order = {"sphere_d": sphere_d, "monocular_pd_mm": 32.0}
    lens = {key: value for key, value in (LENS | lens).items() if value is not None}
    return work(ticket(frame=frame, right=order, left=None, lens=lens)).right


def plus(kind: str, least_edge_mm: float, **lens: object) -> EyeSheet:
    return sheet(kind, 5.5, centre_thickness_mm=None, least_edge_mm=least_edge_mm, front_curve_d=8.0, **lens)


def names(one: EyeSheet, **known: float) -> list[str]:
    return [finding.name for finding in edge_findings(one, **known)]


def test_the_edge_is_that_of_the_sheet():
    one = sheet("metal")
    edge = edge_of(one)
    assert edge.thickness_mm is one.finished.edge_mm
    # 4.00 D in 1.498 is 4.26 D for 1.530, by the material's own index.
    index = one.order.lens.material.index
    assert edge.front_curve_d == pytest.approx(4.0 * 0.53 / (index - 1.0))


def test_a_held_lens_has_no_edge():
    held = ticket(right={"monocular_pd_mm": 32.0, "prescription": "-2.00 -1.00"}, left=None)
    with pytest.raises(LabError, match="right lens is held: it has no edge before"):
        edge_of(work(held).right)


@pytest.mark.parametrize("kind", ["metal", "plastic"])
def test_an_edge_too_thin_for_a_bevel_is_found_and_the_advice_silences_it(kind: str):
    (found,) = edge_findings(plus(kind, 0.8))
    assert found.name == "edge-too-thin-for-a-bevel"
    assert "the thinnest edge is 0.80 mm and a bevel needs 1 mm" in found.text
    assert names(plus(kind, least_edge_mm(kind))) == []


def test_where_no_frame_is_named_nothing_is_found():
    assert names(plus("grooved", 0.8)) == []
    assert names(sheet(None)) == []
    assert bevel_of(sheet(None)) is None
    assert bevel_of(sheet("drilled")) is None


def test_hard_resin_is_not_drilled():
    # Curriculum, job with a trap: -2.50 in a three-piece drilled frame.
    found = edge_findings(sheet("drilled", -2.5))
    assert [one.name for one in found] == ["not-fit-for-holes"]
    assert "cracks run from the holes" in found[0].text


def test_a_tough_material_is_drilled_where_its_edge_is_thick_enough():
    assert names(sheet("drilled", -2.5, material="polycarbonate-1.59")) == []
    thin = plus("drilled", 1.2, material="thiourethane-1.60")
    (found,) = edge_findings(thin)
    assert found.name == "edge-too-thin-for-holes"
    assert "1.20 mm and a hole needs 1.5 mm" in found.text
    assert names(plus("drilled", least_edge_mm("drilled"), material="thiourethane-1.60")) == []


def test_a_material_by_its_numbers_is_asked_about():
    own = {"index": 1.6, "density": 1.3, "abbe": 40.0}
    (found,) = edge_findings(sheet("drilled", -2.5, material=own))
    assert (found.name, "ask its maker" in found.text) == ("not-fit-for-holes", True)


def test_a_wrapped_rim_is_told_from_a_flat_one():
    wrapped = sheet("metal", -1.0, centre_thickness_mm=1.5)
    assert names(wrapped, rim_curve_d=4.5) == []
    (found,) = edge_findings(wrapped, rim_curve_d=9.0)
    assert found.name == "no-bevel-holds"
    assert "take a front nearer the rim's curve of 9 D, or an edge thicker by" in found.text


def test_a_ticket_may_say_how_its_rims_are_bowed():
    order = {"sphere_d": -1.0, "monocular_pd_mm": 32.0}
    lens = LENS | {"centre_thickness_mm": 1.5}
    for curve, found in ((4.5, 0), (9.0, 1)):
        frame = FRAME | {"kind": "metal", "rim_curve_d": curve}
        job = work(ticket(frame=frame, right=order, left=None, lens=lens))
        assert [one.name for one in job.findings].count("no-bevel-holds") == found


def test_the_sheet_of_a_job_carries_them():
    job = work(ticket(frame=FRAME | {"kind": "drilled"}))
    assert [one.name for one in job.findings].count("not-fit-for-holes") == 2


def test_sheet_and_bench_agree_on_the_groove():
    assert threshold("groove_edge") == pytest.approx(least_edge_mm("grooved"))
