"""Opens files into designs: reads, checks and resolves room files, product sheets and house files, each once."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import PurePosixPath
from typing import TYPE_CHECKING

from roomlint.design.house import House
from roomlint.design.read import read_design, read_house, read_product
from roomlint.source.files import (
    HOUSE_NAME,
    HOUSE_OTHER_NAME,
    PRODUCT_ENDINGS,
    Disk,
    Files,
    Unreadable,
    house_of,
    misnamed,
    root_of,
    whole,
)
from roomlint.source.place import Problem
from roomlint.source.tree import read_tree

if TYPE_CHECKING:
    from datetime import date

    from roomlint.design.model import Design
    from roomlint.design.products import Product
    from roomlint.review.rule import AnyRule
    from roomlint.source.node import Node
    from roomlint.source.place import Place

BESIDE = "products"
"""The folder beside a room file in which product sheets are found without a house file."""


@dataclass(frozen=True, slots=True)
class Shelf:
    """Product sheets, what is wrong with any of them, and the ids of those that no room may rest on."""

    products: dict[str, Product] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    faulty: set[str] = field(default_factory=set)


class Desk:
    """Where one run opens its files; house files and product sheets are opened once and kept."""

    def __init__(
        self,
        files: Files | None = None,
        house: str | None = None,
        rules: tuple[AnyRule, ...] | None = None,
        today: date | None = None,
    ) -> None:
        """`rules` are all that are installed: what a house file names is checked against them.

        `today` is the day that the last days of the house's decisions are held against.
        """
        self.files: Files = files or Disk()
        self._house = house
        self._rules = rules
        self._today = today
        self._houses: dict[str | None, tuple[House, list[Problem]]] = {}
        self._shelves: dict[str, Shelf] = {}

    def open_room(self, path: str) -> tuple[Design | None, House, list[Problem]]:
        """Return the design of a room file, its house and all problems; None where one of them touches the room.

        A sheet that cannot be read is told by every room of its shelf, and stops those that need it.
        """
        house, of_house = self.open_house(self._house or house_of(path, self.files))
        shelf = self._shelf(house) if house.products else self._beside(path)
        problems = [*of_house, *shelf.problems]
        node, own = self._tree(path, root_of(path))
        if node is None or own:
            return None, house, [*problems, *own]
        design, own = read_design(node, path, shelf.products)
        rests = any(product.id in shelf.faulty for product in design.products)
        return None if of_house or own or rests else design, house, [*problems, *own]

    def open_house(self, path: str | None) -> tuple[House, list[Problem]]:
        """Return the standing decisions of a house file; an empty house when there is none."""
        if path not in self._houses:
            self._houses[path] = self._read_house(path) if path is not None else (House(), [])
        return self._houses[path]

    def _read_house(self, path: str) -> tuple[House, list[Problem]]:
        if path != self._house and PurePosixPath(path).name == HOUSE_OTHER_NAME:
            text = f"a house file's name is {HOUSE_NAME}; this one was not read. Rename it."
            return House(file=path), [Problem(whole(path), text)]
        # A house file that was named on the command line may stand anywhere; one that was found may not lead away.
        node, problems = self._tree(path, None if path == self._house else root_of(path))
        if node is None or problems:
            return House(file=path), problems
        house, problems = read_house(node, path)
        if not problems and self._rules is not None:
            from roomlint.review.house_check import check_house  # needed only where there is a house file

            problems = check_house(house, self._rules)
        if self._today is not None:
            house.end(self._today)
        return house, problems

    def _shelf(self, house: House) -> Shelf:
        if house.file not in self._shelves:
            self._shelves[house.file] = self._read_shelf(house)
        return self._shelves[house.file]

    def _beside(self, path: str) -> Shelf:
        """Return the sheets beside a room file and in a folder `products` beside it: no house file says where else."""
        home = str(PurePosixPath(path).parent)
        if f"{home}/" not in self._shelves:
            shelf = self._shelves[f"{home}/"] = Shelf()
            for folder in (home, str(PurePosixPath(home) / BESIDE)):
                if self.files.is_folder(folder) and self.files.is_within(folder, root_of(path)):
                    self._read_folder(folder, home, shelf)
        return self._shelves[f"{home}/"]

    def _read_folder(self, folder: str, home: str, shelf: Shelf, place: Place | None = None) -> None:
        try:
            names = self.files.names(folder)
        except Unreadable as error:
            text = f"product folder {PurePosixPath(folder).name!r}: {error}"
            shelf.problems.append(Problem(place or whole(folder), text))
            return
        for sheet in names:
            path = str(PurePosixPath(folder) / sheet)
            if sheet.endswith(PRODUCT_ENDINGS):
                self._read_sheet(path, home, shelf)
            elif text := misnamed(sheet, PRODUCT_ENDINGS):
                shelf.problems.append(Problem(whole(path), text))

    def _read_shelf(self, house: House) -> Shelf:
        shelf = Shelf()
        home = str(PurePosixPath(house.file).parent)
        for index, name in enumerate(house.products):
            place = house.at.value["products"].value[index].place if house.at is not None else whole(house.file)
            folder = str(PurePosixPath(home) / name)
            leaves = PurePosixPath(name).is_absolute() or ".." in PurePosixPath(name).parts
            if leaves or not self.files.is_within(folder, home):
                text = f"the product folder {name!r} lies outside the house file's folder; it was not read."
                shelf.problems.append(Problem(place, text))
                continue
            self._read_folder(folder, home, shelf, place)
        return shelf

    def _read_sheet(self, path: str, home: str, shelf: Shelf) -> None:
        if not self.files.is_within(path, home):
            text = "this link leads out of the house file's folder; it was not read."
            shelf.problems.append(Problem(whole(path), text))
            return
        node, found = self._tree(path)
        if node is None or found:
            shelf.problems.extend(found)
            return
        product, found = read_product(node, path)
        shelf.problems.extend(found)
        if not product.id:
            return
        if found or product.id in shelf.products:
            shelf.faulty.add(product.id)
        if product.id in shelf.products:
            text = f"product {product.id!r} has two sheets; the other is {shelf.products[product.id].place.file}."
            shelf.problems.append(Problem(product.place, text))
            return
        shelf.products[product.id] = product

    def _tree(self, path: str, inside: str | None = None) -> tuple[Node | None, list[Problem]]:
        if inside is not None and not self.files.is_within(path, inside):
            return None, [Problem(whole(path), "this link leads out of the repository; it was not read.")]
        try:
            data = self.files.read(path)
        except Unreadable as error:
            return None, [Problem(whole(path), str(error))]
        return read_tree(data, path)
