"""The house: data runs one way, so a module imports only from its left."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
MAY_IMPORT = {
    "source": {"schemas"},
    "design": {"source"},
    "figures": set(),
    "measure": {"source", "design", "figures"},
    "review": {"source", "design", "figures", "measure"},
    "report": {"source", "design", "measure", "review"},
    "start": {"source", "design", "figures"},
    "rules": {"design", "review"},  # and, for types alone, measure
}
# Polygons, how they are cut, and ceilings over them: the reading of a room and its figures both stand on these.
GROUND = {"plane", "cutting", "roof", "refused"}
FILES = {
    path: folder
    for folder in MAY_IMPORT
    for path in sorted((ROOT / ("rules" if folder == "rules" else f"roomlint/{folder}")).rglob("*.py"))
}


class _Runs(ast.NodeTransformer):
    """Takes out what is imported for types alone."""

    def visit_If(self, node: ast.If) -> ast.AST | None:
        return None if ast.unparse(node.test) == "TYPE_CHECKING" else self.generic_visit(node)


def parsed(path: Path, *, for_types: bool = True) -> ast.AST:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return tree if for_types else _Runs().visit(tree)


def imported(path: Path, *, for_types: bool = True) -> set[str]:
    """Names of the parts of roomlint that a module imports, anywhere in it; for types too unless told otherwise."""
    parts = set()
    for node in ast.walk(parsed(path, for_types=for_types)):
        names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom) and node.module:
            # `from roomlint import plane` names a part just as `from roomlint.plane import ...` does.
            whole = node.module == "roomlint"
            names = [f"roomlint.{alias.name}" for alias in node.names] if whole else [node.module]
            names = [name for name in names if not name.endswith("__")]
        parts |= {name.split(".")[1] for name in names if name.startswith("roomlint.")}
    return parts


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_module_imports_only_from_its_left(path: Path) -> None:
    own = FILES[path]
    for_types = {"measure", "source"} if own == "rules" else set()  # what a rule runs is held below
    assert imported(path) <= MAY_IMPORT[own] | {own} | GROUND | for_types


def test_the_ground_imports_nothing_of_ours_but_ground() -> None:
    for name in GROUND:
        assert imported(ROOT / "roomlint" / f"{name}.py") <= GROUND


def test_every_chapter_is_looked_at() -> None:
    seen = {path.parent.name for path, folder in FILES.items() if folder == "rules"}
    assert {"aim", "angle", "bass", "boundary", "distance", "file", "layout", "mains", "mount"} <= seen


@pytest.mark.parametrize(
    "path", [path for path in FILES if FILES[path] == "rules"], ids=lambda path: str(path.relative_to(ROOT))
)
def test_rules_load_nothing_but_the_protocol(path: Path) -> None:
    assert imported(path, for_types=False) <= MAY_IMPORT["rules"] | {"rules"}


@pytest.mark.parametrize(
    "path", [path for path in FILES if FILES[path] != "source"], ids=lambda path: str(path.relative_to(ROOT))
)
def test_only_the_command_line_prints_or_exits(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"\bprint\(|sys\.exit\(|click\.", text)


def test_nothing_promises_freedom_from_harm() -> None:
    """No text that the program can print holds the word, whatever it is said of."""
    for path in [*FILES, *(ROOT / "roomlint").glob("*.py")]:
        strings = [
            # A setting of git, by its name, and the very pattern that refuses the word in a rule.
            node.value.replace("safe.bareRepository", "").replace(r"\b(un)?safe(ly)?\b", "")
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
            if isinstance(node, ast.Constant) and isinstance(node.value, str)
        ]
        assert not any(re.search(r"\b(un)?safe(ly)?\b", text, re.IGNORECASE) for text in strings), path
