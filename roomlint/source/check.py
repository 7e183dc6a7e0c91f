"""Says, at the exact key or value, how a tree breaks the JSON Schema of its file kind.

The common case is a file whose structure is right: the reader sees that by itself, without loading jsonschema or the
schema. jsonschema is asked only to explain one that is not.
"""

from __future__ import annotations

import json
import re
from functools import cache
from itertools import islice
from typing import TYPE_CHECKING, Any, TypeAlias

from roomlint.source.dimensions import DIMENSIONS
from roomlint.source.levels import belongs
from roomlint.source.place import Problem
from roomlint.source.say import is_customary, kind_of, nearest, shorten
from roomlint.source.spellings import no_label, right_layout

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from jsonschema.exceptions import ValidationError

    from roomlint.source.node import Node

    _Schema: TypeAlias = Mapping[str, Any]

FORM_KEYS = ("roomlint", "roomlint_product", "roomlint_house")
"""The keys that number a file's form: the number rises when the same text would come to mean something else."""
MOST_PROBLEMS = 100
"""A file with more mistakes than this is the wrong file; the rest is not listed."""
_MOST_ERRORS = 1000
_LISTED = 12
_FAR = 31.0
"""So long no room is, in metres; few are in feet."""
_YES_OR_NO = {"yes": "true", "y": "true", "on": "true", "no": "false", "n": "false", "off": "false"}
_NAMED = 3
"""So many keys of a mapping are named to whoever wrote a word in its place."""


@cache
def load_schema(name: str) -> Mapping[str, Any]:
    """Return the JSON Schema of a file kind."""
    from importlib.resources import files

    schema: dict[str, Any] = json.loads((files("roomlint.schemas") / f"{name}.schema.json").read_text(encoding="utf-8"))
    return schema


def explain(node: Node, data: object, schema: Mapping[str, Any], told: Iterable[Problem] = ()) -> list[Problem]:
    """Return what is wrong with a tree as jsonschema finds it, each told at its place, and what is told already.

    A quantity that is text is left out: what is wrong with it, its own parser tells better.
    """
    problems: dict[Problem, None] = dict.fromkeys(told)
    for error in islice(_validator()(schema).iter_errors(data), _MOST_ERRORS):
        problems.update(dict.fromkeys(_told(node, error, schema)))
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


def _told(root: Node, error: ValidationError, schema: Mapping[str, Any]) -> list[Problem]:
    node = root
    for step in error.absolute_path:
        node = node.value[step]
    if error.validator == "type":
        return [Problem(node.place, _respelled(node, error) or _wrong_type(node, error, root))]
    tell = _TELL.get(str(error.validator))
    if tell is None:
        return [Problem(node.place, f"{node.path or 'the file'}: {shorten(error.message, 200)}.")]
    return [Problem(place, text) for place, text in tell(node, error, schema)]


def _unknown_keys(node: Node, error: ValidationError, root: _Schema) -> list[tuple[Any, str]]:
    known = list(error.schema.get("properties", {}))  # type: ignore[union-attr]
    told = []
    unknown = ((key, child) for key, child in node.value.items() if key not in known)
    for key, child in islice(unknown, MOST_PROBLEMS + 1):
        many = next((name for name in (f"{key}s", key.removesuffix("s")) if name in known), "")
        where = belongs(key, error.absolute_path, root) if key != "id" and not many else ""
        close = None if where else many or nearest(key, known) or _begun(key, known)
        listed = ", ".join(known[:_LISTED]) + (" ..." if len(known) > _LISTED else "")
        text = f"unknown key {shorten(key)!r}; {f'did you mean {close!r}?' if close else f'known keys: {listed}.'}"
        if where and not close:
            text = f"{shorten(key)!r} belongs {where}, not here."
        told.append((child.key_place or child.place, text))
    return told


def _begun(key: str, known: list[str]) -> str | None:
    """Return the only known key that begins so, as `diameter` does with `dia`."""
    found = [name for name in known if name.startswith(key)]
    return found[0] if len(found) == 1 else None


def _missing_key(node: Node, error: ValidationError, _: _Schema) -> list[tuple[Any, str]]:
    told = []
    for key in _listed(error):
        if key not in node.value:
            known = error.schema["properties"][key]  # type: ignore[index]
            what = str(known.get("description", "")).rstrip(".")
            choices = known.get("enum")
            what += f"; one of {', '.join(str(one) for one in choices)}" if choices and len(choices) > 1 else ""
            told.append((node.place, f"{_named(node)} needs the key {key!r}{f' ({what})' if what else ''}."))
    return told


