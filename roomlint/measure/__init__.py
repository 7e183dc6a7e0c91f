"""Binds one design to the pure figures, with uncertainty, and remembers what it computed."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from roomlint.measure.view import View
from roomlint.measure.world import World

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.measure.access import Access
    from roomlint.measure.aim import Aiming
    from roomlint.measure.anchoring import Anchors
    from roomlint.measure.angles import Angles
    from roomlint.measure.arrangement import Arrangement
    from roomlint.measure.bass import Bass
    from roomlint.measure.blocking import Blocking
    from roomlint.measure.boards import Boards
    from roomlint.measure.bodies import Bodies
    from roomlint.measure.boundary import Boundaries
    from roomlint.measure.cabling import Cabling
    from roomlint.measure.commissioning import Commissioning
    from roomlint.measure.covering import Covering
    from roomlint.measure.crossing import Crossing
    from roomlint.measure.decaying import Decaying
    from roomlint.measure.delays import Delays
    from roomlint.measure.embedding import Mounts
    from roomlint.measure.fixtures import Fixtures
    from roomlint.measure.framing import Framings
    from roomlint.measure.hanging import Hanging
    from roomlint.measure.heating import Heating
    from roomlint.measure.levels import Levels
    from roomlint.measure.lining import Lining
    from roomlint.measure.mains import Mains
    from roomlint.measure.noise import Noises
    from roomlint.measure.onscreen import OnScreen
    from roomlint.measure.pairs import Pairs
    from roomlint.measure.panels import Panels
    from roomlint.measure.placing import Placing
    from roomlint.measure.playing import Playing
    from roomlint.measure.powered import Powered
    from roomlint.measure.protection import Protection
    from roomlint.measure.reflections import Reflections
    from roomlint.measure.room_moves import RoomMoves
    from roomlint.measure.routing import Routing
    from roomlint.measure.space import Space
    from roomlint.measure.staging import Staging
    from roomlint.measure.standing import Standing
    from roomlint.measure.treating import Treating
    from roomlint.measure.viewing import Viewing


class Figures:
    """The figures of one design, a view for each branch; each is made when it is first asked for."""

    def __init__(self, design: Design) -> None:
        self.design = design
        self.world = World()
        """The design's numbers as they were read."""

    def release(self) -> None:
        """Let go of all that was computed, once nobody asks any more: views and worlds hold on to each other."""
        for view in vars(self).values():
            if isinstance(view, View):
                vars(view).clear()
        self.world.release()
        vars(self).clear()

    @cached_property
    def space(self) -> Space:
        """The surfaces of the room and what stands in it."""
        from roomlint.measure.space import Space

        return Space(self)

    @cached_property
    def room_moves(self) -> RoomMoves:
        """What the room's own readings do to the pressure of a source at an ear."""
        from roomlint.measure.room_moves import RoomMoves

        return RoomMoves(self)

    @cached_property
    def staging(self) -> Staging:
        """Whether things stand where they can, and what stands in between."""
        from roomlint.measure.staging import Staging

        return Staging(self)

    @cached_property
    def fixtures(self) -> Fixtures:
        """Where pictures, projectors, racks, panels and receptacles are."""
        from roomlint.measure.fixtures import Fixtures

        return Fixtures(self)

    @cached_property
    def covering(self) -> Covering:
        """Whether panels and curtains leave loudspeakers and heads free."""
        from roomlint.measure.covering import Covering

        return Covering(self)

    @cached_property
    def blocking(self) -> Blocking:
        """What stands between the seats and the picture."""
        from roomlint.measure.blocking import Blocking

        return Blocking(self)

    @cached_property
    def angles(self) -> Angles:
        """Azimuths, elevations and distances of loudspeakers from seats."""
        from roomlint.measure.angles import Angles

        return Angles(self)

    @cached_property
    def arrangement(self) -> Arrangement:
        """Which loudspeakers there are, and where the layout wants them."""
        from roomlint.measure.arrangement import Arrangement

        return Arrangement(self)

    @cached_property
    def pairs(self) -> Pairs:
        """Left against right."""
        from roomlint.measure.pairs import Pairs

        return Pairs(self)

    @cached_property
    def onscreen(self) -> OnScreen:
        """Loudspeakers and seats against the picture."""
        from roomlint.measure.onscreen import OnScreen

        return OnScreen(self)

    @cached_property
    def viewing(self) -> Viewing:
        """What seats see of the picture, and how the projector lights it."""
        from roomlint.measure.viewing import Viewing

        return Viewing(self)

    @cached_property
    def access(self) -> Access:
        """How people come in and out, and reach what they use."""
        from roomlint.measure.access import Access

        return Access(self)

    @cached_property
    def bodies(self) -> Bodies:
        """What stands in the room, as solids."""
        from roomlint.measure.bodies import Bodies

        return Bodies(self)

    @cached_property
    def delays(self) -> Delays:
        """Arrival times and the delays to enter."""
        from roomlint.measure.delays import Delays

        return Delays(self)

    @cached_property
    def aim(self) -> Aiming:
        """Where loudspeakers point and what they cover."""
        from roomlint.measure.aim import Aiming

        return Aiming(self)

    @cached_property
    def boundary(self) -> Boundaries:
        """What nearby surfaces do to loudspeakers, ports and seats."""
        from roomlint.measure.boundary import Boundaries

        return Boundaries(self)

    @cached_property
    def reflections(self) -> Reflections:
        """What the surfaces send after the direct sound."""
        from roomlint.measure.reflections import Reflections

        return Reflections(self)

    @cached_property
    def treating(self) -> Treating:
        """Where panels take first reflections."""
        from roomlint.measure.treating import Treating

        return Treating(self)

    @cached_property
    def bass(self) -> Bass:
        """The modal response of the subwoofers at the seats."""
        from roomlint.measure.bass import Bass

        return Bass(self)

    @cached_property
    def lining(self) -> Lining:
        """What the room's surfaces are covered with."""
        from roomlint.measure.lining import Lining

        return Lining(self)

    @cached_property
    def decaying(self) -> Decaying:
        """How long sound rings in the room."""
        from roomlint.measure.decaying import Decaying

        return Decaying(self)

    @cached_property
    def crossing(self) -> Crossing:
        """How subwoofers and loudspeakers add up through the crossover."""
        from roomlint.measure.crossing import Crossing

        return Crossing(self)

    @cached_property
    def placing(self) -> Placing:
        """Where else subwoofers could stand."""
        from roomlint.measure.placing import Placing

        return Placing(self)

    @cached_property
    def cabling(self) -> Cabling:
        """What cables and raceways are made for."""
        from roomlint.measure.cabling import Cabling

        return Cabling(self)

    @cached_property
    def framing(self) -> Framings:
        """What is cut out of studs and joists, and what fits between them."""
        from roomlint.measure.framing import Framings

        return Framings(self)

    @cached_property
    def heating(self) -> Heating:
        """Heat of racks and the air that carries it away."""
        from roomlint.measure.heating import Heating

        return Heating(self)

    @cached_property
    def mounts(self) -> Mounts:
        """Loads on fasteners and mounts."""
        from roomlint.measure.embedding import Mounts

        return Mounts(self)

    @cached_property
    def anchors(self) -> Anchors:
        """What anchors, toggles and screws in thin steel hold."""
        from roomlint.measure.anchoring import Anchors

        return Anchors(self)

    @cached_property
    def hanging(self) -> Hanging:
        """What hangs overhead, and from what."""
        from roomlint.measure.hanging import Hanging

        return Hanging(self)

    @cached_property
    def panels(self) -> Panels:
        """How acoustic panels burn."""
        from roomlint.measure.panels import Panels

        return Panels(self)

    @cached_property
    def standing(self) -> Standing:
        """What stands free, and when it tips."""
        from roomlint.measure.standing import Standing

        return Standing(self)

    @cached_property
    def mains(self) -> Mains:
        """Circuits and what they carry."""
        from roomlint.measure.mains import Mains

        return Mains(self)

    @cached_property
    def boards(self) -> Boards:
        """Panels, boxes, and what stands between a receptacle and its loads."""
        from roomlint.measure.boards import Boards

        return Boards(self)

    @cached_property
    def powered(self) -> Powered:
        """What draws from the mains, and which circuit feeds it."""
        from roomlint.measure.powered import Powered

        return Powered(self)

    @cached_property
    def protection(self) -> Protection:
        """Conductors, plugs and receptacles against the devices before them."""
        from roomlint.measure.protection import Protection

        return Protection(self)

    @cached_property
    def routing(self) -> Routing:
        """The way from a channel to its loudspeaker."""
        from roomlint.measure.routing import Routing

        return Routing(self)

    @cached_property
    def levels(self) -> Levels:
        """How loud it gets at the seats."""
        from roomlint.measure.levels import Levels

        return Levels(self)

    @cached_property
    def noise(self) -> Noises:
        """What is heard when nothing plays."""
        from roomlint.measure.noise import Noises

        return Noises(self)

    @cached_property
    def playing(self) -> Playing:
        """What the processor is set up for, and what the listening modes play."""
        from roomlint.measure.playing import Playing

        return Playing(self)

    @cached_property
    def commissioning(self) -> Commissioning:
        """What was set, measured and recorded when the room was set up."""
        from roomlint.measure.commissioning import Commissioning

        return Commissioning(self)
