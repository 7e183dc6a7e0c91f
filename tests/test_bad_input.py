"""Broken files, each answered with a located message, status 2 and no traceback, by the program itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from click.testing import CliRunner
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from roomlint.cli import main

if TYPE_CHECKING:
    from pathlib import Path

GOOD = """\
roomlint: 1
room:
  size: {width: 4.5 m, length: 6.0 m}
  ceiling: {shape: flat, height: 2.7 m}
  walls:
    - id: left
      finish: glass
  openings:
    - {id: door, kind: door, wall: rear, from_wall_left: 0.4 m, width: 0.8 m, sill: 0 m, height: 2 m}
seats:
  - id: middle
    ear: {from_left: 2.25 m, from_front: 4.0 m, height: 1.1 m}
loudspeakers:
  - id: left
    label: M+030
    position: {from_left: 0.7 m, from_front: 0.5 m, height: 1.1 m}
    aim: {seat: middle}
"""
TABLE = [
    # what is wrong, text taken out, text put in, line:column of the answer, a word of it
    ("unknown key at the top", "seats:", "chairs:", "10:1", "chairs"),
    ("unknown key with a near name", "finish: glass", "finnish: glass", "7:7", "finish"),
    ("unknown key in a position", "from_left: 2.25 m", "from_lft: 2.25 m", "12:11", "from_left"),
    ("duplicate key", "    label: M+030\n", "    label: M+030\n    label: M-030\n", "16:5", "label"),
    ("wrong dimension", "width: 4.5 m", "width: 4.5 kg", "3:17", "length"),
    ("unknown unit", "width: 4.5 m", "width: 4.5 metrs", "3:17", "metrs"),
    ("bare number", "width: 4.5 m", "width: 4.5", "3:17", "unit"),
    ("number in quotes", "width: 4.5 m", 'width: "4.5"', "3:17", "unit"),
    ("infinite", "width: 4.5 m", "width: inf m", "3:17", "inf"),
    ("not a number", "width: 4.5 m", "width: .nan", "3:17", "nan"),
    ("negative size", "width: 4.5 m", "width: -4.5 m", "3:17", "expected 1 m to 30 m"),
    ("absurd size", "width: 4.5 m", "width: 4500 m", "3:17", "did you mean '4500 mm'?"),
    ("a hand's breadth of a ceiling", "height: 2.7 m}", "height: 2.7 cm}", "4:34", "did you mean '2.7 m'?"),
    ("no unit would do", "width: 4.5 m", "width: 90000 m", "3:17", "Check its unit"),
    ("metric and not", "width: 4.5 m", "width: 4 m 20 in", "3:17", "write one or the other"),
    ("tiny room", "width: 4.5 m", "width: 4.5 mm", "3:17", "did you mean '4.5 m'?"),
    ("a list for a mapping", "  size: {width: 4.5 m, length: 6.0 m}", "  size: [4.5 m, 6.0 m]", "3:10", "size"),
    ("a mapping for a list", "seats:\n  - id: middle\n    ear", "seats:\n    id: middle\n    ear", "11:5", "seats"),
    ("neither size nor outline", "  size: {width: 4.5 m, length: 6.0 m}\n", "", "3:3", "outline"),
    ("missing required key", "wall: rear, ", "", "9:8", "wall"),
    ("unknown wall", "wall: rear", "wall: reer", "9:36", "rear"),
    ("unknown seat", "aim: {seat: middle}", "aim: {seat: midle}", "17:17", "middle"),
    ("unknown product", "    label: M+030", "    product: no-such\n    label: M+030", "15:14", "no-such"),
    ("not a label", "label: M+030", "label: L", "15:12", "label"),
    ("unknown finish", "finish: glass", "finish: glas", "7:15", "glass"),
    ("version in quotes", "roomlint: 1", 'roomlint: "1"', "1:11", "whole number"),
    ("version of the future", "roomlint: 1", "roomlint: 9", "1:11", "1"),
    ("merge key", "    aim: {seat: middle}", "    <<: {aim: {seat: middle}}", "17:5", "merge"),
    ("tag", "    label: M+030", "    label: !!python/name:os.system M+030", "15:12", "tag"),
    ("local tag", "    label: M+030", "    label: !env M+030", "15:12", "tag"),
    ("number as a key", "    label: M+030", "    12: M+030", "15:5", "key"),
    ("null as a key", "    label: M+030", "    ~: M+030", "15:5", "key"),
    ("tab for indentation", "    label: M+030", "\tlabel: M+030", "15:1", "tab"),
    ("unclosed bracket", "aim: {seat: middle}", "aim: {seat: middle", "18:1", ""),
    ("unclosed quote", "label: M+030", 'label: "M+030', "", ""),
    ("two documents", "seats:", "---\nseats:", "10:1", "document"),
    ("an alias to nothing", "aim: {seat: middle}", "aim: *nowhere", "17:10", "nowhere"),
    ("id twice", "    aim: {seat: middle}\n", "    aim: {seat: middle}\n  - id: left\n", "18:9", "twice"),
    ("both sides given", "{from_left: 0.7 m,", "{from_left: 0.7 m, from_right: 1 m,", "16:46", "either"),
    ("uncertainty without unit", "from_left: 0.7 m", "from_left: 0.7 m ± 5", "16:27", "unit"),
    ("label behind straight behind", "M+030", "M-999", "15:12", "M-999"),
    ("screen edge of another layer", "M+030", "U+SC", "15:12", "U+SC"),
    ("ceiling of two kinds", "height: 2.7 m}", "height: 2.7 m, low: 2 m}", "4:46", "flat"),
    ("ceiling without its height", ", height: 2.7 m}", "}", "4:13", "height"),
    (
        "ridge outside the room",
        "{shape: flat, height: 2.7 m}",
        "{shape: gable, height: 3 m, low: 2 m, ridge: front-to-rear, ridge_at: 4.6 m}",
        "4:82",
        "ridge",
    ),
    ("nothing where a word belongs", "finish: glass", "finish: ", "7:7", "empty"),
    ("capital in an id", "  - id: middle", "  - id: Middle", "11:9", "id"),
    ("text for a flag", "    aim: {seat: middle}", "    behind_screen: maybe", "17:20", "true"),
    ("aim both ways", "aim: {seat: middle}", "aim: {seat: middle, azimuth: 3 deg}", "17:11", "either"),
    ("hold by nothing known", "    aim: {seat: middle}", "    mounting: {on: sealing}", "17:20", "ceiling"),
    ("an empty file", GOOD, "", "1:1", "empty"),
    ("only a comment", GOOD, "# nothing\n", "", "empty"),
    ("a list at the top", GOOD, "- roomlint: 1\n", "1:3", ""),
    ("plain text", GOOD, "a room\n", "1:1", ""),
    ("a brace too many", "length: 6.0 m}", "length: 6.0 m}}", "3:38", "one `}` too many"),
    ("a colon in braces", "{id: door,", "{id: door: rear,", "9:12", "quotes"),
    ("a number sign in braces", "{seat: middle}", "{seat: #1}", "17:17", "comment"),
    (
        "an indent that is not of plain spaces",
        "    label: M+030",
        "\u00a0\u00a0\u00a0\u00a0label: M+030",
        "15:1",
        "U+00A0",
    ),
    ("a range", "width: 4.5 m", "width: 4-5 m", "3:17", "4.5 m ± 0.5 m"),
    ("curly quotes", "width: 4.5 m", "width: “4.5 m”", "3:17", "without them"),
    ("a capital unit", "width: 4.5 m", "width: 4.5 M", "3:17", "did you mean 'm'"),
    ("a raised digit", "width: 4.5 m", "width: 4² m", "3:17", "raised"),
    ("a control character", "finish: glass", "finish: gl\x07ass", "7:17", "character"),
]


def check(text: bytes, folder: Path) -> tuple[int, str]:
    file = folder / "bad.room.yaml"
    file.write_bytes(text)
    done = CliRunner().invoke(main, ["check", str(file)])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.output


def test_the_room_that_the_table_breaks_is_read_without_a_problem(tmp_path: Path) -> None:
    status, output = check(GOOD.encode(), tmp_path)
    assert status in {0, 1}, output


@pytest.mark.parametrize(("out", "put", "where", "word"), [row[1:] for row in TABLE], ids=[row[0] for row in TABLE])
def test_broken_file_is_answered_where_it_is_broken(out: str, put: str, where: str, word: str, tmp_path: Path) -> None:
    assert GOOD.count(out) >= 1
    status, output = check(GOOD.replace(out, put, 1).encode(), tmp_path)
    assert status == 2, output
    assert f"bad.room.yaml:{where}" in output
    assert word in " ".join(output.split())
    assert "Traceback" not in output


def test_all_errors_of_a_file_are_told_together(tmp_path: Path) -> None:
    text = GOOD.replace("width: 4.5 m", "width: 4.5").replace("finish: glass", "finish: glas")
    text = text.replace("seats:", "seat:")
    _, output = check(text.encode(), tmp_path)
    assert all(f"bad.room.yaml:{line}:" in output for line in (3, 7, 10))


@pytest.mark.parametrize(
    "data",
    [b"\xff\xfe\x00", b"roomlint: \xc3\x28\n", b"[" * 1_000_000, b"a: " * 300_000, b"x" * (1024 * 1024 + 1)],
    ids=["not text", "bad UTF-8", "brackets", "keys", "too large"],
)
def test_hostile_bytes_are_refused(data: bytes, tmp_path: Path) -> None:
    status, output = check(data, tmp_path)
    assert status == 2
    assert "bad.room.yaml:1:" in output


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["check", str(tmp_path / "none.room.yaml")])
    assert done.exit_code == 2
    assert "none.room.yaml:1:1" in done.output


def test_nothing_to_check_is_status_three(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["check", str(tmp_path)])
    assert done.exit_code == 3


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    at=st.integers(0, len(GOOD) - 1),
    length=st.integers(0, 12),
    put=st.text(st.characters(codec="utf-8", exclude_categories=("Cs",)), max_size=8),
)
def test_a_mutated_room_never_raises(at: int, length: int, put: str, tmp_path: Path) -> None:
    status, output = check((GOOD[:at] + put + GOOD[at + length :]).encode(), tmp_path)
    assert status in {0, 1, 2}
    assert "Traceback" not in output


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.binary(max_size=300))
def test_any_bytes_never_raise(data: bytes, tmp_path: Path) -> None:
    status, _ = check(data, tmp_path)
    assert status in {0, 1, 2}
