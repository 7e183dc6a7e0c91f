"""Opens files into designs: reads, checks and resolves room files, product sheets and house files, each once."""

from __future__ import annotations

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

Shelf = dict[str, "Product"]
BESIDE = "products"
"""The folder beside a room file in which product sheets are found without a house file."""


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
        self._shelves: dict[str, tuple[Shelf, list[Problem]]] = {}

    def open_room(self, path: str) -> tuple[Design | None, House, list[Problem]]:
        """Return the design of a room file and its house; with problems, the design is not to be reviewed."""
        house, problems = self.open_house(self._house or house_of(path, self.files))
        shelf, sheet_problems = self._shelf(house) if house.products else self._beside(path)
        problems = [*problems, *sheet_problems]
        node, own = self._tree(path, root_of(path))
        if node is None or own:
            return None, house, [*problems, *own]
        design, own = read_design(node, path, shelf)
        return design, house, [*problems, *own]

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

    def _shelf(self, house: House) -> tuple[Shelf, list[Problem]]:
        if house.file not in self._shelves:
            self._shelves[house.file] = self._read_shelf(house)
        return self._shelves[house.file]

    def _beside(self, path: str) -> tuple[Shelf, list[Problem]]:
        """Return the sheets beside a room file and in a folder `products` beside it: no house file says where else."""
        home = str(PurePosixPath(path).parent)
        if f"{home}/" not in self._shelves:
            shelf: Shelf = {}
            problems: list[Problem] = []
            for folder in (home, str(PurePosixPath(home) / BESIDE)):
                if self.files.is_folder(folder) and self.files.is_within(folder, root_of(path)):
                    self._read_folder(folder, home, shelf, problems)
            self._shelves[f"{home}/"] = shelf, problems
        return self._shelves[f"{home}/"]

    def _read_folder(
        self, folder: str, home: str, shelf: Shelf, problems: list[Problem], place: Place | None = None
    ) -> None:
        try:
            names = self.files.names(folder)
        except Unreadable as error:
            problems.append(Problem(place or whole(folder), f"product folder {PurePosixPath(folder).name!r}: {error}"))
            return
        for sheet in names:
            path = str(PurePosixPath(folder) / sheet)
            if sheet.endswith(PRODUCT_ENDINGS):
                self._read_sheet(path, home, shelf, problems)
            elif text := misnamed(sheet, PRODUCT_ENDINGS):
                problems.append(Problem(whole(path), text))

    def _read_shelf(self, house: House) -> tuple[Shelf, list[Problem]]:
        shelf: Shelf = {}
        problems: list[Problem] = []
        home = str(PurePosixPath(house.file).parent)
        for index, name in enumerate(house.products):
            place = house.at.value["products"].value[index].place if house.at is not None else whole(house.file)
            folder = str(PurePosixPath(home) / name)
            leaves = PurePosixPath(name).is_absolute() or ".." in PurePosixPath(name).parts
            if leaves or not self.files.is_within(folder, home):
                text = f"the product folder {name!r} lies outside the house file's folder; it was not read."
                problems.append(Problem(place, text))
                continue
            self._read_folder(folder, home, shelf, problems, place)
        return shelf, problems

    def _read_sheet(self, path: str, home: str, shelf: Shelf, problems: list[Problem]) -> None:
        if not self.files.is_within(path, home):
            text = "this link leads out of the house file's folder; it was not read."
            problems.append(Problem(whole(path), text))
            return
        node, found = self._tree(path)
        if node is None or found:
            problems += found
            return
        product, found = read_product(node, path)
        problems += found
        if not product.id:
            return
        if product.id in shelf:
            text = f"product {product.id!r} has two sheets; the other is {shelf[product.id].place.file}."
            problems.append(Problem(product.place, text))
            return
        shelf[product.id] = product

    def _tree(self, path: str, inside: str | None = None) -> tuple[Node | None, list[Problem]]:
        if inside is not None and not self.files.is_within(path, inside):
            return None, [Problem(whole(path), "this link leads out of the repository; it was not read.")]
        try:
            data = self.files.read(path)
        except Unreadable as error:
            return None, [Problem(whole(path), str(error))]
        return read_tree(data, path)
