"""The fixing of one thing in wood: what the design says of its screws, gathered for their capacity."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.quantity import Assumption, Quantity, assumed, exact
from roomlint.figures import fasteners, timber
from roomlint.figures.seated_screw import EurocodeScrew, SeatedScrew

if TYPE_CHECKING:
    from roomlint.design.listening import Fixing
    from roomlint.design.products import MountData
    from roomlint.design.shell import Surface
    from roomlint.figures.fasteners import FastenerKind
    from roomlint.measure.world import World

SCREWS: Final[dict[str, FastenerKind]] = {"lag-screw": "lag screw", "wood-screw": "wood screw"}
EUROPE: Final = frozenset({"eu", "uk"})
"""Where wood of which nobody says the grade is judged by the Eurocode."""
PARTIAL_FACTORS: Final = "EN 1995-1-1 with gamma_M 1.3, kmod of {} and weight times 1.35; the national annex may differ"
_ROOM_DEGC: Final = 20.0
_HOT_ATTIC_DEGC: Final = 65.0
"""The hottest that the factors are published for: what an attic is taken to reach when nobody says."""


@dataclass(frozen=True, slots=True)
class WoodFixing:
    """A lag or wood screw through a plate and board into wood; sizes as quantities of the design, in m."""

    kind: FastenerKind
    diameter: Quantity
    length: Quantity
    thread: Quantity
    plate: Quantity
    board: Quantity
    member: Quantity
    hottest: Quantity
    wood: Quantity
    """Specific gravity by the American standard, characteristic density in kg/m3 by the Eurocode."""
    eurocode: bool
    strength_class: str
    """By the Eurocode: the class that is stated or taken."""
    apart: Quantity | None
    """Distance of the outermost rows, where anybody says it."""
    group: int
    rows: int
    along: bool
    """Whether a load straight down runs along the grain: in a stud it does, in everything else across."""
    plywood: bool
    end_grain: bool
    wet: bool

    @classmethod
    def of(cls, fixing: Fixing, surface: Surface, mount: MountData | None, region: str | None) -> WoodFixing:
        """Gather the fixing; what nobody says is missing, and only the wood is assumed: the lightest there is."""
        eurocode = by_eurocode(surface, region)
        count, rows = fixing.count or 1, 1
        if fixing.count is not None and fixing.top_count is not None:
            rows = math.ceil(fixing.count / fixing.top_count)
        spacings = [fixing.row_spacing_m, mount.row_spacing_m if mount is not None else None]
        given = [one for one in spacings if one is not None]
        return cls(
            kind=SCREWS[need(fixing.fastener, fixing, "fastener")],
            diameter=need(fixing.diameter_m, fixing, "diameter"),
            length=need(fixing.length_m, fixing, "length"),
            thread=need(fixing.thread_m, fixing, "thread"),
            plate=plate(fixing, mount),
            board=gap(fixing, surface),
            member=member(fixing, surface),
            hottest=_hottest(fixing),
            wood=_density(surface) if eurocode else _gravity(fixing, surface),
            eurocode=eurocode,
            strength_class=_class(surface) if eurocode else "",
            apart=min(given, key=lambda one: one.value) if given else None,
            group=count,
            rows=rows,
            along=fixing.into == "stud",
            plywood=fixing.into == "plywood-backing",
            end_grain=need(fixing.grain, fixing, "grain") == "end",
            wet=need(fixing.wet, fixing, "wet"),
        )

    def screw(self, world: World) -> SeatedScrew | EurocodeScrew:
        """Return the screw in a world, by the standard that its wood was graded to."""
        diameter = 1e3 * world(self.diameter)
        if self.eurocode:
            return self._by_eurocode(world, diameter)
        if self.kind == "lag screw" and fasteners.is_metric(diameter):
            world.assume("a coach screw with a root of 0.7 of its diameter")
        return SeatedScrew(
            kind=self.kind,
            diameter_mm=diameter,
            length_mm=1e3 * world(self.length),
            thread_mm=1e3 * world(self.thread),
            plate_mm=1e3 * world(self.plate),
            board_mm=1e3 * world(self.board),
            member_mm=1e3 * world(self.member),
            gravity=world(self.wood),
            temperature_degc=world(self.hottest),
            end_grain=self.end_grain,
            wet=self.wet,
        )

    def _by_eurocode(self, world: World, diameter_mm: float) -> EurocodeScrew:
        world.assume(PARTIAL_FACTORS.format("service class 3" if self.wet else "service class 1 or 2"))
        apart = 1e3 * world(self.apart) / (self.rows - 1) if self.apart is not None and self.rows > 1 else 1.0
        return EurocodeScrew(
            kind=self.kind,
            diameter_mm=diameter_mm,
            length_mm=1e3 * world(self.length),
            thread_mm=1e3 * world(self.thread),
            plate_mm=1e3 * world(self.plate),
            board_mm=1e3 * world(self.board),
            member_mm=1e3 * world(self.member),
            density_kg_m3=world(self.wood),
            hardwood=self.strength_class.startswith("D"),
            plywood=self.plywood,
            temperature_degc=world(self.hottest),
            end_grain=self.end_grain,
            wet=self.wet,
            group=self.group,
            row=self.rows if self.apart is not None else 1,
            row_apart_mm=apart,
        )


def by_eurocode(surface: Surface, region: str | None) -> bool:
    """Return whether wood is judged by EN 1995-1-1: as it was graded, or by where it is when nobody says."""
    framing = surface.framing
    if framing.species not in {None, "unknown"}:
        return False
    return framing.strength_class is not None or region in EUROPE


def plate(fixing: Fixing, mount: MountData | None) -> Quantity:
    """Thickness of what the fasteners hold: the mount's plate, or what the fixing says of a flange."""
    given = mount.plate_thickness_m if mount is not None else None
    if given is None:
        given = fixing.plate_thickness_m
    return need(given, mount if mount is not None else fixing, "plate_thickness")


