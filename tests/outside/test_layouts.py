"""The layout table against the data file of the public ADM renderer package `ear`, read as data, never imported.

The package's own note says that the file derives from Rec. ITU-R BS.2051-1.
"""

from __future__ import annotations

import hashlib
from importlib.metadata import PackageNotFoundError, files, version
from itertools import pairwise
from typing import Any

import pytest
import yaml

from roomlint.figures.layouts import ANYWHERE, LAYOUTS, layout_of, parse_label
from roomlint.figures.own_layouts import published

try:
    VERSION = version("ear")
except PackageNotFoundError:
    # It asks for a numpy too old for the other tests, so it is installed by hand: pip install --no-deps ear==2.1.0
    pytest.skip("the package `ear` is not installed", allow_module_level=True)


def _published() -> list[dict[str, Any]]:
    (entry,) = [path for path in files("ear") or () if str(path) == "ear/core/data/2051_layouts.yaml"]
    text = entry.read_binary()
    assert VERSION == "2.1.0"
    assert hashlib.sha256(text).hexdigest() == "ccdfd58087d0ddabab09deb3f45377772d153891e00d6c7bac7c0889204783be"
    layouts: list[dict[str, Any]] = yaml.safe_load(text)
    return layouts


def _channels() -> list[Any]:
    return [
        pytest.param(layout["name"], channel, id=f"{layout['name']}-{channel['name']}")
        for layout in _published()
        for channel in layout["channels"]
    ]


def test_the_layouts_are_the_published_ones_with_the_published_channels() -> None:
    assert {name: set(layout.labels) for name, layout in LAYOUTS.items()} == {
        layout["name"]: {channel["name"] for channel in layout["channels"]} for layout in _published()
    }


@pytest.mark.parametrize(("layout", "channel"), _channels())
def test_nominal_direction_and_elevation_range_agree(layout: str, channel: dict[str, Any]) -> None:
    ours = layout_of(layout).positions[channel["name"]]
    azimuth, elevation = channel["position"]["az"], channel["position"]["el"]
    if ours.is_lfe and not ours.is_placed:
        assert ours.azimuth_deg is None  # the file gives a stand-in and says so in a comment
    else:
        assert (ours.azimuth_deg, ours.elevation_deg) == (azimuth, elevation)
    assert ours.elevation_range == tuple(channel.get("el_range", (elevation, elevation)))


@pytest.mark.parametrize(("layout", "channel"), _channels())
def test_azimuth_range_agrees(layout: str, channel: dict[str, Any]) -> None:
    ours = layout_of(layout).positions[channel["name"]]
    azimuth = channel["position"]["az"]
    low, high = channel.get("az_range", (azimuth, azimuth))
    assert (min(start for start, _ in ours.azimuth_ranges), max(end for _, end in ours.azimuth_ranges)) == (low, high)


def test_only_the_screen_edges_have_a_forbidden_middle() -> None:
    split = {
        (name, label): position.azimuth_ranges
        for name, layout in LAYOUTS.items()
        for label, position in layout.positions.items()
        if len(position.azimuth_ranges) > 1
    }
    # The check on screen loudspeakers in the same package, ear/core/point_source.py: 5 to 25 or 35 to 60 deg.
    assert split == {
        ("4+9+0", "M+SC"): ((5, 25), (35, 60)),
        ("4+9+0", "M-SC"): ((-25, -5), (-60, -35)),
    }


def test_an_lfe_loudspeaker_is_placed_only_in_layouts_f_and_h() -> None:
    placed = {
        layout.letter
        for layout in LAYOUTS.values()
        for position in layout.positions.values()
        if position.is_lfe and position.azimuth_ranges != (ANYWHERE,)
    }
    assert placed == {"F", "H"}


# Letters and names: the scene files of the BBC R&D binaural room response data set (A to H), and a transcription of
# BS.2051-3 for I and J. Channel counts without LFE follow from the names.
@pytest.mark.parametrize(
    ("letter", "name", "main", "lfe"),
    [
        ("A", "0+2+0", 2, 0),
        ("B", "0+5+0", 5, 1),
        ("C", "2+5+0", 7, 1),
        ("D", "4+5+0", 9, 1),
        ("E", "4+5+1", 10, 1),
        ("F", "3+7+0", 10, 2),
        ("G", "4+9+0", 13, 1),
        ("H", "9+10+3", 22, 2),
        ("I", "0+7+0", 7, 1),
        ("J", "4+7+0", 11, 1),
    ],
)
def test_letter_name_and_channel_counts(letter: str, name: str, main: int, lfe: int) -> None:
    layout = layout_of(letter)
    assert layout.name == name
    layers = [parse_label(label).layer for label in layout.labels]
    assert (len(layers) - layers.count("LFE"), layers.count("LFE")) == (main, lfe)
    upper = sum(layers.count(layer) for layer in ("U", "UH", "T"))
    assert f"{upper}+{layers.count('M')}+{layers.count('B')}" == name


def _span(label: str, names: list[str] | None = None) -> tuple[float, float, float, float]:
    """Return the span of azimuth and of elevation that the published file gives a label, over some layouts or all."""
    found = [
        (
            channel.get("az_range", [channel["position"]["az"]] * 2),
            channel.get("el_range", [channel["position"]["el"]] * 2),
        )
        for layout in _published()
        for channel in layout["channels"]
        if channel["name"] == label and (names is None or layout["name"] in names)
    ]
    azimuths, elevations = [a for az, _ in found for a in az], [e for _, el in found for e in el]
    return min(azimuths), max(azimuths), min(elevations), max(elevations)


FIVE = ["0+5+0", "2+5+0", "4+5+0", "4+5+1"]


@pytest.mark.parametrize(
    ("label", "tables"),
    [
        # No table has six upper loudspeakers: all that have the label hold. Four tables have five in the ear layer.
        ("U+045", None), ("U-045", None), ("U+090", None), ("U-135", None), ("U+030", None), ("U-110", None),
        ("M+030", FIVE), ("M-110", FIVE), ("M+000", FIVE),
    ],
)  # fmt: skip
def test_in_six_over_five_a_label_has_the_span_of_the_tables_that_have_it(label: str, tables: list[str] | None) -> None:
    found = published("6+5+0", label)
    assert found is not None
    arcs = found.position.azimuth_ranges
    spans = (min(low for low, _ in arcs), max(high for _, high in arcs), *found.position.elevation_range)
    assert spans == _span(label, tables)
    assert tables is None or list(found.tables) == tables


def test_the_published_ranges_leave_ten_degrees_between_neighbours_and_fifteen_below_the_ear_layer() -> None:
    gaps, drops = [], []
    for layout in _published():
        main = [c for c in layout["channels"] if not c["name"].startswith("LFE") and "SC" not in c["name"]]
        left = [c for c in main if c["name"][-4] == "+" and c["position"]["az"] >= 0]
        for layer in "MU":
            mine = sorted((c for c in left if c["name"][0] == layer), key=lambda c: c["position"]["az"])
            for one, other in pairwise(mine):
                if layout["name"] != "3+7+0":  # its side and its rear share one range
                    ends = [c.get("az_range", [c["position"]["az"]] * 2) for c in (one, other)]
                    gaps.append(min(ends[1]) - max(ends[0]))
        drops += [-max(c["el_range"]) for c in main if c["name"][0] == "B"]
    assert min(gaps) == 10
    assert min(drops) == 15
