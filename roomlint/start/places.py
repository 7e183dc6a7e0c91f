"""Places for seats, picture and loudspeakers: the layout's nominal directions, moved as little as the room asks for.

A loudspeaker goes along its direction from the reference ear as far as the room lets it. Where nothing is free there,
the allowed ranges of its layout are searched outward from the nominal direction; the two of a pair move together. What
finds no place is told with the reason. Distances kept are the trade's, ours: practice, no source.
"""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass, field
from itertools import product
from typing import TYPE_CHECKING, Final

from roomlint import roof
from roomlint.figures.layouts import layout_of, parse_label
from roomlint.start.answers import UnfitError
from roomlint.start.lengths import stepped, written
from roomlint.start.names import name_of
from roomlint.start.zones import Screen, Spot, kept_free

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from roomlint.figures.layouts import Position, Range
    from roomlint.start.answers import Answers

EAR_M: Final = {False: 1.10, True: 1.0922}
"""Ear of a seated adult; 3 ft 7 in in the units of the United States."""
SEAT_M: Final = 0.66
"""From seat to seat of a row."""
ROW_M: Final = 1.10
"""From row to row."""
BEHIND_M: Final = 0.60
"""Behind the last row."""
BESIDE_M: Final = 0.40
"""Beside a seat."""
OVER_EAR_M: Final = 0.25
"""Above an ear."""
ROOMS_FOR: Final = ((0.32, 0.31, ""), (0.12, 0.07, "only for one that is flat, on or in the surface"))
"""Of an acoustic centre from a wall and from the ceiling: for an ordinary cabinet, else for a flat one."""
FLOOR_M: Final = 0.25
"""The same from the floor, a subwoofer's too."""
SUB_M: Final = 0.25
"""Of a subwoofer's driver from a wall."""
FROM_EAR_M: Final = 0.95
"""No loudspeaker is proposed nearer to any ear."""
APART_M: Final = 0.55
"""Between two loudspeakers."""
FARTHEST_M: Final = 4.0
"""From the reference ear, however large the room is."""
_STEP_M: Final = 0.05
_TURN_DEG: Final = 2.5
_LOWER_CENTRE_DEG: Final = 14.0
"""So far below the ear a centre may stand under a picture."""
_DISPLAY_SHAPE: Final = 9.0 / 16.0
_OVER_CENTRE_M: Final = 0.25
"""Lower edge of the picture above the ear, for the centre under it."""
_PICTURE_EDGE_M: Final = 0.05
_HEAD_M: Final = 0.20


@dataclass(frozen=True, slots=True)
class Placed:
    """A loudspeaker or subwoofer; without a spot where the room has none, and then why."""

    label: str
    name: str
    spot: Spot | None
    why_not: str = ""
    moved: str = ""
    """How it departs from the nominal direction; empty where it does not."""


@dataclass(slots=True)
class Proposal:
    """All places."""

    seats: list[list[Spot]]
    reference: Spot
    screen: Screen | None
    loudspeakers: list[Placed] = field(default_factory=list)
    subwoofers: list[Placed] = field(default_factory=list)

    @property
    def placed(self) -> list[Placed]:
        """Return everything that makes sound."""
        return [*self.loudspeakers, *self.subwoofers]


def propose(answers: Answers) -> Proposal:
    """Return the proposal for a room; raises `UnfitError` for seats or a picture that the room does not hold."""
    answers.check()
    return _Planner(answers).plan()


