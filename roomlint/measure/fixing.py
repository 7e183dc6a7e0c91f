"""The capacity of one fastener in wood, with what its design leaves out stated as assumptions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Value, need
from roomlint.figures import dowels, fasteners
from roomlint.figures.domain import positive
from roomlint.measure.figure import Figure, figure

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.listening import Fixing
    from roomlint.design.products import MountData
    from roomlint.design.shell import Surface
    from roomlint.figures.fasteners import FastenerKind, LoadDuration

WOOD: Final = frozenset({"stud", "joist", "blocking", "beam"})
SCREWS: Final = frozenset({"lag-screw", "wood-screw"})
_KIND: Final[dict[str, FastenerKind]] = {"lag-screw": "lag screw", "wood-screw": "wood screw"}
_SUMMER_ATTIC_DEGC: Final = 50.0
_RIGHT_ANGLE_DEG: Final = 90.0


@dataclass(frozen=True, slots=True)
class WoodFixing:
    """A lag or wood screw through a plate and board into wood; sizes as values of the design, in m."""

    kind: FastenerKind
    diameter: Value
    length: Value
    thread: Value
    plate: Value
    board: Value
    gravity: float
    angle_deg: float
    """Load to grain: along a stud, across everything else."""
    end_grain: bool
    wet: bool
    attic: bool
    assumes: tuple[str, ...]

    @classmethod
    def of(cls, fixing: Fixing, surface: Surface, mount: MountData) -> WoodFixing:
        """Gather the fixing; a missing size raises, a missing circumstance is assumed and said."""
        kind = _KIND[need(fixing.fastener, fixing, "fastener")]
        assumes = []
        species = surface.framing.species
        if species in {None, "unknown"}:
            gravity = fasteners.UNKNOWN_SPECIES_GRAVITY
            assumes.append(f"species not known, so the lightest framing wood (specific gravity {gravity})")
        else:
            gravity = fasteners.SPECIFIC_GRAVITY[species or ""]
        unsaid = ((fixing.wet, "dry wood"), (fixing.attic, "wood not above 38 degC"), (fixing.grain, "side grain"))
        assumes += [text for given, text in unsaid if given is None]
        board, layers = _board(surface)
        assumes += ["one layer of board"] if layers is None else []
        return cls(
            kind=kind,
            diameter=need(fixing.diameter_m, fixing, "diameter"),
            length=need(fixing.length_m, fixing, "length"),
            thread=need(fixing.thread_m, fixing, "thread"),
            plate=need(mount.plate_thickness_m, mount, "plate_thickness"),
            board=board,
            gravity=gravity,
            angle_deg=0.0 if fixing.into == "stud" else _RIGHT_ANGLE_DEG,
            end_grain=fixing.grain == "end",
            wet=bool(fixing.wet),
            attic=bool(fixing.attic),
            assumes=tuple(assumes),
        )

    @property
    def is_lag(self) -> bool:
        """Whether it is a lag screw; only those have a shear value here."""
        return self.kind == "lag screw"

    @property
    def holds_nothing(self) -> str:
        """Why it holds nothing at all in withdrawal; empty when it holds something."""
        if self.end_grain and not self.is_lag:
            return "a wood screw in end grain counts for nothing; enter the side of the member."
        if self.thread_in_wood_m() == 0.0:
            return "no thread reaches the wood behind plate and board; take a longer screw."
        return ""

    @property
    def sizes(self) -> tuple[Value, ...]:
        """The sizes that its capacity is computed from, in the order of the capacity functions."""
        return (self.diameter, self.length, self.thread, self.plate, self.board)

    def _tip_mm(self, diameter_mm: float) -> float:
        # The tip of a wood screw is about as long as the screw is thick; leaving it out is the cautious reading.
        return fasteners.lag_size(diameter_mm).tip_mm if self.is_lag else diameter_mm

    def _service(self) -> float:
        temperature = _SUMMER_ATTIC_DEGC if self.attic else 20.0
        wet = fasteners.wet_service_factor(self.kind, wet=self.wet)
        return wet * fasteners.temperature_factor(temperature, wet=self.wet)

    def thread_in_wood_m(self) -> float:
        """Thread that works in the wood, m."""
        diameter, length, thread, plate, board = (1e3 * size.value for size in self.sizes)
        return fasteners.counted_thread_mm(length, thread, plate + board, self._tip_mm(diameter)) / 1e3

    def depth(self) -> Figure:
        """Penetration in diameters: the tip counts for a wood screw and not for a lag screw."""

        def compute(diameter: float, length: float, plate: float, board: float) -> float:
            tip = self._tip_mm(diameter * 1e3) if self.is_lag else 0.0
            return fasteners.penetration_mm(length * 1e3, (plate + board) * 1e3, tip) / (diameter * 1e3)

        return figure(
            "depth in the wood, in diameters", "", compute, self.diameter, self.length, self.plate, self.board
        )

    def withdrawal_n(self, duration: LoadDuration, *sizes_m: float) -> float:
        """Return the allowable withdrawal of one fastener, N; the sizes are diameter, length, thread, plate, board."""
        diameter, length, thread, plate, board = (1e3 * size for size in sizes_m)
        value = (
            fasteners.lag_withdrawal_n_per_mm(self.gravity, diameter)
            if self.is_lag
            else fasteners.wood_screw_withdrawal_n_per_mm(self.gravity, diameter)
        )
        grain = fasteners.end_grain_withdrawal_factor(self.kind) if self.end_grain else 1.0
        counted = fasteners.counted_thread_mm(length, thread, plate + board, self._tip_mm(diameter))
        return value * counted * fasteners.LOAD_DURATION_FACTOR[duration] * self._service() * grain

    def shear_n(self, duration: LoadDuration, *sizes_m: float) -> float:
        """Return the allowable shear of one lag screw with the board as a gap, N."""
        diameter, length, _, plate, board = (1e3 * size for size in sizes_m)
        size = fasteners.lag_size(diameter)
        depth = fasteners.penetration_mm(length, plate + board, size.tip_mm)
        seat = dowels.LagSeat(depth, plate, gap_mm=board, angle_deg=self.angle_deg)
        grain = fasteners.end_grain_lateral_factor() if self.end_grain else 1.0
        factors = fasteners.LOAD_DURATION_FACTOR[duration] * self._service() * grain
        return dowels.lag_shear_n(size, self.gravity, seat) * factors

    def withdrawal_use(self, pull: Value, assumes: tuple[str, ...]) -> Figure:
        """Pull over allowable withdrawal under a permanent load."""
        return figure(
            "pull over allowable withdrawal",
            "",
            lambda load, *sizes: load / positive("withdrawal capacity", self.withdrawal_n("permanent", *sizes), "N"),
            pull,
            *self.sizes,
            assumes=(*assumes, *self.assumes),
        )

    def combined_use(
        self,
        name: str,
        duration: LoadDuration,
        demand: Callable[[float, float, float, float], tuple[float, float]],
        loads: tuple[Value, Value, Value, Value],
    ) -> Figure:
        """Resultant over allowable resultant; `demand` gives pull and shear from mass, reach, spacing and swing."""

        def compute(*numbers: float) -> float:
            mass, reach, spacing, aside, *sizes = numbers
            tension, shear = demand(mass, reach, spacing, aside)
            return fasteners.combined_utilisation(
                self.withdrawal_n(duration, *sizes), self.shear_n(duration, *sizes), tension_n=tension, shear_n=shear
            )

        return figure(name, "", compute, *loads, *self.sizes, assumes=self.assumes)


def _board(surface: Surface) -> tuple[Value, int | None]:
    board = surface.board
    if board.material == "none" or board.layers == 0:
        return Value(0.0, 0.0, "m"), 0
    one = need(board.thickness_m, surface, "board.thickness")
    layers = board.layers or 1
    return Value(one.value * layers, one.u * layers, "m", one.at), board.layers
