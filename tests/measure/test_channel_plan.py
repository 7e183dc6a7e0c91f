"""The channel plan that `roomlint figures` prints: content channel, outputs, cable, load, loudspeaker."""

from __future__ import annotations

from typing import Any

from roomlint.measure import Figures
from roomlint.measure.sheet import Lacking, sheet
from roomlint.report.figure_sheet import sheet_json, sheet_text
from roomlint.sample import room, speaker
from roomlint.testing import changed, room_of

BOX = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "loudspeaker": {"impedance": "4 ohm"}}
LOW = {"roomlint_product": 1, "id": "low", "kind": "subwoofer", "apparent_power": "300 VA"}
ROOM: dict[str, Any] = changed(
    room(speaker("left", "M+030", product="box"), speaker("right", "M-030", product="box")),
    {
        "subwoofers": [{"id": "sub", "product": "low"}],
        "electronics": {
            "processor": {
                "unfitted": ["M+135"],
                "outputs": [{"output": 3, "plays": ["left", "right"]}, {"output": 9, "plays": ["sub"]}],
            },
            "amplifiers": [
                {"id": "amp", "feeds": [{"output": 2, "loudspeakers": ["left", "right"], "wiring": "parallel"}]}
            ],
        },
        "cables": [{"id": "run", "carries": "loudspeaker", "from": "amp", "to": "left"}],
    },
)


def plan(data: dict[str, Any]) -> list[list[str]]:
    """Return the rows of the plan: names as they are, figures by their number, what is not there as a dash."""
    tables = sheet(Figures(room_of(data, [BOX, LOW]).design))
    found = next((table for table in tables if table.title == "channels"), None)
    if found is None:
        return []

    def shown(cell: Any) -> str:
        if isinstance(cell, Lacking):
            return f"? {cell.key}" if cell.key else "-"
        return cell if isinstance(cell, str) else f"{cell.value:g}"

    return [[name, *(shown(cell) for cell in cells)] for name, cells in found.rows]


def test_every_channel_is_followed_to_what_plays_it() -> None:
    assert plan(ROOM) == [
        ["left", "M+030", "3", "amp 2", "run", "2"],
        ["right", "M-030", "3", "amp 2", "-", "2"],
        ["sub", "-", "9", "own", "-", "-"],
        ["not fitted", "M+135", "-", "-", "-", "-"],
    ]


def test_a_load_that_cannot_be_told_names_what_is_missing() -> None:
    data = changed(ROOM, {"electronics.amplifiers.0.feeds.0.wiring": None})
    assert plan(data)[0][-1].endswith("wiring")


def test_a_room_without_electronics_has_no_plan() -> None:
    assert plan(changed(ROOM, {"electronics": None, "cables": None})) == []


def test_the_plan_is_told_as_text_and_as_data() -> None:
    tables = sheet(Figures(room_of(ROOM, [BOX, LOW]).design))
    assert "  left        M+030    3            amp 2             run    2.00 ohm" in sheet_text("t", tables)
    assert '"amplifier output": "amp 2"' in sheet_json("a.room.yaml", tables)
