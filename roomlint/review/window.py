"""Windows: the allowed range of a figure."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from roomlint.measure.figure import number

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure


@dataclass(frozen=True, slots=True)
class Window:
    """An allowed range, edges included; None leaves a side open."""

    low: float | None
    high: float | None
    unit: str

    def __post_init__(self) -> None:
        """Refuse a window that nothing or everything fits."""
        if self.low is None and self.high is None:
            raise ValueError("a window needs at least one edge")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"the window's low edge {self.low} is above its high edge {self.high}")

    def margin(self, value: float) -> float:
        """Return the signed distance to the nearest edge: negative is outside."""
        low = value - self.low if self.low is not None else math.inf
        high = self.high - value if self.high is not None else math.inf
        return min(low, high)

    def __str__(self) -> str:
        """Return the window as a message shows it."""
        if self.low is None:
            return f"at most {_edge(self.high or 0.0, self.unit)} {self.unit}".rstrip()
        if self.high is None:
            return f"at least {_edge(self.low, self.unit)} {self.unit}".rstrip()
        if self.low == self.high:
            return f"{number(self.low, self.unit)} {self.unit}".rstrip()
        return f"{number(self.low, self.unit)} to {number(self.high, self.unit)} {self.unit}".rstrip()


def _edge(value: float, unit: str) -> str:
    """Return an edge with its unit's decimals, or with two digits where those would move it by more than a tenth."""
    text = number(value, unit)
    return text if abs(float(text) - value) <= 0.1 * abs(value) else f"{value:.2g}"


def around(middle: float, tolerance: float, unit: str) -> Window:
    """Return the window of a nominal value and a tolerance to both sides."""
    return Window(middle - tolerance, middle + tolerance, unit)


def decide(figure: Figure, window: Window, *, guarded: bool) -> tuple[str, float]:
    """Decide a figure against a window and return the verdict kind and the margin.

    JCGM 106:2012, 8.2 and 8.3, in plain form: inside by the uncertainty or more passes, outside by more fails; in
    between a person must look (review), or, guarded, it fails, because there the harm is on one side only.
    """
    margin = window.margin(figure.value)
    if abs(margin) <= 1e-9 * max(1.0, abs(figure.value)):
        # Standing exactly on the edge is inside; rounding must not decide.
        margin = 0.0
    if margin >= figure.u:
        return "pass", margin
    if margin < -figure.u:
        return "fail", margin
    if figure.u == 0:
        return "pass", margin
    return ("fail" if guarded else "review"), margin
