"""The tool in SARIF 2.1.0: its rules, the packages they come from, and the published documents they rest on."""

from __future__ import annotations

import uuid
from typing import TYPE_CHECKING, Any

from roomlint import __version__
from roomlint.report.rule_pages import GRADES, WHOLE, document_of, plain_window, rule_markdown, rule_text
from roomlint.review.basis import Grade
from roomlint.review.verdict import Level

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.review.rule import Rule

Json = dict[str, Any]

NAME = "roomlint"
MOST_TEXT = 1024
"""The longest short or full description that code hosts take."""
PRECISION = {Grade.READ: "high", Grade.SECOND_HAND: "medium", Grade.PRACTICE: "medium", Grade.MEMORY: "low"}
SEVERITY = {Level.ERROR: "error", Level.WARNING: "warning", Level.NOTE: "recommendation"}
NOTIFICATIONS = {
    "file.unreadable": (
        "A file could not be read.",
        "A room file, product sheet or house file holds an error; rooms that need it were not reviewed.",
        "Correct the place that the message names and run again.",
    ),
    "path.empty": (
        "Nothing to check was found.",
        "A file or folder that was named holds no room file; names of room files end in .room.yaml.",
        "Name a room file, or a folder that holds some.",
    ),
    "rule.broken": (
        "A rule or a rule package broke.",
        "A rule raised an error or a package could not be loaded, so the review is not complete.",
        "Report it to the makers of the rule package; run without the rule meanwhile.",
    ),
    "house.loosened": (
        "The house made a rule looser where people can get hurt.",
        "A house file lowered the level or widened the window of a rule about mounting, mains, heat or access.",
        "Check that the decision is meant and on record; local code, licensed electricians and engineers decide.",
    ),
    "report.shortened": (
        "The report leaves results out.",
        "Code hosts read a part of SARIF; what they would show wrongly or refuse is left out and counted.",
        "Read the full report for everything.",
    ),
}
"""Descriptor id to short description, full description and help."""


class Tool:
    """Everything a result refers to: where its rule and its taxa stand."""

    def __init__(self, rules: Iterable[Rule]) -> None:
        self._rules: dict[str, tuple[Rule, int, int]] = {}
        """Rule id to the rule, its component (-1 is the driver) and its place there."""
        packages: dict[str, list[Rule]] = {NAME: []}
        for rule in sorted(rules, key=lambda rule: (rule.package, rule.id)):
            packages.setdefault(rule.package, []).append(rule)
        self._packages = [NAME, *sorted(set(packages) - {NAME})]
        for component, package in enumerate(self._packages):
            for index, rule in enumerate(packages[package]):
                self._rules[rule.id] = (rule, component - 1, index)
        self._in_package = packages
        self._taxa = _taxa(rule for rule, _, _ in self._rules.values())
        self._targets = {rule_id: self._targets_of(rule) for rule_id, (rule, _, _) in self._rules.items()}
        self._notices = {name: index for index, name in enumerate(sorted(NOTIFICATIONS))}

    def component(self) -> Json:
        """Return the `tool` object."""
        driver: Json = {
            "name": NAME,
            "version": __version__,
            "semanticVersion": __version__,
            "rules": [self._descriptor(rule) for rule in self._in_package[NAME]],
            "notifications": [_notice(name) for name in self._notices],
        }
        if self._taxa:
            driver["supportedTaxonomies"] = [_component(name) for name in self._taxa]
        tool: Json = {"driver": driver}
        if len(self._packages) > 1:
            tool["extensions"] = [self._extension(package) for package in self._packages[1:]]
        return tool

    def taxonomies(self) -> list[Json]:
        """Return one component for each published document and edition, its clauses as taxa."""
        return [
            {
                **_component(name),
                "shortDescription": {"text": f"Clauses of {name} that rules rest on."},
                "isComprehensive": False,
                "taxa": [{"id": clause, "name": f"{name}, {clause}"} for clause in clauses],
            }
            for name, clauses in self._taxa.items()
        ]

    def of_result(self, rule_id: str) -> Json:
        """Return the properties by which a result names its rule."""
        found = self._rules.get(rule_id)
        if found is None:
            return {"ruleId": rule_id}
        _, component, index = found
        # A reader that knows no extensions would look an index up among the driver's rules and find the wrong one.
        where = {"ruleIndex": index} if component < 0 else {"rule": self.reference(rule_id)}
        return {"ruleId": rule_id, **where}

    def reference(self, rule_id: str) -> Json:
        """Return a reportingDescriptorReference to a rule."""
        found = self._rules.get(rule_id)
        if found is None:
            return {"id": rule_id}
        _, component, index = found
        within = {"toolComponent": {"name": self._packages[component + 1], "index": component}}
        return {"id": rule_id, "index": index, **(within if component >= 0 else {})}

    def targets(self, rule_id: str) -> list[Json]:
        """Return references to the taxa that a rule rests on."""
        return [target for target, _ in self._targets.get(rule_id, ())]

    def notice(self, name: str) -> Json:
        """Return a reportingDescriptorReference to a notification."""
        return {"id": name, "index": self._notices[name]}

    def _extension(self, package: str) -> Json:
        rules = self._in_package[package]
        version = {"version": rules[0].version} if rules[0].version else {}
        return {"name": package, **version, "rules": [self._descriptor(rule) for rule in rules]}

    def _targets_of(self, rule: Rule) -> list[tuple[Json, str]]:
        found: dict[tuple[str, str], tuple[Json, str]] = {}
        for basis in rule.bases:
            name, clause = document_of(basis), basis.clause or WHOLE
            if name:
                target = {"id": clause, "index": self._taxa[name].index(clause), "toolComponent": _component(name)}
                found.setdefault((name, clause), (target, GRADES[basis.grade]))
        return list(found.values())

    def _descriptor(self, rule: Rule) -> Json:
        page = rule.page
        full = f"{page.summary} {page.parts.get('Why', '')}".strip()
        descriptor: Json = {
            "id": rule.id,
            "name": pascal(rule.id),
            "shortDescription": {"text": cut(page.summary or rule.id, MOST_TEXT)},
            "fullDescription": {"text": cut(full or rule.id, MOST_TEXT)},
            "help": {"text": rule_text(rule).rstrip(), "markdown": "\n".join(rule_markdown(rule)).rstrip()},
            "defaultConfiguration": {"level": rule.level.value},
            "properties": _properties(rule),
        }
        related = self._targets[rule.id]
        if related:
            descriptor["relationships"] = [
                {"target": target, "kinds": ["relevant"], "description": {"text": f"Basis: {grade}."}}
                for target, grade in related
            ]
        return descriptor


