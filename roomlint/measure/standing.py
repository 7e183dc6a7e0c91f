"""What stands free: at which slope it tips, and which push tips it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.design.listening import Loudspeaker, Picture, Subwoofer
from roomlint.figures import loads, stability
from roomlint.measure.holding import Holdings

if TYPE_CHECKING:
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.measure.world import World


class Standing(Holdings):
    """Figures of what stands on the floor or on a stand."""

    def tip_angle(self, thing: Held) -> Figure:
        """Slope at which it tips, with its stand if it is on one."""
        sides = self._base(thing)

        def compute(world: World) -> float:
            narrow = min(world(side) for side in sides)
            return stability.tip_angle_deg(narrow / 2.0, self._centre_m(world, thing))

        return self.figure("tip angle", "deg", compute, thing)

    def push_ratio(self, thing: Held) -> Figure:
        """Push at the top that tips it over the push that the product standard asks it to bear."""
        sides, product = self._base(thing), self.product(thing)
        height = need(product.height_m, product, "height")

        def compute(world: World) -> float:
            weight = loads.weight_n(self._mass_kg(world, thing))
            narrow = min(world(side) for side in sides)
            top = self._own_centre_m(world, thing) + world(height) / 2.0
            tips = stability.push_over_n(weight, narrow / 2.0, top)
            return tips / stability.required_push_n(weight)

        return self.figure("push that tips it over the push to bear", "", compute, thing)

    def plate_left(self, source: Loudspeaker | Subwoofer) -> Figure:
        """How much larger a stand's plate is than what the cabinet stands on; negative: its feet hang over."""
        _, data = self.stand(source)
        plate = need(data.plate_width_m, data, "plate_width"), need(data.plate_depth_m, data, "plate_depth")
        product = self.product(source)
        own = need(product.loudspeaker, product, product.kind)
        feet = need(own.base_width_m, own, "base_width"), need(own.base_depth_m, own, "base_depth")

        def compute(world: World) -> float:
            return 1e3 * min(world(there) - world(wanted) for there, wanted in zip(plate, feet, strict=True))

        return self.figure("plate beyond the feet", "mm", compute, source)

    def strap_rating(self, thing: Held) -> Figure:
        """Pull that the strap of a thing is rated for."""
        strap = need(self.mounting(thing).strap, self.mounting(thing), "strap")
        rating = need(strap.rating, strap, "rating")
        return self.figure("rating of the strap", "N", lambda w: w(rating), thing)

    def _base(self, thing: Held) -> tuple[Quantity, Quantity]:
        """Width and depth between the feet: of the stand, or of the cabinet itself."""
        if self.on(thing) == "stand" or not isinstance(thing, Loudspeaker | Subwoofer):
            _, data = self.stand(thing)
            return need(data.base_width_m, data, "base_width"), need(data.base_depth_m, data, "base_depth")
        product = self.product(thing)
        own = need(product.loudspeaker, product, product.kind)
        return need(own.base_width_m, own, "base_width"), need(own.base_depth_m, own, "base_depth")

    def _mass_kg(self, world: World, thing: Held) -> float:
        mass = world(self.own_mass(thing))
        if self.on(thing) == "stand":
            stand, _ = self.stand(thing)
            mass += world(need(stand.mass_kg, stand, "mass"))
        return mass

    def _centre_m(self, world: World, thing: Held) -> float:
        """Height of the centre of gravity of all that would tip together."""
        own = self._own_centre_m(world, thing)
        if self.on(thing) != "stand":
            return own
        stand, data = self.stand(thing)
        mass, low = need(stand.mass_kg, stand, "mass"), need(data.centre_of_gravity_m, data, "centre_of_gravity")
        return stability.stacked_centre_m(world(mass), world(low), world(self.own_mass(thing)), own)

    def _own_centre_m(self, world: World, thing: Held) -> float:
        """Height of its own centre of gravity above the floor."""
        product = self.product(thing)
        if self.on(thing) == "stand":
            # Its acoustic or optical middle is what the file places; the centre of gravity is taken to be there.
            spot = self.spot(thing)
            key = "centre" if isinstance(thing, Picture) else "position"
            world.assume("the centre of gravity is where the thing is placed")
            return world(need(spot, thing, key).z)
        given = product.loudspeaker.centre_of_gravity_m if product.loudspeaker is not None else None
        if given is not None:
            return world(given)
        world.assume("the centre of gravity is at half height")
        return world(need(product.height_m, product, "height")) / 2.0
