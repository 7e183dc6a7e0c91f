"""Benchmarks as ratios against another command in the same run; run by hand, never as a timed test.

    python tests/bench/bench_check.py

Cold: one complete room, `roomlint check` with the whole rule book against `check-jsonschema` with roomlint's own schema
on the same file. Many: 200 rooms in one process, no two alike, less what a single one costs. Each for the example
attic under its slope, whose bass needs its modes found numerically, and for the same room under a flat ceiling.
Compare installed programs: an environment that writes no bytecode, or an editable install, measures the compiler.
"""

from __future__ import annotations

import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
BIN = Path(sys.executable).parent
TEAM = ROOT / "example_projects"
ATTIC = TEAM / "attic" / "attic.room.yaml"
SLOPE = "    shape: mono-pitch\n    low: 2.30 m\n    high: 3.00 m\n    low_side: front\n"
FLAT = "    shape: flat\n    height: 2.60 m\n"


def wall_s(command: list[str]) -> float:
    start = time.perf_counter()
    status = subprocess.run(command, capture_output=True, check=False).returncode
    if status not in {0, 1}:
        raise SystemExit(f"{' '.join(command)} ended with {status}: what was timed is no review")
    return time.perf_counter() - start


def another(text: str, number: int) -> str:
    """Return a room a little unlike the others: every place and height some tenths of a millimetre off."""
    off = number * 2e-4
    return re.sub(
        r"\b(from_left|from_front|height|low|high): (\d+\.\d+) m\b",
        lambda found: f"{found[1]}: {float(found[2]) + off:.4f} m",
        text,
    )


def cold(file: Path, runs: int = 9) -> None:
    ours = [str(BIN / "roomlint"), "check", str(file)]
    theirs = [str(BIN / "check-jsonschema"), "--schemafile", str(ROOT / "schemas" / "room.schema.json"), str(file)]
    for command in (ours, theirs):
        wall_s(command)
    pairs = [(wall_s(ours), wall_s(theirs)) for _ in range(runs)]
    ratios = sorted(a / b for a, b in pairs)
    print(
        f"cold, {file.name}: roomlint {statistics.median(a for a, _ in pairs) * 1000:.0f} ms,"
        f" check-jsonschema {statistics.median(b for _, b in pairs) * 1000:.0f} ms,"
        f" ratio median {statistics.median(ratios):.2f} (min {ratios[0]:.2f}, max {ratios[-1]:.2f})"
    )


def many(file: Path, rooms: int = 200) -> None:
    text = file.read_text(encoding="utf-8")
    one, many_ = file.parent / "one", file.parent / "many"
    for folder, count in ((one, 1), (many_, rooms)):
        folder.mkdir()
        for index in range(count):
            (folder / f"room{index:03d}.room.yaml").write_text(another(text, index), encoding="utf-8")
    command = [str(BIN / "roomlint"), "check"]
    wall_s([*command, str(one)])
    single = statistics.median(wall_s([*command, str(one)]) for _ in range(5))
    total = statistics.median(wall_s([*command, str(many_)]) for _ in range(3))
    each = (total - single) / (rooms - 1)
    print(f"many, {file.name}: {1 / each:.0f} rooms/s beyond the first ({each * 1000:.1f} ms a room)")
    shutil.rmtree(one)
    shutil.rmtree(many_)


def flat_and_sloped(team: Path) -> tuple[Path, Path]:
    """Return the two rooms in a copy of the example repository."""
    shutil.copytree(TEAM, team)
    text = ATTIC.read_text(encoding="utf-8")
    if SLOPE not in text:
        raise SystemExit("the example attic has another ceiling now; give the bench its new one")
    flat = team / "bench" / "flat.room.yaml"
    flat.parent.mkdir()
    flat.write_text(text.replace(SLOPE, FLAT), encoding="utf-8")
    return flat, team / "attic" / "attic.room.yaml"


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as scratch:
        for room in flat_and_sloped(Path(scratch) / "team"):
            cold(room)
            many(room, 200 if room.name.startswith("flat") else 20)
