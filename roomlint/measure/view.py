"""The ground of every view that binds a design to a branch of the figures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.model import Design
    from roomlint.measure import Figures

T = TypeVar("T")


class View:
    """One branch of the figures of one design."""

    def __init__(self, figures: Figures) -> None:
        self.figures = figures
        self.design: Design = figures.design
        self._known: dict[tuple[object, ...], Any] = {}

    def once(self, key: tuple[object, ...], compute: Callable[[], T]) -> T:
        """Compute something the first time it is asked for and remember it; the design never changes."""
        try:
            found: T = self._known[key]
        except KeyError:
            found = self._known[key] = compute()
        return found
