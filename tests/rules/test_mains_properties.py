"""What holds of the whole chapter mains: knowledge only grows, every key matters, worse never reads better."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mains_rooms import AUSTRALIAN, BRITISH, CODE, GERMAN, OUTLET, RACK, ROOM, SEVEN, VACUUM, C

from roomlint.design.along import Along
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

RULES = [rule for rule in load_book().rules if rule.chapter == "mains"]
AMERICAN_2017 = changed(ROOM, {CODE: "nec2017"})
AMERICAN_2026 = changed(ROOM, {CODE: "nec2026"})
BASES = {"nec2023": ROOM, "nec2017": AMERICAN_2017, "nec2026": AMERICAN_2026, "iec60364": GERMAN, "bs7671": BRITISH,
         "asnzs3000": AUSTRALIAN}  # fmt: skip
DEDICATED = {f"{C}.dedicated": True, f"{C}.loads.1": None, f"{OUTLET}.outlets": 1}
WRONG: dict[str, dict[str, Any]] = {
    "as it is": {},
    "overloaded": {f"{VACUUM}.current": "30 A", f"{RACK}.plug": "bs1363", f"{RACK}.fuse": "3 A"},
    "on the edge": {f"{VACUUM}.current": "10 A", f"{RACK}.cord_concealed": True, f"{RACK}.listed_inlet_kit": False},
    "thin and long": {f"{C}.conductor": "1.5 mm2", f"{C}.length": "80 m"},
    "aluminium": {f"{C}.material": "aluminium", f"{C}.rcd": "300 mA", f"{OUTLET}.sink": "1 m"},
    "surrounded": {f"{C}.installation": "in-insulation", f"{C}.feeder_drop": "4.5 %", f"{C}.panel": "subpanel"},
    "spur": {f"{OUTLET}.spur": "unfused"},
    "in a bathroom": {f"{OUTLET}.place": "bathroom", f"{OUTLET}.bath": "3 m"},
    "radial": {f"{C}.arrangement": "radial", f"{C}.new": False, f"{C}.rcd": "100 mA"},
    "lit": {f"{C}.feeds_lighting": True, f"{C}.lighting": "900 VA"},
    "claimed dedicated": {f"{C}.dedicated": True},
    "dedicated": {**DEDICATED, f"{OUTLET}.rating": "10 A"},
    "fastened": {f"{RACK}.connection": "fastened", f"{RACK}.receptacle": None, f"{RACK}.current": "12 A"},
    "unprotected": {
        f"{C}.afci": False, f"{C}.gfci": False, f"{C}.rcd": "none", f"{OUTLET}.place": "garage",
        f"{VACUUM}.linear_supply": True, f"{C}.sequenced": False, f"{C}.earth_lifted": True, f"{OUTLET}.dimmed": True,
        f"{OUTLET}.facing_up": True, f"{OUTLET}.tamper_resistant": False,
    },
    "of another form": {f"{OUTLET}.rating": "32 A", f"{OUTLET}.form": "iec60309-32", f"{RACK}.plug": "cee7-16"},
    "low": {f"{RACK}.current": None, f"{RACK}.apparent_power": "60 VA", f"{C}.rating": "10 A"},
}  # fmt: skip
"""Ways for a circuit to be wrong, or different: each is tried in every code."""
LIKE_2023 = {"nec2017", "nec2026"}
ROOMS = [
    pytest.param(changed(base, wrong), id=f"{code}-{name}")
    for code, base in BASES.items()
    for name, wrong in WRONG.items()
    if code not in LIKE_2023 or name in {"as it is", "unprotected"}
]
RANK = {"pass": 0, "notApplicable": 0, "open": 1, "review": 2, "note": 3, "warning": 4, "error": 5}


def judged(data: dict[str, Any]) -> dict[tuple[str, str], str]:
    """Return kind, or level of a failure, by rule and subject."""
    outcome = review_room(room_of(data, (SEVEN,)), RULES)
    assert not outcome.troubles, outcome.troubles
    return {(v.rule, v.subject): str(v.level or v.kind) for v in outcome.verdicts}


def keys_of(data: dict[str, Any]) -> list[str]:
    """Return the dotted path of every key of the circuit and below, but ids, and of what decides which rules hold."""
    found = ["circuits", CODE, "room.level"]
    circuit = data["circuits"][0]
    found += [f"{C}.{key}" for key in circuit if key != "id"]
    for part in ("receptacles", "loads"):
        for number, one in enumerate(circuit.get(part, ())):
            found += [f"{C}.{part}.{number}.{key}" for key in one if key != "id"]
    return found


def without(data: dict[str, Any], path: str) -> dict[str, Any]:
    """Return a room without a key, and without what refers to it."""
    taken = {path: None}
    if path == f"{C}.receptacles":
        loads = range(len(data["circuits"][0].get("loads", ())))
        taken |= {f"{C}.loads.{number}.receptacle": None for number in loads}
    return changed(data, taken)


@pytest.mark.parametrize("data", ROOMS)
def test_a_key_that_is_taken_out_never_turns_a_failure_or_a_pass_into_silence(data: dict[str, Any]) -> None:
    before = judged(data)
    for path in keys_of(data):
        after = judged(without(data, path))
        for (rule, subject), was in before.items():
            now = after.get((rule, subject))
            if now is None:
                # The subject went with the key: then somebody is asked for it.
                kinds = {kind for (other, _), kind in after.items() if other == rule}
                assert was == "notApplicable" or kinds - {"notApplicable", "pass"}, (path, rule, subject, was)
                continue
            if path in {f"{RACK}.current", f"{RACK}.apparent_power"}:
                continue  # the product sheet speaks in its place, and what contradicted the sheet is gone
            if RANK[was] >= RANK["review"]:
                assert RANK[now] >= RANK["open"], (path, rule, subject, was, now)
            if was == "pass":
                assert now != "notApplicable", (path, rule, subject, was, now)


OTHER_VALUES: dict[str, list[object]] = {
    "rating": ["6 A"], "voltage": ["100 V"], "conductor": ["1.0 mm2"], "material": ["aluminium"], "length": ["150 m"],
    "installation": ["in-insulation"], "arrangement": ["radial"], "dedicated": [True], "feeds_lighting": [True],
    "lighting": ["3000 VA"], "new": [False], "afci": [False], "gfci": [True], "rcd": ["300 mA"],
    "sequenced": [False, True],
    "earth_lifted": [True], "panel": ["subpanel"], "feeder_drop": ["15 %"], "form": ["iec60309-32"], "outlets": [1, 2],
    "place": ["garage"], "sink": ["0.5 m"], "bath": ["0.3 m"],
    "spur": ["unfused"], "height": ["1.9 m"], "facing_up": [True], "reachable": [False], "listed_for_floor": [True],
    "tamper_resistant": [False], "dimmed": [True], "feeds": ["nobody"], "apparent_power": ["1200 VA"],
    "current": ["60 A"], "continuous": [True, False], "connection": ["fastened"], "plug": ["cee7-16"], "fuse": ["3 A"],
    "receptacle": [None], "cord_concealed": [True], "listed_inlet_kit": [True], "linear_supply": [True, False],
}  # fmt: skip
ELSEWHERE = {"wall", *Along.KEYS, "in_cabinet", "what", "set_back"}
"""Keys that other chapters judge or that say nothing without a wall, and one that is a name."""
WHOLE = {"id", "receptacles", "loads", "units", "unit"}


def test_every_key_of_a_circuit_changes_some_verdict() -> None:
    from roomlint.design.supply import Circuit, Load, Receptacle

    rooms = [changed(base, wrong) for base in BASES.values() for wrong in WRONG.values()]
    seen = [(data, judged(data)) for data in rooms]
    for owner, at in ((Circuit, C), (Load, RACK), (Receptacle, OUTLET)):
        for key in owner.KEYS.keys() - ELSEWHERE - WHOLE:
            values = [None] if key == "feeds" else OTHER_VALUES[key]
            assert any(
                judged(other) != was
                for data, was in seen
                for value in values
                if (other := changed(data, {f"{at}.{key}": value})) != data and readable(other)
            ), f"{at}.{key}"


def readable(data: dict[str, Any]) -> bool:
    """Whether a file holds together: two statements of one load may contradict each other."""
    try:
        room_of(data, (SEVEN,))
    except ValueError:
        return False
    return True


def worse(better: dict[tuple[str, str], str], other: dict[tuple[str, str], str], *, but: frozenset[str]) -> None:
    """Hold that no rule reads better in the worse room; a consequence may wait for its cause."""
    for (rule, subject), was in better.items():
        now = other[rule, subject]
        if rule not in but and RANK[was] >= RANK["note"]:
            assert RANK[now] >= RANK[was] or now == "open", (rule, subject, was, now)


@given(
    base=st.sampled_from(sorted(BASES)),
    amps=st.tuples(st.floats(0.5, 40.0), st.floats(0.0, 20.0)),
    metres=st.tuples(st.floats(1.0, 120.0), st.floats(0.0, 60.0)),
    sizes=st.tuples(st.integers(0, 5), st.integers(0, 5)),
)
@settings(max_examples=60, deadline=None)
def test_more_load_a_longer_way_and_a_thinner_wire_are_never_better(
    base: str, amps: tuple[float, float], metres: tuple[float, float], sizes: tuple[int, int]
) -> None:
    table = (1.0, 1.5, 2.5, 4.0, 6.0, 10.0)
    wire = sorted(sizes)

    def circuit(current: float, length: float, size: int) -> dict[tuple[str, str], str]:
        return judged(
            changed(
                BASES[base],
                {
                    f"{VACUUM}.current": f"{current:.4f} A",
                    f"{C}.length": f"{length:.4f} m",
                    f"{C}.conductor": f"{table[size]} mm2",
                },
            )
        )

    light = circuit(amps[0], metres[0], wire[1])
    for heavy in (
        circuit(sum(amps), metres[0], wire[1]),
        circuit(amps[0], sum(metres), wire[1]),
        circuit(amps[0], metres[0], wire[0]),
    ):
        worse(light, heavy, but=frozenset())


@pytest.mark.parametrize("base", BASES.values(), ids=BASES)
def test_the_answer_does_not_depend_on_the_units(base: dict[str, Any]) -> None:
    volts = float(base["circuits"][0]["voltage"].split()[0])
    metric = {f"{C}.length": "15.24 m", f"{OUTLET}.height": "400 mm", f"{VACUUM}.current": "4 A"}
    other = {
        f"{C}.length": "50 ft", f"{OUTLET}.height": "15.748 in", f"{VACUUM}.current": "4000 mA",
        f"{C}.voltage": f"{volts / 1000} kV", f"{RACK}.current": "9000 mA",
    }  # fmt: skip
    assert judged(changed(base, metric)) == judged(changed(base, other))


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({f"{RACK}.current": "0.1 A", f"{RACK}.apparent_power": "1800 VA"}, "1800 VA at 120 V are 15.0 A, not 0.1 A"),
        ({"project.region": "uk"}, "nec2023 is not in force in region 'uk'"),
        ({"project.region": "eu", CODE: "nec2026"}, "nec2026 is not in force in region 'eu'"),
        ({"project.region": "us", CODE: "bs7671"}, "bs7671 is not in force in region 'us'"),
        ({f"{C}.rcd": "-30 mA"}, "'-30 mA' is out of range"),
        ({f"{C}.feeder_drop": "50 %"}, "'50 %' is out of range"),
        ({f"{RACK}.fuse": "32 A"}, "'32 A' is out of range"),
        ({f"{C}.lighting": "-5 VA"}, "'-5 VA' is out of range"),
    ],
    ids=str,
)
def test_statements_that_contradict_each_other_are_errors_of_the_file(changes: dict[str, Any], told: str) -> None:
    with pytest.raises(ValueError, match=rf"^\d+: {told}"):
        room_of(changed(ROOM, changes), (SEVEN,))
