"""Writes `compiled.py`, the schemas as plain Python checks: `python -m roomlint.schemas.make_compiled`.

A valid file is the common case, and these checks say "valid" without loading jsonschema; only a file that does not pass
is explained by jsonschema. fastjsonschema writes them and is needed for nothing else. It knows drafts up to 7; our
schemas keep to what draft 7 and 2020-12 share, which a test holds by comparing the two on changed files.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

KINDS = ("room", "product", "house")
_HERE = Path(__file__).parent
_HEAD = '''"""The schemas as plain Python checks: written by `python -m roomlint.schemas.make_compiled`."""

# fmt: off
import re


class NotValid(ValueError):
    """The data do not pass the schema; jsonschema tells why."""

'''
_NAMES = re.compile(
    r', custom_formats, \(name_prefix or "data"\) \+ ".*"(?:\.format\(\*\*locals\(\)\))?\)$', re.MULTILINE
)
_REFUSAL = re.compile(r"raise JsonSchemaValueException\(.*\)$", flags=re.MULTILINE)


def compiled() -> str:
    """Return the text of `compiled.py`."""
    parts = [_HEAD, *(_code(kind) for kind in KINDS)]
    names = ", ".join(f"{kind!r}: check_{kind}" for kind in KINDS)
    return "\n".join(parts) + f"\n\nCHECKS = {{{names}}}\n"


def _code(kind: str) -> str:
    from fastjsonschema import compile_to_code

    schema = json.loads((_HERE / f"{kind}.schema.json").read_text(encoding="utf-8"))
    schema["$schema"] = "http://json-schema.org/draft-07/schema#"
    del schema["$id"]
    code: str = compile_to_code(_bare(schema))
    body = code[code.index("REGEX_PATTERNS") :]
    # One refusal for all: what is wrong is told by jsonschema, so the texts here would only cost time and space.
    body = _REFUSAL.sub("raise NotValid", body)
    # Names of the parts are for those texts; gathering them took most of the time of a check.
    body = _NAMES.sub(")", body).replace(", custom_formats={}, name_prefix=None)", ")")
    # The tree holds no Decimal, and the name would need an import.
    body = body.replace(", Decimal)", ")")
    body = body.replace("REGEX_PATTERNS", f"PATTERNS_{kind.upper()}").replace("def validate(", f"def check_{kind}(")
    return body.replace("validate___definitions", f"{kind}").replace("validate_", f"{kind}_")


def _bare(value: object, *, names: bool = False) -> object:
    """Drop what only a reader needs; a key of a `properties` or `$defs` mapping is a name, not a keyword."""
    if isinstance(value, dict):
        drop = frozenset() if names else frozenset({"description", "examples", "quantity", "title"})
        return {
            key: _bare(below, names=not names and key in {"properties", "$defs"})
            for key, below in value.items()
            if key not in drop
        }
    return value


if __name__ == "__main__":
    (_HERE / "compiled.py").write_text(compiled(), encoding="utf-8")
