"""What a design holds up, how, and in what: the ground of the figures of mounts."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from roomlint.design.base import Missing, need
from roomlint.measure.fixing import WOOD
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Fixing, Loudspeaker, Mounting, Picture, Projector, Subwoofer
    from roomlint.design.products import MountData, Product
    from roomlint.design.shell import Framing, Surface

    Held = Loudspeaker | Subwoofer | Picture | Projector

FREE_STANDING = frozenset({"floor", "stand", "furniture"})
NOT_STRUCTURE = FREE_STANDING | {"grid-ceiling", "electrical-box"}
OVERHEAD = frozenset({"ceiling", "grid-ceiling", "electrical-box"})
FLUSH = frozenset({"in-wall", "in-ceiling"})


class Holdings(View):
    """Everything that something must hold, sorted by how it is held."""

    @cached_property
    def held(self) -> tuple[Held, ...]:
        """All devices that say how they are held."""
        return tuple(device for device in self._devices() if device.mounting is not None)

    @cached_property
    def devices(self) -> tuple[Held, ...]:
        """All devices that something must hold."""
        return tuple(self._devices())

    def _devices(self) -> Iterator[Held]:
        design = self.design
        yield from design.loudspeakers
        yield from design.subwoofers
        if design.picture is not None:
            yield design.picture
            if design.picture.projector is not None:
                yield design.picture.projector

    @cached_property
    def fixed(self) -> tuple[Held, ...]:
        """Devices that hang on a wall or the ceiling by fasteners; flush loudspeakers clamp to the board instead."""
        return tuple(
            device
            for device in self.held
            if device.mounting is not None and device.mounting.on not in NOT_STRUCTURE and not self.flush(device)
        )

    @cached_property
    def on_wood(self) -> tuple[Held, ...]:
        """Those whose fasteners go into wood, as far as the design says."""
        return tuple(device for device in self.fixed if self._fixing_into(device, WOOD))

    @cached_property
    def on_wood_walls(self) -> tuple[Held, ...]:
        """Those of them on a wall, where weight shears the fasteners as well."""
        return tuple(device for device in self.on_wood if self.mounting(device).on != "ceiling")

    @cached_property
    def on_steel(self) -> tuple[Held, ...]:
        """Devices whose fasteners go into steel studs."""
        return tuple(device for device in self.fixed if self._fixing_into(device, frozenset({"steel-stud"})))

    @cached_property
    def overhead(self) -> tuple[Held, ...]:
        """Devices that hang overhead, flush ones left out."""
        return tuple(device for device in self.held if self.mounting(device).on in OVERHEAD and not self.flush(device))

    @cached_property
    def suspended(self) -> tuple[Held, ...]:
        """Overhead devices that hang below the ceiling on a pole, rods or slings."""
        return tuple(device for device in self.overhead if self._hangs(device))

    @cached_property
    def on_mounts(self) -> tuple[Held, ...]:
        """Devices that are held by a mount of their own."""
        return tuple(device for device in self.held if self.mounting(device).product is not None)

    @cached_property
    def standing(self) -> tuple[Loudspeaker | Subwoofer, ...]:
        """Loudspeakers and subwoofers that stand free."""
        boxes: list[Loudspeaker | Subwoofer] = [*self.design.loudspeakers, *self.design.subwoofers]
        return tuple(box for box in boxes if box.mounting is not None and box.mounting.on in {"floor", "stand"})

    def _fixing_into(self, device: Held, kinds: frozenset[str]) -> bool:
        fixing = self.mounting(device).fixing
        return fixing is not None and fixing.into in kinds

    def _hangs(self, device: Held) -> bool:
        mounting = self.mounting(device)
        pole = self.motion(device) == "pole"
        return pole or mounting.drop_m is not None or mounting.sling_angle_deg is not None

    @staticmethod
    def flush(device: Held) -> bool:
        """Whether the device sits in the board itself: an in-wall or in-ceiling loudspeaker without a mount."""
        product, mounting = device.product, device.mounting
        if product is None or product.loudspeaker is None or mounting is None:
            return False
        return mounting.product is None and bool(FLUSH.intersection(product.loudspeaker.placement))

    @staticmethod
    def mounting(device: Held) -> Mounting:
        """How the device is held."""
        return need(device.mounting, device, "mounting")

    def fixing(self, device: Held) -> Fixing:
        """Its fasteners."""
        mounting = self.mounting(device)
        return need(mounting.fixing, mounting, "fixing")

    def motion(self, device: Held) -> str | None:
        """How its mount moves, if it has one that says so."""
        mount = self.mount_data(device)
        return mount.motion if mount is not None else None

    def mount_data(self, device: Held) -> MountData | None:
        """Return the data of its mount, if it has one that has a sheet."""
        product = self.mounting(device).product
        return product.mount if product is not None else None

    def mount(self, device: Held) -> MountData:
        """Return the data of its mount."""
        mounting = self.mounting(device)
        product: Product = need(mounting.product, mounting, "product")
        return need(product.mount, product, "mount")

    def surface(self, device: Held) -> Surface:
        """Return the wall or ceiling that it hangs on, when the design describes it."""
        mounting = self.mounting(device)
        name = need(mounting.on, mounting, "on")
        found = self.design.shell.surface(name)
        if found is None:
            raise Missing(self.design.shell, name if name in {"ceiling", "floor"} else f"walls[{name}]")
        return found

    def framing(self, device: Held) -> Framing:
        """Return what is behind that surface."""
        return self.surface(device).framing
