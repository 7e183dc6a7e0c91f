"""A whole design of one room."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.element import Element
from roomlint.design.keys import Number, system, text
from roomlint.design.listening import Loudspeaker, Picture, Seat, Subwoofer
from roomlint.design.noise import Noise
from roomlint.design.pairs import pair
from roomlint.design.parts import part, several
from roomlint.design.quantity import Assumption, Quantity, assumed
from roomlint.design.reader import TOLERANCE_M, UNSAID_TOLERANCE_M, unique
from roomlint.design.record import Calibration, Item, Mode, Project, Survey, Waiver
from roomlint.design.repeated import Repeated
from roomlint.design.rows import row
from roomlint.design.shell import Shell, Treatment
from roomlint.design.structure import Panel
from roomlint.design.supply import Cable, Circuit, Electronics, Raceway

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.derived import Worked
    from roomlint.design.products import Product
    from roomlint.design.reader import Book
    from roomlint.design.supply import Amplifier, Processor, Rack

_SOURCE = "loudspeaker or subwoofer"


class Design(Element):
    """One design of one room.

    Every quantity is text with its unit; what is not known is left out.
    """

    KIND = "design"
    ORDERED = True

    schema_link = text("Where an editor finds the schema of this file.", "room.schema.json", key="$schema", told=True)
    version = Number[int](
        "Version of this file form.", 1, 1, example=1, only_whole=True, key="roomlint", required=True, told=True
    )
    project = part("Which job this is.", Project, always=True)
    survey = part("How the room was measured.", Survey, always=True)
    shell = part("The room itself. Give size for a rectangle or outline for any other shape.", Shell, always=True,
                 key="room", required=True)  # fmt: skip
    treatments = several("Absorbers, diffusers, curtains and carpets, or none.", Treatment, most=200, what="treatment",
                         or_none=True)  # fmt: skip
    seats: Repeated[tuple[Seat, ...]] = Repeated("The seats, or none.", Seat, row, most=60, what="seat", names="seat",
                                                 or_none=True)  # fmt: skip
    picture = part("The picture, or none.", Picture, or_none=True)
    layout = system("The sound system the room follows, or departs from openly.")
    loudspeakers: Repeated[tuple[Loudspeaker, ...]] = Repeated(
        "The loudspeakers of the labelled channels, or none.", Loudspeaker, pair, most=60, names=_SOURCE, or_none=True
    )
    subwoofers: Repeated[tuple[Subwoofer, ...]] = Repeated(
        "The subwoofers, or none.", Subwoofer, pair, most=24, names=_SOURCE, or_none=True
    )
    electronics = part("What drives the loudspeakers.", Electronics)
    noise = part("What is heard when nothing plays.", Noise)
    raceways = several(
        "Conduits and other raceways, or none.", Raceway, most=200, what="raceway", names="raceway", or_none=True
    )
    cables = several("Cable runs, or none.", Cable, most=200, what="cable", or_none=True)
    panels = several("Boards that circuits start from, or none.", Panel, most=8, what="panel", names="panel",
                     or_none=True)  # fmt: skip
    circuits = several("Branch circuits, or none.", Circuit, most=40, what="circuit", or_none=True)
    modes = several(
        "Which channels play together.", Mode, most=20, key="listening_modes", what="listening mode",
        names="listening mode",
    )  # fmt: skip
    calibration = part("How the room is set up.", Calibration, always=True)
    handover = several("What is verified, recorded and left behind.", Item, most=300, what="handover item")
    waivers = several("Failures accepted on the record.", Waiver, most=200, told=True)

    file: str
    products: tuple[Product, ...]
    """The product sheets that the room uses, each this design's own copy."""
    worked: tuple[Worked, ...] = ()
    """What was worked out of what the file says, in its order."""

    @property
    def processor(self) -> Processor | None:
        """The processor."""
        return self.electronics.processor if self.electronics is not None else None

    @property
    def amplifiers(self) -> tuple[Amplifier, ...]:
        """The amplifiers."""
        return self.electronics.amplifiers if self.electronics is not None else ()

    @property
    def racks(self) -> tuple[Rack, ...]:
        """The racks."""
        return self.electronics.racks if self.electronics is not None else ()

    @property
    def assumed_tolerance(self) -> Quantity | None:
        """What surveyed lengths are taken to be good for when the survey does not say; None when it does."""
        if self.survey.given("tolerance_m") is not None:
            return None
        stage = self.project.stage
        value = TOLERANCE_M.get(stage or "", UNSAID_TOLERANCE_M)
        form = f"lengths are taken to be good to {{}}, as {f'at {stage}' if stage else 'no stage is stated'}"
        return assumed(value, 0.0, "m", Assumption(form, (value * 1e3, "mm")))

    def labelled(self, *labels: str) -> Iterator[Loudspeaker]:
        """Yield the loudspeakers that carry one of the labels, in the order of the file."""
        return (speaker for speaker in self.loudspeakers if speaker.label in labels)

    @property
    def sources(self) -> tuple[Loudspeaker | Subwoofer, ...]:
        """Return everything that makes sound: the loudspeakers, then the subwoofers."""
        return (*self.loudspeakers, *self.subwoofers)

    def named_elements(self) -> Iterator[Element]:
        """Yield every element that has an id of its own in the file; none counts as read for it."""
        return (element for element in below(self) if "id" in element.KEYS or element.ID or element.KIND == "room")

    def settle(self, book: Book) -> None:
        """Look up every name, and tell of ids and claims that only one element can have."""
        sources = [*(self.given("loudspeakers") or ()), *(self.given("subwoofers") or ())]
        unique(sources, _SOURCE, book)
        for element in self.named_elements():
            book.name("element", element.id)
        references = [seat for seat in self.given("seats") or () if seat.given("reference")]
        for seat in references[1:]:
            said = f"only one seat can be the reference seat; {references[0].id!r} already is."
            book.cross(seat.at.get("reference") or seat.at, said)
        self._settle_waivers(book)
        book.finish()

    def _settle_waivers(self, book: Book) -> None:
        """Refuse a waiver that names what is on several circuits and no circuit: one `r1` is accepted, not each."""
        circuits = {circuit.id: circuit for circuit in self.given("circuits") or ()}
        on: dict[str, list[str]] = {}
        for circuit in circuits.values():
            for item in (one for attr in ON_CIRCUITS for one in circuit.given(attr) or ()):
                on.setdefault(item.id, []).append(circuit.id)
                on.setdefault(item.key, []).append(circuit.id)
        for waiver in self.given("waivers") or ():
            named = [name.strip() for name in str(waiver.given("subject") or "").split("+")]
            if any(name.removeprefix("circuit/") in circuits for name in named):
                continue
            for name in named:
                of = list(dict.fromkeys(on.get(name, ())))
                if len(of) > 1:
                    said = f"{name!r} is on {', '.join(of)}; name the circuit too, such as {name}+{of[0]}."
                    book.cross(waiver.at.get("subject") or waiver.at, said)


ON_CIRCUITS: Final = ("receptacles", "units", "loads")
"""What a circuit holds, whose names are its own."""


def below(element: Element) -> Iterator[Element]:
    """Yield every element below one, in the order of declaration, without counting anything as read."""
    for attr in element.HOLDS:
        value = element.given(attr)
        for one in value if isinstance(value, tuple) else (value,):
            if isinstance(one, Element):
                yield one
                yield from below(one)
