"""Reviews made straight from the dataclasses, without files or real rules."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from roomlint.design.house import Decision, House
from roomlint.measure.figure import Figure
from roomlint.review.basis import standard
from roomlint.review.engine import Trouble
from roomlint.review.review import Review, RoomReview
from roomlint.review.rule import Rule
from roomlint.review.verdict import Change, Kind, Level, Related, State, Verdict, Waived
from roomlint.review.window import Window
from roomlint.source.place import Place, Problem

FILE = "rooms/attic.room.yaml"
PAGE = """Left and right stand 30 degrees either side.

    Why: A narrow front pair sounds like one source.

    How decided: The azimuth of each is compared with the window.

    Remedy: Move the pair apart.

    When to waive: Where a window stands in the way.
    """
READ = standard("ITU-R BS.775", "Figure 1", edition="3", read=True)


def make_rule(rule_id="angle.front-pair", *, level=Level.WARNING, bases=(READ,), **more):
    more = {"window": Window(28.0, 32.0, "deg"), "docstring": PAGE, "version": "0.1.0"} | more
    return Rule(rule_id, level, bases, lambda _: (), lambda *_: None, ("loudspeakers[].position",), "0.1.0", **more)


def make_place(line=7, column=3, *, file=FILE, width=4):
    return Place(file, line, column, line, column + width)


def make_verdict(kind=Kind.FAIL, *, level=Level.WARNING, rule="angle.front-pair", subject="loudspeaker/left", **more):
    words = subject.partition("/")[2]
    more = {"message": f"{words}: azimuth is 26.0 deg, 2.0 deg below the window 28.0 to 32.0 deg."} | more
    more = {"place": make_place()} | more
    return Verdict(rule, kind, level if kind is Kind.FAIL else None, subject, words, **more)


def make_figure(value=26.0, *, u=0.5):
    return Figure("azimuth", value, "deg", u)


def make_waived(**more):
    until = {"because": "glass", "approved_by": "R. Lead", "until": "2027-06-30", "place": make_place(90)}
    return Waived(**(until | more))


def make_room(*verdicts, file=FILE, house=None, **more):
    return RoomReview(file, "A1", "Attic", "design", house or House(), verdicts, **more)


def make_house(*, file="house.yaml", **decided):
    names = {name.replace("__", ".").replace("_", "-"): changes for name, changes in decided.items()}
    return House(file, decisions={name: Decision(None, name, **changes) for name, changes in names.items()})


def make_review(*rooms, rules=(), **more):
    return Review(rooms, rules or (make_rule(),), **more)


def make_change(was="warning", *, state=State.UPDATED, was_waived=False, better_by=None):
    return Change(state, was, was_waived, better_by)


@pytest.fixture(scope="session")
def make():
    """Return the makers, each with defaults that a test need not care about."""
    return SimpleNamespace(
        rule=make_rule,
        place=make_place,
        verdict=make_verdict,
        figure=make_figure,
        waived=make_waived,
        room=make_room,
        house=make_house,
        review=make_review,
        change=make_change,
        trouble=Trouble,
        problem=lambda text, *, file=FILE, line=1: Problem(make_place(line, 1, file=file), text),
        related=lambda line, text: Related(make_place(line), text),
    )
