"""Makes the sentence of a verdict: the rule's own template filled in, or what is said of every rule alike."""

from __future__ import annotations

import string
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.measure.figure import Figure
from roomlint.report.names import Names, about, key_words, reading_words, rule_words, wanted_words
from roomlint.report.units import METRIC, SIDES, Units, inward, mirrored
from roomlint.review.verdict import By, Fate, Kind, Way
from roomlint.review.window import Window
from roomlint.source.dimensions import decimals
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from roomlint.review.review import RoomReview
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Again, Fact, Remedy, Unheld, Verdict

AZIMUTH: Final = "azimuth"
"""What a figure is called that is told with its side."""
MOST_READINGS: Final = 3
NEGATIVE: Final = "negative"
"""The template of a figure below naught, where the trade has a word for it: in the way, not `-0.30 m` clear."""
QUESTIONS: Final = ("what ", "where ", "whether ")
"""How what is missing begins where it is told as a question: of what element stands beside it, not behind."""
BESIDE: Final = "beside"
"""The template of a finding that is told in one breath with another rule's."""
NEAR: Final = 2.0
"""Up to this many uncertainties from its limit a figure is told with its uncertainty."""
LACKED: Final = {"approved_by": "an approver", "document": "a document"}
"""What a waiver on record needs, by key."""
PLAIN: Final = {
    Kind.FAIL: "a number without end came out; until that is cleared up it counts as failed",
    Kind.PASS: "nothing wrong",
}
"""What is said where neither a template nor a figure says anything."""


class Said(NamedTuple):
    """A finding as its parts: the name of the template, and what its fields hold, in their order."""

    name: str
    template: str
    fields: Mapping[str, str]

    @property
    def text(self) -> str:
        """The template, filled in."""
        return self.template.format_map(self.fields)


class Rules:
    """The rules of a run; a house's own are looked up by the house."""

    def __init__(self, rules: Iterable[AnyRule]) -> None:
        self._rules: dict[str, list[AnyRule]] = {}
        for rule in rules:
            self._rules.setdefault(rule.id, []).append(rule)

    def get(self, rule_id: str, house: str = "") -> AnyRule | None:
        """Return the rule of an id, the one of a house before any other."""
        found = self._rules.get(rule_id)
        if not found:
            return None
        return next((rule for rule in found if rule.package == house), found[0])


