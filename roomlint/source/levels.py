"""Where a key belongs that stands at the wrong level, read out of the schema of its file kind."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

_DEEPEST = 4
"""So many levels below a key is looked for; what is deeper is another matter."""


class _Found(NamedTuple):
    """Where a key is known: the way there from the mapping that was looked in, and whether a list is on it."""

    way: tuple[str, ...]
    listed: bool


def belongs(key: str, steps: Iterable[str | int], root: Mapping[str, Any]) -> str:
    """Return where a key belongs that is unknown in the mapping at `steps`, such as `under size`; empty if nowhere.

    Looked for below through mappings, then above, then below through lists.
    """
    above = list(_schemas_down_to(list(steps), root))
    here = above[-1][1] if above else root
    below = sorted(_below(key, here, root), key=lambda one: (one.listed, len(one.way)))
    if below and not below[0].listed:
        return _under(below)
    for name, schema in reversed(above[:-1]):
        if key in schema.get("properties", {}):
            return f"beside {name}" if name else "at the top of the file"
    return _under(below) if below else ""


def _under(found: list[_Found]) -> str:
    """Return the nearest places, all of one depth."""
    nearest = [one for one in found if (one.listed, len(one.way)) == (found[0].listed, len(found[0].way))]
    return "under " + " or ".join(dict.fromkeys(".".join(one.way) for one in nearest))


def _schemas_down_to(steps: list[str | int], root: Mapping[str, Any]) -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Yield each mapping's schema on the way down to the one at `steps`, with the key that leads further down.

    The last one's key is empty, and so is that of the top.
    """
    schema: Mapping[str, Any] = _resolved(root, root)
    inner = [str(step) for step in steps if isinstance(step, str)]
    for step in steps:
        if isinstance(step, int):
            schema = _resolved(schema.get("items", {}), root)
            continue
        yield inner[0] if inner else "", schema
        inner = inner[1:]
        schema = _resolved(schema.get("properties", {}).get(step, {}), root)
    yield "", schema


def _below(key: str, schema: Mapping[str, Any], root: Mapping[str, Any], depth: int = 1) -> Iterator[_Found]:
    """Yield the ways to mappings below one that know the key."""
    if depth > _DEEPEST:
        return
    for name, given in schema.get("properties", {}).items():
        inner, listed = _resolved(given, root), False
        while "items" in inner:
            inner, listed = _resolved(inner["items"], root), True
        if key in inner.get("properties", {}):
            yield _Found((name,), listed)
        for way, more in _below(key, inner, root, depth + 1):
            yield _Found((name, *way), listed or more)


def _resolved(schema: Mapping[str, Any], root: Mapping[str, Any]) -> Mapping[str, Any]:
    name = str(schema.get("$ref", "")).rpartition("/")[2]
    return root["$defs"][name] if name else schema
