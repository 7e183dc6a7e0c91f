"""What people call things: elements by their ids, keys by an installer's words, never by their place in a list."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.review.verdict import Verdict, Wanted

OF_THEIR_KIND: Final = frozenset({
    "circuit", "load", "receptacle", "cable", "rack", "raceway", "amplifier", "listening mode", "setting", "step",
    "treatment", "waiver", "output", "preset", "handover item",
})  # fmt: skip
"""Kinds whose ids alone do not tell what they are: `circuit picture` is not the picture."""
WHOLE: Final = frozenset({"design", "electronics", "project", "room"})
"""Kinds of which a room has one, and which carry its name: the room itself."""
SEAT: Final = "seat"
_KEYS: Final = {
    "fastener": "kind of screw or anchor",
    "mounting": "how mounted",
    "fire_rated": "fire rating",
    "feeds": "circuit",
    "crossover": "crossover",
    "loads": "what is plugged in",
    "into": "what the screws go into",
    "diameter": "diameter of the screws",
    "length": "length",
    "thread": "length of thread",
    "count": "number of screws",
    "top_count": "number of top screws",
    "row_spacing": "distance between top and bottom screws",
    "edge_offset": "how far the screws are off the middle of the stud",
    "grain": "side grain or end grain",
    "wet": "whether the wood gets wet",
    "backing": "what stands behind the board",
    "engineer": "which engineer decided it",
    "secondary": "what holds it when the mount fails",
    "rating": "rating",
    "label": "label",
    "loudspeaker": "loudspeaker data",
    "aim": "where it points",
    "from_left": "from the left",
    "from_right": "from the right",
    "from_front": "from the front",
    "from_rear": "from the rear",
    "height": "height",
    "extension": "reach of the arm",
    "on": "what it is fixed to",
    "product": "product sheet",
    "facing": "which way it faces",
    "id": "name",
    "ear": "position of the ear",
    "lens": "position of the lens",
    "centre": "position of its centre",
    "egress": "whether it is a way out",
    "smoke_alarm": "where its smoke alarm is",
    "controls": "keypads and switches",
    "risers": "platforms",
    "service": "from where its rear is reached",
    "front_clear": "free depth in front",
    "rear_clear": "free depth behind",
    "contrast": "its contrast",
    "ambient": "light on the screen",
    "gfci": "ground-fault protection",
    "afci": "arc-fault protection",
    "over_fire": "whether a fire is below it",
    "penetrates": "what surfaces it passes through",
    "cuts": "holes and notches in the framing",
    "hours_a_week": "hours of listening a week",
    "children": "whether children live there",
    "noise": "what is heard when nothing plays",
    "handover": "records of the handover",
    "finish": "what it is covered with",
}
SAME_KIND: Final = 2
"""So many elements of one kind are told as `left and right`."""
_ON: Final = {"circuit": "on", "opening": "at", "amplifier": "of", "processor": "of"}
"""What stands between the name of an element and that of its circuit, its amplifier, or the opening beside it."""
_WITHOUT: Final = frozenset({"setting"})
"""Kinds of elements that are not named beside another: a loudspeaker's setting carries its id."""
_NEEDS_MORE: Final = frozenset({"height", "length", "rating", "diameter"})
"""Keys that say little without what they are of."""
_PLACES: Final = frozenset({"position", "ear", "centre", "lens"})
_INTO: Final = frozenset({"mounting", "fixing", "position", "electronics"})
"""Parts of an element that the last key says enough without."""


class About(NamedTuple):
    """What a verdict is about, and at which seats."""

    elements: tuple[str, ...]
    """Keys of what is judged, such as `loudspeaker/left`."""
    seats: tuple[str, ...]
    """Keys of the seats that it is judged at; empty where no seat is named, or only seats are judged."""


def about(subject: str) -> About:
    """Return what a verdict's subject is about."""
    if subject.startswith("waiver/"):
        return About((subject,), ())  # what it accepts is part of its name
    # What else is missing of an element carries the key that is missing, and is about the element.
    keys = tuple(key for key in subject.split("+") if not key.startswith("list/"))
    seats = tuple(key for key in keys if key.startswith(f"{SEAT}/"))
    others = tuple(key for key in keys if key not in seats)
    return About(others, seats) if others and seats and keys[-1] in seats else About(keys, ())


