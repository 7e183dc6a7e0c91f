"""An outline that no room can have is told where it is listed, and one that a room can have is read."""

from __future__ import annotations

import pytest

from roomlint.design.read import read_design
from roomlint.source.tree import read_tree

SQUARE = ((0, 0), (4, 0), (4, 3), (0, 3))


def _read(corners: tuple[tuple[float, float], ...]) -> tuple[list[str], int]:
    lines = [f"    - {{from_left: {x} m, from_front: {y} m, wall: w{n}}}" for n, (x, y) in enumerate(corners)]
    text = "\n".join(["roomlint: 1", "room:", "  outline:", *lines, "  ceiling: {shape: flat, height: 2.4 m}", ""])
    node, problems = read_tree(text.encode(), "case.room.yaml")
    assert node is not None
    assert not problems
    design, told = read_design(node, "case.room.yaml", {})
    return [problem.text for problem in told], len(design.shell.corners)


@pytest.mark.parametrize(
    "corners",
    [
        SQUARE,
        SQUARE[::-1],
        ((0, 0), (2, 0), (4, 0), (4, 3), (0, 3)),  # a straight wall in two pieces
        ((0, 0), (4, 0), (4, 3), (2.02, 3), (2.02, 0.02), (2, 0.02), (2, 3), (0, 3)),  # a slender spur
    ],
)
def test_an_outline_that_a_room_can_have_is_read(corners: tuple[tuple[float, float], ...]) -> None:
    assert _read(corners) == ([], len(corners))


@pytest.mark.parametrize(
    ("corners", "word"),
    [
        (((0, 0), (4, 3), (4, 0), (0, 3)), "crosses"),
        (((0, 0), (4, 0), (4, 3), (2, 0), (0, 3)), "touches"),
        (((0, 0), (2, 0), (2, 2), (4, 2), (4, 4), (2, 4), (2, 2), (0, 2)), "list each corner once"),
        (((0, 0), (4, 0), (4, 3), (4, 1), (4.5, 1.5), (0, 3)), "doubles back"),
        (((0, 0), (4, 0), (4, 0), (4, 3), (0, 3)), "no length"),
        (((0, 0), (9, 9), (9, 9.06), (0, 0.06)), "strip"),
    ],
)
def test_an_outline_that_no_room_can_have_is_told(corners: tuple[tuple[float, float], ...], word: str) -> None:
    told, _ = _read(corners)
    assert any(word in text for text in told), told
