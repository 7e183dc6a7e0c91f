"""`roomlint upgrade`: a file of the first edition in today's form, comments and order kept, nothing made up."""

from __future__ import annotations

import re
import stat
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from roomlint.cli import main
from roomlint.design.read import read_design
from roomlint.review.book import WITHDRAWN
from roomlint.source.tree import read_tree
from roomlint.source.upgrade import upgrade

OLD = """\
roomlint: 1  # the first edition
room:
  size: {width: 4 m, length: 5 m}
  ceiling: {shape: flat, height: 2.5 m}
treatments:
  - id: cloud
    kind: absorber
    on: ceiling
    fixing:  # four of them
      fastener: wood-screw

      into: joist  # seen
      engineer: J. Doe, 12 May  # by telephone
    mass: 5 kg
  - {id: side, kind: absorber, on: left, fixing: {fastener: toggle, into: board}, approval: test 4}
loudspeakers:
  - id: left
    mounting: {on: ceiling, secondary: steel rope to the joist, tilt: 3 deg}
circuits:
  - id: av
    rating: 20 A
    feeder_drop: 1.0  # percent
waivers:
  - {rule: mount.panel-overhead, subject: cloud, because: It is light.}
"""
NEW = """\
roomlint: 1  # the first edition
room:
  size: {width: 4 m, length: 5 m}
  ceiling: {shape: flat, height: 2.5 m}
treatments:
  - id: cloud
    kind: absorber
    on: ceiling
    mounting:
      fixing:  # four of them
        fastener: wood-screw

        into: joist  # seen
        # engineer said: J. Doe, 12 May  # by telephone
    mass: 5 kg
  # approval said: test 4
  - {id: side, kind: absorber, on: left, mounting: {fixing: {fastener: toggle, into: board}}}
loudspeakers:
  - id: left
    # secondary said: steel rope to the joist
    mounting: {on: ceiling, tilt: 3 deg}
circuits:
  - id: av
    rating: 20 A
    feeder_drop: 1.0 %  # percent
waivers:
  - {rule: mount.substrate, subject: cloud, because: It is light.}
"""


def problems_of(text: str) -> list[str]:
    node, problems = read_tree(text, "a.room.yaml")
    if node is not None:
        problems = [*problems, *read_design(node, "a.room.yaml", {})[1]]
    return [problem.text for problem in problems]


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("begins", ["", "\ufeff"])
def test_a_file_of_the_first_edition_is_rewritten_where_it_must(begins: str, ends: str) -> None:
    old, new = begins + OLD.replace("\n", ends), begins + NEW.replace("\n", ends)
    assert problems_of(old)
    found = upgrade(old, "a.room.yaml", WITHDRAWN)
    assert found.text == new
    assert problems_of(found.text) == []
    assert all(change.done for change in found.changes)
    assert upgrade(new, "a.room.yaml", WITHDRAWN).text == new


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("circuits:\n  - {id: av, feeds_lighting: true}\n", "feeds_lighting is about lighting alone now"),
        ("loudspeakers:\n  - {id: a, mounting: {secondary: rope}}\n", "secondary is a mapping of what can be checked"),
        ("loudspeakers:\n  - {id: a, mounting: {on: x, secondary: &s rope, strap: *s}}\n", "secondary is a mapping"),
        ("treatments:\n  - {id: a, mounting: {on: left}, fixing: {count: 2}}\n", "move it there by hand"),
    ],
)  # fmt: skip
def test_what_only_a_person_can_decide_is_told_and_left(text: str, said: str) -> None:
    old = f"roomlint: 1\n{text}"
    found = upgrade(old, "a.room.yaml", WITHDRAWN)
    assert found.text == old
    assert any(said in change.text and not change.done for change in found.changes)


def written(data: Any, indent: int, *, flow: bool, note: int) -> str:
    """Return plain data as YAML in lines or between brackets, with a comment on each line if need be."""
    if flow or not isinstance(data, dict):
        if isinstance(data, dict):
            return " {" + ", ".join(f"{key}:{written(one, 0, flow=True, note=0)}" for key, one in data.items()) + "}"
        return f" {data}"
    lines = []
    for key, one in data.items():
        value = written(one, indent + 2, flow=isinstance(one, dict) and note % 2 == 0, note=note)
        tail = "" if value.startswith("\n") else f"  # c{note}"
        lines.append(f"\n{' ' * indent}{key}:{value}{tail}")
    return "".join(lines)


