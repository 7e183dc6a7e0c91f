"""What a design holds up, how, and in what: the ground of the figures of mounts."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.design.base import Missing, need
from roomlint.design.listening import FREE, Loudspeaker, Picture, Projector, Subwoofer
from roomlint.design.shell import Treatment
from roomlint.design.supply import Rack
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.base import Point
    from roomlint.design.listening import Fixing, Mounting
    from roomlint.design.products import MountData, Product, StandData
    from roomlint.design.quantity import Quantity
    from roomlint.design.shell import Surface

Held: TypeAlias = Loudspeaker | Subwoofer | Picture | Projector | Rack | Treatment
"""What something must hold."""

OVERHEAD: Final = frozenset({"ceiling", "grid-ceiling", "electrical-box"})
LININGS: Final = frozenset({"absorber", "diffuser", "bass-trap", "canopy"})
"""Treatments that are panels; curtains and carpets hang and lie by their own means."""
SWINGS: Final = frozenset({"articulated", "swivel"})
_FLUSH: Final = frozenset({"in-wall", "in-ceiling"})


class Holdings(View):
    """Everything that something must hold, and what the file states of how."""

    def held(self) -> Iterator[Held]:
        """Yield every loudspeaker, display, screen, projector, rack and panel."""
        design = self.design
        yield from design.loudspeakers
        yield from design.subwoofers
        if design.picture is not None:
            yield design.picture
            if design.picture.projector is not None:
                yield design.picture.projector
        yield from design.racks
        yield from self.panels()

    def panels(self) -> Iterator[Treatment]:
        """Yield the treatments that are panels."""
        return (panel for panel in self.design.treatments if panel.kind in LININGS)

    @staticmethod
    def mounting(thing: Held) -> Mounting:
        """How it is held."""
        return need(thing.mounting, thing, "mounting")

    def on(self, thing: Held) -> str:
        """Return what it is held by: the name of a surface, or stand, furniture, grid-ceiling or electrical-box."""
        if isinstance(thing, Treatment) and (thing.mounting is None or thing.mounting.on is None):
            return need(thing.on, thing, "on")
        mounting = self.mounting(thing)
        return need(mounting.on, mounting, "on")

    def fixing(self, thing: Held) -> Fixing:
        """Its fasteners."""
        mounting = self.mounting(thing)
        return need(mounting.fixing, mounting, "fixing")

    def fastener(self, thing: Held) -> str:
        """Return the kind of its fasteners."""
        fixing = self.fixing(thing)
        return need(fixing.fastener, fixing, "fastener")

    def into(self, thing: Held) -> str:
        """Return what its fasteners hold in."""
        fixing = self.fixing(thing)
        return need(fixing.into, fixing, "into")

    def surface(self, thing: Held) -> Surface:
        """Return the wall or ceiling that it hangs on, when the design describes it."""
        name = self.on(thing)
        found = self.design.shell.surface(name)
        if found is None:
            raise Missing(self.design.shell, name if name in {"ceiling", "floor"} else f"walls[{name}]")
        return found

    def has_own_mount(self, thing: Held) -> bool:
        """Whether a mount of its own is named; a loudspeaker, display or projector may have one that nobody named."""
        return self.mounting(thing).product is not None

    @staticmethod
    def built_without(thing: Held) -> str:
        """Return why it needs no mount's sheet, as the end of a sentence; empty for what does."""
        if isinstance(thing, Rack | Treatment):
            return "it is fastened by its own frame"
        if isinstance(thing, Loudspeaker) and Holdings.flush(thing):
            return "it sits in the board by its own frame"
        return ""

    @staticmethod
    def flush(thing: Held) -> bool:
        """Whether it sits in the board itself: a loudspeaker made for that, without a mount."""
        if not isinstance(thing, Loudspeaker | Subwoofer) or thing.product is None or thing.product.loudspeaker is None:
            return False
        mounted = thing.mounting is not None and thing.mounting.product is not None
        return not mounted and bool(_FLUSH.intersection(thing.product.loudspeaker.placement))

    def recessed(self, thing: Held) -> bool:
        """Whether it sits in a hole of the surface, by clamps or in a frame: a loudspeaker made for nothing else."""
        if not isinstance(thing, Loudspeaker | Subwoofer) or self.on(thing) in FREE:
            return False
        product = self.product(thing)
        data = need(product.loudspeaker, product, product.kind)
        return bool(_FLUSH.intersection(need(data.placement or None, data, "placement")))

    def mount(self, thing: Held) -> MountData:
        """Return the data of its mount."""
        mounting = self.mounting(thing)
        product = need(mounting.product, mounting, "product")
        return need(product.mount, product, "mount")

    def sheet(self, thing: Held) -> MountData | None:
        """Return what the sheet of its mount says, where a mount with a sheet is named."""
        product = self.mounting(thing).product
        return product.mount if product is not None else None

    def mount_data(self, thing: Held) -> MountData | None:
        """Return the data of its mount; None for what needs none."""
        return None if self.built_without(thing) and not self.has_own_mount(thing) else self.mount(thing)

    def motion(self, thing: Held) -> str:
        """Return how its mount moves; what is fastened by its own frame does not."""
        mount = self.mount_data(thing)
        return need(mount.motion, mount, "motion") if mount is not None else "fixed"

    def stand(self, thing: Held) -> tuple[Product, StandData]:
        """Return the stand that it is on, with its data."""
        mounting = self.mounting(thing)
        product = need(mounting.stand, mounting, "stand")
        return product, need(product.stand, product, "stand")

    @staticmethod
    def product(thing: Held) -> Product:
        """Return its product; racks and panels carry their own sizes."""
        if isinstance(thing, Rack | Treatment):
            raise TypeError(f"a {thing.KIND} has no product sheet")
        return need(thing.product, thing, "product")

    def own_mass(self, thing: Held) -> Quantity:
        """Mass of the thing alone, kg."""
        if isinstance(thing, Rack | Treatment):
            return need(thing.mass_kg, thing, "mass")
        product = self.product(thing)
        return need(product.mass_kg, product, "mass")

    def depth(self, thing: Held) -> Quantity:
        """Depth of the thing, from what holds it to its front, m."""
        if isinstance(thing, Treatment):
            return need(thing.thickness_m, thing, "thickness")
        if isinstance(thing, Rack):
            return need(thing.depth_m, thing, "depth")
        product = self.product(thing)
        return need(product.depth_m, product, "depth")

    @staticmethod
    def spot(thing: Held) -> Point | None:
        """Return where it is, if the file says."""
        if isinstance(thing, Picture):
            return thing.centre
        if isinstance(thing, Projector):
            return thing.lens
        return None if isinstance(thing, Treatment) else thing.position

    def plan_spot(self, thing: Held) -> tuple[Quantity, Quantity]:
        """Return where it is in plan."""
        if isinstance(thing, Treatment):
            front = need(thing.from_front_m, thing, "from_front")
            return need(thing.from_left_m, thing, "from_left"), self.design.shell.length_m - front
        keys = {Picture: "centre", Projector: "lens"}
        point = need(self.spot(thing), thing, keys.get(type(thing), "position"))
        return point.x, point.y