class Telling:
    """How one room's verdicts are told: in its units, with its names."""

    def __init__(self, room: RoomReview, rules: Rules, units: str = "") -> None:
        self.room = room
        self.units = Units(units or room.units)
        self.names = Names(room.verdicts)
        self.numbers: dict[tuple[str, str], int] = {}
        """Rule and subject of a failure to its number, where a report numbers what it tells."""
        self._rules = rules

    def rule(self, verdict: Verdict) -> AnyRule | None:
        """Return the rule that a verdict is of."""
        return self._rules.get(verdict.rule, self.room.house.file)

    def sentence(self, verdicts: Sequence[Verdict], *, moved: bool = False) -> str:
        """Return what verdicts that are told together say, without subject and full stop.

        With `moved` a figure that is another than before is told as both.
        """
        first = verdicts[0]
        if first.follows is not None:
            return one_line(self._waits(first))
        return one_line(_sentence(verdicts, self.rule(first), self.units, self.names, moved=moved))

    def _waits(self, verdict: Verdict) -> str:
        """Return what a verdict waits for: a number of this report, or the failure in its own words."""
        follows = verdict.follows
        number = self.numbers.get((follows.rule, follows.subject)) if follows is not None else None
        if number is not None:
            return f"waits for {number}"
        cause = next(
            (
                other
                for other in self.room.verdicts
                if follows is not None and other.rule == follows.rule and other.subject == follows.subject
            ),
            None,
        )
        if cause is None or cause.follows is not None:
            return _sentence([verdict], None, self.units, self.names, moved=False)
        who = "" if cause.subject == verdict.subject else f"{self.names.subject(cause)}: "
        return f"waits until this is put right: {who}{self.sentence([cause])}"

    def in_one_breath(self, verdicts: Sequence[Verdict]) -> str:
        """Return what is said of verdicts at the end of another's sentence; empty where that says it already."""
        first = verdicts[0]
        rule = self.rule(first)
        if rule is None or BESIDE not in rule.says:
            return ""
        fields = _fields(verdicts, self.units, self.names, moved=False)
        fields["subject"] = self.names.groups(about(verdict.subject).elements for verdict in verdicts)
        return one_line(rule.says[BESIDE].format_map(fields))

    def fits_beside(self, verdict: Verdict) -> bool:
        """Return whether a verdict can be told in one breath with another: its template has all that it names."""
        rule = self.rule(verdict)
        if rule is None or BESIDE not in rule.says:
            return True
        fields = _fields([verdict], self.units, self.names, moved=False)
        return all(field in fields for field in fields_of(rule.says[BESIDE]))

    def whole(self, verdict: Verdict) -> str:
        """Return a verdict as one sentence with its subject and a full stop."""
        return f"{self.names.subject(verdict)}: {self.sentence([verdict])}."

    def said(self, verdict: Verdict) -> Said | None:
        """Return a finding as its rule's template and what its fields hold; None when no template says it."""
        rule = self.rule(verdict)
        name = template_of(verdict, rule)
        if rule is None or not name or verdict.kind not in {Kind.FAIL, Kind.INFORMATIONAL} | {Kind.PASS, Kind.REVIEW}:
            return None
        fields = _fields([verdict], self.units, self.names, moved=False)
        used = fields_of(rule.says[name])
        if any(field not in fields for field in used):
            return None
        return Said(name, rule.says[name], {field: one_line(fields[field]) for field in used})

    def remedy(self, remedy: Remedy, subject: str) -> str:
        """Return a remedy in the words of whoever moves things."""
        its = remedy.subject in subject.split("+")
        return one_line(_remedy([remedy], "" if its else self.names.one(remedy.subject), self.units, self.names))

    def remedies(self, remedies: Sequence[Remedy]) -> str:
        """Return remedies of one range, each of another element, as one sentence."""
        names = self.names.several(remedy.subject for remedy in remedies)
        return one_line(f"{names}: {_remedy(remedies, '', self.units, self.names)}")

    def one_way(self, remedy: Remedy) -> str:
        """Return what a remedy moves, without its range: `place from the front`, `length of the screws`."""
        key = remedy.key.rpartition(".")[2]
        return f"place {key.replace('_', ' the ', 1)}" if key.startswith("from_") else key_words(remedy.key)

    def span(self, remedy: Remedy) -> str:
        """Return the range of a remedy alone."""
        return inward(remedy.low.value, remedy.high.value, remedy.now.unit, self.units)

    def now(self, remedy: Remedy) -> str:
        """Return what a remedy would change, as it is."""
        ends = [remedy.low.value, remedy.high.value, remedy.now.value]
        return self.units.scale(remedy.now.unit, ends).text(remedy.now.value)

    def unheld(self, unheld: Unheld) -> str:
        """Return why a waiver does not hold, as the end of a sentence about the waiver."""
        return one_line(_unheld(unheld, self.units))

    def again(self, again: Again) -> str:
        """Return what to measure again, or what to choose, so that a figure is decided."""
        return self.agains([again])

    def agains(self, agains: Sequence[Again]) -> str:
        """Return what to measure again, or to choose, so that several figures are decided, each reading once."""
        names = list(dict.fromkeys(reading_words(name, key) for again in agains for name, key in again.names))
        most = MOST_READINGS if len(names) > MOST_READINGS + 1 else len(names)
        more = f"; {len(names) - most} more" if len(names) > most else ""
        named = f"{'; '.join(names[:most])}{more}"
        chosen = all(again.chosen for again in agains)
        least = min((again.within for again in agains if again.within is not None), key=_value, default=None)
        if least is None or any(again.within is None for again in agains):
            return f"choose a value clear of the limit: {named}" if chosen and named else ""
        within = self.units.number(least.value, least.unit, least.value)
        if chosen:
            return f"choose a value clear of the limit, or hold it within ± {within}: {named}"
        return f"measure again within ± {within}: {named}"


def _value(figure: Figure) -> float:
    return figure.value


def told(verdict: Verdict, rule: AnyRule | None, units: str = METRIC) -> str:
    """Return what one verdict says, without its subject."""
    return _sentence([verdict], rule, Units(units), Names([verdict]), moved=False)


def template_of(verdict: Verdict, rule: AnyRule | None) -> str:
    """Return the name of the template that says a verdict; empty when what is said of every rule alike does."""
    if rule is None or verdict.kind in {Kind.OPEN, Kind.NOT_APPLICABLE}:
        return ""
    name = verdict.said
    if name in {"", "fail"} and verdict.kind in {Kind.FAIL, Kind.REVIEW} and NEGATIVE in rule.says:
        return NEGATIVE if verdict.figure is not None and verdict.figure.value < 0.0 else "fail"
    if not name and verdict.kind in {Kind.FAIL, Kind.REVIEW} and verdict.figure is not None and verdict.window:
        side = verdict.window.nearer_side(verdict.figure.value)
        name = side if side in rule.says else "fail"
    return name if name in rule.says else ""


