"""The figures of a room as a sheet of tables, for reading off on site; what cannot be computed says what it lacks."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.design.base import Missing
from roomlint.design.listening import WOOD
from roomlint.figures.absorption import BANDS_HZ
from roomlint.figures.decay import OCTAVE_EDGE
from roomlint.figures.domain import Refused
from roomlint.measure.fixing import SCREWS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.measure import Figures
    from roomlint.measure.figure import Figure


@dataclass(frozen=True, slots=True)
class Lacking:
    """A figure that cannot be computed, and the key that is not there."""

    key: str
    """The path of the key in its file, or why a formula does not hold."""
    below: str = ""
    """The key below its element; empty where a formula does not hold."""
    element: str = ""
    """What the team calls the element that lacks it."""


KILO = 1000
NOT_ITS = Lacking("")
"""A figure that this kind of source does not have."""
GOVERNS: Final = {
    "pull": "pull",
    "report": "its report",
    "main_bearing": "shear: wood crushes",
    "side_bearing": "shear: plate crushes",
    "both": "shear: wood and plate crush",
    "main_hinge": "shear: bends in the wood",
    "side_hinge": "shear: bends at the plate",
    "hinges": "shear: bends twice",
}
"""What uses a fastener up first, in words."""
Cell: TypeAlias = "Figure | Lacking | str"
"""A figure, what it lacks, or a name."""


@dataclass(frozen=True, slots=True)
class Table:
    """A titled table: a name and its figures a row."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, tuple[Cell, ...]], ...]


def sheet(figures: Figures) -> list[Table]:
    """Return the tables of a room: seats, picture, channels, levels, bass, decay, noise, and what holds and feeds."""
    tables = list(_seats(figures))
    tables += _picture(figures)
    tables += _channels(figures)
    tables += _levels(figures)
    tables += _bass(figures)
    tables += _decay(figures)
    tables += _noise(figures)
    tables += _mounts(figures)
    tables += _circuits(figures)
    tables += _power(figures)
    tables += _cables(figures)
    tables += _raceways(figures)
    tables += _heat(figures)
    return tables


def _ask(compute: Callable[[], Figure]) -> Figure | Lacking:
    try:
        return compute()
    except Missing as missing:
        element = missing.element
        return Lacking(element.path_of(missing.key), missing.key, element.words)
    except Refused as error:
        # Outside the range of a formula: the reader is told which, as the rule that needs it would be.
        return Lacking(str(error))


def _row(name: str, *asked: Callable[[], Figure]) -> tuple[str, tuple[Figure | Lacking, ...]]:
    return name, tuple(_ask(compute) for compute in asked)


def _seats(figures: Figures) -> Iterator[Table]:
    columns = ("azimuth", "elevation", "distance", "off axis", "delay to enter")
    for seat in figures.design.seats:
        rows = [_source_row(figures, source, seat) for source in figures.design.sources]
        if rows:
            reference = " (reference seat)" if seat.reference else ""
            yield Table(f"seat {seat.id}{reference}", columns, tuple(rows))


def _source_row(
    figures: Figures, source: Loudspeaker | Subwoofer, seat: Seat
) -> tuple[str, tuple[Figure | Lacking, ...]]:
    from roomlint.design.listening import Loudspeaker

    label = f" {source.label}" if source.label else ""
    name, cells = _row(
        f"{source.id}{label}",
        lambda: figures.angles.azimuth(source, seat),
        lambda: figures.angles.elevation(source, seat),
        lambda: figures.angles.distance(source, seat),
    )
    if isinstance(source, Loudspeaker):
        cells += (_ask(lambda: figures.aim.off_axis(source, seat)),)
        # A processor is set for one seat only; a delay for any other would be entered by mistake.
        reference = seat.reference or len(figures.design.seats) == 1
        cells += (_ask(lambda: figures.delays.to_enter(source, seat)) if reference else NOT_ITS,)
    else:
        cells += (NOT_ITS, NOT_ITS)
    return name, cells


