"""What must hold of every fixing, whatever its numbers."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mount_rooms import ABOVE, ABOVE_SHEETS, ENGINEER, FIXING, HERE, MOUNTING, ROOM, SHEETS, M, arm

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from roomlint.review.verdict import Verdict

BOOK = load_book()
RULES = [rule for rule in BOOK.rules if rule.chapter == "mount"]
MORE = frozenset({"accessories", "breaking_load"})
"""Keys that state a further thing, more mass or a weaker part than the mount; without them it is not there."""


def reviewed(room: Mapping[str, Any], sheets: Any, rules: Any = RULES) -> dict[tuple[str, str], Verdict]:
    outcome = review_room(room_of(room, sheets), rules)
    assert outcome.troubles == []
    return {(verdict.rule, verdict.subject): verdict for verdict in outcome.verdicts}


def paths(data: Any, way: str = "") -> Iterator[str]:
    if isinstance(data, dict):
        for key, below in data.items():
            yield f"{way}{key}"
            yield from paths(below, f"{way}{key}.")


# -- the more a file says, the more is judged ---------------------------------------------------------------------

WEAK = {f"{FIXING}.length": "1.75 in", f"{FIXING}.thread": "1.2 in", f"{FIXING}.edge_offset": "9 mm",
        f"{FIXING}.column_spacing": "0 mm", f"{FIXING}.wet": True, f"{FIXING}.attic": True}  # fmt: skip
STARTS = {
    "as drawn": (ROOM, SHEETS, MOUNTING),
    "weak": (changed(ROOM, WEAK), SHEETS, MOUNTING),
    "heavy": (changed(ROOM, {f"{MOUNTING}.accessories": "120 kg", f"{FIXING}.grain": "end"}), arm(rated_mass="30 kg"),
              MOUNTING),
    "foreign": (changed(ROOM, {f"{FIXING}.fastener": "toggle"}), SHEETS, MOUNTING),
    "wood screws": (changed(ROOM, {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.grain": "end"}), SHEETS, MOUNTING),
    "blocking": (changed(ROOM, {f"{FIXING}.into": "blocking", f"{FIXING}.member_thickness": "3/4 in",
                                f"{FIXING}.edge_distance": "12 mm"}), SHEETS, MOUNTING),
    "reported": (changed(ROOM, {f"{FIXING}.fastener": "structural-screw", f"{FIXING}.engineer": ENGINEER,
                                f"{FIXING}.report": {"document": "7", "withdrawal": "100 N", "shear": "100 N"}}),
                 SHEETS, MOUNTING),
    "eurocode": (changed(ROOM, {**WEAK, "project.region": "eu", "room.walls.0.framing.species": None,
                                "room.walls.0.framing.strength_class": "C16"}), SHEETS, MOUNTING),
    "overhead": (ABOVE, ABOVE_SHEETS, M),
    "unsecured": (changed(ABOVE, {f"{M}.secondary": "none", f"{M}.breaking_load": "200 N"}), ABOVE_SHEETS, M),
    "falling": (changed(ABOVE, {f"{M}.secondary_fall": "0.4 m", f"{M}.secondary.rating": "100 N"}), ABOVE_SHEETS, M),
    "flush": (changed(ABOVE, {"loudspeakers.0.mounting.fixing.fastener": "drywall-screw"}), ABOVE_SHEETS,
              "loudspeakers.0.mounting"),
    "on a box": (changed(ABOVE, {f"{M}.on": "electrical-box", f"{M}.box": {"document": "l", "marked_mass": "5 kg"}}),
                 ABOVE_SHEETS, M),
    "in a grid": (changed(ABOVE, {f"{M}.on": "grid-ceiling"}), ABOVE_SHEETS, M),
}  # fmt: skip


def below(data: Any, way: str) -> Any:
    for part in way.split("."):
        data = data[int(part) if isinstance(data, list) else part]
    return data


NEEDED = frozenset({"document", "by", "kind", "attached_to"})
"""Keys without which a part is no statement: a document without its name, a second support of no kind."""


def reviewed_without(room: Any, path: str, sheets: Any) -> dict[tuple[str, str], Verdict] | None:
    """Return what is said without a key; None where the part that cannot do without it is refused as such."""
    taken = changed(room, {path: None})
    key = path.rpartition(".")[2]
    if key in NEEDED:
        with pytest.raises(ValueError, match=rf"^\d+: \S+ needs the key '{key}'"):
            room_of(taken, sheets)
        return None
    return reviewed(taken, sheets)


@pytest.mark.parametrize("start", STARTS)
def test_leaving_a_key_out_never_makes_a_failure_pass_or_vanish(start: str) -> None:
    room, sheets, way = STARTS[start]
    before = reviewed(room, sheets)
    failed = {key for key, verdict in before.items() if verdict.kind is Kind.FAIL}
    assert failed
    for path in (f"{way}.{path}" for path in paths(below(room, way))):
        if path.rpartition(".")[2] in MORE:
            continue
        after = reviewed_without(room, path, sheets)
        if after is None:
            continue
        for key in failed:
            kind = after[key].kind
            assert kind in {Kind.FAIL, Kind.OPEN, Kind.REVIEW}, f"without {path} {key} is {kind}"


@pytest.mark.parametrize("start", STARTS)
def test_leaving_a_key_out_never_makes_a_pass_vanish_without_a_reason(start: str) -> None:
    room, sheets, way = STARTS[start]
    before = reviewed(room, sheets)
    for path in (f"{way}.{path}" for path in paths(below(room, way))):
        after = reviewed_without(room, path, sheets)
        if after is None:
            continue
        assert after.keys() == before.keys()
        for key, verdict in after.items():
            assert verdict.because if verdict.kind is Kind.NOT_APPLICABLE else True, f"without {path} {key}"


# -- heavier, farther, fewer, shorter: never better ------------------------------------------------------------------

USES = ("mount.fastener-withdrawal", "mount.fastener-combined", "mount.misuse-load", "mount.sideways-swing")
USE_RULES = [rule for rule in RULES if rule.id in USES]
fixings = st.fixed_dictionaries(
    {
        "mass": st.floats(2.0, 60.0),
        "reach": st.floats(0.0, 0.9),
        "rows": st.floats(0.05, 0.6),
        "length": st.floats(60.0, 90.0),
        "thread": st.floats(20.0, 50.0),
        "count": st.integers(2, 8),
        "top": st.integers(1, 4),
        "board": st.floats(0.0, 20.0),
        "diameter": st.sampled_from(["1/4 in", "5/16 in", "3/8 in"]),
        "species": st.sampled_from(["spruce-pine-fir", "southern-pine", "unknown"]),
        "columns": st.sampled_from(["0 mm", "406 mm"]),
        "wet": st.booleans(),
    }
).filter(lambda drawn: drawn["top"] < drawn["count"])


def uses(drawn: Mapping[str, Any]) -> dict[str, float]:
    sheets = (
        changed(SHEETS[0], {"mass": f"{drawn['mass']:.6f} kg"}),
        changed(SHEETS[1], {"mount.reach": f"{drawn['reach']:.6f} m", "mount.row_spacing": f"{drawn['rows']:.6f} m"}),
    )
    room = changed(ROOM, {
        "room.walls.0.board.thickness": f"{drawn['board'] + 0.01:.6f} mm",
        "room.walls.0.framing.species": drawn["species"],
        f"{FIXING}.length": f"{drawn['length']:.6f} mm",
        f"{FIXING}.thread": f"{drawn['thread']:.6f} mm",
        f"{FIXING}.count": drawn["count"],
        f"{FIXING}.top_count": drawn["top"],
        f"{FIXING}.diameter": drawn["diameter"],
        f"{FIXING}.column_spacing": drawn["columns"],
        f"{FIXING}.wet": drawn["wet"],
    })  # fmt: skip
    found = reviewed(room, sheets, USE_RULES)
    figures = {rule: found[rule, HERE].figure for rule in USES}
    return {rule: figure.value if figure is not None else float("inf") for rule, figure in figures.items()}


ANGLE_GAIN = 0.023
WORSE = {
    "heavier": {"mass": lambda value: value * 1.3},
    "farther": {"reach": lambda value: value + 0.15},
    "nearer rows": {"rows": lambda value: value * 0.8},
    "shorter": {"length": lambda value: value - 8.0},
    "less thread": {"thread": lambda value: value * 0.7},
    "fewer": {"count": lambda value: max(2, value - 1), "top": lambda value: max(1, value - 1)},
    "more board": {"board": lambda value: value + 6.0},
    "wet": {"wet": lambda _: True},
    "species unsaid": {"species": lambda _: "unknown"},
}


@pytest.mark.parametrize("way", WORSE)
@settings(max_examples=20, deadline=None)
@given(drawn=fixings)
def test_what_is_worse_is_never_judged_better(way: str, drawn: dict[str, Any]) -> None:
    worse = dict(drawn)
    for key, change in WORSE[way].items():
        worse[key] = change(drawn[key])
    better_of, worse_of = uses(drawn), uses(worse)
    for rule in USES:
        # More weight on each screw turns a swung load a little toward the grain, and by the published angle formula a
        # lag gains there up to 2.3 % of what it bears (tried over all sizes, woods and gaps); nothing else gains.
        slack = ANGLE_GAIN if (way, rule) == ("fewer", "mount.sideways-swing") else 1e-9
        assert worse_of[rule] >= better_of[rule] * (1.0 - slack), f"{way}: {rule}"


# -- the same fixing in other words ------------------------------------------------------------------------------------

INCHES = {
    f"{FIXING}.length": "76.2 mm", f"{FIXING}.thread": "50.8 mm", f"{FIXING}.diameter": "7.9375 mm",
    "room.walls.0.framing.spacing": "16 in", "room.walls.0.framing.member_width": "1.5 in",
    "room.walls.0.framing.member_depth": "3.5 in", "room.walls.0.board.thickness": "1/2 in",
    f"{FIXING}.column_spacing": "16 in",
}  # fmt: skip


def test_units_change_nothing() -> None:
    pounds = (changed(SHEETS[0], {"mass": "77.161791764707 lb", "depth": "3.149606299 in"}), SHEETS[1])
    here, there = reviewed(ROOM, SHEETS), reviewed(changed(ROOM, INCHES), pounds)
    for key, verdict in here.items():
        other = there[key]
        assert (verdict.kind, verdict.level) == (other.kind, other.level)
        if verdict.figure is not None:
            assert other.figure is not None
            assert other.figure.value == pytest.approx(verdict.figure.value, rel=1e-6)


def test_a_mirrored_ceiling_is_judged_alike() -> None:
    slope = {"shape": "mono-pitch", "low": "2.2 m", "high": "3.8 m"}
    one = changed(ABOVE, {"picture.projector.lens": {"from_left": "1.1 m", "from_front": "1 m", "height": "2 m"}})
    other = json.loads(json.dumps(one).replace("from_left", "from_right"))
    for room, side in ((one, "left"), (other, "right")):
        made_of = {key: value for key, value in ABOVE["room"]["ceiling"].items() if key not in {"shape", "height"}}
        room["room"]["ceiling"] = {**slope, "low_side": side, **made_of}
    here, there = reviewed(one, ABOVE_SHEETS), reviewed(other, ABOVE_SHEETS)
    for key, verdict in here.items():
        assert verdict.kind is there[key].kind
        if verdict.figure is not None:
            figure = there[key].figure
            assert figure is not None
            assert figure.value == pytest.approx(verdict.figure.value, rel=1e-9)


# -- refused where it stands ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (f"{MOUNTING}.accessories", "-20 kg"),
        (f"{MOUNTING}.extension", "-1 mm"),
        (f"{MOUNTING}.secondary_fall", "-300 mm"),
        (f"{MOUNTING}.sling_angle", "120 deg"),
        (f"{MOUNTING}.sling_angle", "400 deg"),
        (f"{MOUNTING}.sling_angle", "-10 deg"),
        (f"{MOUNTING}.drop", "-1 m"),
        (f"{MOUNTING}.breaking_load", "0 N"),
        (f"{FIXING}.edge_offset", "-2 mm"),
        (f"{FIXING}.column_spacing", "-2 mm"),
        (f"{FIXING}.member_thickness", "0 mm"),
        (f"{FIXING}.count", 0),
        (f"{FIXING}.top_count", 16),
        (f"{FIXING}.thread", "4 in"),
        (f"{FIXING}.engineer", "none yet"),
        (f"{FIXING}.anchor_approval", "tbd"),
        (f"{MOUNTING}.secondary", "rope"),
        (f"{MOUNTING}.strap", "no"),
        (f"{MOUNTING}.box", "listed"),
        ("treatments", [{"id": "foam", "kind": "absorber", "approval": "pending"}]),
    ],
)
def test_what_cannot_be_is_refused(path: str, value: object) -> None:
    with pytest.raises(ValueError, match=r"\d+: "):
        room_of(changed(ROOM, {path: value}), SHEETS)


def test_a_push_at_the_end_of_a_drop_is_told_and_without_a_drop_is_not() -> None:
    for drop, told in (("0.6 m", True), ("0 m", False)):
        figure = reviewed(changed(ABOVE, {f"{M}.drop": drop}), ABOVE_SHEETS)[
            "mount.fastener-withdrawal", "projector/beam"
        ].figure
        assert figure is not None
        assert any("sideways push" in words for words in figure.assumes) is told
