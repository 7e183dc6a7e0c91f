"""Checks a tree against the JSON Schema of its file kind and says, at the exact key or value, what is wrong.

The common case is a valid file: the compiled checks say so without loading jsonschema. jsonschema is asked only to
explain a file that does not pass.
"""

from __future__ import annotations

import json
import re
from functools import cache
from importlib.resources import files
from itertools import islice
from typing import TYPE_CHECKING, Any

from roomlint.source.place import Problem
from roomlint.source.say import kind_of, nearest, shorten

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from jsonschema.exceptions import ValidationError

    from roomlint.source.tree import Node

MOST_PROBLEMS = 100
"""A file with more mistakes than this is the wrong file; the rest is not listed."""
_MOST_ERRORS = 1000
_LISTED = 12


def check(node: Node, schema_name: str) -> list[Problem]:
    """Return every way in which a tree breaks the schema of a room, a product or a house file, in file order."""
    from roomlint.schemas.compiled import CHECKS, NotValid

    data = node.plain()
    try:
        CHECKS[schema_name](data)
    except NotValid:
        return explain(node, data, load_schema(schema_name))
    return []


@cache
def load_schema(name: str) -> Mapping[str, Any]:
    """Return the JSON Schema of a file kind."""
    schema: dict[str, Any] = json.loads((files("roomlint.schemas") / f"{name}.schema.json").read_text(encoding="utf-8"))
    return schema


def explain(node: Node, data: object, schema: Mapping[str, Any]) -> list[Problem]:
    """Return what is wrong with a tree as jsonschema finds it, each told at its place."""
    problems: dict[Problem, None] = {}
    for error in islice(_validator()(schema).iter_errors(data), _MOST_ERRORS):
        problems.update(dict.fromkeys(_told(node, error)))
    found = sorted(problems)
    if len(found) > MOST_PROBLEMS:
        rest = len(found) - MOST_PROBLEMS
        found = [
            *found[:MOST_PROBLEMS],
            Problem(node.place, f"and at least {rest} more mistakes; is this the right file?"),
        ]
    return found


@cache
def _validator() -> Any:  # noqa: ANN401 (jsonschema builds the class at run time)
    from jsonschema import Draft202012Validator, ValidationError, validators

    def pattern(_: object, wanted: str, instance: object, __: object) -> Iterator[ValidationError]:
        # JSON Schema's `$` is the end of the text; Python's also stands before a last line break.
        if isinstance(instance, str) and re.search(re.sub(r"(?<!\\)\$$", r"\\Z", wanted), instance) is None:
            yield ValidationError(f"{instance!r} does not match {wanted!r}")

    return validators.extend(Draft202012Validator, {"pattern": pattern})  # type: ignore[no-untyped-call]


def _told(root: Node, error: ValidationError) -> list[Problem]:
    node = root
    for step in error.absolute_path:
        node = node.value[step]
    tell = _TELL.get(str(error.validator))
    if tell is None:
        return [Problem(node.place, f"{node.path or 'the file'}: {shorten(error.message, 200)}.")]
    return [Problem(place, text) for place, text in tell(node, error)]


def _unknown_keys(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    known = list(error.schema.get("properties", {}))  # type: ignore[union-attr]
    told = []
    unknown = ((key, child) for key, child in node.value.items() if key not in known)
    for key, child in islice(unknown, MOST_PROBLEMS + 1):
        close = nearest(key, known)
        listed = ", ".join(known[:_LISTED]) + (" ..." if len(known) > _LISTED else "")
        hint = f"did you mean {close!r}?" if close else f"known keys: {listed}."
        told.append((child.key_place or child.place, f"unknown key {shorten(key)!r}; {hint}"))
    return told


def _missing_key(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    told = []
    for key in _listed(error):
        if key not in node.value:
            known = error.schema["properties"][key]  # type: ignore[index]
            what = str(known.get("description", "")).rstrip(".")
            told.append((node.place, f"{node.path or 'the file'} needs the key {key!r}{f' ({what})' if what else ''}."))
    return told


def _wrong_type(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    schema: Mapping[str, Any] = error.schema  # type: ignore[assignment]
    name = node.path or "the file"
    example = (schema.get("examples") or [""])[0]
    number = isinstance(node.value, (int, float)) and not isinstance(node.value, bool)
    if "quantity" in schema and number:
        text = f"{name} is {node.value!r} without a unit; write the unit too, such as {example!r}."
        return [(node.place, text)]
    wanted = _WORDS.get(str(error.validator_value), str(error.validator_value))
    if "quantity" in schema:
        wanted = f"{wanted} with its unit"
    hint = f", such as {example!r}" if example != "" and wanted != "a mapping" else ""
    found = kind_of(node.value)
    shown = (
        f" {shorten(str(node.value))!r}" if not isinstance(node.value, (dict, list)) and node.value is not None else ""
    )
    if isinstance(example, bool):
        hint = "; write true or false"
    return [(node.place, f"{name} is {found}{shown}, but {wanted} belongs here{hint}.")]


def _not_listed(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    if error.schema.get("type") == "string" and not isinstance(node.value, str):  # type: ignore[union-attr]
        return []  # the wrong type is told of already
    allowed = [str(value) for value in _listed(error)]
    value = str(node.value)
    close = nearest(value, allowed)
    hint = f"did you mean {close!r}?" if close else f"allowed: {', '.join(allowed)}."
    return [(node.place, f"{node.path}: {shorten(value)!r} is not known; {hint}")]


def _wrong_form(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    schema: Mapping[str, Any] = error.schema  # type: ignore[assignment]
    example = ", ".join(repr(value) for value in schema.get("examples", []))
    what = str(schema.get("description", "")).rstrip(".")
    name = node.path.rpartition(".")[2]
    return [
        (node.place, f"{name} {shorten(str(node.value))!r} does not have the form wanted ({what}); such as {example}.")
    ]


def _out_of_range(node: Node, error: ValidationError) -> list[tuple[Any, str]]:
    words = {
        "minimum": "at least {}", "maximum": "at most {}",
        "minItems": "at least {} items", "maxItems": "at most {} items",
        "minLength": "at least {} character", "maxLength": "at most {} characters",
    }[str(error.validator)].format(error.validator_value)  # fmt: skip
    many = isinstance(node.value, (dict, list))
    shown = f"has {len(node.value)}" if many else f"is {shorten(str(node.value))!r}"
    return [(node.place, f"{node.path or 'the file'} {shown}; expected {words}.")]


def _listed(error: ValidationError) -> list[Any]:
    """Return the list that the schema's keyword gives."""
    value = error.validator_value
    return value if isinstance(value, list) else []


_WORDS = {
    "string": "text", "object": "a mapping", "array": "a list", "integer": "a whole number", "number": "a number",
    "boolean": "true or false",
}  # fmt: skip
_TELL = {
    "additionalProperties": _unknown_keys,
    "required": _missing_key,
    "type": _wrong_type,
    "enum": _not_listed,
    "pattern": _wrong_form,
    "minimum": _out_of_range,
    "maximum": _out_of_range,
    "minItems": _out_of_range,
    "maxItems": _out_of_range,
    "minLength": _out_of_range,
    "maxLength": _out_of_range,
}
