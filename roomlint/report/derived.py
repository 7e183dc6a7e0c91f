"""Tells what was worked out of what a file says: no height, place or size that nobody wrote is used in silence."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.report.names import key_words
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.report.units import Units
    from roomlint.review.review import WorkedOut

_WAYS: Final = {
    "ceiling": "{}, under the ceiling",
    "pair": "{}, mirrored",
    "row": "{}, along the row",
    "riser": "{}, from what it stands on",
    "diagonal": "{}, from the diagonal",
    "wall": "{}, along the wall",
}
"""How each way of working something out is told; the names and values stand in the braces."""
_KEYS: Final = {
    "position": "from the left", "ear": "from the left", "from_wall_left": "from its left end", "from_left":
    "from the left", "from_front": "from the front", "position.height": "up", "ear.height": "ear up",
    "riser": "riser", "width": "wide", "height": "high",
}  # fmt: skip
MOST: Final = 4


def worked_out(worked: Iterable[WorkedOut], units: Units, *, most: int | None = MOST) -> str:
    """Return what was worked out, by how, as one line; empty when nothing was. `most` names are told each way."""
    ways: dict[str, dict[str, list[str]]] = {}
    for one in worked:
        value, key = units.number(one.figure.value, one.figure.unit), _KEYS.get(one.key, key_words(one.key))
        said = f"riser of {value}" if key == "riser" else f"{value} {key}"
        ways.setdefault(one.way, {}).setdefault(one_line(one.words), []).append(said)
    told = []
    for way, names in ways.items():
        alike: dict[str, list[str]] = {}
        for name, said_of in names.items():
            alike.setdefault(" and ".join(said_of), []).append(name)
        items = [f"{', '.join(of)} {said}" for said, of in alike.items()]
        listed = ", ".join(items[:most]) + (f" and {len(items) - most} more" if most and len(items) > most else "")
        told.append(_WAYS.get(way, "{}").format(listed))
    return "; ".join(told)
