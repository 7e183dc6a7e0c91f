"""Azimuths, elevations and distances of what is heard from a seat, with uncertainty."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, TypeAlias

from roomlint.design.base import Value, need
from roomlint.figures import direction, plan
from roomlint.figures.layouts import layout_of, parse_label, position_of
from roomlint.measure.figure import Figure, figure
from roomlint.measure.remedy import where_to
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.listening import Loudspeaker, Picture, Seat, Subwoofer
    from roomlint.design.record import Mode
    from roomlint.figures.layouts import Position

Source: TypeAlias = "Loudspeaker | Subwoofer"
_OfTwo: TypeAlias = "Callable[[tuple[float, ...], tuple[float, ...]], float]"

_AHEAD_DEG = 0.05


def azimuth_words(azimuth_deg: float) -> str:
    """Return an azimuth in words, since a clockwise-positive habit is as common as the standard's."""
    if abs(azimuth_deg) < _AHEAD_DEG:
        return "straight ahead"
    if abs(azimuth_deg) > 180.0 - _AHEAD_DEG:
        return "straight behind"
    return f"{abs(azimuth_deg):.1f} deg {'left' if azimuth_deg > 0 else 'right'}"


# Ranges of azimuth that a declared departure may still meet. Home: a listening study of home rooms (Japan Audio Society
# working group, AES Japan report, 2012) for the surround pair, a published home layout guide (CEA/CEDIA-CEB22, 2009,
# second-hand) for sides and rears. Trade: common practice.
HOME_DEG = {"M+110": (100.0, 135.0), "M+090": (60.0, 100.0), "M+135": (135.0, 150.0)}
TRADE_DEG = {"M+030": (22.0, 30.0), "M+110": (90.0, 110.0), "M+090": (90.0, 110.0), "M+135": (135.0, 150.0)}


