"""One lag or wood screw through a plate and board into wood: what it holds, and how deep it sits.

Joins the formulas of `fasteners` and `dowels`, or those of `timber` for wood graded to a European class; sizes in mm,
forces in N. Only thread inside the wood counts, and board between plate and wood is a gap in which the screw bends.
"""

import math
from dataclasses import dataclass
from typing import Final

from roomlint.figures import dowels, fasteners, timber
from roomlint.figures.domain import Refused, positive
from roomlint.figures.fasteners import FastenerKind, LoadDuration

_ACROSS_DEG: Final = 90.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """A screw in wood: its sizes and how it sits."""

    kind: FastenerKind
    diameter_mm: float
    length_mm: float
    thread_mm: float
    plate_mm: float
    board_mm: float
    member_mm: float
    temperature_degc: float = 20.0
    end_grain: bool = False
    wet: bool = False

    @property
    def is_lag(self) -> bool:
        """Whether it is a lag screw."""
        return self.kind == "lag screw"

    @property
    def through_mm(self) -> float:
        """What it passes through before the wood."""
        return self.plate_mm + self.board_mm

    @property
    def tip_mm(self) -> float:
        """The tip, which does not count as thread; taken to be as long as the screw is thick, the cautious reading."""
        return self.diameter_mm

    def counted_thread_mm(self) -> float:
        """Return the thread that works in the wood, mm."""
        return fasteners.counted_thread_mm(self.length_mm, self.thread_mm, self.through_mm, self.tip_mm, self.member_mm)

    def beyond_mm(self) -> float:
        """Return how far its point stands out of the far side of the wood, mm; negative while it stays inside."""
        return self.length_mm - self.through_mm - self.member_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatedScrew(Driven):
    """A screw by the National Design Specification: allowable values."""

    gravity: float

    @property
    def tip_mm(self) -> float:
        """The tapered tip; that of a wood screw is taken to be as long as the screw is thick, the cautious reading."""
        return fasteners.lag_size(self.diameter_mm).tip_mm if self.is_lag else self.diameter_mm

    def _factors(self, duration: LoadDuration) -> float:
        service = fasteners.wet_service_factor(self.kind, wet=self.wet)
        warm = fasteners.temperature_factor(self.temperature_degc, wet=self.wet)
        return fasteners.LOAD_DURATION_FACTOR[duration] * service * warm

    def depth_diameters(self) -> float:
        """Return the depth in the wood in diameters: the tip counts for a wood screw and not for a lag screw."""
        tip = self.tip_mm if self.is_lag else 0.0
        depth = fasteners.penetration_mm(self.length_mm, self.through_mm, tip, self.member_mm)
        return depth / positive("diameter", self.diameter_mm, "mm")

    def withdrawal_n(self, duration: LoadDuration) -> float:
        """Return the allowable withdrawal, N; zero where no thread is in the wood or end grain counts for nothing.

        Refused as the formulas of `fasteners`.
        """
        reference = (
            fasteners.lag_withdrawal_n_per_mm(self.gravity, self.diameter_mm)
            if self.is_lag
            else fasteners.wood_screw_withdrawal_n_per_mm(self.gravity, self.diameter_mm)
        )
        grain = fasteners.end_grain_withdrawal_factor(self.kind) if self.end_grain else 1.0
        return reference * self.counted_thread_mm() * self._factors(duration) * grain

    def shear_n(self, duration: LoadDuration, angle_deg: float) -> float:
        """Return the allowable shear of a lag screw with the board as a gap, N, for a load at an angle to the grain.

        Refused for a wood screw, which has no shear value here, and as the formulas of `dowels`.
        """
        if not self.is_lag:
            raise Refused("the shear value of a wood screw is not computed here")
        size, seat = self._seat(angle_deg)
        grain = fasteners.end_grain_lateral_factor() if self.end_grain else 1.0
        return dowels.lag_shear_n(size, self.gravity, seat) * self._factors(duration) * grain

    def shear_mode(self, angle_deg: float) -> str:
        """Return which yield mode governs the shear of a lag screw: a field of `dowels.YieldModes`; refused alike."""
        size, seat = self._seat(angle_deg)
        divisors = dowels.reduction_terms(size.root_diameter_mm, size.diameter_mm, angle_deg)
        return dowels.governing_mode(dowels.lag_joint(size, self.gravity, seat), divisors)

    def _seat(self, angle_deg: float) -> tuple[fasteners.LagSize, dowels.LagSeat]:
        size = fasteners.lag_size(self.diameter_mm)
        depth = fasteners.penetration_mm(self.length_mm, self.through_mm, size.tip_mm, self.member_mm)
        return size, dowels.LagSeat(depth, self.plate_mm, gap_mm=self.board_mm, angle_deg=angle_deg)

    def pulled(self, duration: LoadDuration, tension_n: float) -> float:
        """Return the pull over the allowable withdrawal; refused where it holds nothing at all."""
        return tension_n / positive("allowable withdrawal", self.withdrawal_n(duration), "N")

    def sheared(self, duration: LoadDuration, along_n: float, across_n: float) -> float:
        """Return the shear over the allowable shear at its angle to the grain, never less than its part across alone.

        A force along the grain turns the resultant toward the stronger direction; adding one must not help.
        """
        shear, angle = dowels.shear_to_grain(along_n, across_n)
        return max(shear / self.shear_n(duration, angle), across_n / self.shear_n(duration, _ACROSS_DEG))

    def pulled_and_sheared(self, duration: LoadDuration, tension_n: float, along_n: float, across_n: float) -> float:
        """Return the resultant over the allowable one, or of pull and shear alone what uses more.

        The published form lets a pull take away from what the shear uses, because it turns the resultant toward the
        stronger direction; each alone must hold as well, so that a load that is added never helps.
        """
        shear, _ = dowels.shear_to_grain(along_n, across_n)
        pulled, sheared = self.withdrawal_n(duration), self.sheared(duration, along_n, across_n)
        both = fasteners.combined_utilisation(pulled, shear / sheared, tension_n=tension_n, shear_n=shear)
        return max(both, tension_n / pulled, sheared)


