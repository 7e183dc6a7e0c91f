"""The list of keys of a file kind: what each means, what belongs there, and an example; read out of its schema."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from roomlint.source.check import load_schema

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

_WORDS = {"integer": "whole number", "boolean": "true or false", "object": "mapping", "array": "list", "string": "text"}


class Listed(NamedTuple):
    """One key."""

    path: str
    """From the top of the file, such as `seats[].ear.height`."""
    about: str
    form: str
    """What belongs there, such as `length`, `one of door, window` or `whole number, 1 to 12`."""
    example: str
    required: bool
    """Whether the mapping it stands in cannot do without it."""
    choices: tuple[str, ...]
    """The words of which it is one, or of which its list is made; empty where any text may stand."""
    dimension: str
    """What kind of quantity it is, such as `length`; empty where it is none."""
    holds: bool
    """Whether it is made of keys of its own."""


def listed(kind: str) -> Iterator[Listed]:
    """Yield every key of a room, a product or a house file, a mapping before what is in it."""
    root = load_schema(kind)
    yield from _below(root, root, "")


def _below(schema: Mapping[str, Any], root: Mapping[str, Any], above: str) -> Iterator[Listed]:
    needed = schema.get("required", ())
    for name, given in schema.get("properties", {}).items():
        own = _resolved(given, root)
        path, many = f"{above}{name}", own
        listed_at = path
        while "items" in many:
            path, many = f"{path}[]", _resolved(many["items"], root)
        yield Listed(
            listed_at,
            str(own.get("description", "")),
            _form(own, root),
            _example(own),
            name in needed,
            tuple(many.get("enum", ())),
            str(own.get("title", "")),
            "properties" in many,
        )
        yield from _below(many, root, f"{path}.")


def _resolved(schema: Mapping[str, Any], root: Mapping[str, Any]) -> dict[str, Any]:
    """Return a schema with what it refers to; its own words stand before those of the shared part."""
    name = str(schema.get("$ref", "")).rpartition("/")[2]
    return {**root["$defs"][name], **schema} if name else dict(schema)


def _form(schema: Mapping[str, Any], root: Mapping[str, Any]) -> str:
    if "enum" in schema:
        return f"one of {', '.join(str(one) for one in schema['enum'])}"
    if "title" in schema:
        words = str(schema["title"]).replace("_", " ")
        return f"{words}, or none" if str(schema["pattern"]).startswith("^none$") else words
    kind = schema.get("type", "object")
    if isinstance(kind, list):
        return "none, or mapping" if "pattern" in schema else "text, or mapping"
    words = _WORDS.get(str(kind), str(kind))
    if kind == "array":
        return f"{words} of {_form(_resolved(schema['items'], root), root)}"
    return f"{words}, {schema['minimum']:g} to {schema['maximum']:g}" if "minimum" in schema else words


def _example(schema: Mapping[str, Any]) -> str:
    example = next(iter(schema.get("examples", ())), "")
    if isinstance(example, list):
        return ", ".join(str(one) for one in example)
    return str(example).lower() if isinstance(example, bool) else str(example)
