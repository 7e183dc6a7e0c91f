"""One lag or wood screw through a plate and board into wood: what it holds, and how deep it sits.

Joins the formulas of `fasteners` and `dowels`; sizes in mm, forces in N. Only thread inside the wood counts, and board
between plate and wood is a gap in which the screw bends.
"""

from dataclasses import dataclass
from typing import Final

from roomlint.figures import dowels, fasteners
from roomlint.figures.domain import Refused, positive
from roomlint.figures.fasteners import FastenerKind, LoadDuration

_ACROSS_DEG: Final = 90.0


@dataclass(frozen=True, slots=True)
class SeatedScrew:
    """A screw with everything that its capacity depends on."""

    kind: FastenerKind
    diameter_mm: float
    length_mm: float
    thread_mm: float
    plate_mm: float
    board_mm: float
    member_mm: float
    gravity: float
    temperature_degc: float = 20.0
    end_grain: bool = False
    wet: bool = False

    @property
    def is_lag(self) -> bool:
        """Whether it is a lag screw; only those have a shear value here."""
        return self.kind == "lag screw"

    @property
    def through_mm(self) -> float:
        """What it passes through before the wood."""
        return self.plate_mm + self.board_mm

    @property
    def tip_mm(self) -> float:
        """The tapered tip; that of a wood screw is taken to be as long as the screw is thick, the cautious reading."""
        return fasteners.lag_size(self.diameter_mm).tip_mm if self.is_lag else self.diameter_mm

    def _factors(self, duration: LoadDuration) -> float:
        service = fasteners.wet_service_factor(self.kind, wet=self.wet)
        warm = fasteners.temperature_factor(self.temperature_degc, wet=self.wet)
        return fasteners.LOAD_DURATION_FACTOR[duration] * service * warm

    def counted_thread_mm(self) -> float:
        """Return the thread that works in the wood, mm."""
        return fasteners.counted_thread_mm(self.length_mm, self.thread_mm, self.through_mm, self.tip_mm, self.member_mm)

    def depth_diameters(self) -> float:
        """Return the depth in the wood in diameters: the tip counts for a wood screw and not for a lag screw."""
        tip = self.tip_mm if self.is_lag else 0.0
        depth = fasteners.penetration_mm(self.length_mm, self.through_mm, tip, self.member_mm)
        return depth / positive("diameter", self.diameter_mm, "mm")

    def beyond_mm(self) -> float:
        """Return how far its point stands out of the far side of the wood, mm; negative while it stays inside."""
        return self.length_mm - self.through_mm - self.member_mm

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
