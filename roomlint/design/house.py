"""The house file: a team's standing decisions."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.source.tree import Node


@dataclass(frozen=True, slots=True)
class Decision(Element):
    """What the house decided about one rule."""

    KIND: ClassVar[str] = "decision"

    low: str | None = None
    """Quantity as text; the rule's window says which unit it must fit."""
    high: str | None = None
    level: str | None = None
    because: str | None = None

    @property
    def sets_window(self) -> bool:
        """Whether it replaces the rule's window."""
        return self.low is not None or self.high is not None


@dataclass(frozen=True, slots=True)
class WindowRule(Element):
    """A rule as data: one figure against one window."""

    KIND: ClassVar[str] = "window rule"

    title: str = ""
    figure: str = ""
    each: Mapping[str, object] = field(default_factory=dict)
    low: str | None = None
    high: str | None = None
    level: str = "warning"
    basis: Mapping[str, object] = field(default_factory=dict)
    message: str = ""
    caution: str = ""
    examples: tuple[Mapping[str, object], ...] = ()


@dataclass(frozen=True, slots=True)
class House:
    """The team's standing decisions; an empty one when there is no house file."""

    file: str = ""
    at: Node | None = None
    title: str = ""
    products: tuple[str, ...] = ()
    """Folders of product sheets, relative to the house file."""
    gate: str | None = None
    gates: Mapping[str, str] = field(default_factory=dict)
    """Stage to gate."""
    opens: Mapping[str, str] = field(default_factory=dict)
    """Stage to the level that an open verdict counts as."""
    required: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Stage to the chapters that may not be left out."""
    decisions: Mapping[str, Decision] = field(default_factory=dict)
    """Rule id to decision."""
    window_rules: tuple[WindowRule, ...] = ()
