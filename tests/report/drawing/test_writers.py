"""The four forms of a drawing: the same bytes, hostile words that do nothing, what CAD and paper get."""

from __future__ import annotations

import io
import json
import re
import shutil
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from click.testing import CliRunner
from sheet_reader import Sheet, reviewed, written

import roomlint.cli_draw
from roomlint.cli import main
from roomlint.measure.curves import charts
from roomlint.measure.scene import Ax, Chart, Curve
from roomlint.report import draw
from roomlint.report.drawing.dimensions import spread
from roomlint.report.drawing.marks import LOOKS, outline
from roomlint.report.drawing.plots import Axes, plot
from roomlint.report.drawing.shapes import INK, Arc, Words, width_mm
from roomlint.report.drawing.shapes import Path as Line
from roomlint.report.units import Units
from roomlint.sample import room, shorthand, speaker
from roomlint.testing import changed, room_of

ROOT = Path(__file__).parents[3]
ATTIC = ROOT / "example_projects" / "attic" / "attic.room.yaml"
STUDIO = ROOT / "example_projects" / "garden-studio" / "quick.room.yaml"
TODAY = ("--today", "2026-11-25")
HOSTILE = "</title></script><script>alert(1)</script><img src=x onerror=alert(2)>{{ 7 * 7 }}\"' %%u &lt; ]]>"


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, list(words))
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.output


