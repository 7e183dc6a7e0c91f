"""The rule protocol; all that a rule package needs to import."""

from roomlint.design.base import Missing, Pair, Seen, Several, need, unsaid
from roomlint.design.reader import nearest
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.review.basis import Basis, Grade, memory, practice, standard
from roomlint.review.room import Room
from roomlint.review.rule import Answer, Applies, No, Rule, RuleError, rule
from roomlint.review.subjects import (
    CIRCUITS,
    LOUDSPEAKERS,
    PAIRS,
    ROOM,
    SEATS,
    SOURCES,
    SUBWOOFERS,
    THINGS,
    Subjects,
    at_each_seat,
    labelled,
    layered,
    pair_of,
)
from roomlint.review.verdict import Fact, Fate, Found, Kind, Level, Says, Unheld, asks, fails, found, passes, tells
from roomlint.review.waivers import SOON, Waiving, meets, named, subject_ids
from roomlint.review.window import Cases, Window, Windows, at_least, at_most, between, by_reference, computed

__all__ = [
    "CIRCUITS",
    "LOUDSPEAKERS",
    "PAIRS",
    "ROOM",
    "SEATS",
    "SOON",
    "SOURCES",
    "SUBWOOFERS",
    "THINGS",
    "Answer",
    "Applies",
    "Basis",
    "Cases",
    "Fact",
    "Fate",
    "Figure",
    "Found",
    "Grade",
    "Kind",
    "Level",
    "Missing",
    "No",
    "Pair",
    "Refused",
    "Room",
    "Rule",
    "RuleError",
    "Says",
    "Seen",
    "Several",
    "Subjects",
    "Unheld",
    "Waiving",
    "Window",
    "Windows",
    "asks",
    "at_each_seat",
    "at_least",
    "at_most",
    "between",
    "by_reference",
    "computed",
    "fails",
    "found",
    "labelled",
    "layered",
    "meets",
    "memory",
    "named",
    "nearest",
    "need",
    "pair_of",
    "passes",
    "practice",
    "rule",
    "standard",
    "subject_ids",
    "tells",
    "unsaid",
]