class _Planner:
    """Places one thing after the other, each clear of those before."""

    def __init__(self, answers: Answers) -> None:
        self.answers = answers
        self.us = answers.us
        self.width, self.length = answers.width.m, answers.length.m
        self.facets = answers.facets
        self.layout = layout_of(answers.layout)
        self.zones = [kept_free(gap, number, answers) for number, gap in enumerate(answers.openings, 1)]
        self.taken: list[tuple[Spot, str]] = []
        self.seats: list[list[Spot]] = []
        self.ear: Spot = (0.0, 0.0, 0.0)
        self.target_m = FARTHEST_M
        self.screen: Screen | None = None

    def plan(self) -> Proposal:
        self.seats = self._seat_rows()
        row = self.seats[0]
        self.ear = row[(len(row) - 1) // 2]
        screen = self._screen()
        found = Proposal(self.seats, self.ear, screen)
        places = list(self.layout.positions.values())
        for group in _grouped(position for position in places if not position.is_lfe):
            found.loudspeakers += self._group(group)
            if group[0].label == "M+030" and found.loudspeakers[-1].spot is not None:
                self.target_m = max(math.dist(found.loudspeakers[-1].spot, self.ear), 1.5)
        for position in places:
            if position.is_lfe:
                found.subwoofers.append(self._subwoofer(position))
        order = list(self.layout.positions)
        found.loudspeakers.sort(key=lambda placed: order.index(placed.label))
        return found

    # Seats and picture

    def _seat_rows(self) -> list[list[Spot]]:
        rows, depth = self.answers.rows, (len(self.answers.rows) - 1) * ROW_M
        said = self.answers.ear_from_front
        behind = min(BEHIND_M, 0.25 * self.length)
        first = said.m if said is not None else max(min(0.62 * self.length, self.length - behind - depth), 0.0)
        if first + depth > self.length - 0.2 or first < SUB_M:
            text = f"{len(rows)} rows {self._told(ROW_M)} apart do not fit a room {self.answers.length.text} long."
            raise UnfitError("--seats" if said is None else "--ear-from-front", text)
        return [self._row(count, self._on_grid(first + number * ROW_M)) for number, count in enumerate(rows)]

    def _row(self, count: int, from_front: float) -> list[Spot]:
        middle, pitch = self._on_grid(self.width / 2.0), self._on_grid(SEAT_M)
        before = (count - 1) // 2
        # The reference seat on the middle line; a row too wide for that stands in the middle itself.
        left = middle - before * pitch
        if left + (count - 1) * pitch > self.width - BESIDE_M:
            left = self._on_grid(self.width / 2.0 - (count - 1) * pitch / 2.0)
        if left < min(BESIDE_M, self.width / 2.0):
            most = 1 + int((self.width - 2.0 * BESIDE_M) / pitch)
            text = f"{count} seats side by side do not fit a room {self.answers.width.text} wide; {most} do."
            raise UnfitError("--seats", text)
        row: list[Spot] = [(left + number * pitch, from_front, EAR_M[self.us]) for number in range(count)]
        for x, y, z in row:
            if self._ceiling_m(x, y) < z + OVER_EAR_M:
                text = (
                    f"an ear {self._told(z)} above the floor, {self._told(x)} from the left and {self._told(y)} from"
                    f" the front wall, is at the ceiling, {self._told(self._ceiling_m(x, y))} high there."
                )
                raise UnfitError("--seats", text)
        return row

    def _screen(self) -> Screen | None:
        if self.answers.picture is None:
            return None
        kind, said = self.answers.picture
        height = self._on_grid(said.m * _DISPLAY_SHAPE)
        middle = self.ear[0]
        half = said.m / 2.0
        if middle - half < _PICTURE_EDGE_M or middle + half > self.width - _PICTURE_EDGE_M:
            text = f"a picture {said.text} wide does not fit a front wall {self.answers.width.text} wide."
            raise UnfitError("--picture", text)
        y = self._on_grid(_PICTURE_EDGE_M + 0.01)
        top = min(self._ceiling_m(middle + side * half, y) for side in (-1.0, 0.0, 1.0)) - _PICTURE_EDGE_M
        bottom = min(self.ear[2] + _OVER_CENTRE_M, top - height)
        if bottom < 0.3:  # noqa: PLR2004  what stands on the floor hides it
            text = f"a picture {said.text} wide is {self._told(height)} high; the front wall does not hold it."
            raise UnfitError("--picture", text)
        centre = (middle, y, self._on_grid(bottom + height / 2.0 - 0.005))
        self.screen = Screen(kind, centre, said.m, height)
        return self.screen

    # Loudspeakers

    def _group(self, group: list[Position]) -> list[Placed]:
        """Place one or a pair; a pair that finds no mirrored places is placed one by one."""
        why: Counter[str] = Counter()
        for azimuth, elevation in self._ways(group[0]):
            for (wall_m, ceiling_m, only), away in product(ROOMS_FOR, self._distances(elevation)):
                spots = [self._spot(azimuth * turn, elevation, away) for turn in (1.0, -1.0)[: len(group)]]
                reasons = [reason for spot in spots if (reason := self._refused(spot, wall_m, ceiling_m))]
                if not reasons and (len(spots) == 1 or math.dist(*spots) >= APART_M):
                    return [
                        self._take(position, spot, (azimuth * turn, elevation), only)
                        for position, spot, turn in zip(group, spots, (1.0, -1.0), strict=False)
                    ]
                why.update(reasons)
        if len(group) > 1:
            return [placed for position in group for placed in self._group([position])]
        return [Placed(group[0].label, name_of(group[0].label), None, _worded(why, group[0]))]

    def _take(self, position: Position, spot: Spot, way: tuple[float, float], only: str) -> Placed:
        name, (azimuth, elevation) = name_of(position.label), way
        self.taken.append((spot, name))
        turned = abs(azimuth - (position.azimuth_deg or 0.0))
        raised = elevation - (position.elevation_deg or 0.0)
        moved = [f"{turned:g} deg off its nominal azimuth"] if turned > _NOTHING_DEG else []
        if abs(raised) > _NOTHING_DEG:
            moved.append(f"{abs(raised):g} deg {'above' if raised > 0 else 'below'} its nominal elevation")
        moved += [only] if only else []
        return Placed(position.label, name, spot, moved=", ".join(moved))

    def _ways(self, position: Position) -> Iterator[tuple[float, float]]:
        """Yield the directions that the layout allows, the nominal one first and then outward from it."""
        azimuth, elevation = position.azimuth_deg or 0.0, position.elevation_deg or 0.0
        raised = _sampled(elevation, (position.elevation_range,))
        if position.label == "M+000":
            raised += _sampled(elevation, ((elevation - _LOWER_CENTRE_DEG, elevation),))[1:]
        ways = {(way, up): None for up in raised for way in _sampled(azimuth, position.azimuth_ranges)}
        yield from sorted(ways, key=lambda way: abs(way[0] - azimuth) + abs(way[1] - elevation))

    def _distances(self, elevation: float) -> Iterator[float]:
        """Yield distances from the ear, the largest first."""
        most = FARTHEST_M if elevation > 0.0 else self.target_m
        for step in range(int((most - FROM_EAR_M) / _STEP_M) + 1):
            yield most - step * _STEP_M

    def _spot(self, azimuth: float, elevation: float, away: float) -> Spot:
        turn, rise = math.radians(azimuth), math.radians(elevation)
        x, y, z = self.ear
        flat = away * math.cos(rise)
        return self._gridded((x - flat * math.sin(turn), y - flat * math.cos(turn), z + away * math.sin(rise)))

    def _refused(self, spot: Spot, wall_m: float, ceiling_m: float) -> str:
        """Return why nothing may be proposed at a place so far from wall and ceiling; empty where it may."""
        return self._outside(spot, wall_m, ceiling_m) or self._crowded(spot)

    def _outside(self, spot: Spot, wall_m: float, ceiling_m: float) -> str:
        x, y, z = spot
        if not (wall_m <= x <= self.width - wall_m and wall_m <= y <= self.length - wall_m):
            return "the room ends before it"
        if z < FLOOR_M:
            return "it would be in the floor"
        around = [(x + dx, y + dy) for dx in (-ceiling_m, ceiling_m) for dy in (-ceiling_m, ceiling_m)]
        if min(self._ceiling_m(*at) for at in around) < z + ceiling_m:
            return "the ceiling is too low for it"
        return ""

    def _crowded(self, spot: Spot) -> str:
        z = spot[2]
        for zone in self.zones:
            if zone.holds(spot):
                return zone.what
        if self.screen is not None and any(self.screen.is_hidden_by(spot, seat) for row in self.seats for seat in row):
            return "it would stand in front of the picture"
        for other, name in self.taken:
            if math.dist(spot, other) < APART_M:
                return f"{name} is proposed there"
        for seat in (seat for row in self.seats for seat in row):
            if math.dist(spot, seat) < FROM_EAR_M - 0.02 or (
                math.dist(spot[:2], seat[:2]) < APART_M and z < seat[2] + _HEAD_M + APART_M / 2.0
            ):
                return "it would be at somebody's ear"
        return ""

    # Subwoofers

    def _subwoofer(self, position: Position) -> Placed:
        name = "sub" if "LFE2" not in self.layout.positions else name_of(position.label)
        why: Counter[str] = Counter()
        for spot in self._floor_spots(position):
            reason = self._refused(spot, SUB_M, SUB_M)
            if not reason:
                self.taken.append((spot, name))
                return Placed(position.label, name, spot)
            why[reason] += 1
        return Placed(position.label, name, None, _worded(why, position))

    def _floor_spots(self, position: Position) -> Iterator[Spot]:
        """Yield places on the floor: in the layout's directions, or along the walls where it names none."""
        if position.is_placed:
            low, high = sorted(position.elevation_range)
            for azimuth in _sampled(position.azimuth_deg or 0.0, position.azimuth_ranges):
                for step in range(int(FARTHEST_M / _STEP_M)):
                    flat = FARTHEST_M - step * _STEP_M
                    rise = math.degrees(math.atan2(FLOOR_M - self.ear[2], flat))
                    if low <= rise <= high:
                        turn = math.radians(azimuth)
                        x, y, _ = self.ear
                        yield self._gridded((x - flat * math.sin(turn), y - flat * math.cos(turn), FLOOR_M))
            return
        in_front = 0.30
        for share in (0.25, 0.75, 0.5, 0.15, 0.85, 0.35, 0.65):
            yield self._gridded((share * self.width, in_front, FLOOR_M))
        for share in (0.25, 0.5, 0.75):
            yield self._gridded((in_front, share * self.length, FLOOR_M))
            yield self._gridded((self.width - in_front, share * self.length, FLOOR_M))

    # The grid that lengths are written in

    def _gridded(self, spot: Spot) -> Spot:
        x, y, z = spot
        return (
            _from_nearer(x, self.width, self._on_grid),
            _from_nearer(y, self.length, self._on_grid),
            self._on_grid(z),
        )

    def _on_grid(self, value_m: float) -> float:
        return stepped(value_m, us=self.us)

    def _told(self, value_m: float) -> str:
        return written(self._on_grid(value_m), us=self.us)

    def _ceiling_m(self, from_left: float, from_front: float) -> float:
        x = min(max(from_left, 0.0), self.width)
        y = min(max(self.length - from_front, 0.0), self.length)
        return roof.height_m(self.facets, (x, y))


_NOTHING_DEG: Final = 0.05


def _sampled(nominal: float, ranges: Iterable[Range]) -> list[float]:
    """Return directions within some ranges, the nominal one first and then outward from it."""
    found = {round(nominal, 3)}
    for start, end in ranges:
        low, high = sorted((start, end))
        found |= {round(low + step * _TURN_DEG, 3) for step in range(int((high - low) / _TURN_DEG) + 1)}
        found.add(round(high, 3))
    return sorted(found, key=lambda value: (abs(value - nominal), value))


def _grouped(positions: Iterable[Position]) -> list[list[Position]]:
    """Return the loudspeakers as pairs and single ones; the front pair first, whose distance the others follow."""
    left = {position.label: position for position in positions}
    groups = []
    for label in sorted(left, key=lambda label: label not in {"M+030", "M-030"}):
        position = left.get(label)
        if position is None or parse_label(label).side < 0:
            continue
        mirrored = parse_label(label).mirrored
        groups.append([position, left[mirrored]] if mirrored != label and mirrored in left else [position])
    return groups


def _from_nearer(value: float, extent: float, grid: Callable[[float], float]) -> float:
    """Return a coordinate that is on the grid as measured from the nearer of two opposite walls."""
    return grid(value) if value <= extent / 2.0 else extent - grid(extent - value)


def _worded(why: Counter[str], position: Position) -> str:
    """Return why nothing was found, the commonest reasons first."""
    reasons = [reason for reason, _ in sorted(why.items(), key=lambda one: (-one[1], one[0]))][:2]
    where = "on the floor" if position.is_lfe else "within its layout's ranges"
    return f"no place {where} is free: {'; '.join(reasons)}"