FIXING = st.fixed_dictionaries(
    {"fastener": st.just("wood-screw"), "into": st.just("joist")},
    optional={"engineer": st.sampled_from(["none", "J. Doe"]), "count": st.just(4)},
)
PANEL = st.fixed_dictionaries(
    {"kind": st.just("absorber"), "on": st.just("ceiling")},
    optional={"fixing": FIXING, "approval": st.sampled_from(["none", "test 4"]), "mass": st.just("5 kg")},
)


@given(panel=PANEL, flow=st.booleans(), note=st.integers(1, 2), order=st.randoms(use_true_random=False))
def test_a_panel_in_any_style_says_the_same_in_the_new_form(
    *, panel: dict[str, Any], flow: bool, note: int, order: Any
) -> None:
    keys = list(panel)
    order.shuffle(keys)
    data = {"id": "cloud"} | {key: panel[key] for key in keys}
    body = written(data, 4, flow=flow, note=note)
    old = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\ntreatments:\n  -" + (body if flow else body[5:])
    old = old.replace("\n  -id", "\n  - id") + "\nseats: []  # the end\n"
    found = upgrade(old, "a.room.yaml", WITHDRAWN)
    node, problems = read_tree(found.text, "a.room.yaml")
    assert problems == []
    assert node is not None
    wanted = {key: one for key, one in data.items() if key != "fixing" and (key, one) != ("approval", "test 4")}
    if "fixing" in data:
        kept = {key: one for key, one in data["fixing"].items() if one != "J. Doe"}
        wanted["mounting"] = {"fixing": kept}
    assert node.plain()["treatments"] == [wanted]
    assert problems_of(found.text) == []
    for comment in set(re.findall(r"# c\d|# the end", old)):
        assert comment in found.text
    assert all(word in found.text for word in ("J. Doe", "test 4") if word in old)
    assert upgrade(found.text, "a.room.yaml", WITHDRAWN).text == found.text


@pytest.fixture
def old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    path = Path("a.room.yaml")
    path.write_text(OLD, encoding="utf-8")
    path.chmod(0o640)
    return path


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, ["upgrade", *words])
    return done.exit_code, done.output


def test_the_command_shows_first_and_writes_when_told(old_file: Path) -> None:
    status, output = run("a.room.yaml")
    assert (status, old_file.read_text(encoding="utf-8")) == (1, OLD)
    assert "-    feeder_drop: 1.0  # percent\n+    feeder_drop: 1.0 %  # percent\n" in output
    assert "a.room.yaml:24: mount.panel-overhead was withdrawn, mount.substrate took over." in output
    status, output = run("a.room.yaml", "--yes")
    assert (status, old_file.read_text(encoding="utf-8")) == (0, NEW)
    assert stat.S_IMODE(old_file.stat().st_mode) == 0o640
    assert [path.name for path in Path().iterdir()] == ["a.room.yaml"]
    assert run("a.room.yaml") == (0, "a.room.yaml: nothing to rewrite; it is in today's form.\n")


def test_a_file_that_cannot_be_read_is_left(old_file: Path) -> None:
    old_file.write_text("roomlint: [1\n", encoding="utf-8")
    status, output = run("a.room.yaml", "--yes")
    assert status == 2
    assert output.startswith("a.room.yaml:")
    assert run("nowhere.room.yaml")[0] == 2
    Path("link.room.yaml").symlink_to("a.room.yaml")
    assert run("link.room.yaml")[0] == 2


def test_a_house_file_names_the_rules_that_took_over(old_file: Path) -> None:
    house = old_file.with_name("house.yaml")
    house.write_text(
        "roomlint_house: 1\ndecisions:\n  - rule: bass.axial-gap  # ours\n    level: note\n", encoding="utf-8"
    )
    assert run("house.yaml", "--yes")[0] == 0
    assert "  - rule: bass.room-modes  # ours\n" in house.read_text(encoding="utf-8")


def test_a_circuit_that_started_from_a_word_starts_from_a_panel_of_that_name() -> None:
    old = """\
roomlint: 1
room:
  size: {width: 4 m, length: 5 m}
# The electrician's list.
circuits:
  - {id: av, rating: 20 A, panel: subpanel}
  - {id: light, rating: 15 A, panel: service}
"""
    assert problems_of(old)
    found = upgrade(old, "a.room.yaml", WITHDRAWN)
    new = old.replace(
        "circuits:\n",
        "panels:\n  - {id: service, kind: service}\n  - {id: subpanel, kind: subpanel}\n\ncircuits:\n",
    )
    assert found.text == new
    assert problems_of(new) == []
    assert upgrade(new, "a.room.yaml", WITHDRAWN).text == new
