"""Reads a checked tree into a design: the one entry from text to model."""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING

from roomlint.design.model import Design
from roomlint.design.read_listening import read_loudspeakers, read_picture, read_seats, read_subwoofers
from roomlint.design.read_record import (
    read_calibration,
    read_handover,
    read_modes,
    read_project,
    read_survey,
    read_waivers,
)
from roomlint.design.read_shell import read_shell, read_treatments
from roomlint.design.read_supply import (
    read_amplifiers,
    read_cables,
    read_circuits,
    read_processor,
    read_raceways,
    read_racks,
)
from roomlint.design.reader import Book, Reader

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.products import Product
    from roomlint.source.place import Problem
    from roomlint.source.tree import Node


def read_design(node: Node, file: str, products: Mapping[str, Product]) -> tuple[Design, list[Problem]]:
    """Return the design of a tree that has passed the schema, and every problem found on the way.

    The design is only to be reviewed when there are no problems.
    """
    book = Book(file, products=products)
    root = Reader(node, book)
    project = read_project(root, PurePath(file).name.removesuffix(".room.yaml"))
    survey = read_survey(root)
    room = root.below("room") or root
    shell = read_shell(room, project.id)
    seats = read_seats(root)
    book.seats = {seat.id: seat for seat in seats}
    loudspeakers = read_loudspeakers(root)
    subwoofers = read_subwoofers(root)
    sources = tuple(source.id for source in (*loudspeakers, *subwoofers))
    design = Design(
        at=node,
        id=project.id,
        file=file,
        project=project,
        survey=survey,
        shell=shell,
        layout=root.text("layout"),
        seats=seats,
        loudspeakers=loudspeakers,
        subwoofers=subwoofers,
        picture=read_picture(root),
        treatments=read_treatments(root),
        processor=read_processor(root),
        amplifiers=read_amplifiers(root, sources),
        racks=read_racks(root),
        raceways=read_raceways(root),
        cables=read_cables(root),
        circuits=read_circuits(root),
        modes=read_modes(root),
        calibration=read_calibration(root, sources),
        handover=read_handover(root),
        waivers=read_waivers(root),
    )
    _resolve_names(root, design)
    return design, sorted(book.problems)


def _resolve_names(root: Reader, design: Design) -> None:
    """Tell of every id that names no element: what a rack holds, what a cable joins, what a load feeds."""
    known = {element.id for element in design.named_elements()}
    electronics = root.below("electronics")
    if electronics is not None:
        for rack in electronics.each("racks"):
            rack.names("contains", known, "element")
    for cable in root.each("cables"):
        cable.one_of("from", known, "element")
        cable.one_of("to", known, "element")
    for circuit in root.each("circuits"):
        for load in circuit.each("loads"):
            load.one_of("feeds", known, "element")
