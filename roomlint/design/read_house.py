"""Reads a house file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.house import Decision, House, WindowRule

if TYPE_CHECKING:
    from roomlint.design.reader import Reader


def read_house(root: Reader) -> House:
    """Return the standing decisions of a checked house file."""
    decisions: dict[str, Decision] = {}
    for reader in root.each("decisions"):
        rule = reader.text("rule") or ""
        if rule in decisions:
            first = decisions[rule].place.line
            root.book.tell(reader.node, f"rule {rule!r} is decided twice; the first is on line {first}.")
            continue
        decisions[rule] = Decision(
            at=reader.node,
            id=rule,
            low=reader.text("low"),
            high=reader.text("high"),
            level=reader.text("level"),
            because=reader.text("because"),
        )
    return House(
        file=root.book.file,
        at=root.node,
        title=root.text("title") or "",
        products=root.texts("products"),
        gate=root.text("gate"),
        gates=_by_stage(root, "gates"),
        opens=_by_stage(root, "open"),
        required=_chapters(root),
        decisions=decisions,
        window_rules=tuple(_window_rule(reader) for reader in root.each("window_rules")),
    )


def _by_stage(root: Reader, key: str) -> dict[str, str]:
    reader = root.below(key)
    return {stage: str(node.value) for stage, node in reader.node.value.items()} if reader is not None else {}


def _chapters(root: Reader) -> dict[str, tuple[str, ...]]:
    reader = root.below("required_chapters")
    return {stage: reader.texts(stage) for stage in reader.node.value} if reader is not None else {}


def _window_rule(reader: Reader) -> WindowRule:
    return WindowRule(
        at=reader.node,
        id=reader.text("id") or "",
        title=reader.text("title") or "",
        figure=reader.text("figure") or "",
        each=_plain(reader, "each"),
        low=reader.text("low"),
        high=reader.text("high"),
        level=reader.text("level") or "warning",
        basis=_plain(reader, "basis"),
        message=reader.text("message") or "",
        caution=reader.text("caution") or "",
        examples=tuple(dict(below.node.plain()) for below in reader.each("examples")),
    )


def _plain(reader: Reader, key: str) -> dict[str, object]:
    node = reader.at(key)
    return dict(node.plain()) if node is not None else {}
