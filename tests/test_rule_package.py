"""A package of rules, built and installed for real: found, listed, tested, and told of when it breaks."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

import pytest

pytestmark = pytest.mark.xdist_group("rule package")  # one process builds and installs it, once
PACKAGE = Path(__file__).parent / "example_rule_package"
RULE = "layout.example-ear-height"
ROOM = """\
roomlint: 1
room: {size: {width: 4 m, length: 5 m}}
seats:
  - {id: middle, ear: {from_left: 2 m, from_front: 3 m, height: 1.6 m}}
"""


def build(source: Path, folder: Path) -> Path:
    """Return the Python of a fresh environment that has the package and sees what this one has."""
    copy = shutil.copytree(source, folder / "package")
    environment = folder / "environment"
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", str(environment)], check=True)
    python = environment / "bin" / "python"
    here = sysconfig.get_path("purelib")
    where = [str(python), "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    site = Path(subprocess.run(where, check=True, capture_output=True, text=True).stdout.strip())
    (site / "outer.pth").write_text(f"import site; site.addsitedir({here!r})\n", encoding="utf-8")
    install = ["-m", "pip", "--python", str(python), "install", "--no-deps", "--no-index", "--no-build-isolation"]
    subprocess.run([sys.executable, *install, "--quiet", str(copy)], check=True, capture_output=True)
    return python


@pytest.fixture(scope="module")
def python(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build(PACKAGE, tmp_path_factory.mktemp("installed"))


def roomlint(python: Path, *words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [str(python), "-P", "-m", "roomlint", *words], cwd=cwd, capture_output=True, text=True, check=False
    )


def test_an_installed_package_is_listed_with_its_name_and_version(python: Path, tmp_path: Path) -> None:
    done = roomlint(python, "rules", RULE, "--format", "json", cwd=tmp_path)
    listed = json.loads(done.stdout)
    assert [(rule["id"], rule["package"], rule["version"]) for rule in listed] == [
        (RULE, "roomlint-example-rules", "1.2.0")
    ]


def test_its_rule_judges(python: Path, tmp_path: Path) -> None:
    (tmp_path / "case.room.yaml").write_text(ROOM, encoding="utf-8")
    done = roomlint(python, "check", "--only", RULE, "--gate", "note", "--format", "lines", cwd=tmp_path)
    assert done.returncode == 1, done.stdout + done.stderr
    assert "case.room.yaml:4:65: note: middle: ear 1.60 m above the floor" in done.stdout
    assert f"[{RULE}]" in done.stdout


def test_its_cases_run_under_plain_pytest(python: Path, tmp_path: Path) -> None:
    tests = shutil.copytree(PACKAGE / "tests", tmp_path / "tests")
    done = subprocess.run(
        [str(python), "-m", "pytest", "-q", "-p", "no:cacheprovider", str(tests)],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "4 passed" in done.stdout


def test_a_package_that_breaks_makes_the_run_incomplete(tmp_path: Path) -> None:
    broken = shutil.copytree(PACKAGE, tmp_path / "source")
    (broken / "roomlint_example_rules.py").write_text("raise RuntimeError('no licence')\n", encoding="utf-8")
    python = build(broken, tmp_path)
    (tmp_path / "case.room.yaml").write_text(ROOM, encoding="utf-8")
    done = roomlint(python, "check", "case.room.yaml", "--gate", "never", cwd=tmp_path)
    assert done.returncode == 4, done.stdout + done.stderr
    assert "rule package roomlint-example-rules 1.2.0" in done.stdout
    assert "no licence" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr
