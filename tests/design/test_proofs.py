"""A text proves nothing: what somebody must be able to check is structured, or stated to be absent."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Any

import pytest

from roomlint.design.proofs import stated
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from roomlint.design.listening import Mounting

ROOM: dict[str, Any] = {
    "roomlint": 1,
    "room": {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.5 m"}},
    "loudspeakers": [{"id": "left", "mounting": {"on": "electrical-box", "fixing": {"into": "concrete"}}}],
    "treatments": [{"id": "foam", "kind": "absorber", "on": "left"}],
    "circuits": [{"id": "av"}],
}
M = "loudspeakers.0.mounting"


def mounting(changes: dict[str, object]) -> Mounting:
    found = room_of(changed(ROOM, changes)).design.loudspeakers[0].mounting
    assert found is not None
    return found


PROOFS = [
    f"{M}.secondary", f"{M}.strap", f"{M}.fixing.engineer", f"{M}.fixing.anchor_approval", "treatments.0.approval"
]  # fmt: skip


@pytest.mark.parametrize("key", PROOFS)
@pytest.mark.parametrize("said", ["no", "tbd", "none yet", "pending", "steel rope to a joist", True, 1])
def test_a_free_text_is_no_proof(key: str, said: object) -> None:
    with pytest.raises(ValueError, match="none"):
        room_of(changed(ROOM, {key: said}))


@pytest.mark.parametrize("key", PROOFS)
def test_a_proof_says_what_can_be_checked(key: str) -> None:
    with pytest.raises(ValueError, match="needs the key"):
        room_of(changed(ROOM, {key: {}}))


ENGINEER = {"by": "A. N. Engineer", "document": "sheet 3", "on": "2027-01-20"}
WAIVER = {"rule": "mount.held", "subject": "left", "because": "seen", "approved_by": "lead", "document": "sheet 3"}


@pytest.mark.parametrize("said", ["none", "None.", "n/a", "TBD", "to follow", "no", "-", "?", " ", "not  yet"])
@pytest.mark.parametrize(
    ("key", "whole", "part"),
    [
        (f"{M}.fixing.engineer", ENGINEER, "document"),
        (f"{M}.fixing.engineer", ENGINEER, "by"),
        (f"{M}.fixing.anchor_approval", {"document": "approval 1"}, "document"),
        (f"{M}.fixing.report", {"document": "report 1", "withdrawal": "900 N"}, "document"),
        (f"{M}.box", {"document": "listing 1", "marked_mass": "23 kg"}, "document"),
        ("treatments.0.approval", {"document": "test 1"}, "document"),
        (f"{M}.secondary", {"kind": "chain", "attached_to": "joist", "document": "sheet 4"}, "document"),
        ("waivers", WAIVER, "document"),
        ("waivers", WAIVER, "approved_by"),
    ],
)
def test_a_word_for_nothing_is_no_document_and_nobody(key: str, whole: dict[str, str], part: str, said: str) -> None:
    def given(value: dict[str, str]) -> object:
        return [value] if key == "waivers" else value

    room_of(changed(ROOM, {key: given(whole)}))
    with pytest.raises(ValueError, match="names nothing"):
        room_of(changed(ROOM, {key: given({**whole, part: said})}))


@pytest.mark.parametrize("said", ["none", "tbd", "-"])
def test_a_word_for_nothing_is_no_backing(said: str) -> None:
    with pytest.raises(ValueError, match="names nothing"):
        room_of(changed(ROOM, {f"{M}.fixing.backing": said}))


def test_none_states_absence_which_is_not_the_same_as_unsaid() -> None:
    said = mounting({f"{M}.secondary": "none"})
    assert said.secondary is not None
    assert said.secondary.absent
    assert stated(said.secondary) is None
    assert mounting({}).secondary is None


def test_a_secondary_says_what_it_is_and_what_it_is_attached_to() -> None:
    rope = {"kind": "wire-rope", "attached_to": "joist", "rating": "500 N", "on": "2027-01-20", "by": "A. N. Installer"}
    second = stated(mounting({f"{M}.secondary": rope}).secondary)
    assert second is not None
    assert not second.absent
    assert (second.kind, second.attached_to, second.on) == ("wire-rope", "joist", date(2027, 1, 20))
    assert second.rating is not None
    assert second.rating.value == 500.0
    assert second.words == "wire rope to joist"


def test_an_engineer_is_a_person_and_a_document() -> None:
    fixing = mounting({f"{M}.fixing.engineer": {"by": "A. N. Engineer", "document": "sheet 3"}}).fixing
    assert fixing is not None
    assert fixing.engineer is not None
    assert (fixing.engineer.by, fixing.engineer.document) == ("A. N. Engineer", "sheet 3")
    with pytest.raises(ValueError, match="'by'"):
        mounting({f"{M}.fixing.engineer": {"document": "sheet 3"}})


def test_a_panels_approval_names_its_class() -> None:
    (panel,) = room_of(
        changed(ROOM, {"treatments.0.approval": {"document": "12", "class": "B-s1,d0"}})
    ).design.treatments
    assert panel.approval is not None
    assert panel.approval.fire_class == "B-s1,d0"


def test_a_circuit_can_say_that_it_has_no_residual_current_device() -> None:
    def circuit(**keys: str) -> Any:
        return room_of(changed(ROOM, {f"circuits.0.{key}": value for key, value in keys.items()})).design.circuits[0]

    assert (circuit(rcd="none").rcd_a, circuit(rcd="none").no_rcd) == (None, True)
    assert (circuit().rcd_a, circuit().no_rcd) == (None, False)
    assert circuit(rcd="30 mA").rcd_a.value == pytest.approx(0.03)
    assert not circuit(rcd="30 mA").no_rcd


STAND = {
    "roomlint_product": 1, "id": "stand-600", "kind": "stand", "height": "0.60 m", "mass": "8 kg",
    "stand": {"base_width": "0.30 m", "base_depth": "0.35 m"},
}  # fmt: skip


@pytest.mark.parametrize("key", ["stand", "product"])
def test_a_stand_has_a_sheet_with_the_base_it_stands_on(key: str) -> None:
    found = room_of(changed(ROOM, {M: {"on": "stand", key: "stand-600"}}), (STAND,)).design.loudspeakers[0].mounting
    assert found is not None
    assert found.product is None
    assert found.stand is not None
    assert found.stand.stand is not None
    assert found.stand.stand.base_width_m is not None
    assert found.stand.stand.base_width_m.value == 0.3


def test_a_stand_on_a_wall_is_a_contradiction() -> None:
    with pytest.raises(ValueError, match="on: stand"):
        room_of(changed(ROOM, {M: {"on": "left", "stand": "stand-600"}}), (STAND,))


def test_racks_and_panels_are_held_like_devices() -> None:
    held = {"on": "left", "fixing": {"fastener": "drywall-screw", "into": "board"}}
    racks = {"racks": [{"id": "rack", "mounting": held}]}
    made = room_of(changed(ROOM, {"electronics": racks, "treatments.0.mounting": held})).design
    for thing in (*made.racks, *made.treatments):
        assert thing.mounting is not None
        assert thing.mounting.fixing is not None
        assert thing.mounting.fixing.fastener == "drywall-screw"