_DURATIONS: Final[dict[LoadDuration, timber.Duration]] = {"permanent": "permanent", "ten years": "long-term"}
_LAG_ROOT: Final = 0.7
_SCREW_ROOT: Final = 0.6
"""Root of a coach screw and of a wood screw over its diameter, from memory: the cautious end of what is sold."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EurocodeScrew(Driven):
    """A screw by EN 1995-1-1: characteristic values made into design values, and loads with their partial factors.

    Wood that gets hot bears less by the American factor, since the Eurocode has none; a cautious choice.
    """

    density_kg_m3: float
    hardwood: bool = False
    plywood: bool = False
    group: int = 1
    """Screws that are pulled together."""
    row: int = 1
    """Screws one behind the other along the grain."""
    row_apart_mm: float = 1.0
    """Distance of neighbours in such a row; of no account where there is only one."""

    @property
    def effective_mm(self) -> float:
        """Diameter that it counts for in shear, thread taken as lying in the shear plane."""
        return timber.effective_diameter_mm((_LAG_ROOT if self.is_lag else _SCREW_ROOT) * self.diameter_mm)

    def _factor(self, duration: LoadDuration) -> float:
        kmod = timber.KMOD[_DURATIONS[duration], self.wet]
        return kmod / timber.GAMMA_M * fasteners.temperature_factor(self.temperature_degc, wet=self.wet)

    def depth_diameters(self) -> float:
        """Return the thread in the wood in diameters, the tip left out."""
        return self.counted_thread_mm() / positive("diameter", self.diameter_mm, "mm")

    def withdrawal_n(self, duration: LoadDuration) -> float:
        """Return the design withdrawal of one of its group, N; zero in end grain and without thread in the wood.

        Refused in plywood and as the formulas of `timber`.
        """
        self._solid()
        thread = self.counted_thread_mm()
        if self.end_grain or thread <= 0.0:
            return 0.0
        alone = timber.withdrawal_n(self.density_kg_m3, self.diameter_mm, thread, hardwood=self.hardwood)
        return min(
            alone * timber.group_share(self.group) * self._factor(duration), timber.steel_tension_n(self.diameter_mm)
        )

    def shear_n(self, duration: LoadDuration, angle_deg: float) -> float:
        """Return the design shear of one in its row, N, board as a gap, for a load at an angle to the grain.

        Refused for end grain and plywood, which have no value here, and as the formulas of `timber` and `dowels`.
        """
        share = timber.row_share(self.row, self.row_apart_mm, self.effective_mm)
        return min(self._modes(angle_deg).values()) * share * self._factor(duration)

    def shear_mode(self, angle_deg: float) -> str:
        """Return which mode governs its shear: a field of `dowels.YieldModes`; refused alike."""
        modes = self._modes(angle_deg)
        return min(modes, key=lambda name: modes[name])

    def _solid(self) -> None:
        if self.plywood:
            raise Refused("EN 1995-1-1 has no formula for screws in plywood; their maker's declaration speaks for it")

    def _modes(self, angle_deg: float) -> dict[str, float]:
        self._solid()
        if self.end_grain:
            raise Refused("the shear value of a screw in end grain is not computed here by EN 1995-1-1")
        size = self.effective_mm
        strength = timber.embedment_mpa(
            self.density_kg_m3, size, angle_deg, predrilled=self.is_lag, hardwood=self.hardwood
        )
        depth = fasteners.penetration_mm(self.length_mm, self.through_mm, self.tip_mm, self.member_mm)
        moment = timber.yield_moment_nmm(size)
        tilts, bends = timber.thin_plate_modes_n(strength, size, depth, moment)
        modes = {"main_bearing": tilts, "main_hinge": bends}
        if self.board_mm > 0.0:
            joint = dowels.SingleShear(
                diameter_mm=size,
                bending_yield_mpa=6.0 * moment / size**3,
                main_length_mm=depth,
                main_bearing_mpa=strength,
                side_thickness_mm=self.plate_mm,
                side_bearing_mpa=timber.STEEL_BEARING_MPA,
                gap_mm=self.board_mm,
            )
            for name, value in dowels.yield_values_n(joint)._asdict().items():
                modes[name] = min(value, modes.get(name, math.inf))
        return modes

    def pulled(self, duration: LoadDuration, tension_n: float) -> float:
        """Return the factored pull over the design withdrawal; refused where it holds nothing at all."""
        factor = timber.GAMMA_LOAD[_DURATIONS[duration]]
        return factor * tension_n / positive("design withdrawal", self.withdrawal_n(duration), "N")

    def sheared(self, duration: LoadDuration, along_n: float, across_n: float) -> float:
        """Return the factored shear over the design shear, never less than its part across the grain alone."""
        factor = timber.GAMMA_LOAD[_DURATIONS[duration]]
        shear, angle = dowels.shear_to_grain(along_n, across_n)
        return factor * max(shear / self.shear_n(duration, angle), across_n / self.shear_n(duration, _ACROSS_DEG))

    def pulled_and_sheared(self, duration: LoadDuration, tension_n: float, along_n: float, across_n: float) -> float:
        """Return both together, root of squares: EN 1995-1-1 8.7.3 with equation 8.28 (from memory)."""
        return math.hypot(self.pulled(duration, tension_n), self.sheared(duration, along_n, across_n))
