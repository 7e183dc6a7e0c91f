"""Where the drawing puts things: read back out of the SVG and held against places and angles worked out by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest
from sheet_reader import Sheet, near

from roomlint.report.drawing import blocks
from roomlint.report.drawing.shapes import Mark, Words
from roomlint.sample import room, shorthand, speaker

Data = dict[str, Any]
BOX: Data = {
    "width": "0.2 m", "height": "0.3 m", "depth": "0.4 m",
    "loudspeaker": {
        "horizontal_coverage": "90 deg", "placement": ["stand"], "port": {"face": "rear", "diameter": "80 mm"},
    },
}  # fmt: skip


def ell() -> Data:
    """Return an L: 5 m wide at the front for 3 m, 3 m wide behind that for 3 m more."""
    data = room(speaker("left", "M+030", -1.0, 2.0, product=BOX, aim={"azimuth": "180 deg"}))
    corners = ((0, 0, "front"), (5, 0, "right"), (5, 3, "step"), (3, 3, "inner"), (3, 6, "rear"), (0, 6, "left"))
    outline = [{"from_left": f"{x} m", "from_front": f"{y} m", "wall": wall} for x, y, wall in corners]
    data["room"] = {key: value for key, value in data["room"].items() if key != "size"} | {"outline": outline}
    return data


def test_the_plan_has_the_corners_of_the_room() -> None:
    sheet = Sheet(ell())
    (walls,) = sheet.of("plan", layer="wall")
    assert near(walls.points, [(0, 6), (5, 6), (5, 3), (3, 3), (3, 0), (0, 0)])


def test_a_cabinet_is_its_true_box_turned_to_its_aim() -> None:
    """Its acoustic centre is in the middle of its front; it looks at the rear, so that its depth lies before it."""
    (box,) = (one for one in Sheet(ell()).of("plan", "loudspeaker/left", "speaker") if len(one.points) == 4)
    assert near(box.points, [(1.4, 4.5), (1.6, 4.5), (1.6, 4.9), (1.4, 4.9)])


def test_a_cabinet_that_is_aimed_at_a_seat_is_turned() -> None:
    data = room(speaker("left", "M+030", -1.5, 1.5, product=BOX, aim={"seat": "seat"}))
    (box,) = (one for one in Sheet(data).of("plan", "loudspeaker/left", "speaker") if len(one.points) == 4)
    half, deep = 0.1 * math.sqrt(0.5), 0.4 * math.sqrt(0.5)
    front = [(1.0 + half, 4.0 + half), (1.0 - half, 4.0 - half)]
    assert near(box.points, [*front, *((x - deep, y + deep) for x, y in front)])


def test_coverage_is_a_wedge_about_the_axis() -> None:
    """A quarter turn wide, about straight to the rear: its edges run 45 deg to either side."""
    edges = [one.points for one in Sheet(ell()).of("plan", "loudspeaker/left", "cover") if len(one.points) == 2]
    ways = sorted(round(math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))) for a, b in edges if a != b)
    assert {-135, -45} <= set(ways)


def test_what_no_sheet_gives_is_hatched_and_dotted() -> None:
    sheet = Sheet(room(speaker("left", "M+030", -1.0, 2.0)))
    assert sheet.of("plan", "loudspeaker/left", "unknown")
    assert not [one for one in sheet.of("plan", "loudspeaker/left", "speaker") if len(one.points) == 4]


def test_a_sector_is_the_window_of_the_azimuth() -> None:
    """A left at 60 deg, 2 m out: 22 to 45 deg wanted for 0+5+0, drawn about the ear at (2.5, 2.5) at its distance."""
    x, y = 2.0 * math.sin(math.radians(60.0)), 2.0 * math.cos(math.radians(60.0))
    data = room(speaker("left", "M+030", -x, y, product=BOX), speaker("right", "M-030", x, y, product=BOX))
    data["layout"] = "0+5+0"
    sheet = Sheet(data)
    finding = next(one for one in sheet.drawing.listing.findings if "angle.front-pair" in one.rules)
    window = next(v.window for v in finding.verdicts if v.rule == "angle.front-pair")
    assert window is not None
    (band,) = (
        one
        for one in sheet.of("plan", "loudspeaker/left", "window", finding.id)
        if len(one.points) > 4 and all(x < 2.5 for x, _ in one.points)
    )
    turns = [math.degrees(math.atan2(2.5 - x, y - 2.5)) for x, y in band.points]
    assert (min(turns), max(turns)) == (pytest.approx(window.low, abs=0.05), pytest.approx(window.high, abs=0.05))
    reach = [math.dist((2.5, 2.5), point) for point in band.points]
    assert min(reach) < 2.0 < max(reach)
    assert (min(reach) + max(reach)) / 2.0 == pytest.approx(2.0, abs=1e-3)


def test_a_ring_is_the_window_of_the_elevation() -> None:
    """Overhead, 1.2 m above the ear: at 30 deg it would be 2.078 m away in plan, at 55 deg 0.840 m."""
    data = room(speaker("upper", "U+045", -0.2, 0.2, 1.2, mounting={"on": "ceiling"}))
    data["layout"] = "4+7+0"
    sheet = Sheet(data)
    finding = next(one for one in sheet.drawing.listing.findings if "angle.upper-elevation" in one.rules)
    window = next(v.window for v in finding.verdicts if v.rule == "angle.upper-elevation")
    assert window is not None
    assert window.low is not None
    assert window.high is not None
    (ring,) = (one for one in sheet.of("ceiling", "loudspeaker/upper", "window", finding.id) if len(one.points) > 4)
    reach = [math.dist((2.5, 2.5), point) for point in ring.points]
    assert max(reach) == pytest.approx(1.2 / math.tan(math.radians(window.low)), abs=1e-3)
    assert min(reach) == pytest.approx(1.2 / math.tan(math.radians(window.high)), abs=1e-3)


def test_a_port_s_clearance_is_drawn_behind_the_cabinet() -> None:
    """Front at 5.4 m, 0.4 m deep: its rear is at 5.8 m, 0.2 m before the wall; at least 0.15 to 0.3 m are wanted."""
    place = {"from_left": "2.5 m", "from_front": "0.5 m", "height": "1 m"}
    data = room({"id": "left", "label": "M+030", "product": BOX, "position": place, "aim": {"azimuth": "180 deg"}})
    data["loudspeakers"][0]["position"]["from_front"] = "0.45 m"
    sheet = Sheet(data)
    finding = next(one for one in sheet.drawing.listing.findings if "boundary.port-clearance" in one.rules)
    window = next(v.window for v in finding.verdicts if v.rule == "boundary.port-clearance")
    assert window is not None
    assert window.low is not None
    (prism,) = (one for one in sheet.of("plan", "loudspeaker/left", "window", finding.id) if len(one.points) == 4)
    rear, far = 5.95, 5.95 + window.low
    assert near(prism.points, [(2.4, rear), (2.6, rear), (2.6, far), (2.4, far)])


def test_a_remedy_is_a_stretch_from_where_to_where() -> None:
    """Of a pair that stands 30 and 23 deg out, one is to be moved."""
    data = room(speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.2, 2.8))
    sheet = Sheet(data)
    told = [
        (finding, verdict.remedy)
        for finding in sheet.drawing.listing.findings
        for verdict in finding.verdicts
        if verdict.remedy is not None and verdict.remedy.key.endswith(("from_left", "from_front"))
    ]
    assert told
    for finding, remedy in told:
        stretches = [one for one in sheet.of("plan", remedy.subject, "cure", finding.id) if len(one.points) == 2]
        ends = sorted((remedy.low.value, remedy.high.value))
        along = 0 if remedy.key.endswith("from_left") else 1
        found = [sorted(point[along] if not along else 6.0 - point[along] for point in one.points) for one in stretches]
        assert any(one == pytest.approx(ends, abs=1e-3) for one in found)


def test_a_reflection_is_drawn_by_way_of_its_mirror_image() -> None:
    """A metre from the left wall, 2.5 m before the ear and a metre above it, under a high ceiling.

    By way of the wall 4.42 m, by way of the floor 4.48 m: the wall's is the loudest, and bounces at 1 / 3.5 of the way.
    """
    data = room(speaker("left", "M+030", -1.5, 2.5, 1.0, product=BOX, aim={"seat": "seat"}))
    data["room"]["ceiling"]["height"] = "6 m"
    data["project"]["reference"] = "critical"
    sheet = Sheet(data)
    (bounce,) = sheet.drawing.scene.bounces
    share = 1.0 / 3.5
    assert (bounce.surface, bounce.source) == ("left", "loudspeaker/left")
    assert bounce.at == pytest.approx((0.0, 5.0 - 2.5 * share, 2.2 - share), abs=1e-6)
    told = [one for one in sheet.drawing.listing.findings if any("reflection" in rule for rule in one.rules)]
    ways = [one.points for one in sheet.of("plan", "loudspeaker/left", "window", told[0].id) if len(one.points) == 3]
    assert any(near(way, [(1.0, 5.0), (0.0, 5.0 - 2.5 * share), (2.5, 2.5)]) for way in ways)


def test_marks_stand_beside_what_they_are_about() -> None:
    sheet = Sheet(ell())
    view = sheet.view("plan")
    marks = [item for item in view.items if isinstance(item, Mark) and item.key == "loudspeaker/left"]
    assert marks
    assert all(item.at == (1.5, 4.5) for item in marks)
    assert all(math.hypot(*item.shift_mm) < 40.0 for item in marks)


def test_a_receptacle_s_mark_stands_at_the_one_of_its_circuit() -> None:
    """Two circuits with a receptacle `r1` each; the second, 3 m along the front wall, has three plugs for two."""
    outlet = {"id": "r1", "wall": "front", "height": "0.4 m", "from_wall_left": "1 m", "outlets": 2}
    two = {**outlet, "from_wall_left": "3 m", "height": "2.4 m"}
    plugged = [{"id": f"load-{n}", "receptacle": "r1"} for n in range(3)]
    sheet = Sheet(room(circuits=[
        {"id": "one", "receptacles": [outlet], "loads": "none", "units": "none"},
        {"id": "two", "receptacles": [two], "loads": plugged, "units": "none"},
    ]))  # fmt: skip
    (found,) = (one for one in sheet.drawing.listing.findings if "mains.outlet-count" in one.rules)
    marks = [item for item in sheet.view("plan").items if isinstance(item, Mark) and item.of == found.id]
    assert [(mark.key, mark.at) for mark in marks] == [("receptacle/r1+circuit/two", (3.0, 6.0))]


@pytest.mark.parametrize(
    ("ceiling", "long", "cross"),
    [
        ({"shape": "flat", "height": "2.6 m"}, {(0.0, 2.6), (6.0, 2.6)}, {(0.0, 2.6), (5.0, 2.6)}),
        (
            {"shape": "gable", "low": "2 m", "height": "3 m", "ridge": "front-to-rear"},
            {(0.0, 3.0), (6.0, 3.0)},
            {(0.0, 2.0), (2.5, 3.0), (5.0, 2.0)},
        ),
        (
            {"shape": "tray", "low": "2.4 m", "height": "2.8 m",
             "raised": {"from_left": "1 m", "from_front": "1 m", "width": "3 m", "depth": "4 m", "side_run": "0.5 m"}},
            # From the front: 1 m to the raised part, whose sides lean inwards by half a metre.
            {(0.0, 2.4), (1.0, 2.4), (1.5, 2.8), (4.5, 2.8), (5.0, 2.4), (6.0, 2.4)},
            {(0.0, 2.4), (1.0, 2.4), (1.5, 2.8), (3.5, 2.8), (4.0, 2.4), (5.0, 2.4)},
        ),
    ],
)  # fmt: skip
def test_sections_show_the_true_ceiling(
    ceiling: Data, long: set[tuple[float, float]], cross: set[tuple[float, float]]
) -> None:
    """Through the ear at (2.5, 2.5); the long section has the front at its left."""
    data = room(speaker("left", "M+030", -1.0, 2.0))
    data["room"]["ceiling"] = ceiling
    sheet = Sheet(data)
    for name, wanted in (("long", long), ("cross", cross)):
        ends = {
            (round(u, 2) + 0.0, round(v, 2))
            for one in sheet.of(name, layer="wall")
            if len(one.points) == 2 and min(v for _, v in one.points) > 1.0
            for u, v in one.points
        }
        assert ends == wanted


def test_a_section_ends_where_the_room_does() -> None:
    """In the L the cross section through the ear, 3.5 m from the front, is 3 m wide, the long one 6 m."""
    sheet = Sheet(ell())
    for name, wide in (("long", 6.0), ("cross", 3.0)):
        floors = [one.points for one in sheet.of(name, layer="wall") if all(abs(v) < 1e-3 for _, v in one.points)]
        assert near(floors[0], [(0.0, 0.0), (wide, 0.0)])


def test_a_listener_s_sight_line_runs_from_the_eye_to_the_picture() -> None:
    """The eye is 17 mm over the ear at 1.2 m; a 1.8 m wide picture of 16:9 stands 0.1 m before the front wall."""
    data = room(picture={"kind": "display", "centre": {"from_left": "2.5 m", "from_front": "0.1 m", "height": "1.2 m"},
                         "width": "1.8 m", "height": "1 m", "mounting": {"on": "front"}})  # fmt: skip
    sheet = Sheet(data)
    lines = [one.points for one in sheet.of("long", "seat/seat", "sight")]
    assert any(near(line, [(3.5, 1.217), (0.1, 0.7)]) for line in lines)
    assert any(near(line, [(3.5, 1.217), (0.1, 1.7)]) for line in lines)
    edges = [one.points for one in sheet.of("plan", "seat/seat", "sight")]
    assert any(near(line, [(2.5, 2.5), (1.6, 5.9)]) for line in edges)
    assert any(near(line, [(2.5, 2.5), (3.4, 5.9)]) for line in edges)


def test_a_door_swings_the_way_that_the_file_says() -> None:
    """In the rear wall, seen from inside 0.5 to 1.3 m from its left-hand end: x 4.5 to 3.7 m."""
    data = room()
    data["room"]["openings"] = [
        {"id": "door", "kind": "door", "wall": "rear", "from_wall_left": "0.5 m", "width": "0.8 m", "sill": "0 m",
         "height": "2 m", "hinge": "left", "swing": "in"},
    ]  # fmt: skip
    sheet = Sheet(data)
    leaf = [one.points for one in sheet.of("plan", "opening/door", "opening") if len(one.points) == 2]
    assert near(leaf[0], [(4.5, 0.0), (4.5, 0.8)])
    (swing,) = sheet.of("plan", "opening/door", "swing")
    assert near(swing.points, [(4.5, 0.8), (3.7, 0.0)])


@pytest.mark.parametrize("ceiling", ["tray", "part-sloped", "pieces"])
def test_all_that_is_placed_is_drawn(ceiling: str) -> None:
    """Pairs, rows, a riser, a panel, a roof window and a receptacle, of which the file writes only what must be."""
    sheet = Sheet(shorthand(ceiling))
    plan = {one.key for one in sheet.read("plan")}
    over = {one.key for one in sheet.read("ceiling")}
    assert {"loudspeaker/surround-right", "seat/back-3", "riser/step", "opening/window", "treatment/panel"} <= plan
    assert {"receptacle/outlet+circuit/av", "picture/picture", "subwoofer/sub-right"} <= plan
    assert {"loudspeaker/upper-rear-right", "roof window/skylight", "treatment/cloud"} <= over


def test_every_view_stays_on_its_paper() -> None:
    for data in (ell(), shorthand("tray")):
        sheet = Sheet(data)
        for page in sheet.drawing.sheets():
            for placed in page.placed:
                wide, high = placed.view.size_mm
                assert placed.x_mm >= 0.0
                assert placed.x_mm + wide <= page.width_mm + 0.1, placed.view.name
                assert placed.y_mm + high <= page.height_mm + 0.1, placed.view.name


@pytest.mark.parametrize(("units", "paper", "size"), [
    ("metric", "", (420.0, 297.0)), ("us", "", (431.8, 279.4)), ("us", "letter", (279.4, 215.9)),
    ("metric", "a4", (297.0, 210.0)),
])  # fmt: skip
def test_a_sheet_is_as_large_as_its_paper_and_its_plan_true_to_scale(
    units: str, paper: str, size: tuple[float, float]
) -> None:
    sheet = Sheet(ell(), units=units, paper=paper)
    first = sheet.drawing.sheets()[0]
    assert (first.width_mm, first.height_mm) == size
    many = len(sheet.drawing.sheets())
    assert sheet.root.get("width") == f"{size[0]:g}mm"
    assert sheet.root.get("height") == f"{round(size[1] * many, 3):g}mm"
    view = sheet.view("plan")
    assert view.mm(5.0) == pytest.approx(5000.0 / view.scale)


@pytest.mark.parametrize("paper", ["a3", "letter"])
def test_all_that_is_placed_is_in_the_setting_out_of_every_paper(paper: str) -> None:
    sheet = Sheet(shorthand("tray"), paper=paper)
    told = "".join(sheet.root.itertext())
    for thing in sheet.drawing.scene.things:
        if thing.kind in {"loudspeaker", "subwoofer", "seat"}:
            assert f"{thing.name} {thing.label}".strip() in told
    rows = blocks.setting_out_rows(sheet.drawing.scene, sheet.drawing.units)
    tables = [one.view for page in sheet.drawing.sheets() for one in page.placed if one.view.name == "table"]
    for page in sheet.drawing.sheets():
        assert ("setting out" in page.title.lower()) is any(one.view.name == "table" for one in page.placed), page.title
    written = [item.text for view in tables for item in view.items if isinstance(item, Words)]
    assert all(row[0] in written for row in rows)