def _picture(figures: Figures) -> Iterable[Table]:
    """Yield what each seat sees of the picture."""
    seen, picture = figures.viewing, figures.design.picture
    if picture is None or not figures.design.seats:
        return
    rows = [
        _row(
            seat.id,
            partial(seen.seen_width, seat),
            partial(seen.upward, seat, top=True),
            partial(seen.upward, seat, top=False),
            partial(figures.onscreen.off_axis, picture, seat),
            partial(seen.far_edge, seat),
            partial(seen.acuity, seat),
        )
        for seat in figures.design.seats
    ]
    columns = ("it fills", "up to its top", "up to its middle", "off its axis", "to its far edge", "of acuity distance")
    yield Table("picture", columns, tuple(rows))


def _channels(figures: Figures) -> Iterable[Table]:
    """Yield the channel plan: how each channel comes to what plays it."""
    routing, rows = figures.routing, []
    for source, sending, driven, cables in routing.rows():
        load: Cell = NOT_ITS
        if driven:
            load = _ask(partial(routing.load, driven[0].feed))
        own = ["own"] if not driven and routing.is_active(source) else []
        names: tuple[Cell, ...] = (
            source.label or NOT_ITS,
            _named([sent.number for sent in sending]),
            _named([f"{one.driver.id} {one.feed.output}" for one in driven] or own),
            _named([cable.id for cable in cables]),
        )
        rows.append((source.id, (*names, load)))
    nothing = (NOT_ITS,) * 4
    rows += [("not fitted", (label, *nothing)) for label in figures.playing.declared]
    if figures.design.electronics is not None and rows:
        columns = ("channel", "line output", "amplifier output", "cable", "load on it")
        yield Table("channels", columns, tuple(rows))


def _named(names: list[str]) -> Cell:
    return ", ".join(names) if names else NOT_ITS


def _levels(figures: Figures) -> Iterable[Table]:
    """Yield the budget of levels: what ends first of each chain, then full scale at every seat."""
    levels, design = figures.levels, figures.design
    if not design.seats or not any(source.product is not None for source in design.sources):
        return
    reference = next((seat for seat in design.seats if seat.reference or len(design.seats) == 1), None)
    if reference is not None:
        rows = [_budget(figures, speaker, reference) for speaker in design.loudspeakers]
        columns = ("from the amplifier", "borne", "first to end", "asked for")
        yield Table(f"levels at {reference.id}, full scale", columns, tuple(rows))
    rows = [(source.id, tuple(_ask(partial(levels.peak, source, seat)) for seat in design.seats))
            for source in design.loudspeakers]  # fmt: skip
    if design.subwoofers:
        rows.append(("subwoofers", tuple(_ask(partial(levels.low, seat)) for seat in design.seats)))
    yield Table("full scale at every seat", tuple(seat.id for seat in design.seats), tuple(rows))


def _budget(figures: Figures, speaker: Loudspeaker, seat: Seat) -> tuple[str, tuple[Cell, ...]]:
    levels = figures.levels
    active = figures.routing.is_active(speaker)
    amplified: Cell = "own" if active else _ask(partial(levels.amplified, speaker, seat))
    borne = _ask(partial(levels.borne, speaker, seat))
    first: Cell = NOT_ITS
    if not isinstance(amplified, Lacking) and not isinstance(borne, Lacking):
        first = levels.ends_first(speaker, seat)
    return speaker.id, (amplified, borne, first, _ask(levels.wanted))


