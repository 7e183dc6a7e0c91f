"""The rule protocol; all that a rule package needs to import."""

from roomlint.design.base import Group, Missing, heard_at, need
from roomlint.design.reader import nearest
from roomlint.measure.figure import Figure
from roomlint.review.basis import Basis, Grade, memory, practice, standard
from roomlint.review.room import Room
from roomlint.review.rule import Rule, rule
from roomlint.review.verdict import Against, Kind, Level, Says, asks, does_not_apply, fails, passes, tells
from roomlint.review.waivers import SOON, Fate, Waiving, meets, named, subject_ids
from roomlint.review.window import Window, around

__all__ = [
    "SOON",
    "Against",
    "Basis",
    "Fate",
    "Figure",
    "Grade",
    "Group",
    "Kind",
    "Level",
    "Missing",
    "Room",
    "Rule",
    "Says",
    "Waiving",
    "Window",
    "around",
    "asks",
    "does_not_apply",
    "fails",
    "heard_at",
    "meets",
    "memory",
    "named",
    "nearest",
    "need",
    "passes",
    "practice",
    "rule",
    "standard",
    "subject_ids",
    "tells",
]
