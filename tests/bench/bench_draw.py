"""Prints how long drawing a room takes against checking it: both from a cold start, the best of some runs of each.

    python tests/bench/bench_draw.py [RUNS]

The aim is 1.5 for the page; the other forms are printed beside it.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

EXAMPLES = Path(__file__).parents[2] / "example_projects"
ROOMS = ("attic/attic", "basement/basement", "loft-bay/loft-bay", "garden-studio/quick")
FORMS = ("html", "svg", "pdf", "dxf")


def seconds(*words: str) -> float:
    """Return how long a command takes."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-m", "roomlint", *words], check=False, capture_output=True)
    return time.perf_counter() - start


def main() -> None:
    """Print the ratios of each room."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as folder:
        for room in ROOMS:
            file = str(EXAMPLES / f"{room}.room.yaml")
            best = dict.fromkeys(("check", *FORMS), float("inf"))
            for _ in range(runs):
                best["check"] = min(best["check"], seconds("check", file))
                for form in FORMS:
                    best[form] = min(best[form], seconds("draw", file, "--to", f"{folder}/drawing.{form}"))
            ratios = "  ".join(f"{form} {best[form] / best['check']:.2f}" for form in FORMS)
            print(f"{room:<20} check {best['check']:.2f} s  of it: {ratios}")


if __name__ == "__main__":
    main()
