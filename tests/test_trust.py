"""A hostile repository reads nothing outside, runs nothing, and is answered with located errors."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

SECRET = "open-sesame"  # noqa: S105  not a password
PROGRAM = Path(sys.executable).parent / "roomlint"
ROOM = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\n"
HOUSE = "roomlint_house: 1\nproducts: [products]\n"


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "secret.product.yaml").write_text(f"{SECRET}\n", encoding="utf-8")
    (outside / "secret.room.yaml").write_text(f"{SECRET}\n", encoding="utf-8")
    inside = tmp_path / "repository"
    (inside / ".git").mkdir(parents=True)
    (inside / "products").mkdir()
    (inside / "house.yaml").write_text(HOUSE, encoding="utf-8")
    (inside / "case.room.yaml").write_text(ROOM, encoding="utf-8")
    return inside


def check(repository: Path, *words: str) -> tuple[int, str]:
    done = subprocess.run(
        [str(PROGRAM), "check", "--format", "lines", *(words or (".",))],
        cwd=repository,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert "Traceback" not in done.stdout + done.stderr
    assert SECRET not in done.stdout + done.stderr
    return done.returncode, done.stdout


@pytest.mark.parametrize("folder", ["../outside", "/etc", "products/../../outside"])
def test_a_product_folder_outside_is_refused_where_it_is_named(folder: str, repository: Path) -> None:
    (repository / "house.yaml").write_text(HOUSE.replace("[products]", f"[{folder}]"), encoding="utf-8")
    status, output = check(repository)
    assert status == 2
    assert "house.yaml:2:12: error: the product folder" in output
    assert "outside" in output


def test_a_product_folder_that_is_a_link_out_is_refused(repository: Path) -> None:
    (repository / "products").rmdir()
    (repository / "products").symlink_to("../outside")
    status, output = check(repository)
    assert status == 2
    assert "house.yaml:2:12: error:" in output


@pytest.mark.parametrize("target", ["../../outside/secret.product.yaml", "/dev/zero", "/etc/hostname"])
def test_a_sheet_that_is_a_link_out_is_refused(target: str, repository: Path) -> None:
    (repository / "products" / "x.product.yaml").symlink_to(target)
    status, output = check(repository)
    assert status == 2
    assert "products/x.product.yaml:1:1: error: this link leads out" in output


@pytest.mark.parametrize("words", [(), ("x.room.yaml",)])
def test_a_room_that_is_a_link_out_is_refused_found_or_named(words: tuple[str, ...], repository: Path) -> None:
    (repository / "x.room.yaml").symlink_to("../outside/secret.room.yaml")
    status, output = check(repository, *words)
    assert status == 2
    assert "x.room.yaml:1:1: error: this link leads out" in output


def test_a_room_behind_a_folder_that_is_a_link_out_is_refused(repository: Path) -> None:
    (repository / "rooms").symlink_to("../outside")
    status, output = check(repository, "rooms/secret.room.yaml")
    assert status == 2
    assert "rooms/secret.room.yaml:1:1: error: this link leads out" in output


def test_a_house_file_that_is_a_link_out_is_refused(repository: Path) -> None:
    (repository / "house.yaml").unlink()
    (repository / "house.yaml").symlink_to("../outside/secret.room.yaml")
    status, output = check(repository)
    assert status == 2
    assert "house.yaml:1:1: error: this link leads out" in output


@pytest.mark.parametrize("name", ["x.room.yaml", "products/x.product.yaml"])
def test_a_pipe_does_not_hold_the_run(name: str, repository: Path) -> None:
    os.mkfifo(repository / name)
    status, output = check(repository)
    assert status == 2
    assert f"{name}:1:1: error: this is not an ordinary file." in output


@pytest.mark.parametrize("kind", ["nowhere", "circle", "pipe", "folder"])
def test_a_house_file_that_cannot_be_read_is_not_taken_for_none(kind: str, repository: Path) -> None:
    house = repository / "house.yaml"
    house.unlink()
    if kind == "pipe":
        os.mkfifo(house)
    elif kind == "folder":
        house.mkdir()
    else:
        house.symlink_to("house.yaml" if kind == "circle" else "nowhere.yaml")
    status, output = check(repository)
    assert status == 2
    assert "house.yaml:1:1: error: " in output


@pytest.mark.parametrize(
    ("name", "wanted"),
    [("products/x.Product.yml", ".product.yaml"), ("x.room.YML", ".room.yaml"), ("house.yml", "")],
)
def test_a_design_file_of_another_ending_is_told(name: str, wanted: str, repository: Path) -> None:
    if name == "house.yml":
        (repository / "house.yaml").unlink()
        wanted = "house.yaml"
    (repository / name).write_text(HOUSE, encoding="utf-8")
    status, output = check(repository)
    assert status == 2
    assert f"{name}:1:1: error: " in output
    assert wanted in output


def test_one_link_in_a_circle_does_not_hide_the_other_sheets(repository: Path) -> None:
    (repository / "products" / "loop").symlink_to("loop")
    (repository / "products" / "box.product.yaml").write_text("roomlint_product: 1\nid: Box\n", encoding="utf-8")
    status, output = check(repository)
    assert status == 2
    assert "products/box.product.yaml:2:" in output


@pytest.mark.parametrize("name", ["loop.room.yaml", f"{'x' * 300}.room.yaml", f"{'x' * 300}/a.room.yaml"])
def test_a_path_that_leads_nowhere_is_told(name: str, repository: Path) -> None:
    (repository / "loop.room.yaml").symlink_to("loop.room.yaml")
    status, output = check(repository, name)
    assert status == 2
    assert f"{name}:1:1: error: cannot be read" in output.replace("\n    ", "")


def test_a_planted_bare_repository_decides_no_comparison(repository: Path) -> None:
    (repository / ".git").rmdir()
    git = ["git", "-c", "user.name=team", "-c", "user.email=team@example.org"]
    for words in (["init", "--quiet"], ["add", "--all"], ["commit", "--quiet", "-m", "then"]):
        subprocess.run([*git, *words], cwd=repository, check=True)
    rooms = repository / "rooms"
    shutil.copytree(repository / ".git", rooms)
    for key, value in (("core.bare", "false"), ("core.worktree", ".")):
        subprocess.run(["git", "config", "--file", str(rooms / "config"), key, value], check=True)
    (rooms / "case.room.yaml").write_text(ROOM, encoding="utf-8")
    for words in (("--against", "HEAD", "--gate-new"), ("--staged",)):
        status, output = check(rooms, *words, ".")
        assert status == 2
        assert output == ""


def test_a_giant_file_costs_nothing(repository: Path) -> None:
    with (repository / "products" / "x.product.yaml").open("wb") as stream:
        stream.truncate(20 * 1024**3)
    status, output = check(repository)
    assert status == 2
    assert "products/x.product.yaml:1:1: error:" in output


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(
            f"{name}: &{name} [{', '.join([f'*{before}'] * 9)}]\n"
            for before, name in zip("abcdefgh", "bcdefghi", strict=True)), ""),
        ("roomlint: 1\nroom: !!python/object/apply:os.system ['touch run']\n", "2:7"),
        ("roomlint: 1\nroom: !include /etc/hostname\n", "2:7"),
        ("roomlint: 1\nrules: [os.system]\nroom: {size: {width: 4 m, length: 5 m}}\n", "2:1"),
    ],
    ids=["bomb", "object tag", "include tag", "module"],
)  # fmt: skip
def test_text_runs_nothing(text: str, where: str, repository: Path) -> None:
    (repository / "x.room.yaml").write_text(text, encoding="utf-8")
    status, output = check(repository)
    assert status == 2
    assert f"x.room.yaml:{where}" in output
    assert not (repository / "run").exists()


@pytest.mark.parametrize("name", ["--help.room.yaml", "-o=x.room.yaml", "--write=text=gone.room.yaml"])
def test_a_room_named_like_an_option_is_a_room(name: str, repository: Path) -> None:
    (repository / name).write_text(ROOM, encoding="utf-8")
    status, output = check(repository, "--format", "text", "--gate", "never", ".")
    assert status in {0, 4}
    assert "2 rooms" in output
    assert check(repository, "--gate", "never", "--", name)[0] in {0, 4}


def test_a_package_in_the_repository_is_not_loaded(repository: Path) -> None:
    (repository / "evil.py").write_text("open('run', 'w').close()\n", encoding="utf-8")
    for kind in ("evil.egg-info", "evil-1.0.dist-info"):
        (repository / kind).mkdir()
        (repository / kind / "METADATA").write_text(
            "Metadata-Version: 2.1\nName: evil\nVersion: 1.0\n", encoding="utf-8"
        )
        (repository / kind / "entry_points.txt").write_text("[roomlint.rules]\nevil = evil\n", encoding="utf-8")
    for name in ("sitecustomize.py", "conftest.py", "roomlint.py", "click.py"):
        (repository / name).write_text("open('run', 'w').close()\n", encoding="utf-8")
    _, output = check(repository, "--jobs", "2", ".", "case.room.yaml")
    assert "evil" not in output
    assert not (repository / "run").exists()
