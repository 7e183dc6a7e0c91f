"""`roomlint new` at work: it asks or refuses, never writes over a file, and what it writes the check takes."""

from __future__ import annotations

import os
import pty
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from roomlint.cli import main
from roomlint.cli_files import PRODUCTS, SHAPES, STAGES
from roomlint.cli_values import LAYOUTS, SIDES
from roomlint.design.house import STAGES as KNOWN_STAGES
from roomlint.design.products import DATA_OF, Product
from roomlint.design.read import read_house, read_product
from roomlint.figures.layouts import LAYOUTS as KNOWN_LAYOUTS
from roomlint.source.tree import read_tree
from roomlint.start.answers import NEEDS
from roomlint.start.answers import SIDES as KNOWN_SIDES

ANSWERS = ("--width", "12 ft 6 in", "--length", "16 ft 2 in", "--height", "8 ft", "--seats", "3", "--layout", "4+5+0")


@pytest.fixture(autouse=True)
def _folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def run(*words: str) -> Result:
    return CliRunner().invoke(main, list(words))


@pytest.mark.parametrize("quick", [(), ("--quick",)])
def test_what_is_written_checks_at_once(quick: tuple[str, ...]) -> None:
    done = run("new", "den.room.yaml", *quick, *ANSWERS)
    assert done.exit_code == 0, done.output
    assert "10 of 10 loudspeakers and subwoofers have a proposed place." in done.output
    assert run("check", "den.room.yaml", "--gate", "error").exit_code == 0


@pytest.mark.parametrize(
    "words", [("den.room.yaml", *ANSWERS), ("den.room.yaml", "--quick", *ANSWERS), ("--house",),
              ("box.product.yaml", "--product", "loudspeaker")],
)  # fmt: skip
def test_no_file_is_ever_written_over(words: tuple[str, ...]) -> None:
    assert run("new", *words).exit_code == 0
    name = next((word for word in words if word.endswith(".yaml")), "house.yaml")
    before = Path(name).read_bytes()
    again = run("new", *words)
    assert again.exit_code == 2
    assert f"{name} is there already; it is never written over." in again.output
    assert Path(name).read_bytes() == before


def test_a_link_that_leads_nowhere_is_not_written_through() -> None:
    Path("den.room.yaml").symlink_to("elsewhere.yaml")
    assert run("new", "den.room.yaml", *ANSWERS).exit_code == 2
    assert not Path("elsewhere.yaml").exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "name the file that a room goes to, such as den.room.yaml."),
        (("den.yaml",), "it ends in .room.yaml."),
        (("away/den.room.yaml",), "there is no folder 'away'."),
        (("den.room.yaml",), "a room needs --width, --length, --height, --seats, --layout too"),
        (("den.room.yaml", "--ceiling", "gable", "--width", "4 m"), "--length, --low, --height, --ridge, --seats"),
        (("den.room.yaml", "--width", "4.2"), "'4.2' has no unit"),
        (("den.room.yaml", "--width", "banana"), "'banana'"),
        (("den.room.yaml", "--seats", "many"), "write 3, or 3+4 for two rows"),
        (("den.room.yaml", "--picture", "big"), "write none, or display or projection and its width"),
        (("den.room.yaml", "--opening", "door,back,1 m,1 m"), "its wall (left, right, front, rear)"),
        (("den.room.yaml", *ANSWERS[:-1], "5.1.4"), "'5.1.4' is 4+5+0 here: upper + ear layer + bottom"),
        (("den.room.yaml", *ANSWERS[:-1], "6+5+0"), "6+5+0 is no layout of the standard; begin with the nearest of"),
        (("den.room.yaml", "--width", "200 ft", *ANSWERS[2:]), "200 ft is no side of a room; 5 ft to 98 ft are"),
        (("den.room.yaml", *ANSWERS, "--picture", "tv 65 in"), "or 'display 65 in diagonal'"),
        (("den.room.yaml", "--quick", "--house"), "three different files"),
        (("den.room.yaml", *ANSWERS, "--low", "2 m"), "--low: a flat ceiling has none; it takes height."),
        (("den.room.yaml", "--ceiling", "tray", "--width", "4 m"), "--length, --low, --height, --margin, --seats"),
        (("den.room.yaml", *ANSWERS, "--low-sides", "left,up"), "'left,up' is no list of sides"),
    ],
)
def test_an_answer_that_misses_or_does_not_fit_is_told_and_nothing_is_written(
    words: tuple[str, ...], said: str
) -> None:
    done = run("new", *words)
    assert done.exit_code == 2
    assert said in " ".join(done.output.split())
    assert not list(Path().glob("*.yaml"))


def test_the_same_answers_give_the_same_bytes() -> None:
    run("new", "a.room.yaml", "--code", "x", *ANSWERS)
    Path("b").mkdir()
    run("new", "b/a.room.yaml", "--code", "x", *ANSWERS)
    assert Path("a.room.yaml").read_bytes() == Path("b/a.room.yaml").read_bytes()


