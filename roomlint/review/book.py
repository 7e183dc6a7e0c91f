"""The rule book: finds rule packages through their entry points and collects their rules."""

from __future__ import annotations

import os
import sys
from contextlib import redirect_stdout
from dataclasses import dataclass, replace
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages
from typing import TYPE_CHECKING

from roomlint import __version__
from roomlint.review.engine import Trouble
from roomlint.review.rule import AnyRule, Rule

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping
    from importlib.metadata import EntryPoint
    from types import ModuleType

GROUP = "roomlint.rules"
OURS = "roomlint.rules"
WITHDRAWN: Mapping[str, str] = {
    "aim.centre-lobe": "aim.centre-interference",
    "angle.ear-layer-level": "angle.ear-elevation",
    "angle.front-included": "angle.front-pair",
    "bass.axial-crowding": "bass.room-modes",
    "bass.axial-gap": "bass.room-modes",
    "bass.mode-count": "bass.room-modes",
    "bass.whole-ratios": "bass.room-modes",
    "boundary.rear-null": "boundary.surface-null",
    "distance.level-spread": "distance.seat-near-loudspeaker",
    "layout.amplifier-outputs": "channel.amplifier-outputs",
    "layout.fed": "channel.fed",
    "layout.mode-channels": "channel.mode-channels",
    "mount.panel-overhead": "mount.substrate",
}
"""Ids of rules that once were, and the rule that took over; an id is never used again."""


@dataclass(frozen=True, slots=True)
class Book:
    """All rules that are installed, sorted by id, and what went wrong when they were loaded."""

    rules: tuple[AnyRule, ...]
    troubles: tuple[Trouble, ...] = ()

    def get(self, rule_id: str) -> AnyRule | None:
        """Return the rule of an id."""
        return next((rule for rule in self.rules if rule.id == rule_id), None)

    @property
    def ids(self) -> tuple[str, ...]:
        """All rule ids."""
        return tuple(rule.id for rule in self.rules)


class _OurDoor:
    """Our own entry point, for the many who have no other rule package: importlib's reading of them takes a while."""

    name = "roomlint"
    value = OURS
    dist = None

    @staticmethod
    def load() -> ModuleType:
        """Return the package of the built-in chapters."""
        return import_module(OURS)


def load_book(points: Iterable[EntryPoint | _OurDoor] | None = None) -> Book:
    """Load every rule package that is installed; one that fails is told of and the others go on."""
    rules: dict[str, AnyRule] = {}
    troubles: list[Trouble] = []
    found = _installed() if points is None else points
    # Our own chapters first: another package must not take the id of a built-in rule.
    for point in sorted(found, key=lambda point: (not _is_ours(point), point.value, point.name)):
        package, version = _package_of(point)
        named = f"rule package {package} {version} ({point.value})"
        try:
            # What a package prints as it loads must not get into a report.
            with redirect_stdout(sys.stderr):
                own = rules_of(point.load())
        except KeyboardInterrupt:
            raise
        except BaseException as error:  # noqa: BLE001  not even one that exits may take the run with it
            text = f"{named} cannot be loaded: {type(error).__name__}: {error}"
            troubles.append(Trouble(f"{package}:{point.name}", text))
            continue
        if not own:
            troubles.append(Trouble(f"{package}:{point.name}", f"{named} holds no rules, although it says it does"))
        for rule in own:
            if rule.id in rules:
                text = f"rule id {rule.id!r} of {package} is already taken by {rules[rule.id].package}; it was left out"
                troubles.append(Trouble(rule.id, text))
                continue
            rules[rule.id] = replace(rule, package=package, version=version)
    return Book(tuple(rules[rule_id] for rule_id in sorted(rules)), tuple(troubles))


def _installed() -> Iterable[EntryPoint | _OurDoor]:
    """Return the entry points of all rule packages that are installed."""
    declaring = [name for folder in sys.path for name in _declaring(folder)]
    if declaring and all(name.startswith("roomlint-") for name in declaring):
        return [_OurDoor()]
    from importlib.metadata import entry_points

    return entry_points(group=GROUP)


def _declaring(folder: str) -> Iterator[str]:
    """Yield what stands in a folder of the import path and may declare rules: packages, and archives unread."""
    try:
        with os.scandir(folder or ".") as entries:
            about = [entry for entry in entries if entry.name.endswith((".dist-info", ".egg-info", ".egg"))]
    except OSError:
        if Path(folder).is_file():
            yield folder
        return
    for entry in about:
        if entry.name.endswith(".egg"):
            yield entry.name
            continue
        try:
            if GROUP in Path(entry.path, "entry_points.txt").read_text(encoding="utf-8"):
                yield entry.name
        except (OSError, UnicodeDecodeError):
            continue


def _is_ours(point: EntryPoint | _OurDoor) -> bool:
    return point.value == OURS


def _package_of(point: EntryPoint | _OurDoor) -> tuple[str, str]:
    """Return the name and version of the package that declares an entry point.

    Asking importlib for them parses the package's whole metadata, so our own answer for themselves.
    """
    if _is_ours(point) or point.dist is None:
        return ("roomlint", __version__) if _is_ours(point) else (point.value, "")
    return point.dist.name, point.dist.version


def rules_of(module: ModuleType) -> list[AnyRule]:
    """Return the rules that a module defines, and every module below it when it is a package, in the order of ids."""
    found = [value for value in vars(module).values() if isinstance(value, Rule)]
    for info in walk_packages(getattr(module, "__path__", ()), f"{module.__name__}."):
        found += (value for value in vars(import_module(info.name)).values() if isinstance(value, Rule))
    return sorted({id(rule): rule for rule in found}.values(), key=lambda rule: rule.id)
