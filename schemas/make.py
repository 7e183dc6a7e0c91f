"""Writes the JSON Schemas from the declarations of the elements: `python -m roomlint.schemas.make`."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

from roomlint.design.house import House
from roomlint.design.model import Design
from roomlint.design.parts import described
from roomlint.design.products import ProductSheet

if TYPE_CHECKING:
    from roomlint.design.element import Element

KINDS: dict[str, tuple[type[Element], str]] = {
    "room": (Design, "roomlint room file"),
    "product": (ProductSheet, "roomlint product sheet"),
    "house": (House, "roomlint house file"),
}
_HERE = Path(__file__).parent


def schema(kind: str) -> dict[str, Any]:
    """Return the JSON Schema of a file kind."""
    of, title = KINDS[kind]
    parts: dict[str, Any] = {}
    made = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:roomlint:{kind}",
        "title": title,
        **described(of, of.description(), parts),
    }
    return made | {"$defs": dict(sorted(parts.items()))}


def text(kind: str) -> str:
    """Return the text of a schema file."""
    return json.dumps(schema(kind), indent=2, ensure_ascii=True) + "\n"


if __name__ == "__main__":
    for name in KINDS:
        (_HERE / f"{name}.schema.json").write_text(text(name), encoding="utf-8")