class Names:
    """The names of one room's elements."""

    def __init__(self, verdicts: Iterable[Verdict] = ()) -> None:
        kinds: dict[str, set[str]] = {}
        for verdict in verdicts:
            for key in verdict.subject.split("+"):
                kind, _, name = key.partition("/")
                kinds.setdefault(name, set()).add(kind)
        self._shared = {name for name, of in kinds.items() if len(of - WHOLE - OF_THEIR_KIND - {"surface", "list"}) > 1}

    def one(self, key: str) -> str:
        """Return what an element is called, by its key `kind/id`."""
        kind, slash, name = key.partition("/")
        if not slash:
            return one_line(key)
        if kind in WHOLE or not name:
            return "room" if kind in WHOLE else kind
        if kind == "waiver":
            return self._waiver(name)
        if kind == "surface":
            return name if name.endswith("wall") or name in {"ceiling", "floor"} else f"{name} wall"
        told = one_line(name)
        if kind in told.split("-") or (kind not in OF_THEIR_KIND and name not in self._shared) or kind == name:
            return told
        return f"{kind} {told}"

    def _waiver(self, name: str) -> str:
        """Return what a waiver is called, by the rule and the elements that it names."""
        rule, of, subject = name.partition(" for ")
        words = f"waiver for {self.several(subject.split('+'))}" if of else "waiver"
        return f"{words}, {rule_words(rule)}"

    def several(self, keys: Iterable[str]) -> str:
        """Return the names of some elements."""
        return ", ".join(dict.fromkeys(self.one(key) for key in keys))

    def subject(self, verdict: Verdict) -> str:
        """Return the name of what a verdict is about, with the seat that it is judged at."""
        found = about(verdict.subject)
        if not all("/" in key for key in found.elements):
            return one_line(verdict.words)
        name = self.groups([found.elements])
        return f"{name} at {self.several(found.seats)}" if found.seats else name

    def groups(self, subjects: Iterable[tuple[str, ...]]) -> str:
        """Return the names of what several verdicts are about: pairs stay pairs, what is on one circuit is told once.

        `left and right; side-left and side-right`, `rack-socket, floor-socket on circuit old-freezer`.
        """
        where: dict[str, list[str]] = {}
        for elements in subjects:
            kinds = [key.partition("/")[0] for key in elements]
            named = [
                key for key, kind in zip(elements, kinds, strict=True) if len(elements) == 1 or kind not in _WITHOUT
            ]
            end = ""
            if len(named) > 1 and kinds[-1] in _ON and kinds[-1] != kinds[0]:
                end = f" {_ON[kinds[-1]]} {self.one(named.pop())}"
            where.setdefault(end, []).append(
                " and ".join(self.one(key) for key in named) if len(named) == SAME_KIND else self.several(named)
            )
        told = [
            f"{('; ' if any(' and ' in name for name in names) else ', ').join(dict.fromkeys(names))}{end}"
            for end, names in where.items()
        ]
        return "; ".join(told)


def rule_words(rule_id: str) -> str:
    """Return what a rule is about as words: `angle.rear-pair` is `rear pair (angle)`."""
    chapter, _, slug = rule_id.partition(".")
    return one_line(f"{slug.replace('-', ' ')} ({chapter})" if slug else chapter)


def key_words(key: str) -> str:
    """Return a key as an installer would say it: `mounting.fixing.top_count` is `top count of the fixing`."""
    parts = [re.sub(r"\[\d*\]", "", part) for part in key.split(".") if part]
    if not parts:
        return ""
    last = parts[-1]
    if last in _KEYS and last not in _NEEDS_MORE:
        words = _KEYS[last]
        return f"how far {words}" if words.startswith("from") else words
    words = _KEYS.get(last) or last.replace("_", " ")
    above = [part for part in parts[:-1] if part not in _INTO]
    if above and above[-1] != last:
        return f"{words} of the {above[-1].replace('_', ' ')}" if above[-1] not in _PLACES else words
    return words


def wanted_words(wanted: Wanted) -> str:
    """Return a key that is missing in those words.

    The sheet of a mount is not that of what hangs on it, and what an amplifier feeds is no circuit.
    """
    if wanted.path.endswith("mounting.product"):
        return "sheet of its mount"
    if wanted.key.endswith("feeds") and "loads" not in wanted.path:
        return "what its outputs drive"
    return key_words(wanted.key)


def reading_words(name: str, key: str) -> str:
    """Return a reading as a person with a tape says it: `sofa-right, from the front`."""
    above, _, last = key.rpartition(".")
    words = _KEYS.get(last) or key_words(key)
    if above.rpartition(".")[2] == "size":
        return f"room, {last}"
    return ", ".join(part for part in (one_line(name), words) if part)
