"""Benchmarks as ratios against another command in the same run; run by hand, never as a timed test.

    python tests/bench/bench_check.py [cold many generated jobs memory ...]

Cold: one complete room, `roomlint check` with the whole rule book against `check-jsonschema` with roomlint's own schema
on the same file: the example attic under its slope, under a gable and under a flat ceiling, and the L-shaped basement.
Many: rooms a second in one process, no two alike, less what a single one costs, of the same four. Generated: the same
of rooms drawn by chance, which differ in everything and fail at much (`rule_rates`). Jobs: what a second process is
worth on those. Memory: the peak of 2,000 small rooms over that of 200, in every format.
Compare installed programs: an environment that writes no bytecode, or an editable install, measures the compiler.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

from rule_rates import SHEETS, Drawn

from roomlint.report import WRITERS
from roomlint.sample import room, speaker

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
BIN = Path(sys.executable).parent
TEAM = ROOT / "example_projects"
ATTIC = TEAM / "attic" / "attic.room.yaml"
BASEMENT = TEAM / "basement" / "basement.room.yaml"
SLOPE = "    shape: mono-pitch\n    low: 2.30 m\n    high: 3.00 m\n    low_side: front\n"
FLAT = "    shape: flat\n    height: 2.60 m\n"
GABLE = "    shape: gable\n    low: 2.30 m\n    height: 3.00 m\n    ridge: front-to-rear\n"
REVIEWED = frozenset({0, 1})
"""Statuses of a review that came to its end; with any other, what was timed is no review."""


class Ran(NamedTuple):
    """How a command went."""

    wall_s: float
    peak_kib: int
    status: int


def ran(command: list[str], status: int | None = None) -> Ran:
    """Run a command; its status must be the one that is expected, or that of a review."""
    start = time.perf_counter()
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as process:
        _, ended, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(ended)
    wall_s = time.perf_counter() - start
    if process.returncode not in (REVIEWED if status is None else {status}):
        raise SystemExit(f"{' '.join(command)} ended with {process.returncode}: what was timed is no review")
    return Ran(wall_s, used.ru_maxrss, process.returncode)


def check(*arguments: str | Path) -> list[str]:
    return [str(BIN / "roomlint"), "check", *map(str, arguments)]


def another(text: str, number: int) -> str:
    """Return a room a little unlike the others: every place and height some tenths of a millimetre off."""
    off = number * 2e-4
    return re.sub(
        r'\b(from_left|from_front|height|low|high)("?): ("?)(\d+\.\d+) m\b',
        lambda found: f"{found[1]}{found[2]}: {found[3]}{float(found[4]) + off:.4f} m",
        text,
    )


def cold(file: Path, runs: int = 9) -> None:
    ours = check(file)
    theirs = [str(BIN / "check-jsonschema"), "--schemafile", str(ROOT / "schemas" / "room.schema.json"), str(file)]
    statuses = [ran(command).status for command in (ours, theirs)]
    pairs = [tuple(ran(*one).wall_s for one in zip((ours, theirs), statuses, strict=True)) for _ in range(runs)]
    ratios = sorted(a / b for a, b in pairs)
    print(
        f"cold, {file.name}: roomlint {statistics.median(a for a, _ in pairs) * 1000:.0f} ms,"
        f" check-jsonschema {statistics.median(b for _, b in pairs) * 1000:.0f} ms,"
        f" ratio median {statistics.median(ratios):.2f} (min {ratios[0]:.2f}, max {ratios[-1]:.2f})"
    )


def written(folder: Path, texts: list[str]) -> Path:
    """Write rooms to a folder of their own beside the products and the house file that they need."""
    folder.mkdir()
    for number, text in enumerate(texts):
        (folder / f"room{number:04d}.room.yaml").write_text(text, encoding="utf-8")
    return folder


def rate(name: str, parent: Path, texts: list[str], runs: int = 3) -> None:
    """Print how many rooms a second one process reviews beyond the first."""
    one, many = written(parent / "one", texts[:1]), written(parent / "many", texts)
    ran(check(one))
    single = statistics.median(ran(check(one)).wall_s for _ in range(runs))
    total = statistics.median(ran(check(many, "--jobs", "1")).wall_s for _ in range(runs))
    each = (total - single) / (len(texts) - 1)
    print(f"{name}: {1 / each:.0f} rooms/s beyond the first ({each * 1000:.1f} ms a room, {len(texts)} different ones)")
    shutil.rmtree(one)
    shutil.rmtree(many)


def jobs(name: str, parent: Path, texts: list[str]) -> None:
    """Print what a second process is worth."""
    many = written(parent / "many", texts)
    status = ran(check(many, "--jobs", "1")).status
    one, two = (ran(check(many, "--jobs", str(count)), status).wall_s for count in (1, 2))
    print(f"jobs, {name}: two processes {one / two:.2f} x one ({len(texts)} rooms, {os.cpu_count()} cores)")
    shutil.rmtree(many)


def memory(parent: Path, few: int = 200, many: int = 2000) -> None:
    """Print the peak of many small rooms over that of few, format by format."""
    stands = [speaker("left", "M+030", -1.5, 2.5), speaker("right", "M-030", 1.5, 2.5)]
    text = json.dumps(room(*stands, seats=((0.7, 0.0), (-0.7, 0.0))), indent=1)
    folders = {
        count: written(parent / f"of-{count}", [another(text, n % 400) for n in range(count)]) for count in (few, many)
    }
    for kind in WRITERS:
        status = ran(check(folders[few], "--format", kind, "--jobs", "1")).status
        peaks = [ran(check(folder, "--format", kind, "--jobs", "1"), status).peak_kib for folder in folders.values()]
        few_mib, many_mib = (peak / 1024 for peak in peaks)
        print(f"memory, {kind}: {many_mib / few_mib:.2f} x ({few_mib:.0f} MiB for {few}, {many_mib:.0f} for {many})")
    for folder in folders.values():
        shutil.rmtree(folder)


def shapes(team: Path) -> list[Path]:
    """Return complete rooms of four shapes in a copy of the example repository."""
    text = ATTIC.read_text(encoding="utf-8")
    if SLOPE not in text:
        raise SystemExit("the example attic has another ceiling now; give the bench its new one")
    folder = team / "bench"
    folder.mkdir()
    made = {"flat": text.replace(SLOPE, FLAT), "slope": text, "gable": text.replace(SLOPE, GABLE)}
    made["ell"] = BASEMENT.read_text(encoding="utf-8")
    for name, content in made.items():
        (folder / f"{name}.room.yaml").write_text(content, encoding="utf-8")
    return [folder / f"{name}.room.yaml" for name in made]


def generated(team: Path, rooms: int) -> dict[str, list[str]]:
    """Return rooms drawn by chance, flat ones and attics, the sheets that they use put beside them."""
    for sheet in SHEETS:
        (team / "products" / f"{sheet['id']}.product.yaml").write_text(json.dumps(sheet), encoding="utf-8")
    drawn: dict[str, list[str]] = {"flat": [], "slope": []}
    number = 0
    while min(map(len, drawn.values())) < rooms:
        one = Drawn(number)
        drawn["slope" if one.kind == "attic" else "flat"].append(json.dumps(one.data(), indent=1))
        number += 1
    return {name: texts[:rooms] for name, texts in drawn.items()}


def main(parts: list[str]) -> None:
    with tempfile.TemporaryDirectory() as scratch:
        team = Path(scratch) / "team"
        shutil.copytree(TEAM, team)
        os.chdir(team)  # outside of a repository the house file is sought up to where the program runs
        for file in shapes(team):
            if "cold" in parts:
                cold(file)
            if "many" in parts:
                text = file.read_text(encoding="utf-8")
                rate(f"many, {file.name}", file.parent, [another(text, number) for number in range(100)])
        for name, texts in generated(team, 200).items():
            if "generated" in parts:
                rate(f"generated, {name}", team, texts, runs=1)
            if "jobs" in parts:
                jobs(f"generated, {name}", team, texts)
        if "memory" in parts:
            memory(team)


if __name__ == "__main__":
    main(sys.argv[1:] or ["cold", "many", "generated", "jobs", "memory"])
