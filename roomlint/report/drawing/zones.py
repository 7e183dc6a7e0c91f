"""Draws where a finding's window is, as far as it is a place: a sector, a ring, a stretch, a clearance, a bounce.

Everything is read off the verdict and the scene; nothing is judged again.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure.scene import Scene, Spot2, Thing
    from roomlint.report.drawing.findings import Finding
    from roomlint.report.drawing.pen import Pen
    from roomlint.review.verdict import Remedy, Verdict
    from roomlint.review.window import Window

_BAND_MM: Final = 2.5
"""Half the width of the band in which an allowed angle is shown."""
_ABOUT_DEG: Final = 25.0
"""How far to either side of a thing a ring round a seat is drawn."""
_PANEL_M: Final = 0.3
"""Half a panel of ordinary width, which is drawn where sound bounces; practice, ours."""
_LEAST_DEG: Final = 1.0
_TO_SIDE: Final = {"azimuth": 1.0, "azimuth to the left": 1.0, "azimuth to the right": -1.0}


def turn_deg(azimuth_deg: float) -> float:
    """Return an azimuth, 0 deg ahead and positive to the left, as an angle of the paper, 0 deg to the right."""
    return 90.0 + azimuth_deg


def spot(centre: Spot2, radius_m: float, angle_deg: float) -> Spot2:
    """Return the point at a distance and an angle of the paper from another."""
    angle = math.radians(angle_deg)
    return centre[0] + radius_m * math.cos(angle), centre[1] + radius_m * math.sin(angle)


def ring(centre: Spot2, inner_m: float, outer_m: float, start_deg: float, end_deg: float) -> tuple[Spot2, ...]:
    """Return the outline of a piece of a ring, in steps of at most 3 deg."""
    steps = max(2, math.ceil((end_deg - start_deg) / 3.0))
    angles = [start_deg + (end_deg - start_deg) * step / steps for step in range(steps + 1)]
    outer = [spot(centre, outer_m, angle) for angle in angles]
    return (*outer, *(spot(centre, inner_m, angle) for angle in reversed(angles)))


class Zones:
    """The windows of findings on one view of the plan; `overhead` is the ceiling plan."""

    def __init__(self, pen: Pen, scene: Scene, *, overhead: bool) -> None:
        self.pen = pen
        self.scene = scene
        self.overhead = overhead

    def draw(self, finding: Finding) -> None:
        """Draw what a finding's verdicts have of places."""
        for verdict in finding.verdicts:
            thing = self._thing(verdict)
            if verdict.remedy is not None:
                self._remedy(verdict.remedy, finding.id)
            if verdict.figure is None or verdict.window is None or thing is None:
                continue
            if thing.overhead is not self.overhead and thing.kind != "seat":
                continue
            draw = self._ways().get(verdict.figure.name)
            if draw is not None:
                draw(thing, verdict, verdict.window, finding.id)

    def _ways(self) -> dict[str, Callable[[Thing, Verdict, Window, str], None]]:
        if self.overhead:
            return {"elevation": self._elevations, **dict.fromkeys(_TO_SIDE, self._sector)}
        return {
            **dict.fromkeys(_TO_SIDE, self._sector),
            "distance": self._distances,
            "distance to the nearest wall": self._around,
            "distance to the nearest corner": self._around,
            "clearance before the port": self._before_port,
            "clearance behind the rear port": self._before_port,
            "free way before the front": self._before_front,
            "clearance to a door's leaf": self._beside_gap,
            "clearance before a door": self._beside_gap,
            "gap to an opening": self._beside_gap,
            "picture angle": self._picture_angle,
            "sight over heads": self._hiding,
            "loudest early reflection": self._bounce,
            "level of the reflection": self._bounce,
            "delay of the reflection": self._bounce,
        }

    def _thing(self, verdict: Verdict) -> Thing | None:
        found = (self.scene.thing(key) for key in verdict.subject.split("+"))
        return next((thing for thing in found if thing is not None), None)

    def _seat(self, verdict: Verdict) -> Thing | None:
        found = (self.scene.thing(key) for key in verdict.subject.split("+") if key.startswith("seat/"))
        return next((seat for seat in found if seat is not None), self.scene.reference)

    def _sector(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:
        """Draw between which azimuths of the seat a loudspeaker belongs, as a band at its distance."""
        seat = self._seat(verdict)
        if seat is None or window.low is None or window.high is None or verdict.figure is None:
            return
        side = _TO_SIDE[verdict.figure.name]
        ends = sorted(turn_deg(seat.facing_deg + side * edge) for edge in (window.low, window.high))
        centre = seat.place[:2]
        reach = math.dist(centre, thing.place[:2])
        band = min(self.pen.m(_BAND_MM), 0.4 * reach)
        start, end = ends if ends[1] - ends[0] >= _LEAST_DEG else (ends[0] - 0.5, ends[0] + 0.5)
        points = ring(centre, reach - band, reach + band, start, end)
        self.pen.path(points, "window", closed=True, fill="tint", key=thing.key, of=of)
        for angle in (start, end):
            self.pen.path((centre, spot(centre, reach - band, angle)), "window", of=of)

    def _elevations(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:
        """Draw at which distances from the ear, on its own height, a loudspeaker has the wanted elevation."""
        seat = self._seat(verdict)
        if seat is None or window.low is None or window.high is None:
            return
        above = thing.place[2] - seat.place[2]
        edges = [edge for edge in (window.low, window.high) if 0.0 < edge < 90.0]  # noqa: PLR2004  straight up
        if above <= 0.0 or len(edges) < 2:  # noqa: PLR2004  both edges
            return
        outer, inner = (above / math.tan(math.radians(edge)) for edge in edges)
        centre = seat.place[:2]
        toward = math.degrees(math.atan2(thing.place[1] - centre[1], thing.place[0] - centre[0]))
        points = ring(centre, inner, outer, toward - _ABOUT_DEG, toward + _ABOUT_DEG)
        self.pen.path(points, "window", closed=True, fill="tint", key=thing.key, of=of)

    def _distances(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:
        seat = self._seat(verdict)
        if seat is None or seat is thing:
            return
        centre = seat.place[:2]
        toward = math.degrees(math.atan2(thing.place[1] - centre[1], thing.place[0] - centre[0]))
        for edge in (window.low, window.high):
            if edge is not None:
                start, end = toward - _ABOUT_DEG, toward + _ABOUT_DEG
                self.pen.arc(centre, edge, "window", start, end, key=thing.key, of=of)

    def _around(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        if window.low is not None:
            self.pen.arc(thing.place[:2], window.low, "window", key=thing.key, of=of)

    def _before_port(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        self._prism(thing, window, of, before=thing.port == "front")

    def _before_front(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        self._prism(thing, window, of, before=True)

    def _prism(self, thing: Thing, window: Window, of: str, *, before: bool) -> None:
        """Draw the free depth that is wanted before or behind a cabinet, as wide as the cabinet."""
        if window.low is None or thing.axis is None:
            return
        level = math.hypot(thing.axis[0], thing.axis[1])
        if level <= 0.0:
            return
        ux, uy = thing.axis[0] / level, thing.axis[1] / level
        sign = 1.0 if before else -1.0
        outs = [sign * (x * ux + y * uy) for x, y in thing.plan]
        acrosses = [y * ux - x * uy for x, y in thing.plan]
        near, far = max(outs), max(outs) + window.low
        corners = [
            (sign * out * ux - across * uy, sign * out * uy + across * ux)
            for out, across in (
                (near, min(acrosses)), (near, max(acrosses)), (far, max(acrosses)), (far, min(acrosses)),
            )
        ]  # fmt: skip
        self.pen.path(corners, "window", closed=True, fill="tint", key=thing.key, of=of)

    def _beside_gap(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        """Draw the stretch of the wall that a door or window takes."""
        for gap in self.scene.gaps:
            if gap.key in verdict.subject.split("+"):
                deep = self.pen.m(_BAND_MM)
                nx, ny = gap.inward[0] * deep, gap.inward[1] * deep
                (x0, y0), (x1, y1) = gap.start, gap.end
                points = ((x0, y0), (x1, y1), (x1 + nx, y1 + ny), (x0 + nx, y0 + ny))
                self.pen.path(points, "window", closed=True, fill="tint", key=gap.key, of=of)

    def _picture_angle(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:
        """Draw how wide the picture would have to look from the reference seat, or a lone one."""
        if thing is not self.scene.reference:
            return
        picture = next((flat for flat in self.scene.flats if flat.key.startswith("picture/")), None)
        edge = (
            window.low
            if window.nearer_side(verdict.figure.value if verdict.figure else 0.0) == "below"
            else window.high
        )
        if picture is None or edge is None:
            return
        (x0, y0), (x1, y1) = picture.plan
        centre = thing.place[:2]
        middle = ((x0 + x1) / 2.0, (y0 + y1) / 2.0)
        toward = math.degrees(math.atan2(middle[1] - centre[1], middle[0] - centre[0]))
        reach = math.dist(centre, middle)
        for half in (-edge / 2.0, edge / 2.0):
            self.pen.path((centre, spot(centre, reach, toward + half)), "window", key=thing.key, of=of)
        self.pen.arc(centre, reach, "window", toward - edge / 2.0, toward + edge / 2.0, key=thing.key, of=of)

    def _hiding(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        for seat, head in self.scene.hides:
            other = self.scene.thing(head)
            if seat == thing.key and other is not None:
                self.pen.arc(other.place[:2], 0.14, "window", fill="tint", key=head, of=of)
                self.pen.path((thing.place[:2], other.place[:2]), "window", key=thing.key, of=of)

    def _bounce(self, thing: Thing, verdict: Verdict, window: Window, of: str) -> None:  # noqa: ARG002  as its like
        """Draw the way of the loudest early reflection and a panel where it bounces."""
        for bounce in self.scene.bounces:
            if bounce.source != thing.key:
                continue
            seat = self.scene.thing(bounce.seat)
            if seat is None:
                continue
            at = bounce.at[:2]
            self.pen.path((thing.place[:2], at, seat.place[:2]), "window", key=thing.key, of=of)
            side = next((one for one in self.scene.sides if one.name == bounce.surface), None)
            if side is not None:
                length = math.dist(side.start, side.end)
                dx, dy = (side.end[0] - side.start[0]) / length, (side.end[1] - side.start[1]) / length
                ends = tuple((at[0] + way * _PANEL_M * dx, at[1] + way * _PANEL_M * dy) for way in (-1.0, 1.0))
                self.pen.path(ends, "cure", key=thing.key, of=of)

    def _remedy(self, remedy: Remedy, of: str) -> None:
        """Draw between which places a thing would have to stand, where its plan place is what is moved."""
        thing = self.scene.thing(remedy.subject)
        step = remedy.key.rpartition(".")[2]
        if thing is None or thing.overhead is not self.overhead or step not in _MOVES:
            return
        ends = [self._moved(thing, step, edge.value) for edge in (remedy.low, remedy.high)]
        self.pen.path(ends, "cure", key=thing.key, of=of)
        across = self.pen.m(1.5)
        for x, y in ends:
            dx, dy = (0.0, across) if step in {"from_left", "from_right"} else (across, 0.0)
            self.pen.path(((x - dx, y - dy), (x + dx, y + dy)), "cure", key=thing.key, of=of)

    def _moved(self, thing: Thing, step: str, metres: float) -> Spot2:
        x, y, _ = thing.place
        return {
            "from_left": (metres, y),
            "from_right": (self.scene.width_m - metres, y),
            "from_front": (x, self.scene.length_m - metres),
            "from_rear": (x, metres),
        }[step]


_MOVES: Final = frozenset({"from_left", "from_right", "from_front", "from_rear"})