@pytest.mark.parametrize(
    "ceiling",
    [
        ("--ceiling", "tray", "--low", "7 ft 6 in", "--margin", "2 ft"),
        ("--ceiling", "part-sloped", "--low", "5 ft", "--low-sides", "left, right", "--slope-width", "3 ft"),
    ],
)
@pytest.mark.parametrize("quick", [(), ("--quick",)])
def test_ceilings_of_several_parts_check_at_once(quick: tuple[str, ...], ceiling: tuple[str, ...]) -> None:
    done = run("new", "den.room.yaml", *quick, *ANSWERS, *ceiling)
    assert done.exit_code == 0, done.output
    assert run("check", "den.room.yaml", "--gate", "error").exit_code == 0


def test_at_a_terminal_it_asks_for_what_is_not_given() -> None:
    """A real terminal, a pseudo one: questions in order, a slip asked again, and the file at the end."""
    answers = [
        "banana", "13 ft", "17 ft", "gable", "low", "7 ft", "10 ft", "front-to-rear", "door,rear,1 ft,3 ft", "none",
        "9", "", "display 57 in", "2",
    ]  # fmt: skip
    parent, child = pty.openpty()
    command = [sys.executable, "-m", "roomlint", "new", "den.room.yaml", "--quick"]
    with subprocess.Popen(command, stdin=child, stdout=subprocess.PIPE, stderr=subprocess.STDOUT) as running:
        os.close(child)
        os.write(parent, ("\n".join(answers) + "\n").encode())
        output = running.communicate(timeout=120)[0].decode()
    os.close(parent)
    assert running.returncode == 0, output
    assert "'banana'" in output
    assert "'low' is not a length; write a number and its unit, such as '7 ft 6 in'." in output
    assert "Height at the eaves: " in output
    assert "Height of the ridge: " in output
    assert "Error: 9 seats side by side do not fit a room 13 ft wide; 5 do." in output
    text = Path("den.room.yaml").read_text(encoding="utf-8")
    assert "ceiling: {shape: gable, height: 10 ft, low: 7 ft, ridge: front-to-rear}" in text
    assert "layout: 0+5+0" in text
    assert "wall: rear, from_wall_left: 1 ft, width: 3 ft" in text
    assert text.count("id: seat-") == 2


def test_a_picture_may_be_said_by_its_diagonal() -> None:
    assert run("new", "den.room.yaml", "--quick", *ANSWERS, "--picture", "display 65 in diagonal").exit_code == 0
    text = Path("den.room.yaml").read_text(encoding="utf-8")
    # 65 in x 16 / sqrt(16^2 + 9^2) = 56.65 in
    assert "picture: {kind: display, width: 4 ft 8-1/2 in, height: 2 ft 8 in" in text


@pytest.mark.parametrize("kind", PRODUCTS)
def test_a_product_sheet_holds_every_key_of_its_kind_and_no_made_up_value(kind: str) -> None:
    assert run("new", "our-box.product.yaml", "--product", kind).exit_code == 0
    text = Path("our-box.product.yaml").read_text(encoding="utf-8")
    node, problems = read_tree(text, "our-box.product.yaml")
    assert node is not None
    product, more = read_product(node, "our-box.product.yaml")
    assert problems + more == []
    assert node.plain() == {"roomlint_product": 1, "id": "our-box", "kind": kind}
    full, problems = read_tree(re.sub(r"(?m)^#: ", "", text), "our-box.product.yaml")
    assert full is not None
    product, more = read_product(full, "our-box.product.yaml")
    assert [one.text for one in problems + more] == []
    groups = DATA_OF.get(kind, ())
    every = {group for of in DATA_OF.values() for group in of}
    keys = {"roomlint_product", "id", *Product.KEYS} - every - {"$schema"} | set(groups)
    assert set(full.plain()) == keys
    for group in groups:
        part = Product.KEYS[group].of  # type: ignore[attr-defined]
        assert set(full.plain()[group]) == set(part.KEYS)
    assert product.id == "our-box"


def test_a_house_file_holds_every_key_to_take_up_and_decides_nothing() -> None:
    assert run("new", "--house").exit_code == 0
    text = Path("house.yaml").read_text(encoding="utf-8")
    node, problems = read_tree(text, "house.yaml")
    assert node is not None
    assert problems + read_house(node, "house.yaml")[1] == []
    assert node.plain() == {"roomlint_house": 1}
    full, problems = read_tree(re.sub(r"(?m)^#: ", "", text), "house.yaml")
    assert full is not None
    assert [one.text for one in problems + read_house(full, "house.yaml")[1]] == []


def test_the_choices_of_the_command_are_those_of_the_files() -> None:
    """They stand in the command a second time so that no other command waits for the modules that declare them."""
    kinds = Product.KEYS["kind"].words  # type: ignore[attr-defined]
    assert (set(KNOWN_LAYOUTS), kinds) == (set(LAYOUTS), PRODUCTS)
    assert (tuple(NEEDS), KNOWN_SIDES, tuple(KNOWN_STAGES)) == (SHAPES, SIDES, STAGES)
