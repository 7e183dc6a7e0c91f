"""The tool in SARIF 2.1.0: its rules, the packages they come from, and the published documents they rest on."""

from __future__ import annotations

import uuid
from typing import TYPE_CHECKING, Any

from roomlint import __version__
from roomlint.report.addresses import home, page_of
from roomlint.report.rule_pages import GRADES, WHOLE, document_of, plain_window, rule_markdown, rule_text
from roomlint.report.telling import fields_of
from roomlint.review.basis import Grade
from roomlint.review.house_check import own_window
from roomlint.review.read_sarif import UNREADABLE
from roomlint.review.verdict import Level
from roomlint.source.files import from_top

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.review.rule import AnyRule

Json = dict[str, Any]

NAME = "roomlint"
MOST_EXTENSIONS = 100
"""Tool extensions that code hosts take."""
FURTHER = "further houses"
MOST_TEXT = 1024
"""The longest short or full description that code hosts take."""
PRECISION = {Grade.READ: "high", Grade.SECOND_HAND: "medium", Grade.PRACTICE: "medium", Grade.MEMORY: "low"}
SEVERITY = {Level.ERROR: "error", Level.WARNING: "warning", Level.NOTE: "recommendation"}
NOTIFICATIONS = {
    UNREADABLE: (
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
    "house.ended": (
        "A decision of the house has ended.",
        "A house file decides something until a day that is over, so that the rule book's own window or level holds.",
        "Take the decision out of the house file, or have it approved anew with another last day.",
    ),
    "key.unjudged": (
        "A key was not judged.",
        "A room file gives a value that no rule which ran looks at, so that nobody has checked it.",
        "Have a person look at it, or add a rule to the house file.",
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

    def __init__(
        self, rules: Iterable[AnyRule], most_extensions: int = MOST_EXTENSIONS, *, for_hosts: bool = False
    ) -> None:
        """`for_hosts`: hosts show a rule's page as Markdown beside an alert and follow no relationship to a clause."""
        self._for_hosts = for_hosts
        self._rules: dict[tuple[str, str], tuple[AnyRule, int, int]] = {}
        """Rule id and house to the rule, its component (-1 is the driver) and its place there."""
        self._anywhere: dict[str, tuple[str, str]] = {}
        packages: dict[str, list[AnyRule]] = {NAME: []}
        for rule in sorted(rules, key=lambda rule: (is_own(rule), rule.package, rule.id)):
            packages.setdefault(rule.package, []).append(rule)
        self.merged = max(0, len(packages) - 1 - most_extensions)
        """Houses whose own rules share one extension, because hosts take only so many."""
        if self.merged:
            self.merged += 1
            names = list(packages)[-self.merged :]
            packages[FURTHER] = list(
                {rule.id: rule for name in reversed(names) for rule in packages.pop(name)}.values()
            )
        self._packages = list(packages)
        for component, package in enumerate(self._packages):
            for index, rule in enumerate(packages[package]):
                house = rule.package if is_own(rule) and package != FURTHER else ""
                self._rules[rule.id, house] = (rule, component - 1, index)
                self._anywhere.setdefault(rule.id, (rule.id, house))
        self._in_package = packages
        self._taxa = _taxa(rule for rule, _, _ in self._rules.values())
        self._targets = {key: self._targets_of(rule) for key, (rule, _, _) in self._rules.items()}
        self._notices = {name: index for index, name in enumerate(sorted(NOTIFICATIONS))}

    def _find(self, rule_id: str, house: str) -> tuple[AnyRule, int, int] | None:
        """Return the rule that an id means in rooms of a house."""
        for key in ((rule_id, house), (rule_id, ""), self._anywhere.get(rule_id)):
            if key is not None and key in self._rules:
                return self._rules[key]
        return None

    def component(self) -> Json:
        """Return the `tool` object."""
        driver: Json = {"name": NAME, "version": __version__, "semanticVersion": __version__}
        if home():
            driver["informationUri"] = home()
        driver["rules"] = [*(self._descriptor(rule) for rule in self._in_package[NAME]), _unreadable()]
        driver["notifications"] = [_notice(name) for name in self._notices]
        if self._taxa and not self._for_hosts:
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

    def of_result(self, rule_id: str, house: str = "") -> Json:
        """Return the properties by which a result names its rule."""
        if rule_id == UNREADABLE:
            return {"ruleId": UNREADABLE, "ruleIndex": len(self._in_package[NAME])}
        found = self._find(rule_id, house)
        if found is None:
            return {"ruleId": rule_id}
        _, component, index = found
        # A reader that knows no extensions would look an index up among the driver's rules and find the wrong one, and
        # where `rule` says it all, neither id nor index is wanted beside it.
        return {"ruleId": rule_id, "ruleIndex": index} if component < 0 else {"rule": self.reference(rule_id, house)}

    def reference(self, rule_id: str, house: str = "") -> Json:
        """Return a reportingDescriptorReference to a rule."""
        found = self._find(rule_id, house)
        if found is None:
            return {"id": rule_id}
        _, component, index = found
        within = {"toolComponent": {"name": self._name(self._packages[component + 1]), "index": component}}
        return {"id": rule_id, "index": index, **(within if component >= 0 else {})}

    def _name(self, package: str) -> str:
        """Return an extension's name: a house's file from the top of its repository."""
        rules = self._in_package[package]
        return from_top(package) if rules and is_own(rules[0]) and package != FURTHER else package

    def notice(self, name: str) -> Json:
        """Return a reportingDescriptorReference to a notification."""
        return {"id": name, "index": self._notices[name]}

    def _extension(self, package: str) -> Json:
        rules = self._in_package[package]
        version = {"version": rules[0].version} if rules[0].version else {}
        return {"name": self._name(package), **version, "rules": [self._descriptor(rule) for rule in rules]}

    def _targets_of(self, rule: AnyRule) -> list[tuple[Json, str]]:
        found: dict[tuple[str, str], tuple[Json, str]] = {}
        for basis in rule.bases:
            name, clause = document_of(basis), basis.clause or WHOLE
            if name:
                target = {"id": clause, "index": self._taxa[name].index(clause), "toolComponent": _component(name)}
                found.setdefault((name, clause), (target, GRADES[basis.grade]))
        return list(found.values())

    def _descriptor(self, rule: AnyRule) -> Json:
        page = rule.page
        full = f"{page.summary} {page.parts.get('Why', '')}".strip()
        descriptor: Json = {
            "id": rule.id,
            "name": pascal(rule.id),
            "shortDescription": {"text": cut(page.summary or rule.id, MOST_TEXT)},
            "fullDescription": {"text": cut(full or rule.id, MOST_TEXT)},
            "help": self._help(rule),
            "messageStrings": {name: {"text": placeholders(text)} for name, text in rule.says.items()},
            "defaultConfiguration": {"level": rule.level.value},
            "properties": _properties(rule),
        }
        if page_of(rule.id):
            descriptor["helpUri"] = page_of(rule.id)
        found = self._targets.get((rule.id, rule.package if is_own(rule) else ""))
        related = found if found is not None else self._targets.get((rule.id, ""), [])
        if related and not self._for_hosts:
            descriptor["relationships"] = [
                {"target": target, "kinds": ["relevant"], "description": {"text": f"Basis: {grade}."}}
                for target, grade in related
            ]
        return descriptor

    def _help(self, rule: AnyRule) -> Json:
        """Return the rule's page, once: in the form that the reader shows."""
        if not self._for_hosts:
            return {"text": rule_text(rule).rstrip()}
        short = rule.page.parts.get("Remedy") or rule.page.summary or rule.id
        return {"text": cut(short, MOST_TEXT), "markdown": "\n".join(rule_markdown(rule)).rstrip()}


def is_own(rule: AnyRule) -> bool:
    """Return whether a house wrote a rule as data, in its file."""
    return rule.chapter == "house"


def placeholders(template: str) -> str:
    """Return a template as SARIF wants it: the subject first, then its fields by number, and a full stop."""
    text = template.format_map({name: f"{{{number}}}" for number, name in enumerate(fields_of(template), 1)})
    return f"{{0}}: {text}."


def pascal(rule_id: str) -> str:
    """Return the name that SARIF wants beside an id: `angle.front-pair` gives `AngleFrontPair`."""
    words = "".join(sign if sign.isalnum() else " " for sign in rule_id).split()
    name = "".join(word[:1].upper() + word[1:] for word in words)
    return name if name != rule_id else f"{name}Rule"


def cut(text: str, most: int) -> str:
    """Return a text that is not longer than allowed, with a mark where it was cut."""
    return text if len(text) <= most else f"{text[: most - 1].rstrip()}…"


def _properties(rule: AnyRule) -> Json:
    grades = [basis.grade for basis in rule.bases]
    firmest = min(grades, key=list(Grade).index) if grades else Grade.MEMORY
    given: Json = {
        "tags": [rule.chapter],
        "precision": PRECISION[firmest],
        "problem.severity": SEVERITY[rule.level],
        "since": rule.since,
        "of": rule.each.name,
        "basis": [grade.value for grade in grades],
    }
    window = plain_window(own_window(rule))
    if window is not None:
        given["window"] = window
    if len(rule.rows()) > 1:
        given["windows"] = [
            {"when": words, "window": plain_window(one.window if one else None)} for words, one in rule.rows()
        ]
    if rule.after:
        given["after"] = list(rule.after)
    if is_own(rule) and window is not None:
        edges = {
            side: f"{window[side]:g} {window['unit']}".rstrip() for side in ("low", "high") if window[side] is not None
        }
        given |= {"house": from_top(rule.package), "written": edges}
    if rule.critical_level is not None:
        given["criticalLevel"] = rule.critical_level.value
    if rule.caution:
        given["caution"] = rule.caution
    return given


def _unreadable() -> Json:
    """Return the descriptor of a file that cannot be read: a result, so that no host takes it for mended."""
    return {
        **_notice(UNREADABLE),
        "defaultConfiguration": {"level": "error"},
        "properties": {"tags": ["file"], "precision": "very-high", "problem.severity": "error"},
    }


def _notice(name: str) -> Json:
    short, full, remedy = NOTIFICATIONS[name]
    return {
        "id": name,
        "name": pascal(name),
        "shortDescription": {"text": short},
        "fullDescription": {"text": full},
        "help": {"text": remedy},
    }


def _taxa(rules: Iterable[AnyRule]) -> dict[str, list[str]]:
    cited: dict[str, set[str]] = {}
    for rule in rules:
        for basis in rule.bases:
            if basis.document:
                cited.setdefault(document_of(basis), set()).add(basis.clause or WHOLE)
    return {name: sorted(cited[name]) for name in sorted(cited)}


def _component(name: str) -> Json:
    """Return what identifies a taxonomy: by guid, because an index would be looked up among the extensions."""
    return {"name": name, "guid": str(uuid.uuid5(uuid.NAMESPACE_URL, f"{NAME}:{name}"))}
