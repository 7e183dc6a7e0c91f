"""The source package holds what its tests need and says who made it; no dependency's floor is a guess."""

from __future__ import annotations

import subprocess
import sys
import tarfile
import tomllib
from email.parser import Parser
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).parent.parent
pytestmark = [
    pytest.mark.skipif(not (CHECKOUT / ".git").exists(), reason="compares with what git holds"),
    pytest.mark.xdist_group("source package"),  # one process builds it, once
]


def tracked() -> list[str]:
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    done = subprocess.run(command, cwd=CHECKOUT, capture_output=True, check=True)
    return [name for name in done.stdout.decode().split("\0") if name and (CHECKOUT / name).is_file()]


@pytest.fixture(scope="module")
def package(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """Return the files of the source package, built from a copy of the checkout."""
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


def test_floors_are_versions_that_were_tried() -> None:
    """Each was installed at its floor, and the tests passed: older ones lack a wheel, or write other checks."""
    project = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = [*project["dependencies"], *project["optional-dependencies"]["test"]]
    assert {"pint>=0.24.4", "pyroomacoustics>=0.10.1"} <= set(wanted)
