"""What happens to a run when a package, a rule, a process or the disk fails it: told, and never a pass."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import tempfile
import time
from datetime import date
from importlib.metadata import EntryPoint
from pathlib import Path
from typing import IO, TYPE_CHECKING

import pytest

from roomlint.review.book import load_book
from roomlint.review.session import Choices, run
from roomlint.review.spool import Spool, spooled

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOM = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\n"
RULE = """\
import sys
from roomlint.review import Level, Says, practice, rule
print("loading")
{at_load}

def every_room(room):
    return [room.design]

@rule("file.breaks", level=Level.NOTE, basis=practice("a try"), each=every_room, reads=("room",), since="0.1.0")
def breaks(room, subject):
    '''A rule of somebody else.

    Why: It is a try.

    How decided: It is not.

    Remedy: None.

    When to waive: Never.
    '''
    print("judging")
    {at_run}
"""


def installed(folder: Path, *, at_load: str = "", at_run: str = "raise SystemExit(0)") -> dict[str, str]:
    """Return the surroundings of a program beside which a package of one rule is installed."""
    about = folder / "site" / "breaking-1.0.dist-info"
    about.mkdir(parents=True)
    (folder / "site" / "breaking.py").write_text(RULE.format(at_load=at_load, at_run=at_run), encoding="utf-8")
    (about / "METADATA").write_text("Metadata-Version: 2.1\nName: breaking\nVersion: 1.0\n", encoding="utf-8")
    (about / "entry_points.txt").write_text("[roomlint.rules]\nbreaking = breaking\n", encoding="utf-8")
    return {**os.environ, "PYTHONPATH": str(folder / "site")}


def program(*words: str, cwd: Path, env: dict[str, str]) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-P", "-m", "roomlint", *words]
    return subprocess.run(command, capture_output=True, text=True, check=False, cwd=cwd, env=env, timeout=200)


@pytest.fixture
def team(tmp_path: Path) -> Path:
    folder = tmp_path / "team"
    folder.mkdir()
    for name in ("a", "b"):
        (folder / f"{name}.room.yaml").write_text(ROOM, encoding="utf-8")
    return folder


@pytest.mark.parametrize("leaving", ["raise SystemExit(0)", "sys.exit()", "raise BaseException('gone')", "1 / 0"])
def test_a_package_that_exits_as_it_loads_is_told(leaving: str, team: Path) -> None:
    done = program("check", ".", cwd=team, env=installed(team.parent, at_load=leaving))
    assert done.returncode == 4, done.stdout + done.stderr
    assert "breaking" in done.stdout
    assert "cannot be loaded" in done.stdout
    assert "2 rooms" in done.stdout


@pytest.mark.parametrize("jobs", ["1", "2"])
@pytest.mark.parametrize("leaving", ["raise SystemExit(0)", "raise BaseException('gone')"])
def test_a_rule_that_exits_ends_no_run_as_passed(leaving: str, jobs: str, team: Path) -> None:
    done = program("check", ".", "--jobs", jobs, cwd=team, env=installed(team.parent, at_run=leaving))
    assert done.returncode == 4, done.stdout + done.stderr
    assert "Traceback" not in done.stdout + done.stderr
    assert done.stdout + done.stderr != ""


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_what_a_package_prints_does_not_get_into_a_report(jobs: str, team: Path) -> None:
    surroundings = installed(team.parent, at_run="return Says.passed(subject, 'fine') if False else None")
    done = program("check", ".", "--jobs", jobs, "--format", "sarif", cwd=team, env=surroundings)
    assert json.loads(done.stdout)["version"] == "2.1.0"
    assert "loading" in done.stderr


def test_a_package_without_rules_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "hollow_rules.py").write_text("RULES = []\n", encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    book = load_book([EntryPoint("hollow", "hollow_rules", "roomlint.rules")])
    assert "holds no rules" in book.troubles[0].text


def test_an_entry_that_is_no_module_is_told() -> None:
    book = load_book([EntryPoint("odd", "sys:maxsize", "roomlint.rules")])
    assert "cannot be loaded" in book.troubles[0].text


def test_an_interrupt_as_a_package_loads_is_an_interrupt(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "stopped_rules.py").write_text("raise KeyboardInterrupt\n", encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    with pytest.raises(KeyboardInterrupt):
        load_book([EntryPoint("stopped", "stopped_rules", "roomlint.rules")])


def children(of: int) -> list[int]:
    """Return the processes that review for another, by what the system says of them."""
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            parent = (folder / "stat").read_text(encoding="utf-8").rpartition(") ")[2].split()[1]
            if parent == str(of) and b"spawn_main" in (folder / "cmdline").read_bytes():
                found.append(int(folder.name))
        except OSError:
            continue
    return found


@pytest.fixture
def busy(tmp_path: Path) -> Iterator[subprocess.Popen[str]]:
    """Yield a run in two processes that has long to go."""
    for number in range(3000):
        (tmp_path / f"r{number}.room.yaml").write_text(ROOM, encoding="utf-8")
    command = [sys.executable, "-P", "-m", "roomlint", "check", ".", "--jobs", "2", "--gate", "never"]
    with subprocess.Popen(command, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as running:
        yield running
        running.kill()


def wait_for(condition: object) -> bool:
    for _ in range(600):
        if condition():  # type: ignore[operator]
            return True
        time.sleep(0.05)
    return False


linux = pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="looks at processes in /proc")


@linux
@pytest.mark.parametrize("sign", [signal.SIGTERM, signal.SIGKILL])
def test_no_process_outlives_the_run_that_started_it(sign: signal.Signals, busy: subprocess.Popen[str]) -> None:
    assert wait_for(lambda: len(children(busy.pid)) == 2)
    started = children(busy.pid)
    busy.send_signal(sign)
    busy.wait(60)

    def is_gone(process: int) -> bool:
        stat = Path(f"/proc/{process}/stat")
        return not stat.exists() or stat.read_text(encoding="utf-8").rpartition(") ")[2].startswith("Z")

    assert wait_for(lambda: all(map(is_gone, started)))


@linux
def test_a_process_that_is_ended_from_outside_is_told(busy: subprocess.Popen[str]) -> None:
    assert wait_for(lambda: len(children(busy.pid)) == 2)
    os.kill(children(busy.pid)[0], signal.SIGKILL)
    output, errors = busy.communicate(timeout=100)
    assert busy.returncode == 4
    assert output == ""
    assert "ended from outside" in errors
    assert "Traceback" not in errors


@pytest.mark.parametrize("what", ["no place", "full at once", "full soon"])
def test_reviews_stay_in_memory_where_the_disk_takes_none(
    what: str, team: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Full:
        """A file that takes some bytes and then no more, and tells it as a disk does."""

        def __init__(self, file: IO[bytes], takes: int) -> None:
            self.file, self.takes = file, takes
            self.seek, self.read, self.close = file.seek, file.read, file.close

        def write(self, data: bytes) -> int:
            if self.takes <= 0:
                raise OSError(28, "No space left on device")
            written = self.file.write(bytes(data)[: self.takes])
            self.takes -= written
            return written

    real = tempfile.TemporaryFile

    def made(*words: object, **names: object) -> object:
        if what == "no place":
            raise FileNotFoundError(2, "No usable temporary directory found")
        return Full(real(*words, **names), 0 if what == "full at once" else 12_000)  # type: ignore[call-overload]

    monkeypatch.chdir(team)
    for name in "cdefgh":
        (team / f"{name}.room.yaml").write_text(ROOM, encoding="utf-8")
    review = run([f"{name}.room.yaml" for name in "abcdefgh"], load_book(), Choices(date(2027, 6, 1)))
    monkeypatch.setattr(tempfile, "TemporaryFile", made)
    spool = spooled(review.rooms)
    assert isinstance(spool, Spool)
    assert [room.file for room in spool] == [room.file for room in review.rooms]
    assert [room.verdicts for room in spool] == [room.verdicts for room in review.rooms]