def gap(fixing: Fixing, surface: Surface) -> Quantity:
    """Thickness of all board and spacers between plate and wood."""
    return board(surface) + fixing.standoff_m if fixing.standoff_m is not None else board(surface)


def board(surface: Surface) -> Quantity:
    """Thickness of all board between plate and wood."""
    if surface.board.material == "none" or surface.board.layers == 0:
        return exact(0.0, "m")
    one = need(surface.board.thickness_m, surface, "board.thickness")
    return one * need(surface.board.layers, surface, "board.layers")


def member(fixing: Fixing, surface: Surface) -> Quantity:
    """Thickness of the wood along the fastener: as stated, or the depth of the stud or joist."""
    if fixing.member_thickness_m is not None:
        return fixing.member_thickness_m
    if fixing.into in {"stud", "joist"}:
        return need(surface.framing.member_depth_m, surface, "framing.member_depth")
    return need(None, fixing, "member_thickness")


def _gravity(fixing: Fixing, surface: Surface) -> Quantity:
    if fixing.into == "plywood-backing":
        value = fasteners.PLYWOOD_GRAVITY
        return assumed(value, 0.0, "", f"plywood of specific gravity {value}")
    species = surface.framing.species
    if species in {None, "unknown"}:
        value = fasteners.UNKNOWN_SPECIES_GRAVITY
        return assumed(value, 0.0, "", f"species not known: the lightest wood that is listed, specific gravity {value}")
    return exact(fasteners.SPECIFIC_GRAVITY[species or ""])


def _class(surface: Surface) -> str:
    given = surface.framing.strength_class
    return timber.LIGHTEST_CLASS if given is None or given == "unknown" else given


def _density(surface: Surface) -> Quantity:
    density = timber.DENSITY_KG_M3[_class(surface)]
    if surface.framing.strength_class in {None, "unknown"}:
        words = f"strength class not known: {timber.LIGHTEST_CLASS}, the lightest that is listed"
        return assumed(density, 0.0, "", words)
    return exact(density)


def _hottest(fixing: Fixing) -> Quantity:
    if fixing.hottest_degc is not None:
        return fixing.hottest_degc
    if not need(fixing.attic, fixing, "attic"):
        return exact(_ROOM_DEGC, "degC")
    return assumed(_HOT_ATTIC_DEGC, 0.0, "degC", Assumption("an attic that reaches {}", (_HOT_ATTIC_DEGC, "degC")))
