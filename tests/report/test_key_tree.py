"""The tree of keys: every key on one line, with an example and the chapters that read it."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from roomlint.cli import main
from roomlint.report.key_tree import Readers, readers_of, tree_text
from roomlint.review.inputs import kept
from roomlint.source.dimensions import DIMENSIONS
from roomlint.source.listing import listed
from roomlint.source.quantity import parse
from roomlint.source.say import leans_customary


def run(*words: str) -> str:
    done = CliRunner().invoke(main, ["schema", *words])
    assert done.exit_code == 0, done.output
    return done.output


def line_of(text: str, name: str) -> str:
    found = [line for line in text.splitlines() if line.split()[0].rstrip("*") == name]
    assert len(found) == 1, found
    return " ".join(found[0].split())


@pytest.mark.parametrize("kind", ["room", "product", "house"])
def test_every_key_has_one_line(kind: str) -> None:
    keys = list(listed(kind))
    assert len(tree_text(keys, readers_of(kind, kept())).splitlines()) == len(keys)


def test_the_lines_fit_the_page_and_lose_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    told, whole = run("product", "--keys"), tree_text(listed("product"), readers_of("product", kept()))
    assert max(map(len, told.splitlines())) <= 80
    assert told.split() == whole.split()


def test_a_line_tells_form_example_and_chapters() -> None:
    keys = [key for key in listed("room") if key.path.startswith("loudspeakers[].aim")]
    text = tree_text(keys, readers_of("room", kept()))
    assert line_of(text, "seat").startswith("seat text middle ")
    assert line_of(text, "elevation").startswith("elevation angle")
    temperature = [key for key in listed("room") if key.path == "survey.temperature"]
    assert "70 degF" in tree_text(temperature, Readers(), customary=True)
    assert "21 degC" in tree_text(temperature, Readers())


@pytest.mark.parametrize("kind", ["room", "product"])
def test_examples_stand_in_the_units_that_are_asked_for_and_can_be_typed(kind: str) -> None:
    wanted = 0
    for key in listed(kind):
        if key.dimension not in {"length", "mass", "temperature"} or not key.example:
            continue
        (line,) = tree_text([key], Readers(), customary=True).splitlines()
        example = line.strip().partition(f"  {key.form}  ")[2] if not key.holds else ""
        value, was = parse(example, key.dimension).value, parse(key.example, key.dimension).value
        if key.dimension == "length" and was < 0.005:
            continue  # the gauge of a sheet
        assert leans_customary(example) > 0 or not was, line
        assert value == pytest.approx(was, rel=0.05) or example == DIMENSIONS[key.dimension].customary
        wanted += 1
    assert wanted > 20


@pytest.mark.parametrize("kind", ["room", "product"])
def test_every_chapter_that_reads_a_key_is_told_at_it_and_above(kind: str) -> None:
    read = readers_of(kind, kept())
    text = tree_text(listed(kind), read)
    told = {word.strip(",") for line in text.splitlines() for word in line.split()}
    assert {chapter for chapters in read.own.values() for chapter in chapters} <= told
    assert len(read.own) > 20


def test_who_reads_a_key_is_known_of_every_code_and_of_sheets_inline_too() -> None:
    room, product = (readers_of(kind, kept()) for kind in ("room", "product"))
    assert "mains" in room.of("circuits[].rcd")
    assert "layout" not in room.of("circuits[].rcd")  # where circuits are none, nothing of one was read
    assert "layout" in room.of("circuits[].receptacles")
    assert room.of("loudspeakers[].position.from_left") >= {"angle", "layout"}
    assert (
        room.of("loudspeakers[].mounting.fixing.row_spacing") == room.of("picture.mounting.fixing.row_spacing") > set()
    )
    assert product.of("loudspeaker.sensitivity")
    assert room.of("loudspeakers[].product.loudspeaker.sensitivity") == product.of("loudspeaker.sensitivity")


def test_a_branch_tells_its_keys_in_full() -> None:
    text = run("room", "loudspeakers.mounting")
    assert text.startswith("loudspeakers[].mounting: How it is held.\n")
    assert "fixing.diameter: Nominal diameter.\n    length, such as 5/16 in\n    read by mount\n" in text
    assert "    one of lag-screw, wood-screw, nail," in text
    assert run("room", "loudspeakers[].mounting") == text
    assert run("room", "seats.ear.height").startswith("seats[].ear.height: Above the finished floor")


@pytest.mark.parametrize(
    ("branch", "said"),
    [
        ("width", "there is panels.width, picture.width, seats.width, treatments.width"),
        ("loudspeaker", "did you mean 'loudspeakers'?"),
        ("zebra", "see --keys."),
    ],
)
def test_a_branch_that_is_not_there_is_answered_with_what_is(branch: str, said: str) -> None:
    done = CliRunner().invoke(main, ["schema", "room", branch])
    assert done.exit_code == 2
    assert said in done.output


@pytest.mark.parametrize("kind", ["room", "product", "house"])
def test_every_key_that_holds_a_value_shows_what_one_looks_like(kind):
    assert [key.path for key in listed(kind) if not (key.holds or key.example or key.choices)] == []
