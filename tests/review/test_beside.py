"""Product sheets that lie beside a room are found without a house file."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from roomlint.review.desk import Desk

if TYPE_CHECKING:
    from pathlib import Path

ROOM = """\
roomlint: 1
room: {size: {width: 4 m, length: 5 m}}
loudspeakers:
  - {id: left, product: box}
"""
BOX = "roomlint_product: 1\nid: box\nkind: loudspeaker\nwidth: 0.2 m\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.room.yaml").write_text(ROOM, encoding="utf-8")
    return tmp_path


def told(room: str = "a.room.yaml") -> list[str]:
    return [problem.text for problem in Desk().open_room(room)[2]]


def test_a_sheet_beside_the_room_is_found(folder: Path) -> None:
    assert told() == ["no product sheet has the id 'box'; none is known."]
    (folder / "box.product.yaml").write_text(BOX, encoding="utf-8")
    assert told() == []


def test_a_sheet_in_the_folder_products_beside_the_room_is_found(folder: Path) -> None:
    (folder / "products").mkdir()
    (folder / "products" / "box.product.yaml").write_text(BOX, encoding="utf-8")
    assert told() == []


def test_a_house_that_names_its_folders_is_the_only_shelf(folder: Path) -> None:
    (folder / "box.product.yaml").write_text(BOX, encoding="utf-8")
    (folder / "house.yaml").write_text("roomlint_house: 1\nproducts: [sheets]\n", encoding="utf-8")
    (folder / "sheets").mkdir()
    assert told() == ["no product sheet has the id 'box'; none is known."]
    # One that names none leaves the sheets beside the room in force.
    (folder / "house.yaml").write_text("roomlint_house: 1\ngate: error\n", encoding="utf-8")
    assert told() == []


def test_two_sheets_of_one_id_beside_a_room_are_told(folder: Path) -> None:
    (folder / "products").mkdir()
    for place in (folder, folder / "products"):
        (place / "box.product.yaml").write_text(BOX, encoding="utf-8")
    assert told() == ["product 'box' has two sheets; the other is box.product.yaml."]


def test_a_sheet_beside_a_room_that_cannot_be_read_is_told(folder: Path) -> None:
    (folder / "box.product.yaml").write_text("roomlint_product: 1\nid: box\n", encoding="utf-8")
    assert any("needs the key 'kind'" in text for text in told())


def test_a_link_that_leads_out_of_the_folder_is_not_followed(folder: Path) -> None:
    outside = folder.parent / "outside.product.yaml"
    outside.write_text(BOX, encoding="utf-8")
    (folder / "box.product.yaml").symlink_to(outside)
    assert any("leads out" in text for text in told())


def test_sheets_beside_one_room_are_not_those_of_another(folder: Path) -> None:
    (folder / "other").mkdir()
    (folder / "other" / "b.room.yaml").write_text(ROOM, encoding="utf-8")
    (folder / "box.product.yaml").write_text(BOX, encoding="utf-8")
    desk = Desk()
    assert [problem.text for problem in desk.open_room("a.room.yaml")[2]] == []
    assert len(desk.open_room("other/b.room.yaml")[2]) == 1


def test_a_sheet_that_cannot_be_read_stops_the_rooms_that_need_it_and_is_told_by_all(folder: Path) -> None:
    (folder / "box.product.yaml").write_text(BOX, encoding="utf-8")
    (folder / "bare.room.yaml").write_text(ROOM.partition("loudspeakers")[0], encoding="utf-8")
    for name, text, of_box in (
        ("other", "roomlint_product: 1\nid: other\nkind: [\n", False),  # no YAML
        ("other", "roomlint_product: 1\nid: other\nkind: loudspeaker\nwidth: banana\n", False),
        ("box", BOX.replace("0.2 m", "banana"), True),
        ("box", BOX.replace("loudspeaker", "speaker"), True),  # told at the sheet alone, not at who uses it too
        ("twin", BOX, True),  # two sheets of one id: which of them is meant, nobody knows
    ):
        sheet = folder / f"{name}.product.yaml"
        sheet.write_text(text, encoding="utf-8")
        desk = Desk()
        design, _, problems = desk.open_room("a.room.yaml")
        assert (design is None) is of_box
        assert [problem.place.file for problem in problems] == [sheet.name]
        design, _, others = desk.open_room("bare.room.yaml")
        assert design is not None
        assert others == problems
        sheet.unlink()
        (folder / "box.product.yaml").write_text(BOX, encoding="utf-8")
