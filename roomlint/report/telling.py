"""Makes the sentence of a verdict: the rule's own template filled in, or what is said of every rule alike."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.measure.figure import Figure
from roomlint.review.verdict import Kind
from roomlint.review.window import Window
from roomlint.source.dimensions import decimals

if TYPE_CHECKING:
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Fact, Verdict

_AHEAD_DEG = 0.05
_TOWARD = {"azimuth": 1.0, "azimuth to the left": 1.0, "azimuth to the right": -1.0}
"""Figures that are told with a side, and which sign is left."""


def told(verdict: Verdict, rule: AnyRule | None) -> str:
    """Return what a verdict says, without its subject."""
    if verdict.follows is not None:
        return f"waits for {verdict.follows.rule} on {verdict.follows.words}"
    if verdict.wanted is not None:
        return f"needs {verdict.wanted.key} of {verdict.wanted.words}"
    if verdict.said and rule is not None and verdict.said in rule.says:
        return _filled(rule.says[verdict.said], verdict)
    if verdict.figure is not None and verdict.window is not None:
        said = f"{shown(verdict.figure)}; {window_words(verdict.window)}"
        return f"{said}: too close to tell" if verdict.kind is Kind.REVIEW else said
    return verdict.because or verdict.said


def _filled(template: str, verdict: Verdict) -> str:
    fields: dict[str, str] = {name: fact_words(fact) for name, fact in verdict.facts.items()}
    fields["subject"] = verdict.words
    if verdict.figure is not None:
        fields["figure"] = shown(verdict.figure)
    if verdict.window is not None:
        fields["window"] = window_words(verdict.window)
        fields["limit"] = edge_words(verdict.window, verdict.figure)
        fields["beyond"] = number(abs(verdict.margin or 0.0), verdict.window.unit)
    return template.format_map(fields)


def fact_words(fact: Fact) -> str:
    """Return a fact as a sentence holds it."""
    if isinstance(fact, Figure):
        return shown(fact)
    if isinstance(fact, Window):
        return window_words(fact)
    return ", ".join(fact) if isinstance(fact, tuple) else str(fact)


def shown(figure: Figure) -> str:
    """Return a figure with its unit and uncertainty."""
    value, after = figure.value, figure.unit
    if figure.name in _TOWARD:
        if abs(value) < _AHEAD_DEG:
            return "straight ahead"
        left = value * _TOWARD[figure.name] > 0
        value, after = abs(value), f"deg {'left' if left else 'right'}"
    text = f"{value:.{decimals(figure.unit)}f} {after}".rstrip()
    told = figure.u >= 0.05 * 10.0 ** -decimals(figure.unit)
    return f"{text} ± {number(figure.u, figure.unit)}" if told else text


def window_words(window: Window) -> str:
    """Return a window in words."""
    if window.low is None:
        return f"at most {number(window.high or 0.0, window.unit)}"
    if window.high is None:
        return f"at least {number(window.low, window.unit)}"
    low = f"{window.low:.{decimals(window.unit)}f}"
    return f"{low} to {number(window.high, window.unit)}"


def edge_words(window: Window, figure: Figure | None) -> str:
    """Return the edge of a window that a figure is nearer to."""
    value = figure.value if figure is not None else 0.0
    edges = [edge for edge in (window.low, window.high) if edge is not None]
    return number(min(edges, key=lambda edge: abs(edge - value)), window.unit)


def number(value: float, unit: str) -> str:
    """Return a number with its unit."""
    return f"{value:.{decimals(unit)}f} {unit}".rstrip()