def _noise(figures: Figures) -> Iterable[Table]:
    """Yield what the file tells of noise."""
    noise = figures.noise
    if figures.design.noise is None:
        return
    rate = noise.rating if figures.design.project.reference == "critical" else noise.criterion
    columns = ("rating of the background" if rate == noise.rating else "criterion of the background", "at the ear")
    rows: list[tuple[str, tuple[Cell, ...]]] = [("room", (_ask(rate), NOT_ITS))]
    rows += [(seat.id, (NOT_ITS, _ask(partial(noise.at_seat, seat)))) for seat in figures.design.seats]
    yield Table("noise, A-weighted at the ear", columns, tuple(rows))
    try:
        octaves = [(f"{band:g} Hz", (level, reached)) for band, level, reached in noise.by_octave()]
    except Refused:
        return
    if octaves:
        yield Table("background by octave", ("level", columns[0].split()[0]), tuple(octaves))


def _bass(figures: Figures) -> Iterable[Table]:
    design = figures.design
    if not design.subwoofers or not design.seats:
        return
    rows = [_row("all seats", figures.bass.seat_spread)]
    rows += [_row(seat.id, partial(_deepest, figures, seat)) for seat in design.seats]
    yield Table("bass, 20 to 80 Hz", ("range over seats, or a seat's deepest dip",), tuple(rows))
    if len(design.seats) > 1:
        try:
            sets = [(", ".join(cure.placed.names), (cure.spread,)) for cure in figures.placing.best()]
        except (Missing, Refused):
            return
        if sets:
            title = "subwoofers elsewhere, amid walls or in corners, alike and undelayed: the best"
            yield Table(title, ("range over seats",), tuple(sets))


def _deepest(figures: Figures, seat: Seat) -> Figure:
    return figures.bass.deepest_dip(seat) if len(figures.design.seats) > 1 else figures.bass.own_dip(seat).figure


def _decay(figures: Figures) -> Iterable[Table]:
    """Yield the decay by octave with its range, each formula's own, and which octaves lie where modes rule."""
    if all(surface.finish is None for surface in figures.design.shell.surfaces):
        return
    view, edge = figures.decaying, _ask(figures.decaying.schroeder)
    square = figures.space.no_ceiling is None and view.is_square
    rows = []
    for band in BANDS_HZ:
        name = f"{band // 1000} kHz" if band >= KILO else f"{band} Hz"
        name, cells = _row(name, partial(view.band, band), partial(view.by, "sabine", band))
        cells += (_ask(partial(view.by, "eyring", band)), _ask(partial(view.by, "arau", band)) if square else NOT_ITS)
        low = not isinstance(edge, Lacking) and edge.value > band / OCTAVE_EDGE
        rows.append((name, (*cells, "rule here" if low else NOT_ITS)))
    rows.append(("500 Hz to 2 kHz", (_ask(view.mid), *(NOT_ITS,) * 4)))
    rows.append(("Schroeder frequency", (*(NOT_ITS,) * 4, edge)))
    columns = ("decay", "Sabine", "Eyring", "Arau-Puchades", "single modes")
    yield Table("decay by octave, from tables of absorption", columns, tuple(rows))


def _mounts(figures: Figures) -> Iterable[Table]:
    mounts, rows = figures.mounts, []
    for thing in mounts.held():
        fixing = thing.mounting.fixing if thing.mounting is not None else None
        if fixing is None or fixing.into not in WOOD:
            continue
        cells: list[Cell] = [_ask(partial(mounts.hung_mass, thing)), _ask(partial(mounts.pull, thing))]
        if fixing.fastener not in SCREWS:
            rows.append((thing.id, (*cells, NOT_ITS, NOT_ITS)))
            continue
        use = _ask(partial(mounts.combined_use, thing))
        governs: Cell = use if isinstance(use, Lacking) else GOVERNS[mounts.governs(thing)]
        rows.append((thing.id, (*cells, use, governs)))
    if rows:
        title = "fixings (screening arithmetic; an engineer and the maker's instructions decide)"
        yield Table(title, ("mass", "pull on a top fastener", "use of the fastener", "governed by"), tuple(rows))


