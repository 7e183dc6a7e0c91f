"""Every public function of the computing has somebody who asks for it, and something outside that it was held against.

What a function of the computing calls is reached through it: a part of a figure is pinned where the figure is.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

ROOT = Path(__file__).parent.parent.parent
FIGURES = ROOT / "roomlint" / "figures"

NO_USER = {
    "conductors: table_eight_ohm_per_m, greatest_length_m, wire_tilt_db, greatest_loop_ohm": "the published tables and "
    "examples that tests/outside holds resistance and loss against are written with them",
    "bass: combined_db, response_db": "the sum in one call, for the oracles of tests/outside; a room's is made of its "
    "parts, so that one that is moved is heard anew alone",
    "mains_draw: btu_per_hour, class_b_efficiency_sine": "a maker's table that tests/outside holds heat against is in "
    "British thermal units, and the ideal bounds the efficiency that is assumed",
}
"""Figures that no measure asks for, and why they are kept."""

FROM_WITHIN = {
    "ampacity: table_ends_a": "the ends of the table that tests/outside holds, to name them in a refusal",
    "bass: smoothed_db": "tests/figures/test_bass.py: a mean of equal levels, and of two by hand",
    "bass_dips: against_own_band_db, against_others_db, notes_against_own_band_db, lowest_of_all_seats":
        "tests/figures/test_bass_dips.py: seats and bands worked out by hand; no standard defines them",
    "boundary: port_gap_needed_m, port_gap_wanted_m, plinth_gap_m": "tests/figures/test_boundary.py: practice, by hand",
    "circuits: total_is_tabled": "whether the table that tests/outside holds has the voltage, to name it in a refusal",
    "convex: meeting_m": "tests/figures/test_enclosure.py: a box that slides, by hand",
    "coverage: mounted_axis": "tests/figures/test_direction.py: a turn by hand",
    "coverage: drop_db": "tests/figures/test_coverage.py: the definition of coverage; no standard draws the rest",
    "delay: rounded_to_step": "tests/figures/test_direction.py: arithmetic",
    "delay: common_arrival_ms": "tests/figures/test_direction.py: a middle value by hand",
    "direction: near_deg, outside_range_deg": "differences of angles, by hand there",
    "enclosure: nearest_surface, solid_clearance, before_opening, gap_on_wall_m, depth_on_wall_m, clear_beside_m":
        "tests/figures/test_enclosure.py: distances in boxes, by hand and by sampling",
    "fasteners: is_metric, end_grain_lateral_factor": "tests/figures/test_fixings.py: the table's own rows with the "
        "clause beside them",
    "loads: group_twist_n, design_factor": "tests/figures/test_fixings.py: statics by hand",
    "moved_room: skin": "tests/figures/test_moved_room.py: boxes solved anew in closed form, volumes by hand",
    "overhead: from_zenith_deg, set_azimuth_deg": "tests/figures/test_overhead.py: directions by hand",
    "own_layouts: is_listed": "whether the standard has a table; tests/outside holds the tables",
    "ray: first_met, ahead_of_face": "tests/figures/test_enclosure.py: lines in boxes by hand",
    "solid: upright_box": "tests/figures/test_enclosure.py: its corners by hand",
    "stability: stacked_centre_m": "tests/figures/test_fixings.py: a centre of mass by hand",
    "wiring_rules: plug_fits, greatest_device_a": "look-ups in tables that tests/rules/mains tries line by line",
}  # fmt: skip
"""Figures that nothing in tests/outside reaches: where they are held instead."""


def named(listed: Iterable[str]) -> set[tuple[str, str]]:
    return {(line.partition(": ")[0], name) for line in listed for name in line.partition(": ")[2].split(", ")}


def words(tree: ast.AST) -> set[str]:
    found = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    found |= {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    return found | {name.name for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) for name in node.names}


def definitions() -> dict[str, list[tuple[str, ast.stmt]]]:
    """Return what each name of a module of the computing stands for; some modules share a name."""
    found: dict[str, list[tuple[str, ast.stmt]]] = {}
    for path in sorted(FIGURES.glob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                found.setdefault(node.name, []).append((path.stem, node))
            elif isinstance(node, ast.Assign | ast.AnnAssign):
                for target in node.targets if isinstance(node, ast.Assign) else [node.target]:
                    if isinstance(target, ast.Name):
                        found.setdefault(target.id, []).append((path.stem, node))
    return found


def reached(folder: str) -> set[str]:
    """Return the names of the computing that modules of a folder name, with all that these are made of."""
    known = definitions()
    asked = set()
    for path in (ROOT / folder).glob("*.py"):
        asked |= words(ast.parse(path.read_text(encoding="utf-8"))) & known.keys()
    left = list(asked)
    while left:
        made_of = set().union(*(words(node) for _, node in known[left.pop()])) & known.keys()
        left += made_of - asked
        asked |= made_of
    return asked


def public() -> set[tuple[str, str]]:
    return {
        (module, name)
        for name, places in definitions().items()
        for module, node in places
        if isinstance(node, ast.FunctionDef) and not name.startswith("_")
    }


def test_every_figure_has_a_user_or_a_reason() -> None:
    used = reached("roomlint/measure")
    assert {(module, name) for module, name in public() if name not in used} == named(NO_USER)


def test_every_figure_is_held_against_something_outside_or_says_where_else() -> None:
    pinned = reached("tests/outside")
    assert {(module, name) for module, name in public() if name not in pinned} == named(FROM_WITHIN)


def test_where_a_figure_is_held_from_within_it_is_named_there() -> None:
    for line, where in FROM_WITHIN.items():
        for path in re.findall(r"tests/figures/\w+\.py", where):
            there = words(ast.parse((ROOT / path).read_text(encoding="utf-8")))
            assert {name for _, name in named([line])} <= there, path
