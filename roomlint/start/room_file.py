"""The text of a room file that somebody begins with: what was answered, and what is proposed, marked as such."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.start.lengths import scalar, stepped, written
from roomlint.start.names import opening_name

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.start.answers import Answers, Gap
    from roomlint.start.places import Placed, Proposal
    from roomlint.start.zones import Spot

MARK: Final = "# proposal"
MOST_QUICK_LINES: Final = 40
_TAPE: Final = {False: "30 mm", True: "1 in"}
"""What a quick tape measure is good for."""
_NEAR_M: Final = 1e-6


def quick_text(answers: Answers, proposal: Proposal) -> str:
    """Return a file for the field: at most 40 lines, nothing but what a tape and the eye can tell."""
    lines = _quick(answers, proposal, packed=False)
    if len(lines) > MOST_QUICK_LINES:
        lines = _quick(answers, proposal, packed=True)
    return "\n".join(lines) + "\n"


def _quick(answers: Answers, proposal: Proposal, *, packed: bool) -> list[str]:
    lines = [
        f"# Correct every number marked `{MARK.removeprefix('# ')}` with the tape, then take the mark away.",
        "roomlint: 1",
        f"project: {{code: {scalar(answers.code)}, stage: {answers.stage}}}",
        f"survey: {{tolerance: {_TAPE[answers.us]}}}",
        "room:",
        f"  size: {{width: {scalar(answers.width.text)}, length: {scalar(answers.length.text)}}}",
        f"  ceiling: {{{', '.join(_roof(answers))}}}",
    ]
    if answers.openings:
        gaps = [_opening(answers, gap, number) for number, gap in enumerate(answers.openings, 1)]
        lines += _listed("  ", "openings", gaps, packed=packed, mark="")
    lines += _listed("", "seats", _seats(answers, proposal), packed=packed, mark=f"  {MARK}")
    if proposal.screen is not None:
        lines.append(f"picture: {{{_picture(answers, proposal)}}}  {MARK}")
    lines.append(f"layout: {answers.layout}")
    lines += ["loudspeakers:", *(f"  {line}" for line in _sources(answers, proposal.loudspeakers))]
    if proposal.subwoofers:
        lines += ["subwoofers:", *(f"  {line}" for line in _sources(answers, proposal.subwoofers))]
    return lines


def _listed(indent: str, key: str, items: list[str], *, packed: bool, mark: str) -> list[str]:
    if packed:
        return [f"{indent}{key}: [{', '.join(items)}]{mark}"]
    return [f"{indent}{key}:", *(f"{indent}  - {item}{mark}" for item in items)]


def room_text(answers: Answers, proposal: Proposal, name: str) -> str:
    """Return a commented file for the drawing board; what follows `#: ` is a key to use when it is needed."""
    us, studs = answers.us, "16 in" if answers.us else "400 mm"
    post = f"from_left: {_of(1.0, us)}, from_front: {_of(1.0, us)}, width: {_of(0.1, us)}, depth: {_of(0.1, us)}"
    lines = [
        f"# {name}: begun with `roomlint new`. A line marked `{MARK.removeprefix('# ')}` is a suggestion and was not",
        "# measured: the layout's nominal places as far as the room has them, clear of the openings that were named.",
        "# Correct the numbers and take the marks away. To use a key that stands behind `#: `, take that away.",
        "# Leave out what is not known: the check asks for what it misses. Every key: roomlint schema room --keys",
        "roomlint: 1",
        "project:",
        f"  code: {scalar(answers.code)}",
        f"  stage: {answers.stage}  # survey, design, rough-in or handover: decides what holds the room back",
        "  #: title: Living room of the invented family",
        f"  #: region: {'us' if us else 'eu'}",
        f"  #: codes: {{electrical: {'nec2023' if us else 'iec60364'}}}  # without it no circuit is judged",
        "  #: children: true",
        "# How well lengths are known that do not say it themselves; one of them can too: 2.40 m ± 1 cm.",
        f"#: survey: {{tolerance: {'1/4 in' if us else '5 mm'}, temperature: {'70 degF' if us else '21 degC'}}}",
        "",
        "# Left, right, front and rear are told facing the front wall, the one that the reference seat looks at.",
        "room:",
        f"  size: {{width: {scalar(answers.width.text)}, length: {scalar(answers.length.text)}}}",
        "  ceiling:",
        *(f"    {part}" for part in _roof(answers)),
        f"    #: framing: {{kind: joist, spacing: {studs}, species: unknown}}",
        "    #: board: {material: gypsum, layers: 1, thickness: " + ("1/2 in}" if us else "12.5 mm}"),
        "  # What a fastener meets: ask for the framing of every wall that something hangs on.",
        "  #: walls:",
        f"  #:   - {{id: front, framing: {{kind: wood-stud, spacing: {studs}}}, finish: gypsum-on-studs}}",
        *_openings(answers),
        "  # Posts, soffits, beams, chimney breasts, ducts: boxes that sound, sight and people meet.",
        "  #: obstacles:",
        f"  #:   - {{id: post, kind: post, {post}}}",
        "",
        "# Positions: from_left or from_right, from_front or from_rear, and the height above the floor.",
        "seats:",
        *(f"  - {seat}  {MARK}" for seat in _seats(answers, proposal)),
        *_picture_lines(answers, proposal),
        "",
        f"layout: {answers.layout}  # a sound system of ITU-R BS.2051: upper + ear layer + bottom",
        "# Each loudspeaker: where its acoustic centre is, which product, how it is held, where it points.",
        "loudspeakers:",
        *_long_sources(answers, proposal.loudspeakers),
        "  # What a loudspeaker needs before it is hung or judged further:",
        "  # product names its sheet; `roomlint new --product loudspeaker` begins one.",
        f"  #:   aim: {{seat: {_seat_names(answers)[0]}}}",
        '  #:   mounting: {"on": front}  # a wall, ceiling, floor, stand or furniture; then its product and fixing',
        *_long_subwoofers(answers, proposal.subwoofers),
        "",
        *_more(us),
    ]
    return "\n".join(lines) + "\n"


def _more(us: bool) -> Iterator[str]:  # noqa: FBT001  as above
    volts = "20 A, voltage: 120 V, conductor: 12 AWG" if us else "16 A, voltage: 230 V, conductor: 2.5 mm2"
    yield "# What drives and feeds it, when that is designed; each may name its sheet by `product`:"
    yield "#: electronics:"
    yield "#:   processor: {id: processor}"
    yield "#:   amplifiers:"
    yield "#:     - {id: amplifier, feeds: [{output: 1, loudspeakers: [left]}]}"
    yield "#: circuits:"
    yield f"#:   - {{id: equipment, rating: {volts}, loads: [{{id: plug, feeds: amplifier, connection: plug}}]}}"
    yield "# Failures that the team accepts, on the record:"
    yield "#: waivers:"
    yield (
        "#:   - {rule: angle.front-pair, subject: left+right, because: The bay window stays where it is.,"
        " approved_by: A. N. Lead}"
    )


def _roof(answers: Answers) -> tuple[str, ...]:
    """Return the keys of the ceiling, each with its value."""
    roof = answers.roof
    parts = [f"shape: {roof.shape}"]
    parts += [
        f"{key}: {scalar(said.text)}"
        for key, said in (
            ("height", roof.height), ("low", roof.low), ("high", roof.high), ("slope_width", roof.slope_width)
        )
        if said is not None
    ]  # fmt: skip
    parts += [f"low_side: {roof.low_side}"] if roof.low_side else []
    parts += [f"low_sides: [{', '.join(roof.low_sides)}]"] if roof.low_sides else []
    parts += [f"ridge: {roof.ridge}"] if roof.ridge else []
    if roof.margin is not None:
        around, us = scalar(roof.margin.text), answers.us
        width, depth = (_of(side.m - 2.0 * roof.margin.m, us) for side in (answers.width, answers.length))
        parts.append(f"raised: {{from_left: {around}, from_front: {around}, width: {width}, depth: {depth}}}")
    return tuple(parts)


def _opening(answers: Answers, gap: Gap, number: int) -> str:
    name = opening_name(answers.openings, number)
    start, width = scalar(gap.start.text), scalar(gap.width.text)
    return f"{{id: {name}, kind: {gap.kind}, wall: {gap.wall}, from_wall_left: {start}, width: {width}}}"


def _openings(answers: Answers) -> Iterator[str]:
    yield "  # Measured from the left-hand end of their wall, seen from inside; add sill, height, and how a door opens:"
    if not answers.openings:
        us, roof = answers.us, answers.roof
        high = min(2.0, *(0.9 * one.m for one in (roof.height, roof.high) if one is not None))
        yield "  #: openings:"
        yield (
            f"  #:   - {{id: door, kind: door, wall: rear, from_wall_left: {_of(0.4, us)}, width: {_of(0.8, us)},"
            f" sill: {_of(0.0, us)}, height: {_of(high, us)}, hinge: left, swing: in}}"
        )
        return
    yield "  #    sill, height, hinge: left or right (seen from inside), swing: in, out, sliding or none"
    yield "  openings:"
    for number, gap in enumerate(answers.openings, 1):
        yield f"    - {_opening(answers, gap, number)}"


def _seat_names(answers: Answers) -> list[str]:
    """Return the names of the seats, the reference seat's first."""
    rows = answers.rows
    names = [f"seat-{number}" for number in range(1, sum(rows) + 1)]
    reference = (rows[0] - 1) // 2
    return [names[reference], *names[:reference], *names[reference + 1 :]]