@pytest.mark.parametrize("form", ["html", "svg", "dxf", "pdf"])
def test_the_same_room_gives_the_same_bytes(form: str, tmp_path: Path) -> None:
    for name in ("one", "other"):
        done = subprocess.run(
            [sys.executable, "-m", "roomlint", "draw", str(STUDIO), "--to", str(tmp_path / f"{name}.{form}"), *TODAY],
            capture_output=True, check=False, env={"PYTHONHASHSEED": "7" if name == "one" else "8", "PATH": "/usr/bin"},
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
    assert (tmp_path / f"one.{form}").read_bytes() == (tmp_path / f"other.{form}").read_bytes()


class Parts(HTMLParser):
    """The elements of a page, with what they hold."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))


def hostile() -> dict[str, Any]:
    return changed(shorthand(), {"project.title": HOSTILE, "project.about": HOSTILE})


def test_hostile_words_do_nothing_on_the_page() -> None:
    text = written("html", hostile())
    tags = Parts(text).tags
    assert [tag for tag, _ in tags].count("script") == 1
    assert not [tag for tag, _ in tags if tag in {"img", "iframe", "object", "embed", "link", "base", "form"}]
    assert not [key for _, attrs in tags for key in attrs if key.startswith("on")]
    assert "49" not in re.findall(r"<h1>.*?</h1>", text, re.DOTALL)[0]
    assert "{{ 7 * 7 }}" in text


def test_the_page_lets_nothing_in_and_asks_for_nothing() -> None:
    text = written("html", shorthand())
    assert "default-src 'none'" in text
    outside = re.findall(r"""(?:src|href|action)\s*=\s*["'][^"'#]|url\((?!#)|@import|https?://[^\s"'<]+""", text)
    assert {one for one in outside if "www.w3.org/2000/svg" not in one} == set()


def test_hostile_words_leave_the_svg_whole() -> None:
    root = ET.fromstring(written("svg", hostile()))  # noqa: S314  we wrote it
    kinds = {one.tag.rpartition("}")[2] for one in root.iter()}
    assert kinds <= {
        "svg",
        "g",
        "path",
        "circle",
        "polygon",
        "text",
        "title",
        "defs",
        "style",
        "pattern",
        "rect",
        "line",
    }
    assert not [key for one in root.iter() for key in one.attrib if key.startswith("on") or "href" in key]


def test_dxf_has_the_room_s_own_coordinates_and_passes_its_audit() -> None:
    ezdxf = pytest.importorskip("ezdxf")
    data = room(
        speaker("left", "M+030", -1.0, 2.0), speaker("upper", "U+045", -1.0, 1.0, 1.2, mounting={"on": "ceiling"})
    )
    document = ezdxf.read(io.StringIO(written("dxf", data)))
    audit = document.audit()
    assert (audit.errors, audit.fixes) == ([], [])
    assert document.units == ezdxf.units.MM
    walls = document.modelspace().query('LWPOLYLINE[layer=="WALLS"]')
    corners = {(round(x, 6), round(y, 6)) for x, y, *_ in walls[0].get_points()}
    assert corners == {(0.0, 0.0), (5000.0, 0.0), (5000.0, 6000.0), (0.0, 6000.0)}
    assert {"LOUDSPEAKERS", "SEATS", "WALLS", "DIMENSIONS", "OVERHEAD"} <= {layer.dxf.name for layer in document.layers}
    seats = [circle for circle in document.modelspace().query("CIRCLE") if circle.dxf.layer == "NOT-KNOWN"]
    assert any(
        circle.dxf.center.isclose((2500.0, 2500.0)) and circle.dxf.radius == pytest.approx(250.0) for circle in seats
    )


def test_dxf_is_in_inches_for_a_reader_in_the_united_states() -> None:
    ezdxf = pytest.importorskip("ezdxf")
    document = ezdxf.read(io.StringIO(written("dxf", room(), units="us")))
    assert document.units == ezdxf.units.IN
    (walls,) = list(document.modelspace().query('LWPOLYLINE[layer=="WALLS"]'))[:1]
    assert max(x for x, *_ in walls.get_points()) == pytest.approx(5.0 / 0.0254)


def test_dxf_bears_hostile_words() -> None:
    ezdxf = pytest.importorskip("ezdxf")
    audit = ezdxf.read(io.StringIO(written("dxf", hostile()))).audit()
    assert (audit.errors, audit.fixes) == ([], [])


def test_pdf_has_a_page_of_the_paper_for_each_sheet() -> None:
    review = reviewed(hostile())
    (made,) = draw("pdf", review)
    assert isinstance(made, bytes)
    boxes = re.findall(rb"/MediaBox \[ 0 0 ([\d.]+) ([\d.]+) \]", made)
    assert len(boxes) == len(Sheet(hostile()).drawing.sheets())
    assert {(round(float(w) * 25.4 / 72), round(float(h) * 25.4 / 72)) for w, h in boxes} == {(420, 297)}
    assert b"JavaScript" not in made


def test_signs_that_pdf_s_own_fonts_lack_are_question_marks() -> None:
    from roomlint.report.drawing.pdf import plain

    assert plain("Größe ± 5 mm → ok · 映画") == "Größe ± 5 mm -> ok · ??"


@pytest.mark.parametrize(("form", "package"), [("html", "jinja2"), ("pdf", "reportlab"), ("dxf", "ezdxf")])
def test_what_is_not_installed_is_said_with_how_to_get_it(
    form: str, package: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    found = roomlint.cli_draw.find_spec
    monkeypatch.setattr(roomlint.cli_draw, "find_spec", lambda name: None if name == package else found(name))
    status, output = run("draw", str(STUDIO), "--to", str(tmp_path / f"a.{form}"))
    assert status == 2
    assert package in output
    assert "pip install 'roomlint[draw]'" in output


def test_svg_takes_nothing_beyond_the_program_and_no_other_command_loads_the_extra(tmp_path: Path) -> None:
    extra = ("jinja2", "ezdxf", "reportlab")
    script = (
        "import sys; from click.testing import CliRunner; from roomlint.cli import main;"
        f"sys.modules.update(dict.fromkeys({extra!r}));"
        "results = [CliRunner().invoke(main, words) for words in (['check', {room!r}], ['figures', {room!r}],"
        " ['draw', {room!r}, '--to', {to!r}])];"
        "print([result.exit_code for result in results])"
    ).replace("{room!r}", repr(str(STUDIO))).replace("{to!r}", repr(str(tmp_path / "a.svg")))  # fmt: skip
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "[0, 0, 0]", done.stderr


def test_the_form_follows_the_ending_and_the_name_the_room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # A team's folder of its own: a source package is no repository, where a house file would be sought from elsewhere.
    shutil.copytree(STUDIO.parents[1], tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    room = str(STUDIO.relative_to(STUDIO.parents[1]))
    assert run("draw", room, *TODAY) == (0, "Drawn to quick.html.\n")
    assert run("draw", room, "--to", "plan.svg", *TODAY)[0] == 0
    assert (tmp_path / "plan.svg").read_text(encoding="utf-8").startswith("<?xml")
    status, output = run("draw", room, "--to", "plan.txt", *TODAY)
    assert status == 2
    assert "no form of a drawing" in output


def test_a_drawing_never_takes_the_place_of_the_room(tmp_path: Path) -> None:
    file = tmp_path / "a.room.yaml"
    file.write_bytes(STUDIO.read_bytes())
    status, output = run("draw", str(file), "--format", "svg", "--to", str(file), *TODAY)
    assert status == 2
    assert "cannot write" in output
    assert file.read_bytes() == STUDIO.read_bytes()


def test_a_room_that_cannot_be_read_or_is_not_there_is_told(tmp_path: Path) -> None:
    file = tmp_path / "a.room.yaml"
    file.write_text("roomlint: 1\nroom: {size: {width: 4, length: 5 m}}\n", encoding="utf-8")
    status, output = run("draw", str(file), "--to", str(tmp_path / "a.svg"))
    assert status == 2
    assert "a.room.yaml:2" in output
    assert not (tmp_path / "a.svg").exists()
    status, output = run("draw", str(tmp_path / "b.room.yaml"))
    assert status == 2
    assert "there is no room file" in output


def test_check_writes_the_drawing_of_all_rooms_in_the_same_run(tmp_path: Path) -> None:
    pytest.importorskip("jinja2")
    target, report = tmp_path / "rooms.html", tmp_path / "rooms.sarif"
    words = ["--write", f"drawing={target}", "--write", f"sarif={report}"]
    status, _ = run("check", str(STUDIO), str(ATTIC), *words, *TODAY)
    assert status == 0
    text = target.read_text(encoding="utf-8")
    assert text.count('class="room"') == 2
    ids = re.findall(r' id="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert json.loads(report.read_text(encoding="utf-8"))["runs"]


def test_a_drawing_changes_nothing_of_what_a_run_finds(tmp_path: Path) -> None:
    """What it looks at counts as judged by nobody: the report is the same with it and without."""
    plain, with_it = tmp_path / "a.txt", tmp_path / "b.txt"
    run("check", str(ATTIC), "--write", f"text={plain}", *TODAY)
    run("check", str(ATTIC), "--write", f"text={with_it}", "--write", f"drawing={tmp_path / 'd.html'}", *TODAY)
    assert plain.read_bytes() == with_it.read_bytes()


def against_head(folder: Path, monkeypatch: pytest.MonkeyPatch, old: str, new: str, form: str) -> str:
    """Return the quick room with something changed since the revision that it is compared with, drawn in a form."""

    def git(*words: str) -> None:
        subprocess.run(["git", "-c", "user.name=t", "-c", "user.email=t@t", *words], cwd=folder, check=True,
                       capture_output=True)  # fmt: skip

    file = folder / "a.room.yaml"
    text = STUDIO.read_text(encoding="utf-8").replace("    product: stand-two-way\n", "")
    text = text.replace("product: sealed-subwoofer, ", "")
    assert old in text
    file.write_text(text, encoding="utf-8")
    git("init", "-q")
    git("add", ".")
    git("commit", "-qm", "first")
    file.write_text(text.replace(old, new, 1), encoding="utf-8")
    monkeypatch.chdir(folder)
    status, output = run("draw", "a.room.yaml", "--to", f"a.{form}", "--against", "HEAD", *TODAY)
    assert status == 0, output
    return (folder / f"a.{form}").read_text(encoding="utf-8")


def test_against_a_revision_shows_where_things_were(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    old = "position: {from_left: 1 ft 4 in, from_front: 1 ft 9 in, height: 3 ft 6 in}"
    text = against_head(tmp_path, monkeypatch, old, old.replace("1 ft 4 in", "2 ft 4 in"), "svg")
    root = ET.fromstring(text)  # noqa: S314  we wrote it
    moved = {one.get("data-key") for one in root.iter() if (one.get("class") or "").startswith("l-earlier")}
    assert moved - {None} == {"loudspeaker/left"}
    # A foot to the right leans the front pair by 5.6 deg: whether that is more than 5 the tape cannot tell.
    assert "(newly for a person)" in " ".join(root.itertext())


@pytest.mark.parametrize("form", ["html", "svg"])
def test_against_a_revision_lists_what_is_gone(form: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was put right has no number on the drawing, and yet is what a lead compares for."""
    old = "position: {from_left: 1 ft 8 in, from_front: 11 ft 8 in, height: 4 ft}"
    new = "position: {from_left: 1 ft 2 in, from_front: 15 ft 8 in, height: 4 ft}"
    text = " ".join(re.sub(r"<[^>]*>", " ", against_head(tmp_path, monkeypatch, old, new, form)).split())
    gone = text.partition("Gone since the earlier revision: ")[2]
    assert re.search(r"surround-left: .{0,60}distance .{0,40}\(was note", gone), gone[:400]


def test_a_chart_is_plotted_from_its_data_and_its_values_are_listed() -> None:
    data = room(subwoofers=[{"id": "sub", "position": {"from_left": "1 m", "from_front": "1 m", "height": "0.3 m"}}],
                seats=((1.0, 0.0),))  # fmt: skip
    (chart,) = charts(room_of(data).figures)
    assert [curve.key for curve in chart.curves] == ["seat/seat", "seat/seat-2"]
    # The first mode of a box 6 m long at 343.2 m/s.
    assert chart.uprights[0][0] == pytest.approx(343.2 / 12.0, abs=0.05)
    spread_at = {x: (low, high) for x, low, high in chart.spread}
    for x, value in chart.curves[0].points:
        assert spread_at[x][0] <= value <= spread_at[x][1]
    text = written("html", data)
    cells = re.findall(r'<tr data-x="40">(.*?)</tr>', text)
    values = [f"<td>{dict(curve.points)[40.0]:.1f}</td>" for curve in chart.curves]
    assert all(value in cells[0] for value in values)


def test_the_decay_is_plotted_with_its_range_and_the_window_it_is_held_against() -> None:
    walls = [{"id": wall, "finish": "gypsum-on-studs"} for wall in ("front", "right", "rear", "left")]
    lined = {"room.walls": walls, "room.floor": {"finish": "carpet-on-felt"}, "room.ceiling.finish": "gypsum-on-studs"}
    data = changed(room(), lined)
    figures = room_of(data).figures
    (chart,) = charts(figures)
    (curve,) = chart.curves
    for (hz, value), (at, low, high) in zip(curve.points, chart.spread, strict=True):
        told = figures.decaying.band(int(hz))
        assert (at, value) == (hz, pytest.approx(told.value))
        assert (low, high) == (pytest.approx(told.value - told.u), pytest.approx(told.value + told.u))
    drawn = Sheet(data).drawing.charts[0]
    limits = {one.name: one.points for one in drawn.curves if one.role == "limit"}
    assert limits == {
        "at least 0.20 s": ((500.0, 0.2), (2000.0, 0.2)), "at most 0.50 s": ((500.0, 0.5), (2000.0, 0.5)),
    }  # fmt: skip
    cells = re.findall(r'<tr data-x="1000">(.*?)</tr>', written("html", data))
    assert cells[0].count("<td>") == 1  # what is wanted is no value of the room's
    assert f"<td>{dict(curve.points)[1000.0]:.2f}</td>" in cells[0]


def test_a_chart_over_names_has_a_sign_for_each_value_and_hatches_what_is_not_known() -> None:
    x = Ax("loudspeaker", "", -0.5, 2.5, names=("left", "a very long name of a loudspeaker", "right"))
    chart = Chart(
        "levels", "Full scale", x, Ax("level", "dB", 90.0, 102.0),
        (Curve("bears", ((0.0, 99.0), (2.0, 95.0))), Curve("gives", ((0.0, 93.0),)),
         Curve("asked for", ((0.0, 98.0), (1.0, 98.0), (2.0, 98.0)), role="target")),
        unknown=((1.0, "a very long name of a loudspeaker", "product"), (2.0, "right", "impedance")),
    )  # fmt: skip
    view, axes = plot(chart, Units(), 190.0, 100.0), Axes(chart, 190.0, 100.0)
    inside = axes.left + axes.wide
    round_ones = {one.centre for one in view.items if isinstance(one, Arc) and one.centre[0] < inside}
    assert round_ones == {(axes.x(0.0), axes.y(99.0)), (axes.x(2.0), axes.y(95.0))}
    square = [
        one for one in view.items if isinstance(one, Line) and one.layer == "curve-1" and one.points[0][0] < inside
    ]
    assert [len(one.points) for one in square] == [4]
    bars = [one for one in view.items if isinstance(one, Line) and one.layer == "window" and one.points[0][0] < inside]
    assert {one.points[0][1] for one in bars} == {axes.y(98.0)}
    assert len(bars) == 3
    hatched = [one for one in view.items if isinstance(one, Line) and one.fill == "hatch"]
    assert [(one.points[0][0] + one.points[1][0]) / 2.0 for one in hatched] == pytest.approx([axes.x(1.0), axes.x(2.0)])
    words = {one.text: one for one in view.items if isinstance(one, Words)}
    assert "hatched: not known, a very long name of a loudspeaker: product sheet and 1 more" in words
    # A long name ends above the notes, and the plot gives way to it.
    name = words["a very long name of a loudspeaker"]
    assert name.at[1] - width_mm(name.text, name.size_mm) > 3.0


def test_the_levels_are_listed_by_the_names_of_the_loudspeakers(tmp_path: Path) -> None:
    run("draw", str(STUDIO), "--to", str(tmp_path / "a.html"), *TODAY)
    text = (tmp_path / "a.html").read_text(encoding="utf-8")
    table = text.partition("Values of Full scale at sofa-right")[2].partition("</table>")[0]
    heads = re.findall(r'<th scope="col">(.*?)</th>', table)
    assert heads == ["loudspeaker", "the loudspeaker bears, dB", "the amplifier gives, dB", "asked for, dB"]
    rows = dict(re.findall(r'<th scope="row">(.*?)</th>(.*?)</tr>', table))
    assert rows["centre"].startswith("<td>not known</td><td>not known</td>")
    assert re.match(r"<td>[\d.]+</td><td>not known</td>", rows["surround-left"])


def test_a_chart_that_lacks_something_says_what() -> None:
    data = room(subwoofers=[{"id": "sub"}])
    (chart,) = charts(room_of(data).figures)
    assert not chart.is_known
    assert chart.lacks == ("sub", "position")
    (view,) = Sheet(data).drawing.views.charts
    assert view.size_mm[1] < 50.0  # a sheet is no place for a hundred millimetres of hatching
    assert "Not known: sub" in written("svg", data)


def test_values_are_written_apart_and_as_near_their_places_as_that_leaves() -> None:
    assert spread([0.0, 10.0, 10.5, 30.0], 3.0, -4.0, 40.0) == pytest.approx([0.0, 10.0, 13.0, 30.0])
    found = spread([38.0, 39.0, 40.0], 3.0, 0.0, 40.0)
    assert found == pytest.approx([34.0, 37.0, 40.0])


def _luminance(ink: str) -> float:
    """Relative luminance (WCAG 2.1): of the three channels, each made linear."""
    parts = [int(ink[at : at + 2], 16) / 255.0 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_inks_read_on_paper_and_numbers_on_their_marks() -> None:
    for name in ("ink", "soft", "sound", "sight", "cure", "bad"):
        assert contrast(INK[name], INK["paper"]) >= 4.5, name
    for level, look in LOOKS.items():
        assert contrast(look.fill, look.text) >= 4.5, level


def test_levels_are_told_apart_without_colour() -> None:
    """Each has a shape of its own: as many corners, or another way round."""
    shapes = {level: tuple(sorted(outline(level, "1"))) for level in LOOKS}
    assert len(set(shapes.values())) == len(LOOKS)
    assert {level: len(shape) for level, shape in shapes.items()} == {"error": 8, "warning": 4, "note": 24, "review": 4}


def test_a_room_without_a_ceiling_seats_or_anything_is_drawn() -> None:
    data = changed(room(), {"room.ceiling": None, "seats": "none"})
    text = written("svg", data)
    assert "ceiling not known" in text
    assert "Plan" in text


def test_what_the_file_does_not_place_is_named() -> None:
    assert "not placed, so not drawn: left" in written("svg", room(speaker("left", "M+030")))
