"""Reads a tree into a design, a product or a house: the one entry from text to model."""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING

from roomlint.design.house import House
from roomlint.design.model import Design
from roomlint.design.products import Product, ProductSheet
from roomlint.design.quantity import Origin
from roomlint.design.reader import Book, read_element

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.source.node import Node
    from roomlint.source.place import Problem


def read_design(node: Node, file: str, products: Mapping[str, Product]) -> tuple[Design, list[Problem]]:
    """Return the design of a tree, and every problem found on the way; with problems it is not to be reviewed."""
    book = Book(file, node, products)
    project = node.get("project")
    code = project.get("code") if project is not None else None
    ident = code.value if code is not None else None
    ident = (
        ident if isinstance(ident, str) else PurePath(file).name.removesuffix(".room.yaml").removesuffix(".room.yml")
    )
    design = read_element(Design, node, book, ident) or Design.empty(node, ident)
    design.__dict__.update({"file": file, "products": tuple(book.used.values()), "worked": tuple(book.worked)})
    return design, book.answer(node, "room")


def read_product(node: Node, file: str) -> tuple[Product, list[Problem]]:
    """Return the product of a sheet, and every problem found on the way."""
    book = Book(file, node, origin=Origin.SHEET)
    product = read_element(ProductSheet, node, book) or ProductSheet.empty(node, "")
    return product, book.answer(node, "product")


def read_house(node: Node, file: str) -> tuple[House, list[Problem]]:
    """Return the standing decisions of a house file, and every problem found on the way."""
    book = Book(file, node)
    house = read_element(House, node, book) or House(file, node)
    house.__dict__["file"] = file
    return house, book.answer(node, "house")