def pascal(rule_id: str) -> str:
    """Return the name that SARIF wants beside an id: `angle.front-pair` gives `AngleFrontPair`."""
    words = "".join(sign if sign.isalnum() else " " for sign in rule_id).split()
    name = "".join(word[:1].upper() + word[1:] for word in words)
    return name if name != rule_id else f"{name}Rule"


def cut(text: str, most: int) -> str:
    """Return a text that is not longer than allowed, with a mark where it was cut."""
    return text if len(text) <= most else f"{text[: most - 1].rstrip()}…"


def _properties(rule: Rule) -> Json:
    grades = [basis.grade for basis in rule.bases]
    firmest = min(grades, key=list(Grade).index) if grades else Grade.MEMORY
    given: Json = {
        "tags": [rule.chapter],
        "precision": PRECISION[firmest],
        "problem.severity": SEVERITY[rule.level],
        "since": rule.since,
        "inputs": list(rule.reads),
        "basis": [grade.value for grade in grades],
    }
    for name in ("window", "target", "limit", "critical"):
        window = plain_window(getattr(rule, name))
        if window is not None:
            given[name] = window
    if rule.critical_level is not None:
        given["criticalLevel"] = rule.critical_level.value
    if rule.caution:
        given["caution"] = rule.caution
    return given


def _notice(name: str) -> Json:
    short, full, remedy = NOTIFICATIONS[name]
    return {
        "id": name,
        "name": pascal(name),
        "shortDescription": {"text": short},
        "fullDescription": {"text": full},
        "help": {"text": remedy},
    }


def _taxa(rules: Iterable[Rule]) -> dict[str, list[str]]:
    cited: dict[str, set[str]] = {}
    for rule in rules:
        for basis in rule.bases:
            if basis.document:
                cited.setdefault(document_of(basis), set()).add(basis.clause or WHOLE)
    return {name: sorted(cited[name]) for name in sorted(cited)}


def _component(name: str) -> Json:
    """Return what identifies a taxonomy: by guid, because an index would be looked up among the extensions."""
    return {"name": name, "guid": str(uuid.uuid5(uuid.NAMESPACE_URL, f"{NAME}:{name}"))}