def fields_of(template: str) -> list[str]:
    """Return the fields of a template, each once, in their order."""
    return list(dict.fromkeys(field for _, field, _, _ in string.Formatter().parse(template) if field))


def _sentence(verdicts: Sequence[Verdict], rule: AnyRule | None, units: Units, names: Names, *, moved: bool) -> str:
    verdict = verdicts[0]
    if verdict.follows is not None:
        of = names.groups([about(verdict.follows.subject).elements])
        return f"waits until {of} is put right: {rule_words(verdict.follows.rule)}"
    if verdict.wanted is not None:
        return _wanted(verdicts, names)
    if verdict.kind is Kind.NOT_APPLICABLE or (verdict.because and verdict.figure is None):
        return verdict.because.rstrip(".") or "does not apply"
    template = template_of(verdict, rule)
    fields = _fields(verdicts, units, names, moved=moved)
    if template and rule is not None and all(field in fields for field in fields_of(rule.says[template])):
        text = rule.says[template].format_map(fields)
    elif verdict.figure is not None:
        window = f"; {_edge(verdict, fields['window'], units, moved=moved)}" if verdict.window is not None else ""
        name = AZIMUTH if verdict.figure.name in SIDES else verdict.figure.name
        text = f"{name} {fields['figure']}{window}"
    else:
        return verdict.because.rstrip(".") or PLAIN.get(verdict.kind, verdict.said)
    return f"{text}{_doubt(verdicts, units)}"


def _edge(verdict: Verdict, today: str, units: Units, *, moved: bool) -> str:
    """Return the window that something is held against: what the design cured, against the one that it failed."""
    change = verdict.change if moved else None
    if change is None or change.window is None or (change.way, change.by) != (Way.GONE, By.DESIGN):
        return today
    return units.of([verdict.figure] if verdict.figure is not None else [], change.window).window(change.window)


def _doubt(verdicts: Sequence[Verdict], units: Units) -> str:
    """Return the uncertainty where it matters: near a limit."""
    verdict = min(verdicts, key=lambda one: abs(one.margin) if one.margin is not None else 0.0)
    figure = verdict.figure
    if figure is None or verdict.margin is None or verdict.kind is Kind.PASS:
        return ""
    if verdict.kind is Kind.REVIEW and not verdict.because and figure.assumes and figure.u >= abs(figure.value):
        # As large as the figure itself: no tape helps, somebody must say what is assumed.
        return f": cannot be told; assumed {units.assumption(figure.assumes[0])}"
    spread = ""
    shows = figure.u >= 0.05 * 10.0 ** -decimals(figure.unit)
    if shows and abs(verdict.margin) <= NEAR * figure.u:
        spread = f" ({units.scale(figure.unit, [figure.value], figure.u).spread()})"
    if verdict.because:
        return f"{spread}; {verdict.because.rstrip('.')}"
    return f"{spread}: too close to tell" if verdict.kind is Kind.REVIEW else spread


def _wanted(verdicts: Sequence[Verdict], names: Names) -> str:
    wanted = verdicts[0].wanted
    if wanted is None:
        return ""
    subjects = {key for verdict in verdicts for key in verdict.subject.split("+")}
    name = names.one(wanted.subject)
    # The room has several parts of which a file speaks; all of them are told as the room.
    told = wanted.subject in subjects or name in {names.one(key) for key in subjects}
    words = wanted_words(wanted)
    if words.startswith(QUESTIONS):
        return f"not known: {words}{'' if told or name == 'room' else f' ({name})'}"
    return f"not known: {words}{'' if told else ' of the room' if name == 'room' else f' of {name}'}"


def _fields(verdicts: Sequence[Verdict], units: Units, names: Names, *, moved: bool) -> dict[str, str]:
    first = verdicts[0]
    fields = {name: _facts([verdict.facts.get(name) for verdict in verdicts], units) for name in first.facts}
    fields["subject"] = names.subject(first)
    figures = [verdict.figure for verdict in verdicts if verdict.figure is not None]
    if figures:
        scale = units.of(figures, first.window)
        # What is told together moved alike.
        before = first.change.before if moved and first.change is not None else None
        fields["figure"] = scale.figures(figures, first.window, before)
        fields["size"] = scale.sizes(figures, before)
        if first.window is not None:
            fields["window"] = scale.window(first.window)
            fields["limit"] = scale.limit(figures[0].value, first.window)
            fields["allowed"] = scale.window(mirrored(first.window))
            beyond = max(abs(verdict.margin or 0.0) for verdict in verdicts)
            fields["beyond"] = scale.text(beyond)
    elif first.window is not None:
        fields["window"] = units.window(first.window)
        fields["limit"] = units.of((), first.window).limit(0.0, first.window)
    return fields


