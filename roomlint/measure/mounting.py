"""Loads on mounts and what their fasteners hold."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint import roof
from roomlint.design.base import need
from roomlint.design.listening import FREE
from roomlint.design.proofs import stated
from roomlint.design.quantity import Assumption
from roomlint.figures import fasteners, loads
from roomlint.figures.domain import positive
from roomlint.measure.fixing import SCREWS, WoodFixing, by_eurocode
from roomlint.measure.holding import SWINGS, Holdings

if TYPE_CHECKING:
    from roomlint.design.proofs import Engineer, FastenerReport
    from roomlint.design.quantity import Quantity
    from roomlint.figures.fasteners import LoadDuration
    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.measure.world import World

PUSH_N: Final = 50.0
"""Sideways push on what hangs from a pole, the product-safety test's figure."""
_ONE_COLUMN_M: Final = 0.01
_CORNERS: Final = 4
_SIDEWAYS_DEG: Final = 90.0


class Demand(NamedTuple):
    """What the most loaded fastener bears, N."""

    pull: float
    down: float
    """Shear downwards, or down the slope of a ceiling."""
    across: float
    """Level shear, of an arm that is swung aside."""


class Hung(Holdings):
    """Figures of everything that hangs."""

    def mass_kg(self, world: World, thing: Held) -> float:
        """Return the mass of the thing with its mount and what is hung on, in a world."""
        mounting = self.mounting(thing)
        mass = world(self.own_mass(thing))
        if mounting.product is not None:
            mass += world(need(mounting.product.mass_kg, mounting.product, "mass"))
        return mass + (world(mounting.accessories_kg) if mounting.accessories_kg is not None else 0.0)

    def own_mass_figure(self, thing: Held) -> Figure:
        """Mass of the thing alone."""
        return self.figure("mass", "kg", lambda w: w(self.own_mass(thing)), thing)

    def hung_mass(self, thing: Held) -> Figure:
        """Mass of everything that hangs there."""
        return self.figure("mass with mount", "kg", lambda w: self.mass_kg(w, thing), thing)

    def mass_each(self, thing: Held) -> Figure:
        """Mass that each fastener in board carries."""
        count = self.count(thing)
        return self.figure("mass on each anchor", "kg", lambda w: self.mass_kg(w, thing) / count, thing)

    def rating_ratio(self, thing: Held) -> Figure:
        """Rated mass of the mount or stand over what it carries."""
        mounting = self.mounting(thing)
        if mounting.on == "stand":
            _, stand = self.stand(thing)
            rated = need(stand.rated_mass_kg, stand, "rated_mass")
        else:
            mount = self.mount(thing)
            rated = need(mount.rated_mass_kg, mount, "rated_mass")
        extra = mounting.accessories_kg

        def compute(world: World) -> float:
            carried = world(self.own_mass(thing)) + (world(extra) if extra is not None else 0.0)
            return world(rated) / positive("mass", carried, "kg")

        return self.figure("rated mass over carried mass", "", compute, thing)

    def count(self, thing: Held) -> int:
        """Return how many fasteners hold: those really in framing, and no more than the mount's sheet has."""
        fixing, sheet = self.fixing(thing), self.sheet(thing)
        given = need(fixing.count, fixing, "count")
        return given if sheet is None or sheet.fasteners is None else min(given, sheet.fasteners)

    def top_count(self, thing: Held) -> int:
        """Return how many of them are in the row that is pulled, and no more than the mount's sheet has there.

        The sheet's top row alone counts only where every hole of the plate has its fastener.
        """
        fixing, mount, count = self.fixing(thing), self.mount_data(thing), self.count(thing)
        top = mount.top_fasteners if mount is not None else None
        if fixing.top_count is not None:
            return min(fixing.top_count, top) if top is not None else fixing.top_count
        full = mount is not None and mount.fasteners == count
        return need(top if full else None, fixing, "top_count")

    def rows_beyond_sheet(self, thing: Held) -> Figure:
        """How much farther apart the fixing states the fastener rows than the mount's sheet has them."""
        fixing, mount = self.fixing(thing), self.mount(thing)
        given = need(fixing.row_spacing_m, fixing, "row_spacing")
        return self._beyond("row spacing", thing, given, need(mount.row_spacing_m, mount, "row_spacing"))

    def reach_beyond_sheet(self, thing: Held) -> Figure:
        """How much farther the mounting states the reach in use than the mount's sheet lets it reach."""
        mounting, mount = self.mounting(thing), self.mount(thing)
        given = need(mounting.extension_m, mounting, "extension")
        return self._beyond("reach", thing, given, need(mount.reach_m, mount, "reach"))

    def _beyond(self, name: str, thing: Held, given: Quantity, sheet: Quantity) -> Figure:
        return self.figure(f"{name} beyond the sheet", "mm", lambda w: (w(given) - w(sheet)) * 1e3, thing)

    def row_spacing(self, thing: Held) -> Quantity:
        """Distance between the top and the bottom fastener row, m: the smaller where sheet and fixing differ."""
        fixing, mount = self.fixing(thing), self.mount_data(thing)
        given = [fixing.row_spacing_m, mount.row_spacing_m if mount is not None else None]
        stated_ones = [one for one in given if one is not None]
        return min(stated_ones, key=lambda one: one.value) if stated_ones else need(None, fixing, "row_spacing")

    def reach_m(self, world: World, thing: Held) -> float:
        """Return how far the centre of gravity can stand off the wall: at the largest reach that the mount has."""
        mounting, mount = self.mounting(thing), self.mount_data(thing)
        use = mounting.extension_m
        if mount is not None:
            reach = world(need(mount.reach_m, mount, "reach"))
            out = max(reach, world(use)) if use is not None else reach
        else:
            out = world(need(use, mounting, "extension"))
        spacer = mounting.fixing.standoff_m if mounting.fixing is not None else None
        return out + world(self.depth(thing)) / 2.0 + (world(spacer) if spacer is not None else 0.0)

    def slope_deg(self, world: World, thing: Held) -> float:
        """Return the slope of the ceiling where a thing hangs."""
        shape = need(self.design.shell.ceiling, self.design.shell, "ceiling")
        if shape.shape == "flat":
            return 0.0
        x, y = self.plan_spot(thing)
        return roof.facet_over(self.figures.space.facets(world), (world(x), world(y))).slope_deg

    def slope(self, thing: Held) -> Figure:
        """Slope of the ceiling where a thing hangs."""
        return self.figure("slope of the ceiling", "deg", lambda w: self.slope_deg(w, thing), thing)

    def ceiling_seat(self, world: World, thing: Held) -> loads.CeilingSeat:
        """Return how a thing hangs under a ceiling, in a world."""
        mounting, motion = self.mounting(thing), self.motion(thing)
        reach, half = self.reach_m(world, thing), world(self.depth(thing)) / 2.0
        drop = world(mounting.drop_m) if mounting.drop_m is not None else 0.0
        if motion == "pole":
            drop = world(need(mounting.drop_m, mounting, "drop"))
        slope = self.slope_deg(world, thing)
        if motion == "pole" and slope > 0.0:
            world.assume("the pole hangs plumb")
        beside = (
            self._beside_m(world, thing, reach)
            if motion == "articulated"
            else half * self._tilted(world, thing, motion)
        )
        turned = beside > 0.0 or drop > 0.0 or slope > 0.0
        return loads.CeilingSeat(
            count=self.count(thing),
            pulled=self.top_count(thing) if turned else 1,
            spacing_m=world(self.row_spacing(thing)) if turned else 1.0,
            beside_m=beside,
            stands_off_m=0.0 if motion == "pole" else reach + drop,
            drop_m=drop,
            slope_deg=slope,
        )

    def _beside_m(self, world: World, thing: Held, reach: float) -> float:
        """Return how far beside its plate an arm under a ceiling can hold a thing."""
        mount = self.mount_data(thing)
        aside = mount.side_reach_m if mount is not None else None
        return max(reach, world(aside)) if aside is not None else reach

    def _tilted(self, world: World, thing: Held, motion: str) -> float:
        """Return the sine of the largest tilt of what hangs, without which it is taken as square to its plate."""
        mounting, mount = self.mounting(thing), self.mount_data(thing)
        use = abs(world(mounting.tilt_deg)) if mounting.tilt_deg is not None else 0.0
        if motion == "fixed":
            return math.sin(math.radians(use))
        most = mount.tilt_deg if mount is not None else None
        if most is None:
            return 1.0  # as far as it can ever tilt
        return math.sin(math.radians(min(max(world(most), use), _SIDEWAYS_DEG)))

    def demand(self, world: World, thing: Held, *, misuse: bool = False, aside: Quantity | None = None) -> Demand:
        """Return what the most loaded fastener bears, in a world."""
        weight = loads.weight_n(self.mass_kg(world, thing))
        whole = loads.misuse_load_n(weight) if misuse else weight
        if self.on(thing) == "ceiling":
            seat = self.ceiling_seat(world, thing)
            if seat.drop_m > 0.0:
                world.assume(Assumption("a sideways push of {} at the end of the drop", (PUSH_N, "N")))
            pull, shear = loads.ceiling_demand_n(whole, seat, PUSH_N)
            return Demand(pull, 0.0, shear)  # across the grain, the weaker way
        count, spacing = self.count(thing), world(self.row_spacing(thing))
        pull = loads.top_fastener_tension_n(whole, self.reach_m(world, thing), spacing, self.top_count(thing))
        down, across = loads.vertical_shear_n(whole, count), 0.0
        if aside is not None:
            more, across = self._twist(world, thing, whole, world(aside))
            down += more
        return Demand(pull, down, across)

    def _twist(self, world: World, thing: Held, load: float, aside: float) -> tuple[float, float]:
        fixing, spacing = self.fixing(thing), world(self.row_spacing(thing))
        if fixing.column_spacing_m is None and self.top_count(thing) > 1:
            world.assume("all fasteners stand in one column")
        if fixing.column_spacing_m is None or self.one_column(thing):
            return 0.0, loads.sideways_shear_n(load, aside, spacing)
        corners = min(self.count(thing), _CORNERS)
        return loads.group_twist_n(load, aside, spacing, world(fixing.column_spacing_m), corners)

    def one_column(self, thing: Held) -> bool:
        """Whether its fasteners stand in one column, as far as the file does not say that they do not."""
        columns = self.fixing(thing).column_spacing_m
        apart = columns is not None and columns.value - columns.u >= _ONE_COLUMN_M
        return not apart or self.top_count(thing) == 1

    def pull(self, thing: Held) -> Figure:
        """Pull on the most loaded fastener."""
        return self.figure("pull on the most loaded fastener", "N", lambda w: self.demand(w, thing).pull, thing)

    def wood(self, thing: Held) -> WoodFixing:
        """Return the fixing in wood with everything that its capacity needs."""
        region = self.design.project.region
        made = lambda: WoodFixing.of(self.fixing(thing), self.surface(thing), self.mount_data(thing), region)  # noqa: E731
        return self.once(("wood", thing), made)

    def by_eurocode(self, thing: Held) -> bool:
        """Whether the wood that holds it is judged by EN 1995-1-1."""
        return by_eurocode(self.surface(thing), self.design.project.region)

    def sheared_by_table(self, thing: Held) -> bool:
        """Whether the shear of its fastener is computed here: lag screws, and wood screws by the Eurocode."""
        return self.is_screw(thing) and (self.fastener(thing) == "lag-screw" or self.by_eurocode(thing))

    def is_screw(self, thing: Held) -> bool:
        """Whether it is held by lag or wood screws, which the wood standard has formulas for."""
        return self.fastener(thing) in SCREWS

    def report(self, thing: Held) -> FastenerReport | None:
        """Return what the fastener's evaluation report allows, when the file gives it."""
        return stated(self.fixing(thing).report)

    def engineer(self, thing: Held) -> Engineer | None:
        """Return the engineer's decision on the fixing, when there is one."""
        return stated(self.fixing(thing).engineer)

    def withdrawal_use(self, thing: Held) -> Figure:
        """Pull over allowable withdrawal of the most loaded fastener."""
        report = self.report(thing)
        if report is not None:
            allowed = need(report.withdrawal_n, report, "withdrawal")
            use = lambda w: self.demand(w, thing).pull / w(allowed)  # noqa: E731
        else:
            wood = self.wood(thing)
            use = lambda w: wood.screw(w).pulled("permanent", self.demand(w, thing).pull)  # noqa: E731
        return self.figure("pull over allowable pull", "", use, thing)

    def combined_use(self, thing: Held) -> Figure:
        """Resultant over allowable resultant of the most loaded fastener, board taken as a gap."""
        return self._combined("pull and shear over what one fastener may bear", thing, "permanent")

    def governs(self, thing: Held) -> str:
        """Return what uses the most loaded fastener up first: `pull`, or the yield mode of its shear."""
        if self.report(thing) is not None:
            return "report"
        screw, demand = self.wood(thing).screw(self.world), self.demand(self.world, thing)
        along, across = (demand.down, demand.across) if self.wood(thing).along else (demand.across, demand.down)
        if self.on(thing) == "ceiling":
            along, across = 0.0, math.hypot(demand.down, demand.across)
        if along == across == 0.0:
            return "pull"
        pulled, sheared = screw.pulled("permanent", demand.pull), screw.sheared("permanent", along, across)
        return "pull" if pulled >= sheared else screw.shear_mode(math.degrees(math.atan2(across, along)))

    def misuse_use(self, thing: Held) -> Figure:
        """Return the same with somebody hanging on the thing, at the ten-year value."""
        return self._combined("use under the misuse load", thing, "ten years", misuse=True)

    def swing_use(self, thing: Held) -> Figure:
        """Return the same with the arm swung aside as far as it goes."""
        mount = self.mount(thing)
        aside = need(mount.side_reach_m, mount, "side_reach")
        return self._combined("use with the arm swung aside", thing, "permanent", aside=aside)

    def _combined(
        self, name: str, thing: Held, duration: LoadDuration, *, misuse: bool = False, aside: Quantity | None = None
    ) -> Figure:
        report = self.report(thing)
        if report is not None:
            pulled, sheared = need(report.withdrawal_n, report, "withdrawal"), need(report.shear_n, report, "shear")

            def by_report(world: World) -> float:
                demand = self.demand(world, thing, misuse=misuse, aside=aside)
                permanent = fasteners.LOAD_DURATION_FACTOR[duration] / fasteners.LOAD_DURATION_FACTOR["permanent"]
                shear = math.hypot(demand.down, demand.across)
                return fasteners.straight_line_utilisation(
                    world(pulled) * permanent, world(sheared) * permanent, tension_n=demand.pull, shear_n=shear
                )

            return self.figure(name, "", by_report, thing)
        wood = self.wood(thing)

        def compute(world: World) -> float:
            demand = self.demand(world, thing, misuse=misuse, aside=aside)
            along, across = (demand.down, demand.across) if wood.along else (demand.across, demand.down)
            if self.on(thing) == "ceiling":
                along, across = 0.0, math.hypot(demand.down, demand.across)
            screw = wood.screw(world)
            if along == across == 0.0:
                return screw.pulled(duration, demand.pull)
            return screw.pulled_and_sheared(duration, demand.pull, along, across)

        return self.figure(name, "", compute, thing)

    def swings(self, thing: Held) -> bool:
        """Whether its mount can turn it aside."""
        return self.motion(thing) in SWINGS

    def stands(self, thing: Held) -> bool:
        """Whether it stands on the floor, a stand or furniture."""
        return self.on(thing) in FREE

    def edge_case_mass(self, thing: Held) -> float:
        """Return the mass that hangs there, at the far end of its uncertainty, kg: what words are guarded with."""
        mass = self.hung_mass(thing)
        return mass.value + mass.u
