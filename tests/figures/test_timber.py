"""What must hold of screws in European timber whatever the numbers."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from roomlint.figures import timber
from roomlint.figures.seated_screw import EurocodeScrew

screws = st.builds(
    EurocodeScrew,
    kind=st.sampled_from(["lag screw", "wood screw"]),
    diameter_mm=st.floats(*timber.SCREW_DIAMETER_RANGE_MM),
    length_mm=st.floats(90.0, 140.0),
    thread_mm=st.floats(40.0, 80.0),
    plate_mm=st.floats(2.0, 6.0),
    board_mm=st.floats(0.0, 30.0),
    member_mm=st.floats(150.0, 200.0),
    density_kg_m3=st.sampled_from(sorted(timber.DENSITY_KG_M3.values())),
    hardwood=st.booleans(),
    wet=st.booleans(),
    group=st.integers(1, 8),
    row=st.integers(1, 4),
    row_apart_mm=st.floats(20.0, 300.0),
)
loads = st.floats(1.0, 1e4)
angles = st.floats(0.0, 90.0)


@given(screws, angles, st.floats(0.1, 20.0))
def test_more_board_never_helps(screw: EurocodeScrew, angle: float, more: float) -> None:
    thicker = replace(screw, board_mm=screw.board_mm + more)
    assert thicker.shear_n("permanent", angle) <= screw.shear_n("permanent", angle) * (1 + 1e-9)
    assert thicker.withdrawal_n("permanent") <= screw.withdrawal_n("permanent") * (1 + 1e-9)


@given(screws, st.integers(1, 5))
def test_more_screws_together_never_hold_less_and_each_never_more(screw: EurocodeScrew, more: int) -> None:
    many = replace(screw, group=screw.group + more)
    assert many.withdrawal_n("permanent") <= screw.withdrawal_n("permanent")
    assert many.withdrawal_n("permanent") * many.group >= screw.withdrawal_n("permanent") * screw.group * (1 - 1e-9)


@given(screws)
def test_wet_wood_and_lighter_wood_never_hold_more(screw: EurocodeScrew) -> None:
    for worse in (replace(screw, wet=True), replace(screw, density_kg_m3=290.0)):
        for angle in (0.0, 90.0):
            assert worse.shear_n("permanent", angle) <= screw.shear_n("permanent", angle) * (1 + 1e-9)
        assert worse.withdrawal_n("permanent") <= screw.withdrawal_n("permanent") * (1 + 1e-9)


@given(screws, loads, loads, loads, st.floats(0.0, 1e3), st.sampled_from(["pull", "along", "across"]))
def test_a_load_that_is_added_never_helps(
    screw: EurocodeScrew, pull: float, along: float, across: float, more: float, of: str
) -> None:
    added = {"pull": 0.0, "along": 0.0, "across": 0.0, of: more}
    before = screw.pulled_and_sheared("permanent", pull, along, across)
    after = screw.pulled_and_sheared(
        "permanent", pull + added["pull"], along + added["along"], across + added["across"]
    )
    assert after >= before * (1 - 1e-9)


@given(screws, loads, loads)
def test_both_together_use_no_less_than_either_alone(screw: EurocodeScrew, pull: float, along: float) -> None:
    both = screw.pulled_and_sheared("permanent", pull, along, 0.0)
    assert both >= max(screw.pulled("permanent", pull), screw.sheared("permanent", along, 0.0)) * (1 - 1e-9)