def _seats(answers: Answers, proposal: Proposal) -> list[str]:
    found, number = [], 0
    for row, seats in enumerate(proposal.seats, 1):
        for spot in seats:
            number += 1
            more = f"row: {row}, " if len(proposal.seats) > 1 else ""
            reference = "reference: true, " if spot == proposal.reference else ""
            found.append(f"{{id: seat-{number}, {more}{reference}ear: {{{_position(answers, spot)}}}}}")
    return found


def _picture(answers: Answers, proposal: Proposal) -> str:
    screen = proposal.screen
    said = answers.picture
    if screen is None or said is None:
        return ""
    height = written(screen.height_m, us=answers.us)
    centre = _position(answers, screen.centre)
    return f"kind: {screen.kind}, width: {scalar(said[1].text)}, height: {height}, centre: {{{centre}}}"


def _picture_lines(answers: Answers, proposal: Proposal) -> Iterator[str]:
    yield ""
    if proposal.screen is None:
        us = answers.us
        where = f"from_left: {_of(answers.width.m / 2.0, us)}, from_front: {_of(0.08, us)}, height: {_of(1.6, us)}"
        yield f"#: picture: {{kind: display, width: {_of(1.44, us)}, height: {_of(0.81, us)}, centre: {{{where}}}}}"
        return
    yield "# The lit area of a picture 16 by 9, hung over the centre loudspeaker where the wall is high enough."
    yield f"picture: {{{_picture(answers, proposal)}}}  {MARK}"