class Angles(View):
    """Directions and distances."""

    def _ends(self, source: Source, seat: Seat) -> tuple[Value, ...]:
        ear, position = need(seat.ear, seat, "ear"), need(source.position, source, "position")
        return (*ear.values, seat.facing_deg, *position.values)

    def azimuth(self, source: Source, seat: Seat) -> Figure:
        """Return the azimuth of a source for a seat, positive to the left."""
        return self.once(
            ("azimuth", source.id, seat.id),
            lambda: figure("azimuth", "deg", _azimuth, *self._ends(source, seat), words=azimuth_words),
        )

    def outward(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return how far a loudspeaker stands from straight ahead toward the side that its label names.

        Near the label's own angle, so that both sides of straight behind read about 180; negative on the wrong side.
        """
        return self.once(("outward", speaker.id, seat.id), lambda: self._outward(speaker, seat))

    def _outward(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        label = parse_label(need(speaker.label, speaker, "label"))
        sign = label.side or 1
        nominal = abs(label.azimuth_deg or 0.0)

        def compute(*ends: float) -> float:
            return direction.near_deg(sign * _azimuth(*ends), nominal)

        def words(angle: float) -> str:
            shown = azimuth_words(direction.wrap_deg(sign * angle))
            return f"{shown}, the side that its label does not name," if angle < 0 and label.side else shown

        return figure("azimuth", "deg", compute, *self._ends(speaker, seat), words=words)

    def toward_side(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return the azimuth counted positive toward the side that a loudspeaker's label names, (-180, 180] deg."""
        sign = parse_label(need(speaker.label, speaker, "label")).side or 1

        name = "azimuth toward the side that its label names"
        return figure(name, "deg", lambda *ends: sign * _azimuth(*ends), *self._ends(speaker, seat))

    def elevation(self, source: Source, seat: Seat) -> Figure:
        """Return the elevation of a source above a seat's ear."""
        return self.once(
            ("elevation", source.id, seat.id),
            lambda: figure("elevation", "deg", _elevation, *self._ends(source, seat)),
        )

    def distance(self, source: Source, seat: Seat) -> Figure:
        """Return the distance from a source to a seat's ear."""
        return self.once(
            ("distance", source.id, seat.id),
            lambda: figure("distance", "m", _distance, *self._ends(source, seat)),
        )

    def over_head(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return the angle of a loudspeaker over the head: 0 ahead, 90 above, 180 behind."""
        return figure("angle over the head", "deg", _over_head, *self._ends(speaker, seat))

    def included(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return the angle between a left and a right loudspeaker."""
        return self._both("included angle", "deg", lambda a, b: _azimuth(*a) - _azimuth(*b), left, right, seat)

    def angle_difference(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return how much farther round one of a pair stands than the other."""

        def compute(a: tuple[float, ...], b: tuple[float, ...]) -> float:
            return abs(abs(_azimuth(*a)) - abs(_azimuth(*b)))

        return self._both("difference of the azimuths", "deg", compute, left, right, seat)

    def height_difference(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return the difference of a pair's elevations."""

        def compute(a: tuple[float, ...], b: tuple[float, ...]) -> float:
            return abs(_elevation(*a) - _elevation(*b))

        return self._both("difference of the elevations", "deg", compute, left, right, seat)

    def distance_ratio(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return the larger distance of a pair over the smaller."""

        def compute(a: tuple[float, ...], b: tuple[float, ...]) -> float:
            one, other = _distance(*a), _distance(*b)
            if min(one, other) == 0.0:
                raise ValueError("a loudspeaker stands where the ear is")
            return max(one, other) / min(one, other)

        return self._both("ratio of the distances", "", compute, left, right, seat)

    def base_width(self, left: Loudspeaker, right: Loudspeaker) -> Figure:
        """Return the distance between a left and a right loudspeaker."""
        one, other = (need(speaker.position, speaker, "position") for speaker in (left, right))

        def compute(*ends: float) -> float:
            return math.dist(ends[:3], ends[3:])

        return figure("base width", "m", compute, *one.values, *other.values)

    def wall_difference(self, left: Loudspeaker, right: Loudspeaker) -> Figure:
        """Return how much nearer one of a pair stands to its nearest wall."""
        outline = self.figures.space.outline
        one, other = (need(speaker.position, speaker, "position") for speaker in (left, right))

        def compute(ax: float, ay: float, bx: float, by: float) -> float:
            near = plan.nearest_wall(outline, (ax, ay)).distance_m
            return abs(near - plan.nearest_wall(outline, (bx, by)).distance_m)

        return figure("difference of the distances to the nearest wall", "m", compute, one.x, one.y, other.x, other.y)

    def centre_offset(self, centre: Loudspeaker, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return how far above or below left and right the centre is heard, without sign."""
        ends = [need(speaker.position, speaker, "position").values for speaker in (centre, left, right)]

        def compute(*values: float) -> float:
            ear, points = values[:3], (values[3:6], values[6:9], values[9:12])
            c, a, b = (direction.elevation_deg(_point(ear), _point(point)) for point in points)
            return abs(c - (a + b) / 2.0)

        ear = need(seat.ear, seat, "ear").values
        return figure("offset of the centre's elevation", "deg", compute, *ear, *ends[0], *ends[1], *ends[2])

    def over_bed(self, upper: Loudspeaker, bed: Loudspeaker, seat: Seat) -> Figure:
        """Return how far an upper loudspeaker stands above the one below it, as an angle."""
        return self._both(
            "elevation above the ear-layer loudspeaker",
            "deg",
            lambda a, b: _elevation(*a) - _elevation(*b),
            upper,
            bed,
            seat,
        )

    def largest_gap(self, speakers: tuple[Loudspeaker, ...], seat: Seat) -> Figure:
        """Return the widest empty arc between neighbouring loudspeakers of the ear layer."""
        ear = need(seat.ear, seat, "ear")
        points = [need(speaker.position, speaker, "position").values for speaker in speakers]

        def compute(*values: float) -> float:
            ears, facing, rest = _point(values[:3]), values[3], values[4:]
            found = (rest[i : i + 3] for i in range(0, len(rest), 3))
            return direction.largest_gap_deg(direction.azimuth_deg(ears, facing, _point(p)) for p in found)

        flat = [value for point in points for value in point]
        return self.once(
            ("gap", seat.id),
            lambda: figure("largest gap between neighbours", "deg", compute, *ear.values, seat.facing_deg, *flat),
        )

    def uneven_spacing(self, speakers: tuple[Loudspeaker, ...], seat: Seat) -> Figure:
        """Return the spread of the intervals between neighbouring loudspeakers of one side."""
        inputs = [value for speaker in speakers for value in self._ends(speaker, seat)]

        def compute(*values: float) -> float:
            found = sorted(abs(_azimuth(*values[i : i + 7])) for i in range(0, len(values), 7))
            steps = [after - before for before, after in pairwise(found)]
            return max(steps) - min(steps)

        return figure("spread of the intervals", "deg", compute, *inputs)

    def picture_size(self, picture: Picture) -> tuple[Value, Value]:
        """Return width and height of the picture, from the file or from its product's diagonal and aspect."""
        if picture.width_m is not None and picture.height_m is not None:
            return picture.width_m, picture.height_m
        data = picture.product.picture if picture.product is not None else None
        if data is None or data.diagonal_m is None or data.aspect is None:
            return need(picture.width_m, picture, "width"), need(picture.height_m, picture, "height")
        diagonal, over = data.diagonal_m, math.hypot(data.aspect, 1.0)
        shares = (data.aspect / over, 1.0 / over)
        width, height = (Value(diagonal.value * of, diagonal.u * of, "m", diagonal.at) for of in shares)
        return width, height

    def picture_mismatch(self, speaker: Loudspeaker, picture: Picture, seat: Seat) -> Figure:
        """Return the angle between a front loudspeaker and the picture's edge on its side."""
        centre = need(picture.centre, picture, "centre")
        width, _ = self.picture_size(picture)
        side = parse_label(need(speaker.label, speaker, "label")).side

        def compute(*values: float) -> float:
            ends, cx, cy, wide = values[:7], values[7], values[8], values[9]
            edge = (cx - side * wide / 2.0, cy, ends[2])
            return abs(_azimuth(*ends) - direction.azimuth_deg(_point(ends[:3]), ends[3], edge))

        ends = self._ends(speaker, seat)
        return figure("angle to the picture's edge", "deg", compute, *ends, centre.x, centre.y, width)

    def above_picture_bottom(self, speaker: Loudspeaker, picture: Picture) -> Figure:
        """Return the height of a loudspeaker above the picture's bottom, as a share of the picture's height."""
        position, centre = need(speaker.position, speaker, "position"), need(picture.centre, picture, "centre")
        _, height = self.picture_size(picture)

        def compute(z: float, middle: float, high: float) -> float:
            return 100.0 * (z - middle + high / 2.0) / high

        return figure("height above the picture's bottom", "%", compute, position.z, centre.z, height)

    def picture_offset(self, centre: Loudspeaker, picture: Picture, seat: Seat) -> Figure:
        """Return the vertical angle between the centre loudspeaker and the picture's middle, without sign."""
        middle = need(picture.centre, picture, "centre")

        def compute(*values: float) -> float:
            ear, point, shown = _point(values[:3]), _point(values[4:7]), _point(values[7:10])
            return abs(direction.elevation_deg(ear, point) - direction.elevation_deg(ear, shown))

        ends = self._ends(centre, seat)
        return figure("vertical angle to the picture's middle", "deg", compute, *ends, *middle.values)

    def nominal_bed(self, upper: Loudspeaker, seat: Seat, within_deg: float) -> Loudspeaker | None:
        """Return the ear-layer loudspeaker nearest below an upper one, if there is one within an angle."""
        above = self.azimuth(upper, seat).value
        found = [
            (abs(direction.wrap_deg(self.azimuth(speaker, seat).value - above)), number, speaker)
            for number, speaker in enumerate(self.design.loudspeakers)
            if (speaker.label or "").startswith("M")
        ]
        nearest = min(found, default=None)
        return nearest[2] if nearest is not None and nearest[0] <= within_deg else None

    def allowed(self, speaker: Loudspeaker) -> tuple[float, float] | None:
        """Return the standard's azimuth range of a loudspeaker toward its own side; None when it has no place there."""
        layout = need(self.design.layout, self.design, "layout")
        label = need(speaker.label, speaker, "label")
        try:
            position = position_of(layout, label)
        except ValueError:
            return None
        low, high = position.azimuth_ranges[0]
        return (low, high) if parse_label(label).side >= 0 else (-high, -low)

    def allowed_elevation(self, speaker: Loudspeaker) -> tuple[float, float] | None:
        """Return the standard's elevation range of a loudspeaker; None when it has no place in the layout."""
        layout = need(self.design.layout, self.design, "layout")
        try:
            return position_of(layout, need(speaker.label, speaker, "label")).elevation_range
        except ValueError:
            return None

    def placed(self, source: Source) -> Position | None:
        """Return where the layout puts a source; None when it says nothing of where that label stands."""
        layout = need(self.design.layout, self.design, "layout")
        try:
            position = position_of(layout, need(source.label, source, "label"))
        except ValueError:
            return None
        return position if position.is_placed else None

    def outside_azimuth(self, source: Source, position: Position, seat: Seat) -> Figure:
        """Return how far a source's azimuth lies outside the arcs that the layout allows, 0 inside them."""

        def compute(*ends: float) -> float:
            azimuth = _azimuth(*ends)
            return min(direction.outside_range_deg(azimuth, *arc) for arc in position.azimuth_ranges)

        shown = self.azimuth(source, seat)
        return figure(f"way of its azimuth ({shown}) from the layout's", "deg", compute, *self._ends(source, seat))

    def outside_elevation(self, source: Source, position: Position, seat: Seat) -> Figure:
        """Return how far a source's elevation lies outside the range that the layout allows, 0 inside it."""
        low, high = position.elevation_range

        def compute(*ends: float) -> float:
            elevation = direction.elevation_deg(_point(ends[:3]), _point(ends[4:7]))
            return max(low - elevation, elevation - high, 0.0)

        shown = self.elevation(source, seat)
        return figure(f"way of its elevation ({shown}) from the layout's", "deg", compute, *self._ends(source, seat))

    def claims_side(self, speaker: Loudspeaker) -> bool:
        """Say whether a label names the left or the right."""
        return speaker.label is not None and parse_label(speaker.label).side != 0

    def pairs(self) -> tuple[tuple[Loudspeaker, Loudspeaker], ...]:
        """Return each loudspeaker of the left with the one that has the mirrored label, in the order of the file."""
        right = {speaker.label: speaker for speaker in reversed(self.design.loudspeakers) if speaker.label}
        return tuple(
            (speaker, right[mirrored])
            for speaker in self.design.loudspeakers
            if speaker.label is not None
            and parse_label(speaker.label).side > 0
            and (mirrored := parse_label(speaker.label).mirrored) in right
        )

    def fitted(self) -> set[str]:
        """Return the labels of all channels that something plays; any subwoofer carries the LFE channels."""
        labels = {speaker.label for speaker in self.design.loudspeakers if speaker.label}
        labels |= {subwoofer.label for subwoofer in self.design.subwoofers if subwoofer.label}
        return labels | ({"LFE", "LFE1", "LFE2"} if self.design.subwoofers else set())

    def channel_set(self, layout: str) -> tuple[list[str], list[str], list[str]]:
        """Return the labels that a layout has and the room lacks, those it has too many, and those left out."""
        there, wanted = self.fitted(), layout_of(layout).labels
        unfitted = set(self.design.processor.unfitted) if self.design.processor is not None else set()
        missing = [label for label in wanted if label not in there | unfitted]
        extra = sorted(label for label in there - set(wanted) if not label.startswith("LFE"))
        return missing, extra, [label for label in wanted if label in unfitted - there]

    def silent(self, mode: Mode) -> list[str]:
        """Return the channels of a listening mode that nothing plays."""
        channels = mode.channels or (layout_of(mode.layout).labels if mode.layout is not None else ())
        there = self.fitted()
        return [label for label in channels if label not in there]

    def windows_met(self, speaker: Loudspeaker, seat: Seat) -> list[str]:
        """Return which windows a loudspeaker's azimuth meets: standard, home-tolerance, common-practice."""
        label = need(speaker.label, speaker, "label")
        angle = self.outward(speaker, seat).value
        elevation = self.elevation(speaker, seat).value
        allowed, heights = self.allowed(speaker), self.allowed_elevation(speaker)
        found = []
        if allowed is not None and heights is not None and _within(angle, allowed) and _within(elevation, heights):
            found.append("standard")
        bare = label.replace("-", "+")
        if bare in HOME_DEG and _within(angle, HOME_DEG[bare]):
            found.append("home-tolerance")
        if bare in TRADE_DEG and _within(angle, TRADE_DEG[bare]):
            found.append("common-practice")
        return found

    def where_to(self, speaker: Loudspeaker, seat: Seat, low: float, high: float) -> str:
        """Say between which distances, moved along one wall, a loudspeaker comes into a window of outward angles."""
        return where_to(self.design, speaker, seat, low, high)

    def _both(self, name: str, unit: str, compute: _OfTwo, one: Loudspeaker, other: Loudspeaker, seat: Seat) -> Figure:
        first, second = self._ends(one, seat), self._ends(other, seat)

        def split(*values: float) -> float:
            # The listener's values stand once, so that their uncertainty moves both loudspeakers together.
            return compute(values[:7], (*values[:4], *values[7:]))

        return figure(name, unit, split, *first, *second[4:])


def _azimuth(*ends: float) -> float:
    return direction.azimuth_deg(_point(ends[:3]), ends[3], _point(ends[4:]))


def _elevation(*ends: float) -> float:
    return direction.elevation_deg(_point(ends[:3]), _point(ends[4:]))


def _distance(*ends: float) -> float:
    return math.dist(ends[:3], ends[4:])


def _over_head(*ends: float) -> float:
    return direction.over_head_deg(_point(ends[:3]), ends[3], _point(ends[4:]))


def _within(value: float, ends: tuple[float, float]) -> bool:
    return ends[0] - _AHEAD_DEG <= value <= ends[1] + _AHEAD_DEG


def _point(values: tuple[float, ...]) -> direction.Point3:
    return (values[0], values[1], values[2])
