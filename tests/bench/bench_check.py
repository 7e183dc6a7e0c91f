"""Benchmarks as ratios against another command in the same run; run by hand, never as a timed test.

    python tests/bench/bench_check.py

Cold: one room of about 300 lines, `roomlint check` with the whole rule book against `check-jsonschema` with
roomlint's own schema on the same file. Many: 200 flat rectangular rooms of about 300 lines in one process.
"""

from __future__ import annotations

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
ATTIC = ROOT / "example_projects" / "attic" / "attic.room.yaml"
FLAT = "  ceiling: {shape: flat, height: 2.60 m}\n"


def wall_s(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, capture_output=True, check=False)
    return time.perf_counter() - start


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
    with tempfile.TemporaryDirectory() as folder:
        team = Path(folder)
        shutil.copytree(ROOT / "example_projects" / "products", team / "products")
        shutil.copy(ROOT / "example_projects" / "house.yaml", team / "house.yaml")
        text = file.read_text(encoding="utf-8")
        one = [str(BIN / "roomlint"), "check", str(team / "one")]
        all_of_them = [str(BIN / "roomlint"), "check", str(team / "many")]
        for name, count in (("one", 1), ("many", rooms)):
            (team / name).mkdir()
            for index in range(count):
                (team / name / f"room{index:03d}.room.yaml").write_text(text, encoding="utf-8")
        wall_s(one)
        single = statistics.median(wall_s(one) for _ in range(5))
        total = statistics.median(wall_s(all_of_them) for _ in range(3))
        each = (total - single) / (rooms - 1)
        print(f"many, {file.name}: {1 / each:.0f} rooms/s beyond the first ({each * 1000:.1f} ms a room)")


if __name__ == "__main__":
    cold(ATTIC)
    many(HERE / "flat.room.yaml")
    many(ATTIC)
