"""The house: data runs one way, so a module imports only from its left."""

from __future__ import annotations

import ast
import re
from pathlib import Path

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


def name(path: Path) -> str:
    return str(path.relative_to(ROOT))


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
            names = [one for one in names if not one.endswith("__")]
        parts |= {one.split(".")[1] for one in names if one.startswith("roomlint.")}
    return parts


def test_module_imports_only_from_its_left() -> None:
    wrong = {}
    for path, own in FILES.items():
        for_types = {"measure", "source"} if own == "rules" else set()  # what a rule runs is held below
        wrong[name(path)] = imported(path) - (MAY_IMPORT[own] | {own} | GROUND | for_types)
    assert {path: parts for path, parts in wrong.items() if parts} == {}


def test_the_ground_imports_nothing_of_ours_but_ground() -> None:
    for part in GROUND:
        assert imported(ROOT / "roomlint" / f"{part}.py") <= GROUND


def test_every_chapter_is_looked_at() -> None:
    seen = {path.parent.name for path, folder in FILES.items() if folder == "rules"}
    assert {"aim", "angle", "bass", "boundary", "distance", "file", "layout", "mains", "mount"} <= seen


def test_rules_load_nothing_but_the_protocol() -> None:
    rules = [path for path, folder in FILES.items() if folder == "rules"]
    loaded = {name(path): imported(path, for_types=False) - (MAY_IMPORT["rules"] | {"rules"}) for path in rules}
    assert {path: parts for path, parts in loaded.items() if parts} == {}


def test_only_the_command_line_prints_or_exits() -> None:
    others = [path for path, folder in FILES.items() if folder != "source"]
    said = re.compile(r"\bprint\(|sys\.exit\(|click\.")
    assert [name(path) for path in others if said.search(path.read_text(encoding="utf-8"))] == []


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
