"""The ground of every view that binds a design to a branch of the figures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

from roomlint.measure.figure import Figure

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable

    from roomlint.design.model import Design
    from roomlint.measure import Figures
    from roomlint.measure.world import World

T = TypeVar("T")


class View:
    """One branch of the figures of one design.

    A method that returns a `Figure` binds a function of a world, which reads the design's quantities through it; the
    world as read makes the value, moved ones the uncertainty and the remedies.
    """

    def __init__(self, figures: Figures) -> None:
        self.figures = figures
        self.design: Design = figures.design
        self.world: World = figures.world
        self._known: dict[Hashable, Any] = {}

    def figure(
        self, name: str, unit: str, compute: Callable[[World], float], *key: Hashable, per_m: float | None = None
    ) -> Figure:
        """Return a figure; with a key, made once and remembered under its name and that key.

        `per_m` as for `Figure.of`: what no length moves it by more than, a metre.
        """
        if not key:
            return Figure.of(name, unit, self.world, compute, per_m)
        return self.once((name, *key), lambda: Figure.of(name, unit, self.world, compute, per_m))

    def once(self, key: Hashable, compute: Callable[[], T]) -> T:
        """Compute something the first time it is asked for and remember it; the design never changes."""
        try:
            found: T = self._known[key]
        except KeyError:
            found = self._known[key] = compute()
        return found
