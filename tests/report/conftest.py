"""Reviews made straight from the dataclasses, with a few rules of their own: no files, no rule book."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from roomlint.design.house import House
from roomlint.measure.figure import Figure
from roomlint.report import Wishes, write
from roomlint.review.basis import practice, standard
from roomlint.review.engine import Trouble
from roomlint.review.review import Departed, HouseChange, Review, RoomReview
from roomlint.review.rule import Rule
from roomlint.review.subjects import Subjects
from roomlint.review.verdict import (
    Again,
    By,
    Change,
    Follows,
    Kind,
    Level,
    Related,
    Remedy,
    State,
    Unjudged,
    Verdict,
    Waived,
    Wanted,
)
from roomlint.review.window import Window, Windows
from roomlint.source.place import Place, Problem

FILE = "rooms/attic.room.yaml"
PAGE = """Left and right stand 30 degrees either side.

    Why: A narrow front pair sounds like one source.

    How decided: The azimuth of each is compared with the window.

    Remedy: Move the pair apart.

    When to waive: Where a window stands in the way.
    """
READ = standard("ITU-R BS.775", "Figure 1", edition="3", read=True)
HABIT = practice("what the trade does")
STAGE = Window(22.0, 32.0, "deg")
HOLDS = "Caution: a load above heads; local code and an engineer decide."
SHOCK = "Caution: a licensed electrician decides."


def make_figure(value=17.4, unit="deg", *, name="azimuth", u=0.0, assumes=()):
    return Figure.plain(name, unit, value, u=u, assumes=assumes)


def make_rule(rule_id="angle.front-pair", *, level=Level.WARNING, bases=(READ,), window=STAGE, **more):
    says = {"fail": "stands {figure}; the stage wants it {window} out"} if window is not None else {"fail": "is wrong"}
    more = {"says": says, "docstring": PAGE, "version": "0.1.0"} | more
    return Rule(
        id=rule_id,
        level=level,
        bases=bases,
        each=Subjects("front loudspeaker", lambda _: ()),
        judge=lambda *_: make_figure(),
        since="0.1.0",
        window=Windows(window) if isinstance(window, Window) else window,
        **more,
    )


def make_place(line=7, column=3, *, file=FILE, width=4):
    return Place(file, line, column, line, column + width)


def make_verdict(kind=Kind.FAIL, *, level=Level.WARNING, rule="angle.front-pair", subject="loudspeaker/left", **more):
    words = subject.partition("/")[2]
    figure = more.pop("figure", make_figure() if rule == "angle.front-pair" and kind is Kind.FAIL else None)
    window = more.pop("window", STAGE if figure is not None and figure.unit == "deg" else None)
    margin = window.margin(figure.value) if figure is not None and window is not None else None
    more = {"place": make_place(), "figure": figure, "window": window, "margin": margin} | more
    return Verdict(rule, kind, level if kind is Kind.FAIL else None, subject, words, **more)


def make_wanted(key="position", *, subject="loudspeaker/left", file=FILE, path="", above=()):
    kind, _, name = subject.partition("/")
    return Wanted(subject, name, key, path or f"{kind}s[0].{key}", file, above or (f"id: {name}",))


def make_open(key="position", *, rule="angle.front-pair", subject="loudspeaker/left", index=0, **more):
    kind = subject.partition("/")[0]
    wanted = make_wanted(key, subject=subject, path=f"{kind}s[{index}].{key}")
    return make_verdict(Kind.OPEN, rule=rule, subject=subject, wanted=wanted, **more)


def make_waived(**more):
    until = {"because": "glass", "approved_by": "R. Lead", "until": "2027-06-30", "place": make_place(90)}
    return Waived(**(until | more))


def make_room(*verdicts, file=FILE, house=None, **more):
    more = {"code": "A1", "title": "Attic", "stage": "design"} | more
    return RoomReview(file, house=house or House(), verdicts=verdicts, **more)


def make_house(*, file="house.yaml", **decided):
    names = {name.replace("__", ".").replace("_", "-"): changes for name, changes in decided.items()}
    made = {
        name: SimpleNamespace(
            id=name,
            **({"low": None, "high": None, "level": None, "because": None} | changes),
            sets_window=bool(changes.keys() & {"low", "high"}),
        )
        for name, changes in names.items()
    }
    return House(file, decisions=made)


def make_review(*rooms, rules=(), **more):
    return Review(rooms, tuple(rules) or (make_rule(),), **more)


def make_change(way=None, *, state=State.UPDATED, **more):
    return Change(state, way, **({"by": By.DESIGN, "was": "warning"} | more))


def make_remedy(
    low=0.8,
    high=1.1,
    *,
    key="position.from_left",
    subject="loudspeaker/left",
    now=0.5,
    breaks=(),
    unit="m",
    mirrored="",
):
    low, high, now = (make_figure(value, unit, name=key) for value in (low, high, now))
    return Remedy(subject.partition("/")[2], subject, key, low, high, now, breaks, mirrored)


def report(kind, review, **wishes):
    """Return a report as one text."""
    return "".join(write(kind, review, Wishes(**wishes)))


@pytest.fixture(scope="session")
def make():
    """Return the makers, each with defaults that a test need not care about."""
    return SimpleNamespace(
        rule=make_rule,
        place=make_place,
        verdict=make_verdict,
        open=make_open,
        wanted=make_wanted,
        figure=make_figure,
        waived=make_waived,
        room=make_room,
        house=make_house,
        review=make_review,
        change=make_change,
        remedy=make_remedy,
        report=report,
        trouble=Trouble,
        problem=lambda text, *, file=FILE, line=1: Problem(make_place(line, 1, file=file), text),
        related=lambda line, words: Related(make_place(line), words),
        unjudged=lambda words, key, line=5: Unjudged(words, key, make_place(line)),
        again=lambda *names, within=0.003, chosen=False: Again(names, make_figure(within, "m"), chosen=chosen),
        follows=Follows,
        house_change=HouseChange,
        departed=Departed,
        basement=basement,
        quick=quick,
        rules=book,
    )


RULES = (
    make_rule("angle.front-pair", caution=""),
    make_rule("angle.surrounds", window=Window(100.0, 120.0, "deg"),
              says={"fail": "stands {figure}; {window} to its side wanted"}),
    make_rule("boundary.rear-distance", bases=(HABIT,), window=Window(0.5, None, "m"), level=Level.NOTE,
              says={"fail": "{figure} from the {wall}; {window} wanted"}),
    make_rule("bass.seat-spread", bases=(HABIT,), window=Window(None, 12.0, "dB"), level=Level.NOTE,
              says={"fail": "seats differ by {figure} below 120 Hz; {window} wanted"}),
    make_rule("layout.ear-height", window=Window(None, 0.3, "m"),
              says={"fail": "stands {figure} off ear height; {window} wanted"}),
    make_rule("mount.screw-pull", window=Window(None, 1.0, ""), level=Level.ERROR, caution=HOLDS,
              says={"fail": "top screws are pulled to {figure} times what the wood holds; {window} wanted"}),
    make_rule("mount.thread-depth", window=Window(0.032, None, "m"), level=Level.ERROR, caution=HOLDS,
              says={"fail": "{figure} of thread in the stud; {window} wanted"}),
    make_rule("mains.rating", window=Window(None, 15.0, "A"), level=Level.ERROR, caution=SHOCK,
              says={"fail": "loads need a {figure} circuit; this one is {rating}"}),
    make_rule("distance.screen", window=Window(None, 40.0, "deg"), level=Level.NOTE,
              says={"fail": "the picture fills {figure} of view; {window} wanted"}),
)  # fmt: skip


def book():
    return RULES


def basement():
    """Return a room of about a hundred verdicts: an arm that is overloaded, a circuit that is, notes in plenty."""
    pull = make_figure(2.69, "", name="pull over allowable withdrawal")
    verdicts = [
        make_verdict(rule="mount.screw-pull", level=Level.ERROR, subject="picture/picture", figure=pull,
                     window=Window(None, 1.0, ""), place=make_place(50),
                     remedy=make_remedy(0.1, 0.18, key="mounting.extension", subject="picture/picture", now=0.5)),
        make_verdict(rule="mount.thread-depth", level=Level.ERROR, subject="picture/picture",
                     figure=make_figure(0.015, "m", name="thread in the wood"), window=Window(0.032, None, "m"),
                     place=make_place(56)),
        make_verdict(rule="mains.rating", level=Level.ERROR, subject="circuit/picture",
                     figure=make_figure(20.6, "A", name="rating of the loads"), window=Window(None, 15.0, "A"),
                     facts={"rating": make_figure(15.0, "A", name="rating")}, place=make_place(150)),
    ]  # fmt: skip
    for index, (name, sign) in enumerate((("left", 1), ("right", -1))):
        verdicts.append(
            make_verdict(subject=f"loudspeaker/{name}", place=make_place(60 + index),
                         figure=make_figure(sign * 17.4), window=STAGE,
                         remedy=make_remedy(0.4 + index * 3, 0.62 + index * 3, subject=f"loudspeaker/{name}"))
        )  # fmt: skip
    seats = ("row1-left", "row1-middle", "row1-right", "row2-left", "row2-right")
    for name in ("surround-left", "surround-right", "rear-left", "rear-right"):
        for index, seat in enumerate(seats):
            beside = make_figure(94.0 + index, name="azimuth")
            fails = index < 4
            verdicts.append(
                make_verdict(Kind.FAIL if fails else Kind.PASS, rule="angle.surrounds", place=make_place(70),
                             subject=f"loudspeaker/{name}+seat/{seat}", figure=beside,
                             window=Window(100.0, 120.0, "deg"))
            )  # fmt: skip
    for index in range(5):
        verdicts += [
            make_verdict(rule="boundary.rear-distance", level=Level.NOTE, subject=f"loudspeaker/upper-{index}",
                         figure=make_figure(0.2 + index / 50, "m", name="distance to a wall", u=0.006),
                         window=Window(0.5, None, "m"), facts={"wall": "rear wall"}, place=make_place(80 + index)),
            make_verdict(rule="distance.screen", level=Level.NOTE, subject=f"seat/{seats[index % 5]}",
                         figure=make_figure(44.0 + index, name="width of the picture"),
                         window=Window(None, 40.0, "deg"), place=make_place(20 + index)),
        ]  # fmt: skip
    verdicts.append(
        make_verdict(Kind.REVIEW, rule="layout.ear-height", subject="loudspeaker/centre", place=make_place(75),
                     figure=make_figure(0.302, "m", name="height off the ear", u=0.005), window=Window(None, 0.3, "m"),
                     again=Again((("centre", "position.height"),), make_figure(0.002, "m"), chosen=False))
    )  # fmt: skip
    for index, name in enumerate(("upper-0", "upper-1")):
        verdicts += [
            make_open(f"mounting.fixing.{key}", rule="mount.screw-pull", subject=f"loudspeaker/{name}", index=index + 9)
            for key in ("fastener", "into", "thread")
        ]
    verdicts += [make_open("gfci", rule="mains.rating", subject="receptacle/bar", place=make_place(160))]
    verdicts += [make_open("product", rule="bass.seat-spread", subject=f"amplifier/amp-{n}", index=n) for n in range(3)]
    verdicts += [
        make_verdict(Kind.OPEN, rule="boundary.rear-distance", subject="picture/picture",
                     follows=Follows("mount.screw-pull", "picture/picture", "picture")),
        make_verdict(subject="loudspeaker/centre", figure=make_figure(3.0), window=STAGE, waived=make_waived()),
    ]  # fmt: skip
    verdicts += [make_verdict(Kind.PASS, rule="bass.seat-spread", subject=f"seat/{seat}") for seat in seats * 5]
    verdicts += [
        make_verdict(Kind.NOT_APPLICABLE, rule="mains.rating", subject="design/x", because="it stands on the floor")
        for _ in range(20)
    ]
    assumed = make_figure(9.0, "dB", name="level", assumes=("air at 20 degC", "side grain"))
    verdicts.append(make_verdict(Kind.PASS, rule="bass.seat-spread", subject="seat/row1-left", figure=assumed))
    return make_room(
        *verdicts, file="basement/basement.room.yaml", code="basement-08", title="L-shaped basement with a garden door",
        stage="rough-in", gate=Level.WARNING,
        unjudged=(Unjudged("sofa-right", "recline", make_place(9)), Unjudged("bar", "finish", make_place(12))),
    )  # fmt: skip


def quick():
    """Return what ten minutes with a tape give, in feet and inches."""
    tape = 0.03
    verdicts = [
        make_verdict(subject="loudspeaker/left", figure=make_figure(36.5, u=1.0), window=STAGE,
                     remedy=make_remedy(0.72, 0.98, now=0.4572)),
        make_verdict(subject="loudspeaker/right", figure=make_figure(-36.9, u=1.0), window=STAGE,
                     remedy=make_remedy(0.72, 0.98, now=0.4572, key="position.from_right",
                                        subject="loudspeaker/right")),
        make_verdict(Kind.REVIEW, rule="layout.ear-height", subject="loudspeaker/centre",
                     figure=make_figure(0.305, "m", name="height off the ear", u=tape), window=Window(None, 0.3, "m"),
                     again=Again((("centre", "position.height"),), make_figure(0.003, "m"), chosen=False)),
        make_verdict(rule="boundary.rear-distance", level=Level.NOTE, subject="seat/sofa-left",
                     facts={"wall": "rear wall"},
                     figure=make_figure(0.41, "m", name="distance to a wall", u=tape), window=Window(0.5, None, "m")),
        make_verdict(rule="bass.seat-spread", level=Level.NOTE, subject="seat/sofa-left+seat/sofa-right",
                     figure=make_figure(14.2, "dB", name="spread"), window=Window(None, 12.0, "dB")),
    ]  # fmt: skip
    for index, name in enumerate(("left", "right", "centre", "surround-left", "surround-right")):
        verdicts.append(make_open("mounting.on", rule="mount.screw-pull", subject=f"loudspeaker/{name}", index=index))
    verdicts += [
        make_open("position", rule=rule, subject="loudspeaker/surround-right", index=4)
        for rule in ("angle.surrounds", "layout.ear-height", "boundary.rear-distance")
    ]
    verdicts += [make_open("product", rule="bass.seat-spread", subject="processor/processor") for _ in range(4)]
    return make_room(
        *verdicts, file="garden-studio/quick.room.yaml", code="garden-studio", title="", stage="survey", gate=None,
        units="us",
    )  # fmt: skip
