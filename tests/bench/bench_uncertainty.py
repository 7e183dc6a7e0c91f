"""Printed uncertainty over what drawn readings give, per figure name; run by hand.

    python tests/bench/bench_uncertainty.py [ROOMS] [DRAWS] [CHAPTER ...]

Rooms drawn by lot with a tape's tolerance, and the example projects. Printed per figure name: how many figures, the
median of printed over drawn, its smallest and largest, and how many were left out because the figure has a kink or
bends where it stands. One is right; above it too much is printed, below it too little.
"""

from __future__ import annotations

import argparse
import statistics
import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent / "rules"), str(HERE.parent / "properties")]

import drawn  # noqa: E402  the path to it is set above
import rich_rooms  # noqa: E402
from draws import Spread, by_name, drawn_figures  # noqa: E402

FIRST = 5000
"""The seed of the first room that is drawn."""
WITHIN = 0.15


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    options.add_argument("rooms", nargs="?", type=int, default=6)
    options.add_argument("draws", nargs="?", type=int, default=200)
    options.add_argument("chapters", nargs="*")
    asked = options.parse_args()
    chapters = set(asked.chapters)
    rules = [rule for rule in rich_rooms.BOOK.rules if rule.window and (not chapters or rule.chapter in chapters)]
    rooms = [
        (f"drawn {seed}", {**drawn.drawn(seed), "survey": {"tolerance": "10 mm"}}, drawn.PRODUCTS)
        for seed in range(FIRST, FIRST + asked.rooms)
    ]
    rooms += [
        (name, rich_rooms.plain(rich_rooms.EXAMPLES / f"{name}.room.yaml"), rich_rooms.sheets())
        for name in (*rich_rooms.RICH, "garden-studio/quick")
    ]
    spreads: list[Spread] = []
    for name, data, sheets in rooms:
        found = drawn_figures(data, rules, sheets, asked.draws)
        told = f"{len(found.spreads)} figures, {len(found.refused)} refuse in some draw, {len(found.idle)} exact"
        print(f"{name}: {told}", flush=True)
        spreads += found.spreads
    print(f"\n{'figure':44} {'n':>5} {'median':>7} {'least':>7} {'most':>7} {'bend':>5}")
    for name, all_of in by_name(spreads).items():
        straight = [spread for spread in all_of if not spread.bends]
        ratios = [spread.ratio for spread in straight]
        told = f"{statistics.median(ratios):7.2f} {min(ratios):7.2f} {max(ratios):7.2f}" if ratios else " " * 23
        print(f"{name:44} {len(straight):5} {told} {len(all_of) - len(straight):5}")
        for one in straight:
            if not 1.0 - WITHIN <= one.ratio <= 1.0 + WITHIN:
                how = f"{one.printed:.3g} printed, {one.drawn:.3g} drawn, {one.straight:.3f} straight"
                print(f"    {one.rule} {one.subject}: {one.value:.4g}: {how}")


if __name__ == "__main__":
    main()