def _sources(answers: Answers, placed: list[Placed]) -> Iterator[str]:
    for one in placed:
        if one.spot is None:
            yield f"- {{id: {one.name}, label: {one.label}}}  {MARK}: {one.why_not}"
        else:
            note = f": {one.moved}" if one.moved else ""
            position = f"position: {{{_position(answers, one.spot)}}}"
            yield f"- {{id: {one.name}, label: {one.label}, {position}}}  {MARK}{note}"


def _long_sources(answers: Answers, placed: list[Placed]) -> Iterator[str]:
    for one in placed:
        yield f"  - id: {one.name}"
        yield f"    label: {one.label}"
        if one.spot is None:
            yield f"    {MARK}: not placed; {one.why_not}"
        else:
            note = f": {one.moved}" if one.moved else ""
            yield f"    position: {{{_position(answers, one.spot)}}}  {MARK}{note}"


def _long_subwoofers(answers: Answers, placed: list[Placed]) -> Iterator[str]:
    if placed:
        yield "subwoofers:"
        yield from _long_sources(answers, placed)
        return
    us = answers.us
    where = f"from_left: {_of(0.5, us)}, from_front: {_of(0.4, us)}, height: {_of(0.25, us)}"
    yield "#: subwoofers:"
    yield f"#:   - {{id: sub, position: {{{where}}}}}"


def _position(answers: Answers, spot: Spot) -> str:
    """Return a place as an installer measures it, from the nearer walls."""
    x, y, z = spot
    across = _from("left", x, "right", answers.width.m, us=answers.us)
    along = _from("front", y, "rear", answers.length.m, us=answers.us)
    return f"{across}, {along}, height: {_of(z, answers.us)}"


def _from(near: str, value: float, far: str, extent: float, *, us: bool) -> str:
    if value <= extent / 2.0 + _NEAR_M:
        return f"from_{near}: {_of(value, us)}"
    return f"from_{far}: {_of(extent - value, us)}"


def _of(value_m: float, us: bool) -> str:  # noqa: FBT001  it is read at every turn of this page
    return written(stepped(value_m, us=us), us=us)
