"""The loudspeaker layouts A to J of ITU-R BS.2051: labels, nominal directions and allowed ranges.

Provenance: Rec. ITU-R BS.2051-1 as carried by the public ADM renderer package `ear` 2.1.0
(`ear/core/data/2051_layouts.yaml`), second-hand. For layouts B, D and G the numbers agree with a transcription
of tables 4, 6 and 9 of BS.2051-3 (05/2022). The letters are those of BS.2051-3. The same label has different
ranges in different layouts, so everything is keyed by layout and label.

Angles in deg: azimuth positive to the left, elevation positive up (ITU-R BS.2076).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Mapping

Range: TypeAlias = tuple[float, float]  # deg; an azimuth range runs anticlockwise from the first to the second

ANYWHERE: Final[Range] = (-180.0, 180.0)
ANY_ELEVATION: Final[Range] = (-90.0, 90.0)


@dataclass(frozen=True, slots=True)
class Label:
    """A loudspeaker label taken apart: layer letter, the azimuth it names, and the side it claims.

    `azimuth_deg` is None for LFE loudspeakers and for the screen-edge pair, which name no angle. `side` is 1 for
    left, -1 for right, 0 for the median plane and for LFE.
    """

    text: str
    layer: str
    azimuth_deg: float | None
    side: int

    @property
    def is_lfe(self) -> bool:
        """Whether it is a low-frequency effects loudspeaker, which belongs to no layer."""
        return self.layer == "LFE"

    @property
    def mirrored(self) -> str:
        """The label of the partner on the other side; its own for one in the median plane."""
        if self.is_lfe:
            return {"LFE1": "LFE2", "LFE2": "LFE1"}.get(self.text, self.text)
        return self.text.translate(_SWAP_SIGN) if self.side else self.text


@dataclass(frozen=True, slots=True)
class Position:
    """One loudspeaker of a layout: where it stands nominally and where it may stand.

    `azimuth_ranges` holds one range, or two where a gap in between is forbidden. For an LFE loudspeaker that may
    stand anywhere the nominal angles are None.
    """

    label: str
    azimuth_deg: float | None
    azimuth_ranges: tuple[Range, ...]
    elevation_deg: float | None
    elevation_range: Range

    @property
    def is_lfe(self) -> bool:
        """Whether it is a low-frequency effects loudspeaker."""
        return self.label.startswith("LFE")

    @property
    def is_placed(self) -> bool:
        """Whether the layout says anything of where it stands."""
        return self.azimuth_ranges != (ANYWHERE,) or self.elevation_range != ANY_ELEVATION


@dataclass(frozen=True, slots=True)
class Layout:
    """One sound system of BS.2051, its loudspeakers keyed by label."""

    letter: str
    name: str
    positions: Mapping[str, Position]

    @property
    def labels(self) -> tuple[str, ...]:
        """All labels, LFE included, ear layer first."""
        return tuple(self.positions)


def _only(value: float) -> Range:
    return (value, value)


def _one(
    label: str, azimuth: float, elevation: float, azimuths: Range | None = None, elevations: Range | None = None
) -> tuple[Position, ...]:
    return (Position(label, azimuth, (azimuths or _only(azimuth),), elevation, elevations or _only(elevation)),)


def _pair(
    left: str, azimuth: float, elevation: float, azimuths: Range | None = None, elevations: Range | None = None
) -> tuple[Position, ...]:
    # Every pair of the standard is symmetric, so only the left one is written down.
    low, high = azimuths or _only(azimuth)
    right = left.translate(_SWAP_SIGN)
    return (
        *_one(left, azimuth, elevation, (low, high), elevations),
        *_one(right, -azimuth, elevation, (-high, -low), elevations),
    )


_SWAP_SIGN = str.maketrans("+-", "-+")
_MAYBE_RAISED: Range = (0.0, 15.0)
_H_FRONT: Range = (0.0, 5.0)
_UPPER: Range = (30.0, 55.0)
_UPPER_LOW: Range = (30.0, 45.0)
_BOTTOM: Range = (-30.0, -15.0)

_FRONT = (*_pair("M+030", 30, 0), *_one("M+000", 0, 0))
_WIDE_FRONT = (*_pair("M+030", 30, 0, (30, 45)), *_one("M+000", 0, 0))
_SIDE_AND_REAR = (*_pair("M+090", 90, 0, (85, 110)), *_pair("M+135", 135, 0, (120, 150)))
_UPPER_FRONT = _pair("U+030", 30, 30, (30, 45), _UPPER)
_FOUR_UPPER = (*_UPPER_FRONT, *_pair("U+110", 110, 30, (100, 135), _UPPER))
_FOUR_WIDE_UPPER = (*_pair("U+045", 45, 30, (30, 45), _UPPER), *_pair("U+135", 135, 30, (100, 150), _UPPER))
_LFE = (Position("LFE1", None, (ANYWHERE,), None, ANY_ELEVATION),)
_LFE_PAIR = (
    *_one("LFE1", 45, -30, (30, 90), _BOTTOM),
    *_one("LFE2", -45, -30, (-90, -30), _BOTTOM),
)
# The data file gives 5 to 60; the renderer's own check leaves 25 to 35 out, where M+030 stands.
_SCREEN_EDGES = (
    Position("M+SC", 15.0, ((5.0, 25.0), (35.0, 60.0)), 0.0, (0.0, 0.0)),
    Position("M-SC", -15.0, ((-25.0, -5.0), (-60.0, -35.0)), 0.0, (0.0, 0.0)),
)

_SYSTEMS: tuple[tuple[str, str, tuple[Position, ...]], ...] = (
    ("A", "0+2+0", _pair("M+030", 30, 0)),
    ("B", "0+5+0", (*_FRONT, *_pair("M+110", 110, 0, (100, 120), _MAYBE_RAISED), *_LFE)),
    ("C", "2+5+0", (*_FRONT, *_pair("M+110", 110, 0, (100, 120), _MAYBE_RAISED), *_UPPER_FRONT, *_LFE)),
    ("D", "4+5+0", (*_FRONT, *_pair("M+110", 110, 0, (100, 120)), *_FOUR_UPPER, *_LFE)),
    (
        "E",
        "4+5+1",
        (
            *_FRONT,
            *_pair("M+110", 110, 0, (100, 120)),
            *_FOUR_UPPER,
            *_one("B+000", 0, -30, None, _BOTTOM),
            *_LFE,
        ),
    ),
    (
        "F",
        "3+7+0",
        (
            *_FRONT,
            *_pair("M+090", 90, 0, (60, 150)),
            *_pair("M+135", 135, 0, (60, 150)),
            *_pair("U+045", 45, 30, (30, 45), _UPPER_LOW),
            *_one("UH+180", 180, 45, None, (45, 90)),
            *_LFE_PAIR,
        ),
    ),
    ("G", "4+9+0", (*_WIDE_FRONT, *_SIDE_AND_REAR, *_SCREEN_EDGES, *_FOUR_WIDE_UPPER, *_LFE)),
    (
        "H",
        "9+10+3",
        (
            *_one("M+000", 0, 0, None, _H_FRONT),
            *_pair("M+030", 30, 0, (22.5, 30), _H_FRONT),
            *_pair("M+060", 60, 0, (45, 60), _H_FRONT),
            *_pair("M+090", 90, 0, None, _MAYBE_RAISED),
            *_pair("M+135", 135, 0, (110, 135), _MAYBE_RAISED),
            *_one("M+180", 180, 0, None, _MAYBE_RAISED),
            *_one("U+000", 0, 30, None, _UPPER_LOW),
            *_pair("U+045", 45, 30, (45, 60), _UPPER_LOW),
            *_pair("U+090", 90, 30, None, _UPPER_LOW),
            *_pair("U+135", 135, 30, (110, 135), _UPPER_LOW),
            *_one("U+180", 180, 30, None, _UPPER_LOW),
            *_one("T+000", 0, 90),
            *_one("B+000", 0, -30, None, _BOTTOM),
            *_pair("B+045", 45, -30, (45, 60), _BOTTOM),
            *_LFE_PAIR,
        ),
    ),
    ("I", "0+7+0", (*_WIDE_FRONT, *_SIDE_AND_REAR, *_LFE)),
    ("J", "4+7+0", (*_WIDE_FRONT, *_SIDE_AND_REAR, *_FOUR_WIDE_UPPER, *_LFE)),
)

LAYOUTS: Final[Mapping[str, Layout]] = {
    name: Layout(letter, name, {position.label: position for position in positions})
    for letter, name, positions in _SYSTEMS
}
_BY_LETTER = {layout.letter: layout for layout in LAYOUTS.values()}

_LABEL = re.compile(r"(?P<layer>UH|[BMUT])(?P<sign>[+-])(?P<angle>\d{3}|SC)|LFE(?P<number>[12]?)")


def layout_of(name: str) -> Layout:
    """Return the layout of a name such as `4+7+0` or of a letter such as `J`.

    Raises Refused, naming the layouts there are, for anything else.
    """
    layout = LAYOUTS.get(name) or _BY_LETTER.get(name)
    if layout is None:
        raise Refused(f"{name!r} is no layout of ITU-R BS.2051; it has {', '.join(LAYOUTS)}")
    return layout


@lru_cache(maxsize=256)
def parse_label(text: str) -> Label:
    """Take a loudspeaker label apart: layer letter, sign (+ is left), three digits of azimuth.

    Layers are M (ear), U (upper), UH (upper, +45 deg), T (zenith) and B (bottom); `M+SC` and `M-SC` are the
    screen edges; `LFE`, `LFE1` and `LFE2` stand outside the layers. Any angle from 000 to 180 is understood, in
    the standard's table or not. Raises Refused for anything else.
    """
    match = _LABEL.fullmatch(text)
    if match is None:
        raise Refused(
            f"{text!r} is not a loudspeaker label: write the layer (M, U, UH, T or B), + for left or - for right,"
            " and three digits of azimuth, such as M+030; or LFE1"
        )
    if match["layer"] is None:
        return Label(text, "LFE", None, 0)
    left = match["sign"] == "+"
    if match["angle"] == "SC":
        if match["layer"] != "M":
            raise Refused(f"{text!r} is not a loudspeaker label: screen edges are M+SC and M-SC")
        return Label(text, "M", None, 1 if left else -1)
    angle = float(match["angle"])
    if angle > 180.0:  # noqa: PLR2004  straight behind
        raise Refused(f"{text!r} is not a loudspeaker label: its azimuth passes 180 deg, straight behind")
    in_median_plane = angle in (0.0, 180.0) or match["layer"] == "T"
    side = 0 if in_median_plane else (1 if left else -1)
    return Label(text, match["layer"], angle if left or in_median_plane else -angle, side)
