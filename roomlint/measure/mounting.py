"""Loads on mounts and fasteners, and whether what stands on the floor stays up."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import Missing, Value, need
from roomlint.figures import fasteners, loads, stability, thin_steel
from roomlint.measure.figure import Figure, figure
from roomlint.measure.fixing import WoodFixing
from roomlint.measure.holding import Holdings

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.products import Product
    from roomlint.design.shell import Treatment
    from roomlint.figures.fasteners import LoadDuration
    from roomlint.measure.holding import Held

PUSH_N = 50.0
"""Sideways push on what hangs from a pole, the product-safety test's figure."""
STEEL_ULTIMATE_MPA = 310.0
"""Ultimate strength of ordinary stud sheet, 45 ksi."""


class Mounts(Holdings):
    """Figures of everything that is held up."""

    def mass(self, device: Held) -> Value:
        """Mass of the device with its mount and what is hung on, kg."""
        mounting = self.mounting(device)
        product: Product = need(device.product, device, "product")
        parts = [need(product.mass_kg, product, "mass")]
        if mounting.product is not None:
            parts.append(need(mounting.product.mass_kg, mounting.product, "mass"))
        if mounting.accessories_kg is not None:
            parts.append(mounting.accessories_kg)
        return total(parts)

    def device_mass(self, device: Held) -> Figure:
        """Mass of the device alone, kg."""
        product: Product = need(device.product, device, "product")
        return figure("mass", "kg", float, need(product.mass_kg, product, "mass"))

    def hung_mass(self, device: Held) -> Figure:
        """Mass of everything that hangs there, kg."""
        return figure("mass with mount", "kg", float, self.mass(device))

    def rating_ratio(self, device: Held) -> Figure:
        """Rated mass of the mount over what it carries."""
        product: Product = need(device.product, device, "product")
        parts = [need(product.mass_kg, product, "mass")]
        extra = self.mounting(device).accessories_kg
        carried = total([*parts, extra] if extra is not None else parts)
        mount = self.mount(device)
        rated = need(mount.rated_mass_kg, mount, "rated_mass")
        return figure("rated mass over carried mass", "", lambda r, m: r / m, rated, carried)

    def reach(self, device: Held) -> Value:
        """Distance of the centre of gravity from the wall at the largest extension of use, m."""
        mounting, mount = self.mounting(device), self.mount_data(device)
        out = mounting.extension_m or (mount.reach_m if mount is not None else None)
        if out is None and mount is not None:
            raise Missing(mount, "reach")
        product: Product = need(device.product, device, "product")
        depth = need(product.depth_m, product, "depth")
        half = Value(depth.value / 2.0, depth.u / 2.0, "m", depth.at)
        return total([need(out, mounting, "extension"), half])

    def row_spacing(self, device: Held) -> Value:
        """Distance between the top and the bottom fastener row, m."""
        fixing, mount = self.fixing(device), self.mount_data(device)
        given = fixing.row_spacing_m or (mount.row_spacing_m if mount is not None else None)
        return need(given, fixing, "row_spacing")

    def fasteners(self, device: Held) -> int:
        """Return how many fasteners are really in framing."""
        fixing, mount = self.fixing(device), self.mount_data(device)
        return need(fixing.count or (mount.fasteners if mount is not None else None), fixing, "count")

    def top_fasteners(self, device: Held) -> int:
        """Return how many of them are in the top row, or in the pulled row of a ceiling plate."""
        fixing, mount = self.fixing(device), self.mount_data(device)
        return need(fixing.top_count or (mount.top_fasteners if mount is not None else None), fixing, "top_count")

    def pull(self, device: Held) -> Figure:
        """Pull on the most loaded fastener, N."""

        def compute() -> Figure:
            mass = self.mass(device)
            if self.mounting(device).on == "ceiling":
                return self._ceiling_pull(device, mass)
            top = self.top_fasteners(device)
            return figure(
                "pull on each top fastener",
                "N",
                lambda m, e, h: loads.top_fastener_tension_n(loads.weight_n(m), e, h, top),
                mass,
                self.reach(device),
                self.row_spacing(device),
            )

        return self.once(("pull", device.key), compute)

    def _ceiling_pull(self, device: Held, mass: Value) -> Figure:
        count, drop = self.fasteners(device), self.mounting(device).drop_m
        if drop is None:
            return figure(
                "pull on each fastener", "N", lambda m: loads.vertical_shear_n(loads.weight_n(m), count), mass
            )
        pulled = self.top_fasteners(device)
        return figure(
            "pull on the most loaded fastener",
            "N",
            lambda m, length, b: loads.ceiling_pole_tension_n(
                loads.vertical_shear_n(loads.weight_n(m), count), PUSH_N, length, b, pulled
            ),
            mass,
            drop,
            self.row_spacing(device),
            assumes=(f"a sideways push of {PUSH_N:.0f} N at the end of the drop",),
        )

    def wood(self, device: Held) -> WoodFixing:
        """Return the fixing in wood with everything that its capacity needs."""
        return self.once(("wood", device.key), lambda: self._wood(device))

    def _wood(self, device: Held) -> WoodFixing:
        return WoodFixing.of(self.fixing(device), self.surface(device), self.mount(device))

    def withdrawal_use(self, device: Held) -> Figure:
        """Pull over allowable withdrawal of the most loaded fastener."""
        wood, pull = self.wood(device), self.pull(device)
        demand = Value(pull.value, pull.u, "N", pull.inputs[0].at)
        return wood.withdrawal_use(demand, pull.assumes)

    def withdrawal_remedy(self, device: Held) -> str:
        """Say what pulls, and how near the device must come for the screws to hold it."""
        pull = self.pull(device)
        if self.mounting(device).on == "ceiling":
            return f"The {pull.name} is {pull}; use longer thread or more screws in framing."
        # The pull grows straight with the reach, so the reach that fits follows from the use at the present one.
        nearest = self.reach(device).value / self.withdrawal_use(device).value
        return (
            f"The {pull.name} is {pull}; it would hold with the centre of gravity at most {nearest:.2f} m from the "
            "wall, or with longer thread or more screws in framing."
        )

    def combined_use(self, device: Held) -> Figure:
        """Resultant over allowable resultant of the most loaded fastener, board taken as a gap."""
        return self._combined("pull and shear together", device, "permanent", misuse=False, swing=None)

    def misuse_use(self, device: Held) -> Figure:
        """Return the same with somebody hanging on the device, at the ten-year value."""
        return self._combined("use under the misuse load", device, "ten years", misuse=True, swing=None)

    def swing_use(self, device: Held) -> Figure:
        """Return the same with the arm swung aside as far as it goes, all fasteners in one stud."""
        mount = self.mount(device)
        swing = need(mount.side_reach_m, mount, "side_reach")
        return self._combined("use with the arm swung aside", device, "permanent", misuse=False, swing=swing)

    def _combined(
        self, name: str, device: Held, duration: LoadDuration, *, misuse: bool, swing: Value | None
    ) -> Figure:
        wood, top, count = self.wood(device), self.top_fasteners(device), self.fasteners(device)

        def demand(mass: float, reach: float, spacing: float, aside: float) -> tuple[float, float]:
            weight = loads.weight_n(mass)
            whole = loads.misuse_load_n(weight) if misuse else weight
            down = loads.vertical_shear_n(whole, count)
            across = loads.sideways_shear_n(whole, aside, spacing)
            return loads.top_fastener_tension_n(whole, reach, spacing, top), loads.resultant_n(down, across)

        values = (self.mass(device), self.reach(device), self.row_spacing(device), swing or Value(0.0, 0.0, "m"))
        return wood.combined_use(name, duration, demand, values)

    def edge_left(self, device: Held) -> Figure:
        """Room left between a screw's edge distance and the edge of the stud, mm; negative is too near."""
        fixing, surface = self.fixing(device), self.surface(device)
        return figure(
            "edge distance to spare",
            "mm",
            lambda w, d, off: fasteners.edge_tolerance_mm(w * 1e3, d * 1e3) - abs(off) * 1e3,
            need(surface.framing.member_width_m, surface, "framing.member_width"),
            need(fixing.diameter_m, fixing, "diameter"),
            need(fixing.edge_offset_m, fixing, "edge_offset"),
        )

    def stud_span(self, device: Held) -> Figure:
        """Widest distance between the mount's holes over the spacing of the studs."""
        framing, mount = self.framing(device), self.mount(device)
        spacing = need(framing.spacing_m, self.surface(device), "framing.spacing")
        holes = need(mount.plate_holes_m, mount, "plate_holes")
        return figure("hole distance over stud spacing", "", lambda a, b: a / b, holes, spacing)

    def on_one_stud(self, device: Held) -> bool:
        """Whether the mount's plate is too narrow for two studs."""
        return self.stud_span(device).value < 1.0

    def steel_use(self, device: Held) -> Figure:
        """Pull over allowable pull-out of a screw in a steel stud."""
        fixing, surface, pull = self.fixing(device), self.surface(device), self.pull(device)
        sheet = need(surface.framing.steel_thickness_m, surface, "framing.steel_thickness")
        diameter = need(fixing.diameter_m, fixing, "diameter")
        return figure(
            "pull over allowable pull-out",
            "",
            lambda t, s, d: t / thin_steel.pull_out_allowable_n(s * 1e3, d * 1e3, STEEL_ULTIMATE_MPA),
            Value(pull.value, pull.u, "N", pull.inputs[0].at),
            sheet,
            diameter,
            assumes=(*pull.assumes, f"sheet with {STEEL_ULTIMATE_MPA:.0f} MPa ultimate strength"),
        )

    def hang_factor(self, device: Held) -> Figure:
        """Divide the breaking load of the weakest part by the load on it."""
        mounting, mount = self.mounting(device), self.mount_data(device)
        given = mounting.breaking_load_n or (mount.breaking_load_n if mount is not None else None)
        breaking = need(given, mounting, "breaking_load")
        slope = mounting.sling_angle_deg
        if slope is None:
            return figure(
                "breaking load over load",
                "",
                lambda b, m: loads.design_factor(b, loads.weight_n(m)),
                breaking,
                self.mass(device),
            )
        return figure(
            "breaking load over load",
            "",
            lambda b, m, a: loads.design_factor(b, loads.sling_tension_n(loads.weight_n(m), 2, a)),
            breaking,
            self.mass(device),
            slope,
            assumes=("two sling legs carry the load",),
        )

    def sling_angle(self, device: Held) -> Figure:
        """Angle of the sling legs from the horizontal, degrees."""
        mounting = self.mounting(device)
        return figure("sling angle", "deg", float, need(mounting.sling_angle_deg, mounting, "sling_angle"))

    def secondary_fall(self, device: Held) -> Figure:
        """How far the device falls before the secondary holds, mm."""
        mounting = self.mounting(device)
        fall = need(mounting.secondary_fall_m, mounting, "secondary_fall")
        return figure("fall onto the secondary", "mm", lambda f: f * 1e3, fall)

    def joist_load(self, device: Held) -> Figure:
        """Load on the ceiling joist that carries the device, as if spread over its area, Pa."""
        shell, surface = self.design.shell, self.surface(device)
        spacing = need(surface.framing.spacing_m, surface, "framing.spacing")
        span = min(shell.width_m, shell.length_m, key=lambda size: size.value)
        return figure(
            "added joist load",
            "Pa",
            lambda m, length, s: loads.joist_area_load_pa(loads.weight_n(m), length, s),
            self.mass(device),
            span,
            spacing,
            assumes=("one joist carries it at midspan", "joists span the shorter side of the room"),
        )

    def needs_seismic_anchorage(self, device: Held) -> bool:
        """Whether the device calls for designed seismic anchorage; everything that hangs is taken as up high."""
        category = need(self.design.project.seismic_category, self.design, "project.codes.seismic_category")
        return loads.needs_seismic_anchorage(category.upper(), self.mass(device).value, math.inf)

    def tip_angle(self, device: Loudspeaker | Subwoofer) -> Figure:
        """Slope at which a standing loudspeaker tips, degrees."""
        product: Product = need(device.product, device, "product")
        height = need(product.height_m, product, "height")
        given = product.loudspeaker.centre_of_gravity_m if product.loudspeaker is not None else None
        middle = given or Value(height.value / 2.0, height.u / 2.0, "m", height.at)
        assumes = () if given is not None else ("the centre of gravity is at half height",)
        return figure(
            "tip angle", "deg", lambda b, h: stability.tip_angle_deg(b / 2.0, h), self._base(product), middle,
            assumes=assumes,
        )  # fmt: skip

    @staticmethod
    def _base(product: Product) -> Value:
        data = need(product.loudspeaker, product, product.kind)
        sides = need(data.base_width_m, data, "base_width"), need(data.base_depth_m, data, "base_depth")
        return min(sides, key=lambda side: side.value)

    def flame_spread(self, panel: Treatment) -> Figure:
        """Flame-spread index of a panel."""
        return Figure("flame-spread index", need(panel.flame_spread, panel, "flame_spread"), "")

    def smoke(self, panel: Treatment) -> Figure:
        """Smoke-developed index of a panel."""
        return Figure("smoke-developed index", need(panel.smoke_developed, panel, "smoke_developed"), "")


def total(values: list[Value]) -> Value:
    """Add values that are independent of each other; the largest one tells the place."""
    largest = max(values, key=lambda value: value.value)
    u = math.sqrt(sum(value.u**2 for value in values))
    return Value(sum(value.value for value in values), u, largest.unit, largest.at)