def _wrong_type(node: Node, error: ValidationError, root: Node) -> str:
    schema: Mapping[str, Any] = error.schema  # type: ignore[assignment]
    name = _named(node)
    dimension = DIMENSIONS.get(str(schema.get("title")))
    example = (schema.get("examples") or [""])[0]
    if dimension is not None:
        example = dimension.customary if is_customary(root) else dimension.example
    number = isinstance(node.value, (int, float)) and not isinstance(node.value, bool)
    if dimension is not None and number:
        if dimension is DIMENSIONS["length"] and isinstance(node.value, int | float) and node.value > 0:
            units = ("ft", "in") if is_customary(root) else ("m", "mm")
            likely = [f"'{node.value:g} {unit}'" for unit in _likely(node.value, units)]
            return f"{name} is {node.value!r} without a unit; write the unit too: {' or '.join(likely)}."
        number_too = f"{node.value:g} {example.partition(' ')[2]}".rstrip()
        return f"{name} is {node.value!r} without a unit; write the unit too: {number_too!r}."
    kinds = error.validator_value if isinstance(error.validator_value, list) else [error.validator_value]
    words = _WORDS | ({"string": "none"} if len(kinds) > 1 and "pattern" in schema else {})
    wanted = " or ".join(words.get(str(kind), str(kind)) for kind in kinds)
    if dimension is not None:
        wanted = f"{wanted} with its unit"
    hint = f", such as {example!r}" if example != "" and "mapping" not in wanted else ""
    if "object" in kinds and (keys := schema.get("properties")):
        hint = f": {{{', '.join(f'{key}: ...' for key in list(keys)[:_NAMED])}}}"
    found = kind_of(node.value)
    shown = (
        f" {shorten(str(node.value))!r}" if not isinstance(node.value, (dict, list)) and node.value is not None else ""
    )
    if number and "string" in kinds and dimension is None:
        hint += f'; a number alone stands in quotes: "{node.value}"'
    if isinstance(example, bool):
        meant = _YES_OR_NO.get(str(node.value).casefold(), "true or false")
        hint = f"; write {meant}"
    if kinds[-1] == "array" and isinstance(node.value, dict):
        hint = "; begin it with '- '"
    return f"{name} is {found}{shown}, but {wanted} belongs here{hint}."


def _likely(number: float, units: tuple[str, str]) -> tuple[str, ...]:
    """Return the units that somebody may mean who writes a length without one; of large numbers the small one."""
    if number >= _FAR:
        return units[1:]
    return units if units[0] == "ft" else units[:1]


def _named(node: Node) -> str:
    """Return what a key is called: the place in a list is told by the line, not by a number that nobody counts."""
    return re.sub(r"\[[0-9]+\]\.", ".", node.path) or "the file"


def _not_listed(node: Node, error: ValidationError, _: _Schema) -> list[tuple[Any, str]]:
    if error.schema.get("type") == "string" and not isinstance(node.value, str):  # type: ignore[union-attr]
        return []  # the wrong type is told of already
    allowed = [str(value) for value in _listed(error)]
    value = str(node.value)
    close = nearest(value, allowed)
    hint = f"did you mean {close!r}? " if close else ""
    return [(node.place, f"{_named(node)}: {shorten(value)!r} is not known; {hint}allowed: {', '.join(allowed)}.")]


def _wrong_form(node: Node, error: ValidationError, _: _Schema) -> list[tuple[Any, str]]:
    schema: Mapping[str, Any] = error.schema  # type: ignore[assignment]
    if "title" in schema:
        return []  # a quantity
    spelled = _respelled(node, error)
    if spelled:
        return [(node.place, spelled)]
    if isinstance(schema.get("type"), list):
        if "array" in schema["type"]:
            return [(node.place, f"{node.path}: {shorten(str(node.value))!r} is no list; write none, or a list.")]
        keys = ", ".join(schema.get("required", schema.get("properties", {})))
        text = f"{node.path}: {shorten(str(node.value))!r} says nothing that can be checked; write none, or a mapping"
        return [(node.place, f"{text} with {keys}.")]
    example = ", ".join(repr(value) for value in schema.get("examples", []))
    what = str(schema.get("description", "")).rstrip(".")
    name = node.path.rpartition(".")[2]
    if schema.get("pattern") == load_schema("room")["$defs"]["id"]["pattern"]:
        meant = re.sub(r"[^a-z0-9]+", "-", str(node.value).casefold()).strip("-")[:63]
        hint = f"write {meant!r}" if meant else f"such as {example}"
        said = f"{name} {shorten(str(node.value))!r} is not made of small letters, digits and dashes alone; {hint}."
        return [(node.place, said)]
    return [
        (node.place, f"{name} {shorten(str(node.value))!r} does not have the form wanted ({what}); such as {example}.")
    ]


def _respelled(node: Node, error: ValidationError) -> str:
    """Return the right name for a channel or a layout that is written as people say it; empty for anything else."""
    parts, form = load_schema("room")["$defs"], error.schema.get("pattern")  # type: ignore[union-attr]
    if isinstance(node.value, bool) or not isinstance(node.value, str | int | float):
        return ""
    typed, said = str(node.value), shorten(str(node.value))
    if form == parts["label"]["pattern"]:
        return f"{node.path.rpartition('.')[2].partition('[')[0]} {said!r} is {no_label(typed)}"
    if form == parts["layout"]["pattern"] and (name := right_layout(typed)):
        return f"a layout of ITU-R BS.2051 is upper + middle + bottom, so {said!r} is {name}; LFE is not counted."
    return ""


def _out_of_range(node: Node, error: ValidationError, _: _Schema) -> list[tuple[Any, str]]:
    words = {
        "minimum": "at least {}", "maximum": "at most {}",
        "minItems": "at least {} items", "maxItems": "at most {} items",
        "minLength": "at least {} character", "maxLength": "at most {} characters",
    }[str(error.validator)].format(error.validator_value)  # fmt: skip
    if node.path in FORM_KEYS and error.validator == "maximum":
        text = f"{node.path} is {node.value}, the form of a later roomlint; this one reads {error.validator_value}."
        return [(node.place, f"{text} Install a newer one.")]
    many = isinstance(node.value, (dict, list))
    shown = f"has {len(node.value)}" if many else f"is {shorten(str(node.value))!r}"
    return [(node.place, f"{_named(node)} {shown}; expected {words}.")]


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
    "enum": _not_listed,
    "pattern": _wrong_form,
    "minimum": _out_of_range,
    "maximum": _out_of_range,
    "minItems": _out_of_range,
    "maxItems": _out_of_range,
    "minLength": _out_of_range,
    "maxLength": _out_of_range,
}
