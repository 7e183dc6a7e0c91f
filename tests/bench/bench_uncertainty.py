"""Printed uncertainty over what drawn readings give, per figure name; run by hand.

    python tests/bench/bench_uncertainty.py [ROOMS] [DRAWS] [CHAPTER ...]

Rooms drawn by lot with a tape's tolerance, and the example projects. Printed per figure name: how many figures, the
median of printed over drawn, its smallest and largest, and how many were left out because the figure has a kink or
bends where it stands. One is right; above it too much is printed, below it too little.
"""

from __future__ import annotations

import statistics
import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent / "rules"), str(HERE.parent / "properties")]

import drawn  # noqa: E402  the path to it is set above
import rich_rooms  # noqa: E402
from draws import Spread, by_name, drawn_figures  # noqa: E402

SEEDS = range(5000, 100_000)


def main() -> None:
    count, draws = (
        (int(word) for word in (*sys.argv[1:3], "6", "200")[:2]) if len(sys.argv) != 2 else (int(sys.argv[1]), 200)
    )
    chapters = set(sys.argv[3:])
    rules = [
        rule for rule in rich_rooms.BOOK.rules if rule.window is not None and (rule.chapter in chapters or not chapters)
    ]
    rooms = []
    for seed, _ in zip(SEEDS, range(count), strict=False):
        data = drawn.drawn(seed)
        data["survey"]["tolerance"] = "10 mm"
        rooms.append((f"drawn {seed}", data, drawn.PRODUCTS))
    for name in (*rich_rooms.RICH, "garden-studio/quick"):
        rooms.append((name, rich_rooms.plain(rich_rooms.EXAMPLES / f"{name}.room.yaml"), rich_rooms.sheets()))
    spreads: list[Spread] = []
    for name, data, sheets in rooms:
        found = drawn_figures(data, rules, sheets, draws)
        print(
            f"{name}: {len(found.spreads)} figures, {len(found.refused)} refuse in some draw, {len(found.idle)} exact"
        )
        spreads += found.spreads
    print(f"\n{'figure':44} {'n':>5} {'median':>7} {'least':>7} {'most':>7} {'bend':>5}")
    for name, all_of in by_name(spreads).items():
        straight = [spread.ratio for spread in all_of if not spread.bends]
        told = f"{statistics.median(straight):7.2f} {min(straight):7.2f} {max(straight):7.2f}" if straight else " " * 23
        print(f"{name:44} {len(straight):5} {told} {len(all_of) - len(straight):5}")
        for spread in all_of:
            if not spread.bends and not 0.85 <= spread.ratio <= 1.15:
                print(
                    f"    {spread.rule} {spread.subject} {spread.value:.4g}: {spread.printed:.3g} / {spread.drawn:.3g}, {spread.straight:.3f}"
                )


if __name__ == "__main__":
    main()
