"""Changes the program in small ways, one at a time, and asks whether a test of values notices.

    python tests/bench/mutants.py [--floor PERCENT] [--of N] [--seed WORD] [--jobs N] [--only TEXT]

The changes are Cosmic Ray's (another sign, another comparison, a number one off, `and` for `or`); a sample of them is
tried. Which ones is decided by the digest of each one's own place and the seed, so that a change elsewhere in the
program leaves the sample as it is. Each is made in a copy of the checkout and held against the tests that name its
module or its chapter, then, if these do not notice, against the cases of the whole rule book and the engine's tests.
Prints the survivors and leaves with 1 where fewer are noticed than the floor asks for.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from pathlib import Path
from queue import SimpleQueue
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from cosmic_ray.ast import ast_nodes, get_ast_from_path
from cosmic_ray.ast.ast_query import ASTQuery
from cosmic_ray.mutating import mutate_and_test
from cosmic_ray.plugins import get_operator
from cosmic_ray.work_item import MutationSpec, TestOutcome, WorkerOutcome

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")
CHECKOUT = Path(__file__).parent.parent.parent
PARTS = {"roomlint/figures": 14, "roomlint/measure": 8, "roomlint/review": 8, "rules": 10}
"""What is changed, and how many changes of forty."""
LEFT_OUT = {"__init__.py", "inputs.py"}
"""Names that are passed on, and the record of keys, which is a tool's."""
OPERATORS = (
    "core/ReplaceBinaryOperator_Add_Sub", "core/ReplaceBinaryOperator_Sub_Add", "core/ReplaceBinaryOperator_Mul_Div",
    "core/ReplaceBinaryOperator_Div_Mul", "core/ReplaceUnaryOperator_Delete_USub",
    "core/ReplaceUnaryOperator_Delete_Not", "core/ReplaceComparisonOperator_Lt_GtE",
    "core/ReplaceComparisonOperator_LtE_Gt", "core/ReplaceComparisonOperator_Gt_LtE",
    "core/ReplaceComparisonOperator_GtE_Lt", "core/ReplaceComparisonOperator_Eq_NotEq",
    "core/ReplaceComparisonOperator_NotEq_Eq", "core/ReplaceComparisonOperator_Is_IsNot",
    "core/ReplaceComparisonOperator_IsNot_Is", "core/ReplaceAndWithOr", "core/ReplaceOrWithAnd", "core/NumberReplacer",
)  # fmt: skip
PYTEST = "-x -q -p no:randomly -p no:xdist -p no:cacheprovider"
SLOW = {"test_room_response.py", "test_bass.py", "test_processes.py", "test_many.py", "test_boundary_and_bass.py"}
"""Tests that solve rooms or start processes: run last, and for a change of the computing alone."""
WIDER = (
    "tests/rules/test_cases.py tests/measure/test_figure.py tests/measure/test_bass_moved.py "
    "tests/review/test_house.py tests/gallery/test_verdicts.py"
)
TIMEOUT_S = 300.0
"""A loop that never ends is noticed by it; nothing else is."""
GAVE_NO_CHANGE = {WorkerOutcome.EXCEPTION, WorkerOutcome.NO_TEST, WorkerOutcome.ABNORMAL}


class Mutant(NamedTuple):
    """One change: of which module, what, and the how manyeth place of its kind."""

    path: str
    operator: str
    occurrence: int
    start: tuple[int, int]
    end: tuple[int, int]
    where: str
    """The definition that it stands in, with the how manyeth of its kind it is there."""

    def __str__(self) -> str:
        return f"{self.path}:{self.start[0]} {self.where} {self.operator.removeprefix('core/')}"


def mutants(path: Path) -> list[Mutant]:
    """Return every change of a module."""
    tree, name = get_ast_from_path(path), str(path.relative_to(CHECKOUT))
    lines = path.read_text(encoding="utf-8").splitlines()
    found = []
    for operator in OPERATORS:
        made, counts = get_operator(operator)(), {}
        places = ((node, *place) for node in ast_nodes(tree) for place in made.mutation_positions(node))
        for occurrence, (node, start, end) in enumerate(places):
            if lines[start[0] - 1][: start[1]].rstrip()[-1:] in {"(", ","} and "Mul" in operator:
                continue  # the star of a signature or of a call is no multiplication
            definition = ASTQuery(node).get_definition_name() or "module"
            number = counts[definition] = counts.get(definition, 0) + 1
            found.append(Mutant(name, operator, occurrence, start, end, f"{definition}#{number}"))
    return found


