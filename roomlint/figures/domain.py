"""How figures refuse: where a formula does not hold there is no figure, and the reason is told."""

import math

from roomlint.refused import Refused

__all__ = ["Refused", "at_least_one", "between", "not_negative", "positive"]


def positive(name: str, value: float, unit: str) -> float:
    """Return `value` if it is finite and above zero; raise `Refused` that names it otherwise."""
    if not (math.isfinite(value) and value > 0.0):
        raise Refused(f"{name} must be above zero and finite, got {value:g} {unit}")
    return value


def not_negative(name: str, value: float, unit: str) -> float:
    """Return `value` if it is finite and zero or above; raise `Refused` that names it otherwise."""
    if not (math.isfinite(value) and value >= 0.0):
        raise Refused(f"{name} must be zero or above and finite, got {value:g} {unit}")
    return value


def between(name: str, value: float, limits: tuple[float, float], unit: str) -> float:
    """Return `value` if it lies in the closed range `limits`; raise `Refused` that states the range."""
    low, high = limits
    # A hair of slack: 1/4 in written as 0.25 * 25.4 must not fall outside a range that starts at 1/4 in.
    slack = 1e-9 * max(abs(low), abs(high))
    if not low - slack <= value <= high + slack:
        raise Refused(
            f"{name} {value:g} {unit} is outside {low:g} to {high:g} {unit}, "
            "the range for which the formula is published"
        )
    return value


def at_least_one(name: str, count: int) -> int:
    """Return `count` if it is one or more; raise `Refused` that names it otherwise."""
    if count < 1:
        raise Refused(f"{name} must be at least 1, got {count}")
    return count