def _facts(facts: Sequence[Fact | None], units: Units) -> str:
    """Return a fact of verdicts that are told together: figures as their span, all else as it is."""
    figures = [fact for fact in facts if isinstance(fact, Figure)]
    if figures:
        scale = units.of(figures)
        nominal = len({figure.value for figure in figures}) == 1 and not figures[0].u
        return scale.round(figures[0].value) if nominal else scale.figures(figures)
    return ", ".join(dict.fromkeys(_fact(fact, units) for fact in facts if fact is not None))


def _fact(fact: Fact, units: Units) -> str:
    if isinstance(fact, Window):
        return units.window(fact)
    return ", ".join(fact) if isinstance(fact, tuple) else str(fact)


def _unheld(unheld: Unheld, units: Units) -> str:
    match unheld.fate:
        case Fate.UNSUPPORTED:
            lacks = " and ".join(LACKED[key] for key in unheld.lacks)
            return f"lacks {lacks}, which an error of this chapter cannot be waived without"
        case Fate.EXPIRED:
            return f"expired on {unheld.ended}"
        case Fate.BOUND_PASSED:
            by = f" by {units.figure(unheld.passed)}" if unheld.passed is not None else ""
            return f"is bounded at {unheld.bound}, and that is passed{by}"
        case Fate.BOUND_UNFIT if unheld.unfit:
            return f"has a bound that does not fit: {unheld.unfit}"
        case Fate.BOUND_UNFIT:
            return "has a bound, and this failure has no figure to hold it to"
        case _:
            return "has no reason"


def _sided(low_deg: float, high_deg: float, units: Units) -> str:
    """Return directions as a person turns things: `106.0 to 151.0 deg right`."""
    if low_deg < 0.0 < high_deg:
        return f"{_sided(low_deg, low_deg, units)} to {_sided(high_deg, high_deg, units)}"
    near, far = sorted((abs(low_deg), abs(high_deg)))
    way = "" if not far else " left" if high_deg > 0.0 else " right"
    span = inward(near, far, "deg", units) if near < far else units.number(far, "deg")
    return f"{span}{way}"


def _remedy(remedies: Sequence[Remedy], name: str, units: Units, names: Names) -> str:
    """Return the change of one value, of an element by its name, of what was named before without, or of several."""
    remedy = remedies[0]
    key, unit = remedy.key.rpartition(".")[2], remedy.now.unit
    span = inward(remedy.low.value, remedy.high.value, unit, units)
    nows = sorted({one.now.value for one in remedies})
    scale = units.scale(unit, [remedy.low.value, remedy.high.value, *nows])
    now = " to ".join(dict.fromkeys((scale.text(nows[0]), scale.text(nows[-1]))))
    what = "each" if len(remedies) > 1 else name or "it"
    whose = "each one's" if len(remedies) > 1 else f"the {name}'s" if name else "its"
    if remedy.low.value <= 0.0 and not key.startswith("from_") and unit not in {"deg", "dB", "degC"}:
        span = f"at most {units.scale(unit, [remedy.high.value]).text(remedy.high.value)}"
    if key.startswith("from_"):
        words = f"place {what} {span} {key.replace('_', ' the ', 1)}"
    elif key == "azimuth":
        words = f"turn {what} to {_sided(remedy.low.value, remedy.high.value, units)}"
        now = ", ".join(_sided(one, one, units) for one in nows)
    elif key == "extension":
        words = f"let {whose} arm reach {span}"
    elif key == "height":
        words = f"set {whose} height to {span}"
    else:
        words = f"change {whose} {key_words(remedy.key)} to {span}"
    broken = dict.fromkeys(rule for one in remedies for rule in one.breaks)
    breaks = f", at the cost of {', '.join(rule_words(rule) for rule in broken)}" if broken else ""
    mirrored = [one.mirrored for one in remedies if one.mirrored]
    along = f", and {names.several(mirrored)} with {'them' if len(remedies) > 1 else 'it'}" if mirrored else ""
    return f"{words} (now {now}){along}{breaks}"
