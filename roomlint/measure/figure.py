"""A figure: a computed quantity with its unit, its uncertainty and the readings that it rests on."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.quantity import Origin, Quantity, Share
from roomlint.figures.domain import Refused
from roomlint.measure.world import Moved, World

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    from roomlint.design.quantity import Reading

FULL_TURN_DEG = 360.0


class NoNumberError(ArithmeticError):
    """A figure came out infinite or as no number at all: a fault of the program, never a pass."""


class Figure:
    """A quantity computed of a design.

    Its value is computed at once, its uncertainty when somebody asks: most figures are far from any limit.
    """

    __slots__ = (
        "_ask", "_compute", "_like", "_one_sided", "_per_m", "_rough", "_shares", "_u", "_world",
        "assumes", "name", "readings", "unit", "value",
    )  # fmt: skip

    def __init__(  # noqa: PLR0913  only the makers below call it
        self,
        name: str,
        unit: str,
        value: float,
        *,
        readings: tuple[Reading, ...] = (),
        assumes: tuple[str, ...] = (),
        compute: Callable[[World], float] | None = None,
        world: World | None = None,
        shares: tuple[Share, ...] | None = None,
        ask: Callable[[], Iterable[Share]] | None = None,
        u: float | None = None,
        per_m: float | None = None,
    ) -> None:
        """Make one by one of `of`, `plain` or `many`; no figure is infinite or no number at all."""
        if not math.isfinite(value):
            raise NoNumberError(f"{name} came out as {value}")
        self.name = name
        self.unit = unit
        self.value = value
        self.readings = readings
        self.assumes = assumes
        self._compute = compute
        self._world = world
        self._shares = shares
        self._ask = ask
        self._u = u
        self._per_m = per_m
        self._one_sided: tuple[Reading, ...] = ()
        self._rough: float | None = None
        self._like: Figure | None = None

    @classmethod
    def of(
        cls, name: str, unit: str, world: World, compute: Callable[[World], float], per_m: float | None = None
    ) -> Figure:
        """Return a figure that is a function of a world.

        `per_m`: no reading of a length moves it by more than this a metre. It saves looking at every one of them where
        the limit is far away.
        """
        value, trace = world.traced(compute)
        readings = tuple(trace.readings)
        told = {reading.words: None for reading in readings if reading.origin is Origin.ASSUMED}
        assumes = tuple({**trace.assumes, **told})
        return cls(name, unit, value, readings=readings, assumes=assumes, compute=compute, world=world, per_m=per_m)

    @classmethod
    def plain(
        cls,
        name: str,
        unit: str,
        value: float,
        *,
        shares: Iterable[Share] = (),
        u: float | None = None,
        assumes: tuple[str, ...] = (),
    ) -> Figure:
        """Return a figure that is known already: worked out with others, or read back from a report.

        `u` is given where the shares are not.
        """
        known = tuple(shares)
        readings = tuple(share.reading for share in known)
        return cls(name, unit, value, readings=readings, assumes=assumes, shares=known, u=u)

    @classmethod
    def together(
        cls,
        name: str,
        unit: str,
        world: World,
        compute: Callable[[World], float],
        shares: Callable[[], Iterable[Share]],
    ) -> Figure:
        """Return a figure of a world whose shares are worked out for many figures at a time, when one is asked."""
        figure = cls.of(name, unit, world, compute)
        figure._ask = shares  # noqa: SLF001  its own
        return figure

    def at(self, world: World) -> float:
        """Return the figure's value in a world; another figure is computed of this one with it."""
        return self._compute(world) if self._compute is not None else world(self.quantity)

    @property
    def quantity(self) -> Quantity:
        """The figure to first order: what another part of a design can be made of."""
        return Quantity(self.value, self.unit, self.shares)

    def elsewhere(self, value: float) -> Figure:
        """Return the figure with another value and the uncertainty that it has here, found when somebody asks."""
        found = Figure(self.name, self.unit, value, shares=())
        found._like = self
        return found

    def within(self, world: World, value: float) -> Figure:
        """Return the figure as it is in another world, where it has a value, with the uncertainty that it has there.

        One whose uncertainty is worked out for many figures at a time keeps the one that it has here.
        """
        if self._ask is not None or self._compute is None:
            return self.elsewhere(value)
        return Figure(
            self.name, self.unit, value, readings=self.readings, compute=self._compute, world=world, per_m=self._per_m
        )

    def moved(self, moves: Mapping[Reading, float]) -> float:
        """Return what the figure would be with some readings moved, each by so much; it may refuse."""
        if self._compute is None or self._world is None:
            slopes = {share.reading: share.slope for share in self.shares}
            return self.value + sum(slopes.get(reading, 0.0) * by for reading, by in moves.items())
        return self._compute(Moved(self._world, moves))

    def then(self, name: str, unit: str, change: Callable[[float], float]) -> Figure:
        """Return a figure that is a function of this one, such as its size without its sign."""
        if self._world is None:
            value = change(self.value)
            steps = ((share.reading, change(self.value + share.change) - value) for share in self.shares)
            shares = [Share(reading, step / reading.u) for reading, step in steps if reading.u > 0.0]
            return Figure.plain(name, unit, value, shares=shares, assumes=self.assumes)
        return Figure.of(name, unit, self._world, lambda world: change(self.at(world)))

    @property
    def shares(self) -> tuple[Share, ...]:
        """What each reading that may be off brings, the largest first.

        Each reading is moved up and down by its own expanded uncertainty, the others held; the larger change is its
        share, with the sign of the way up (JCGM 100:2008, 5.1.3, note 2: numerical sensitivities). At a kink the
        slope alone says nothing. Readings are independent of each other: what two inputs share is one reading.
        """
        if self._shares is None:
            self._shares, self._one_sided = self._find_shares()
        return self._shares

    def _find_shares(self) -> tuple[tuple[Share, ...], tuple[Reading, ...]]:
        if self._ask is not None:
            return tuple(sorted(self._ask(), key=lambda share: -abs(share.change))), ()
        found, one_sided = [], []
        for reading in self.readings:
            if reading.u <= 0.0:
                continue
            up, down = self.change(reading, reading.u), self.change(reading, -reading.u)
            if up is None or down is None:
                one_sided.append(reading)
            ways = (up or 0.0, -(down or 0.0))
            larger = max(ways, key=abs)
            if larger:
                found.append(Share(reading, larger / reading.u))
        found.sort(key=lambda share: -abs(share.change))
        return tuple(found), tuple(one_sided)

    def change(self, reading: Reading, by: float) -> float | None:
        """Return how the figure changes with one reading, None where its formula does not hold there."""
        if self._compute is None or self._world is None:
            return None
        try:
            change = self._compute(self._world.with_moved(reading, by)) - self.value
        except Refused:
            return None
        if not math.isfinite(change):
            return None
        # An angle that passes straight behind is differenced the short way round.
        return (change + 180.0) % FULL_TURN_DEG - 180.0 if self.unit == "deg" else change

    @property
    def u(self) -> float:
        """Expanded uncertainty, in the figure's unit: the root of the squares of the shares (JCGM 100:2008, 5.1.2)."""
        if self._u is None and self._like is not None:
            self._u = self._like.u
        if self._u is None:
            self._u = math.hypot(*(share.change for share in self.shares))
        return self._u

    @property
    def one_sided(self) -> tuple[Reading, ...]:
        """Readings on whose one side, within their uncertainty, the figure's formula does not hold."""
        _ = self.shares
        return self._one_sided

    @property
    def shared(self) -> bool:
        """Whether its uncertainty is worked out for many figures at a time, too dear to be found in another world."""
        return self._ask is not None

    def clears(self, margin: float, times: float) -> bool:
        """Return whether a limit is so many uncertainties away that a rough one, from one side only, is enough.

        At half the cost of the fine one this settles nearly every pass. False wherever the formula refuses, and beyond
        a limit, where the uncertainty is told; what is only tried elsewhere is told nowhere. Readings whose bound is
        the largest are looked at first, until the bounds of the others are enough.
        """
        if self._like is not None:
            return self._like.clears(abs(margin), times)
        if margin <= 0.0:
            return False
        if self._rough is not None and margin > times * self._rough:
            return True
        if self._compute is None or self._ask is not None or self._shares is not None:
            return not self._one_sided and margin > times * self.u
        return self._is_roughly_below(margin / times)

    def is_surely_below(self, most_u: float) -> bool:
        """Return whether the uncertainty is at most so much, by bounds where a reading has one.

        Only readings without a bound are looked at, to both sides. False where the formula does not hold on one side of
        such a reading, and where the whole uncertainty would have to be found.
        """
        if self._u is not None or self._shares is not None or self._compute is None or self._ask is not None:
            return not self.one_sided and self.u <= most_u
        bounds = [(self.bound(reading), reading) for reading in self.readings if reading.u > 0.0]
        squares, most = math.fsum(bound**2 for bound, _ in bounds if bound < math.inf), most_u**2
        for bound, reading in bounds:
            if squares > most:
                return False
            if bound == math.inf:
                up, down = self.change(reading, reading.u), self.change(reading, -reading.u)
                if up is None or down is None:
                    return False
                squares += max(abs(up), abs(down)) ** 2
        return squares <= most

    def is_bounded_by(self, most_u: float) -> bool:
        """Return whether every reading has a bound and all together are at most so much, without looking at any."""
        if self._like is not None:
            return self._like.is_bounded_by(most_u)
        if self._compute is None or self._ask is not None:
            return False
        bounds = [self.bound(reading) for reading in self.readings if reading.u > 0.0]
        return math.fsum(bound**2 for bound in bounds) <= most_u**2

    def _is_roughly_below(self, most_u: float) -> bool:
        squares, most = 0.0, most_u**2
        bounds = sorted(((self.bound(reading), reading) for reading in self.readings if reading.u > 0.0), key=_first)
        rest = math.fsum(bound**2 for bound, _ in bounds if bound < math.inf)
        while bounds:
            bound, reading = bounds.pop()
            if bound < math.inf:
                if squares + rest < most:
                    break
                rest -= bound**2
            change = self.change(reading, reading.u) or self.change(reading, -reading.u)
            if change is None:
                return False
            squares += change**2
            if squares >= most:
                return False
        self._rough = math.sqrt(squares + max(rest, 0.0))
        return True

    def bound(self, reading: Reading) -> float:
        """Return what a reading can move the figure by at the most, infinite where that is not known."""
        return self._per_m * reading.u if self._per_m is not None and reading.unit == "m" else math.inf

    def settled(self) -> Figure:
        """Return the figure as a report needs it, holding on to neither design nor file."""
        return Figure.plain(self.name, self.unit, self.value, u=self.u, assumes=self.assumes)

    def valued(self) -> Figure:
        """Return the figure where nobody asks how far it may be off: that was not worked out."""
        return Figure.plain(self.name, self.unit, self.value, u=math.inf, assumes=self.assumes)

    def __eq__(self, other: object) -> bool:
        """Two figures are the same that tell the same: one that has travelled is the one that was sent."""
        if not isinstance(other, Figure):
            return NotImplemented
        return self is other or (hash(self) == hash(other) and self._told() == other._told())

    def __hash__(self) -> int:
        """Agree with equality, without asking for the uncertainty."""
        return hash((self.name, self.unit, self.value))

    def _told(self) -> tuple[str, str, float, float, tuple[str, ...]]:
        return (self.name, self.unit, self.value, self.u, self.assumes)

    def __reduce__(self) -> tuple[object, ...]:
        """Travel between processes, and to the disk, settled."""
        return (_settled, self._told())

    def __repr__(self) -> str:
        return f"Figure({self.name!r}, {self.value!r}, {self.unit!r})"


def _first(bounded: tuple[float, Reading]) -> float:
    return bounded[0]


def _settled(name: str, unit: str, value: float, u: float, assumes: tuple[str, ...]) -> Figure:
    return Figure.plain(name, unit, value, u=u, assumes=assumes)
