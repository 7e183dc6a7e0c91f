"""What a house decides about the stages: what holds a room back, what a missing value counts as, what must be run."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.house import STAGES, House
from roomlint.review.review import StandingChange

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

GATE: Final = "gate"
OPEN: Final = "open"
REQUIRED: Final = "required chapters"
_NONE: Final = "none"
_LOOSER: Final = {
    GATE: ("note", "warning", "error", "never"),
    OPEN: ("error", "warning", "note", "never"),
}
"""What each takes, the tightest first."""
_BETWEEN: Final = " at "


def standing(house: House) -> dict[str, str]:
    """Return what holds at each stage, such as `gate at design`, whether the house writes it or leaves it alone."""
    found = {}
    for stage in STAGES:
        found[f"{GATE}{_BETWEEN}{stage}"] = house.gates.get(stage) or house.gate or "error"
        found[f"{OPEN}{_BETWEEN}{stage}"] = house.opens.get(stage) or "never"
        found[f"{REQUIRED}{_BETWEEN}{stage}"] = ", ".join(sorted(house.required.get(stage, ()))) or _NONE
    return found


def written(house: House) -> dict[str, str]:
    """Return what of it a house makes otherwise than it is without a house."""
    plain = standing(House())
    return {name: value for name, value in standing(house).items() if plain[name] != value}


def whole(given: Mapping[str, str]) -> dict[str, str]:
    """Return what holds at each stage from what `written` gave."""
    return standing(House()) | dict(given)


def standing_changes(file: str, was: Mapping[str, str], now: Mapping[str, str]) -> Iterator[StandingChange]:
    """Yield what holds otherwise than before, the stages of one change together."""
    alike: dict[tuple[str, str, str], list[str]] = {}
    for name, after in now.items():
        before = was.get(name, after)
        if before != after:
            what, _, stage = name.partition(_BETWEEN)
            alike.setdefault((what, before, after), []).append(stage)
    for (what, before, after), stages in alike.items():
        yield StandingChange(file, what, tuple(stages), _way(what, before, after), before, after)


def _way(what: str, was: str, now: str) -> str:
    order = _LOOSER.get(what)
    if order is not None:
        return (
            "changed" if {was, now} - set(order) else "loosened" if order.index(now) > order.index(was) else "tightened"
        )
    before, after = ({one for one in text.split(", ") if one != _NONE} for text in (was, now))
    return "loosened" if after < before else "tightened" if before < after else "changed"
