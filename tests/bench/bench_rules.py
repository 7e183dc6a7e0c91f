"""Time of every rule and chapter on one room, as a share of the whole review; run by hand, never as a timed test.

    python tests/bench/bench_rules.py [ROOM]

The rules run in the order of their ids over a fresh room, as in a review; what one of them computes and the next one
uses again is counted to the first. Without a room, the example attic.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections import defaultdict
from datetime import date
from pathlib import Path

from roomlint.review.book import load_book
from roomlint.review.desk import Desk
from roomlint.review.engine import review_room
from roomlint.review.room import Room

ATTIC = Path(__file__).parent.parent.parent / "example_projects" / "attic" / "attic.room.yaml"
RUNS = 15


def main(path: str) -> None:
    rules = load_book().rules
    times: dict[str, list[float]] = defaultdict(list)
    for _ in range(RUNS):
        start = time.process_time()
        design, house, problems = Desk().open_room(path)
        times["(reading the file)"].append(time.process_time() - start)
        assert design is not None
        assert not problems
        room = Room(design, house, date(2026, 11, 25), tuple(rule.id for rule in rules))
        for rule in rules:
            start = time.process_time()
            review_room(room, [rule])
            times[rule.id].append(time.process_time() - start)
    medians = {name: statistics.median(values) for name, values in times.items()}
    whole = sum(medians.values())
    for name, seconds in sorted(medians.items(), key=lambda entry: -entry[1]):
        print(f"{seconds / whole:6.1%}  {seconds * 1000:7.3f} ms  {name}")
    print(f"100.0%  {whole * 1000:7.3f} ms  whole, {len(rules)} rules")
    chapters: dict[str, float] = defaultdict(float)
    for name, seconds in medians.items():
        chapters[name.partition(".")[0]] += seconds
    for name, seconds in sorted(chapters.items(), key=lambda entry: -entry[1]):
        print(f"{seconds / whole:6.1%}  {seconds * 1000:7.3f} ms  {name}")


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else str(ATTIC))
