"""The budget of levels and the noise that `roomlint figures` prints: what ends first, every seat, every octave."""

from __future__ import annotations

from typing import Any

from roomlint.measure import Figures
from roomlint.measure.curves import charts
from roomlint.measure.figure import Figure
from roomlint.measure.sheet import Lacking, Table, sheet
from roomlint.sample import at, room, speaker
from roomlint.testing import changed, room_of

BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker",
    "loudspeaker": {
        "sensitivity": "88 dB", "drive": "2.83 V", "impedance": "8 ohm", "maximum_level": "110 dB",
        "power_rating": "100 W",
    },
}  # fmt: skip
AMP = {
    "roomlint_product": 1, "id": "amp-two", "kind": "amplifier",
    "amplifier": {"channels": 2, "power": "100 W", "power_into": "8 ohm", "minimum_load": "4 ohm"},
}  # fmt: skip
ACTIVE = {
    "roomlint_product": 1, "id": "active", "kind": "loudspeaker", "apparent_power": "60 VA",
    "loudspeaker": {"maximum_level": "106 dB"},
}  # fmt: skip
ROOM: dict[str, Any] = changed(
    room(
        speaker("left", "M+030", -1.5, 2.0, product="box"), speaker("right", "M-030", 1.5, 2.0, product="active"),
        seats=((0.0, -2.0),),
    ),
    {"electronics": {"amplifiers": [
        {"id": "amp", "product": "amp-two", "feeds": [{"output": 1, "loudspeakers": ["left"]}]},
    ], "racks": "none"}},
)  # fmt: skip


def tables(data: dict[str, Any], *sheets: dict[str, Any]) -> dict[str, Table]:
    return {table.title: table for table in sheet(Figures(room_of(data, sheets or (BOX, AMP, ACTIVE)).design))}


def cells(table: Table) -> dict[str, list[Any]]:
    def shown(cell: Any) -> Any:
        if isinstance(cell, Figure):
            return round(cell.value, 2)
        return f"no {cell.below}" if isinstance(cell, Lacking) else cell

    return {name: [shown(cell) for cell in row] for name, row in table.rows}


def test_budget_tells_what_ends_first_of_each_chain() -> None:
    # 2.5 m take 7.96 dB; 100 W into 8 ohm bring 20.00; four times 100 W 26.02 over one watt.
    found = cells(tables(ROOM)["levels at seat, full scale"])
    assert found["left"] == [100.04, 102.04, "amplifier", 98.0]
    assert found["right"] == ["own", 98.04, "largest level", 98.0]


def test_the_chart_of_levels_has_the_values_of_the_budget() -> None:
    (chart,) = charts(Figures(room_of(ROOM, (BOX, AMP, ACTIVE)).design))
    assert chart.x.names == ("left", "right")
    points = {curve.name: {x: round(y, 2) for x, y in curve.points} for curve in chart.curves}
    assert points == {
        "the loudspeaker bears": {0: 102.04, 1: 98.04}, "the amplifier gives": {0: 100.04}, "asked for": {0: 98, 1: 98},
    }  # fmt: skip
    assert chart.unknown == ()  # what drives itself has no amplifier to ask for
    assert all(chart.y.low < y < chart.y.high for curve in chart.curves for _, y in curve.points)
    (lacking,) = charts(Figures(room_of(ROOM, (changed(BOX, {"loudspeaker.sensitivity": None}), AMP, ACTIVE)).design))
    assert lacking.unknown == ((0.0, "box", "sensitivity"),)
    # Of a room without a single sheet nothing of this is known, and the findings ask for them.
    assert list(charts(room_of(room(speaker("left", "M+030", -1.5, 2.0))).figures)) == []


def test_a_strong_amplifier_leaves_the_loudspeaker_to_end_first() -> None:
    strong = changed(AMP, {"amplifier.power": "400 W"})
    weak = changed(BOX, {"loudspeaker.power_rating": "20 W"})
    assert cells(tables(ROOM, BOX, strong, ACTIVE)["levels at seat, full scale"])["left"][2] == "largest level"
    assert cells(tables(ROOM, weak, strong, ACTIVE)["levels at seat, full scale"])["left"][2] == "power rating"


def test_full_scale_is_told_for_every_seat() -> None:
    table = tables(ROOM)["full scale at every seat"]
    assert table.columns == ("seat", "seat-2")
    # 88 + 19.995 less 20 lg of 2.5 and of 4.272 m, 7.959 and 12.613 dB.
    assert cells(table)["left"] == [100.04, 95.38]


def test_what_lacks_for_the_budget_is_named() -> None:
    found = cells(
        tables(ROOM, changed(BOX, {"loudspeaker.sensitivity": None}), AMP, ACTIVE)["levels at seat, full scale"]
    )
    assert found["left"][0] == "no sensitivity"


def test_without_products_there_is_no_budget() -> None:
    assert not [title for title in tables(room(speaker("left", "M+030", 0.0, 2.0))) if "full scale" in title]


def test_noise_is_told_by_octave_and_at_every_seat() -> None:
    fan = {"id": "fan", "position": at(0.0, 2.0), "level": "28 dB"}
    data = room(noise={"octaves": {"500 Hz": "26 dB", "1 kHz": "27 dB"}, "sources": [fan]})
    found = tables(data)
    assert cells(found["background by octave"]) == {"500 Hz": [26.0, 20.0], "1000 Hz": [27.0, 25.0]}
    at_ear = cells(found["noise, A-weighted at the ear"])
    assert at_ear["room"][0] == 25.0
    # 28 + 10 lg(1 / 4 + 8 pi / 35.88) = 27.78; 26 - 3.2 and 27 dB of background: 28.40; together 31.11 dB.
    assert at_ear["seat"][1] == 31.11


def test_the_octave_that_decides_is_told() -> None:
    data = room(noise={"octaves": {"500 Hz": "26 dB", "1 kHz": "27 dB"}})
    decided = Figures(room_of(data).design).noise.deciding()
    assert decided is not None
    assert decided.value == 1000.0
    critical = Figures(room_of(changed(data, {"project.reference": "critical"})).design).noise.deciding()
    assert critical is not None
    assert critical.value == 1000.0