def _circuits(figures: Figures) -> Iterable[Table]:
    rows = [
        _row(circuit.id, partial(figures.mains.required, circuit), partial(figures.protection.drop, circuit))
        for circuit in figures.design.circuits
    ]
    if rows:
        yield Table("circuits (a licensed electrician decides)", ("rating asked for", "voltage drop"), tuple(rows))


def _power(figures: Figures) -> Iterable[Table]:
    """Yield the tree of power: panels, circuits, what is plugged into them, and the loads at its ends."""
    design, mains, boards = figures.design, figures.mains, figures.boards
    rows: list[tuple[str, tuple[Cell, ...]]] = []
    for panel in design.panels:
        supply = "supply" if panel.kind == "service" else NOT_ITS
        rows.append((panel.id, (panel.fed_from or supply, NOT_ITS, NOT_ITS)))
    for circuit in design.circuits:
        asked = _ask(partial(mains.required, circuit))
        rows.append((circuit.id, (circuit.panel or NOT_ITS, _ask(partial(mains.device, circuit)), asked)))
        for unit in circuit.units:
            use = _ask(partial(boards.use, unit, circuit)) if boards.through(unit, circuit) else NOT_ITS
            into = unit.unit or unit.receptacle or NOT_ITS
            rows.append((f"{unit.id} on {circuit.id}", (into, _ask(partial(boards.rating, unit, circuit)), use)))
        for load in circuit.loads:
            into = load.unit or load.receptacle or circuit.id
            drawn = _ask(partial(mains.current, load, circuit))
            rows.append((f"{load.id} on {circuit.id}", (into, NOT_ITS, drawn)))
    if rows:
        yield Table("tree of power (a licensed electrician decides)", ("fed from", "rating", "current"), tuple(rows))


def _cables(figures: Figures) -> Iterable[Table]:
    """Yield every run: what it is, how long, how thick, and what it costs a loudspeaker."""
    cabling, rows = figures.cabling, []
    for cable in figures.design.cables:
        cores = "" if cable.conductors is None else str(cable.conductors)
        kind = "/".join(word for word in (cable.marking, cores) if word) or None
        words = tuple(NOT_ITS if word is None else word for word in (cable.carries, kind, cable.raceway))
        cells: list[Cell] = [*words, _ask(partial(cabling.length, cable))]
        source = next((one for one in figures.design.sources if one.id == cable.end), None)
        if cable.carries == "loudspeaker" and source is not None:
            cells.append(_ask(partial(cabling.conductor, cable)))
            cells.append(_ask(partial(cabling.loss, cable, source)))
            cells.append(_ask(partial(cabling.damping, cable, source)))
        else:
            conductor = NOT_ITS if cable.conductor_m2 is None else _ask(partial(cabling.conductor, cable))
            cells += [conductor, NOT_ITS, NOT_ITS]
        rows.append((cable.id, tuple(cells)))
    if rows:
        columns = ("carries", "type/cores", "raceway", "length", "conductor", "loss", "damping")
        yield Table("cables", columns, tuple(rows))


def _raceways(figures: Figures) -> Iterable[Table]:
    rows = []
    for raceway in figures.design.raceways:
        cables, _ = figures.cabling.inside(raceway)
        fill: Cell = _ask(partial(figures.cabling.fill, raceway, cables)) if cables else NOT_ITS
        rows.append((raceway.id, (", ".join(cable.id for cable in cables) or NOT_ITS, fill)))
    if rows:
        yield Table("raceways", ("holds", "fill"), tuple(rows))


def _heat(figures: Figures) -> Iterable[Table]:
    heating = figures.heating
    rows = [
        _row(
            rack.id, partial(heating.heat, rack), partial(heating.air_needed, rack), partial(heating.air_share, rack),
            partial(heating.inlet, rack),
        )
        for rack in figures.design.racks
    ]  # fmt: skip
    if rows:
        title = "heat (an estimate from sheets; makers' instructions decide)"
        yield Table(title, ("heat", "air for a rise of 10 K", "air moved of it", "air at the inlet"), tuple(rows))
