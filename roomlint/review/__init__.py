"""The rule protocol; all that a rule package needs to import."""

from roomlint.design.base import Group, Missing, heard_at, need
from roomlint.measure.figure import Figure
from roomlint.review.basis import Basis, Grade, memory, practice, standard
from roomlint.review.room import Room
from roomlint.review.rule import Rule, rule
from roomlint.review.verdict import Against, Kind, Level, Says, asks, does_not_apply, fails, passes, tells
from roomlint.review.window import Window, around

__all__ = [
    "Against",
    "Basis",
    "Figure",
    "Grade",
    "Group",
    "Kind",
    "Level",
    "Missing",
    "Room",
    "Rule",
    "Says",
    "Window",
    "around",
    "asks",
    "does_not_apply",
    "fails",
    "heard_at",
    "memory",
    "need",
    "passes",
    "practice",
    "rule",
    "standard",
    "tells",
]
