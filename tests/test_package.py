"""The source package holds what its tests need and says who made it; no dependency's floor is a guess."""

from __future__ import annotations

import re
import subprocess
import sys
import tarfile
import tomllib
from email.parser import Parser
from pathlib import Path
from typing import Any

import pytest

CHECKOUT = Path(__file__).parent.parent
pytestmark = pytest.mark.xdist_group("source package")  # one process builds it, once


def tracked() -> list[str]:
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    done = subprocess.run(command, cwd=CHECKOUT, capture_output=True, check=True)
    return [name for name in done.stdout.decode().split("\0") if name and (CHECKOUT / name).is_file()]


@pytest.fixture(scope="module")
def package(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """Return the files of the source package, built from a copy of the checkout."""
    if not (CHECKOUT / ".git").exists():
        pytest.skip("this is the source package; it is built from what git holds")
    copy = tmp_path_factory.mktemp("copy")
    for name in tracked():
        (copy / name).parent.mkdir(parents=True, exist_ok=True)
        (copy / name).write_bytes((CHECKOUT / name).read_bytes())
    code = "from setuptools import build_meta; build_meta.build_sdist('dist')"
    subprocess.run([sys.executable, "-c", code], cwd=copy, check=True, capture_output=True)
    found = {}
    with tarfile.open(next((copy / "dist").glob("*.tar.gz"))) as archive:
        for member in archive:
            stream = archive.extractfile(member) if member.isfile() else None
            if stream is not None:
                found[member.name.partition("/")[2]] = stream.read()
    return found


def test_the_source_package_holds_every_file_of_the_repository(package: dict[str, bytes]) -> None:
    assert set(tracked()) - set(package) == set()


def test_the_package_says_who_made_it_and_for_which_python(package: dict[str, bytes]) -> None:
    about = Parser().parsestr(package["PKG-INFO"].decode())
    assert about["Author"] == "the roomlint authors"
    classifiers = about.get_all("Classifier") or []
    assert "Programming Language :: Python :: 3.11" in classifiers
    assert about["Home-page"] is None


def test_the_source_package_s_front_page_leads_nowhere_that_a_reader_of_an_index_cannot_go(
    package: dict[str, bytes],
) -> None:
    page = Parser().parsestr(package["PKG-INFO"].decode()).get_payload()
    assert "# roomlint" in str(page)
    links = re.findall(r"\]\(([^)]+)\)", str(page))
    assert [link for link in links if not re.match(r"https://|#", link)] == []


def project() -> dict[str, Any]:
    found: dict[str, Any] = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return found


def test_every_floor_is_a_version_that_is_installed_and_tried() -> None:
    """`.ci/run` installs them and runs the tests; no dependency is without one, and none is bounded from above."""
    done = subprocess.run([sys.executable, CHECKOUT / ".ci" / "lowest"], check=True, capture_output=True, text=True)
    lowest = dict(line.split("==") for line in done.stdout.splitlines())
    wanted = [*project()["dependencies"], *project()["optional-dependencies"]["test"]]
    assert [f"{name}>={version}" for name, version in lowest.items()] == wanted
    assert "-c \"$scratch/lowest.txt\" -e '.[test]'" in (CHECKOUT / ".ci" / "run").read_text(encoding="utf-8")


def test_floors_are_versions_that_were_tried() -> None:
    """Older ones lack a wheel, are not to be had, or write other checks."""
    wanted = [*project()["dependencies"], *project()["optional-dependencies"]["test"]]
    assert {"pint>=0.24.4", "pyroomacoustics>=0.10.1", "setuptools>=77.0.3"} <= set(wanted)


def test_the_tag_that_the_front_page_names_is_this_version_s_and_it_says_when_it_is_made() -> None:
    page = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    assert f"rev: v{project()['version']}\n" in page
    assert "The tag that `rev` names is made on the commit that a version is released from" in page