def sample(of: int, seed: str) -> list[Mutant]:
    """Return the changes that are tried, each part with its share: one of a definition, every kind of change alike."""
    chosen: list[Mutant] = []
    for part, share in PARTS.items():
        paths = [path for path in sorted((CHECKOUT / part).rglob("*.py")) if path.name not in LEFT_OUT]
        first: dict[str, tuple[tuple[str, ...], Mutant]] = {}
        for mutant in (mutant for path in paths for mutant in mutants(path)):
            definition = f"{mutant.path} {mutant.where.partition('#')[0]}"
            kind = f"{definition} {mutant.operator}"
            lot = tuple(_digest(f"{seed} {text}") for text in (definition, kind, f"{kind} {mutant.where}"))
            if definition not in first or lot < first[definition][0]:
                first[definition] = (lot, mutant)
        drawn = [mutant for _, mutant in sorted(first.values(), key=lambda found: found[0])]
        chosen += drawn[: max(1, share * of // sum(PARTS.values()))]
    return chosen


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


@cache
def tests_of(path: str) -> tuple[str, ...]:
    """Return the arguments of the test runs that a change of a module is held against, the nearest first."""
    module = Path(path)
    if module.parts[0] == "rules":
        chapter = module.parent.name
        return (f"tests/rules/test_cases.py -k '{chapter}. or {chapter}-'", WIDER)
    part, name = module.parent.name, module.stem
    names = re.compile(rf"{part}(\.{name}\b| import .*\b{name}\b)")
    folders = ("figures", "outside", "measure", "review")
    tests = [test for folder in folders for test in sorted((CHECKOUT / "tests" / folder).glob("test_*.py"))]
    naming = [test for test in tests if names.search(test.read_text(encoding="utf-8"))]
    near = [str(test.relative_to(CHECKOUT)) for test in naming if test.name not in SLOW]
    slow = [str(test.relative_to(CHECKOUT)) for test in naming if test.name in SLOW] if part == "figures" else []
    if part == "review":
        near = sorted({*near, "tests/review/test_engine.py", "tests/review/test_decide.py"})
    return tuple(run for run in (" ".join(near), WIDER, " ".join(slow)) if run)


def copied(folder: Path) -> Path:
    """Return a copy of the checkout in which the rule book is found beside the program, as it is where installed."""
    keep = shutil.ignore_patterns(".*", "__pycache__", "build", "dist", "*.egg-info")
    copy = Path(shutil.copytree(CHECKOUT, folder / "checkout", ignore=keep, symlinks=True))
    for name in ("rules", "schemas"):
        (copy / "roomlint" / name).symlink_to(copy / name)
    return copy


def command(copy: Path, tests: str) -> str:
    python = shlex.quote(sys.executable)
    return f"env -C {copy} PYTHONPATH={copy} PYTHONDONTWRITEBYTECODE=1 {python} -m pytest {PYTEST} {tests}"


def survives(mutant: Mutant, copy: Path) -> str:
    """Return what was changed where no test notices, else nothing."""
    change = MutationSpec(
        module_path=copy / mutant.path, operator_name=mutant.operator, occurrence=mutant.occurrence,
        start_pos=mutant.start, end_pos=mutant.end,
    )  # fmt: skip
    told = ""
    for tests in tests_of(mutant.path):
        result = mutate_and_test([change], command(copy, tests), TIMEOUT_S)
        if result.worker_outcome in GAVE_NO_CHANGE:
            raise RuntimeError(f"{mutant}: {result.output}")
        if result.test_outcome is not TestOutcome.SURVIVED:
            return ""
        told = result.diff or ""
    return "\n".join(line for line in told.splitlines() if line[:1] in "+-" and line[:3] not in {"+++", "---"})


def fails(tests: str, copy: Path) -> str:
    """Return what fails with nothing changed: where something does, every change would seem noticed."""
    done = subprocess.run(shlex.split(command(copy, tests)), capture_output=True, text=True, check=False)
    return f"{tests}: fails with nothing changed\n{done.stdout[-3000:]}{done.stderr[-1000:]}" if done.returncode else ""


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    options.add_argument("--floor", type=float, default=0.0, help="percent that must be noticed")
    options.add_argument("--of", type=int, default=40, help="how many changes are tried")
    options.add_argument("--seed", default="fence", help="another sample")
    options.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    options.add_argument("--only", default="", help="only modules whose path holds this")
    options.add_argument("--list", action="store_true", help="print the sample, try nothing")
    asked = options.parse_args()
    chosen = [mutant for mutant in sample(asked.of, asked.seed) if asked.only in mutant.path]
    if asked.list:
        print(*chosen, sep="\n")
        return 0
    with tempfile.TemporaryDirectory() as scratch:
        copies: SimpleQueue[Path] = SimpleQueue()
        for number in range(asked.jobs):
            copies.put(copied(Path(scratch, str(number))))

        def lent(run: Callable[[Path], T]) -> T:
            copy = copies.get()
            try:
                return run(copy)
            finally:
                copies.put(copy)

        def tried(mutant: Mutant) -> str:
            change = lent(lambda copy: survives(mutant, copy))
            print(f"{'NOT NOTICED' if change else 'noticed':12} {mutant}", flush=True)
            return change

        with ThreadPoolExecutor(asked.jobs) as pool:
            every = sorted({tests for mutant in chosen for tests in tests_of(mutant.path)})
            failing = list(pool.map(lambda tests: lent(lambda copy: fails(tests, copy)), every))
            if any(failing):
                print(*filter(None, failing), sep="\n")
                return 2
            told = list(pool.map(tried, chosen))
    for mutant, change in zip(chosen, told, strict=True):
        if change:
            print(f"\n{mutant}\n{change}")
    noticed = sum(not change for change in told)
    percent = 100.0 * noticed / len(chosen)
    print(f"\n{noticed} of {len(chosen)} changes noticed: {percent:.0f} %, floor {asked.floor:.0f} %")
    return 0 if percent >= asked.floor else 1


if __name__ == "__main__":
    sys.exit(main())
