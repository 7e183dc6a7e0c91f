"""Cases of the background by octave and of what makes noise in the room; the room holds 78 m3."""

from __future__ import annotations

from roomlint.edges import Edge
from roomlint.sample import at, room
from roomlint.testing import Case, Never, changed

BANDS = ("63 Hz", "125 Hz", "250 Hz", "500 Hz", "1 kHz", "2 kHz", "4 kHz", "8 kHz")


def octaves(*levels: float) -> dict[str, str]:
    """Return levels by octave, as a file writes them."""
    return {band: f"{level:g} dB" for band, level in zip(BANDS, levels, strict=True)}


LOUD = octaves(61, 56, 54, 50, 44, 43, 39, 34)
NC_20 = octaves(51, 40, 33, 26, 22, 19, 17, 16)
SOFT = room(noise={"octaves": NC_20, "sources": "none"})
CRITICAL = {"project.reference": "critical"}
NR_10 = octaves(43.3, 30.7, 21.3, 14.5, 10, 6.6, 4.1, 2.3)
NC_15 = octaves(40, 30, 25, 20, 17, 12, 10, 9)
NR_0 = octaves(35, 22, 12, 4, 0, -4, -7, -9)
FAN = {"id": "fan", "position": at(0.0, 2.0), "level": "28 dB"}
HUMMING = room(noise={"sources": [FAN]})
SHEET = {"roomlint_product": 1, "id": "light", "kind": "projector", "picture": {"noise": "28 dB"}}
LIT = changed(
    room(noise={"sources": "none"}),
    {"picture": {"kind": "projection", "projector": {"product": "light", "lens": at(0.0, 2.0)}}},
)
WALLS = ("front", "right", "rear", "left")
BARE = {
    "room.walls": [{"id": wall, "finish": "concrete"} for wall in WALLS], "room.floor": {"finish": "concrete"},
    "room.ceiling.finish": "concrete",
}  # fmt: skip
HUM = {"id": "fan", "position": at(0.0, 2.0), "octaves": {"1 kHz": "20 dB"}}
# A = 0.161 x 78 / 0.35 = 35.88 m2: 28 + 10 lg(1 / 4 + 8 pi / 35.88) = 27.78 dB, +- 1.6 dB with the decay.
FIGURE = 27.7833

CASES: list[Case | Never] = [
    Case("noise.criterion", "pass", SOFT, figure=20.0, source="ANSI S12.2, the curve itself"),
    Case("noise.criterion", "fail", changed(SOFT, {"noise.octaves": LOUD}), level="warning", figure=46.0,
         source="a course's example: 45 + 5 (50 - 49) / (54 - 49)", says="criterion 46.0 at 500"),
    Case("noise.criterion", "fail", changed(SOFT, {"noise.octaves.1 kHz": "24 dB"}), level="note", figure=22.0, source="20 + 5 x 2 / 5"),
    Case("noise.criterion", "pass", room(noise={"nc": 18}), figure=18.0),
    Case("noise.criterion", "fail", room(noise={"nc": 22}), level="note"),
    Case("noise.criterion", "review", changed(SOFT, {"noise.octaves.1 kHz": "26.5 dB ± 1 dB"})),
    Case("noise.criterion", "review", changed(SOFT, {"noise.octaves.1 kHz": "90 dB"}), says="highest"),
    Case("noise.criterion", "open", room(), says="noise"),
    Case("noise.criterion", "open", room(noise={"sources": "none"}), says="octaves"),
    # One octave says nothing of the others: it may fail the room, and does not pass it.
    Case("noise.criterion", "open", room(noise={"octaves": {"1 kHz": "20 dB"}}), says="octaves.63 Hz"),
    Case("noise.criterion", "open", changed(SOFT, {"noise.octaves.63 Hz": None}), says="octaves.63 Hz"),
    Case("noise.criterion", "fail", room(noise={"octaves": {"1 kHz": "40 dB"}}), level="warning"),
    Case("noise.criterion", "notApplicable", changed(SOFT, CRITICAL)),

    Case("noise.rating", "pass", changed(SOFT, {**CRITICAL, "noise.octaves": NR_10}), figure=10.0, within=0.06,
         source="a published table of NR 10"),
    Case("noise.rating", "fail", changed(SOFT, CRITICAL), level="warning", figure=23.301, source="(16 + 8.0) / 1.030 at 8 kHz"),
    Case("noise.rating", "fail", changed(room(noise={"nr": 12}), CRITICAL), level="note"),
    Case("noise.rating", "open", changed(room(noise={"nc": 12}), CRITICAL), says="octaves"),
    Case("noise.rating", "open", changed(room(noise={"octaves": {"1 kHz": "8 dB"}}), CRITICAL), says="octaves.63 Hz"),
    Case("noise.rating", "notApplicable", SOFT),

    Case("noise.at-seat", "pass", HUMMING, figure=FIGURE, source="28 + 10 lg(1 / 2^2 + 8 pi / 35.88)"),
    Case("noise.at-seat", "pass", LIT, (SHEET,), figure=FIGURE),
    Case("noise.at-seat", "fail", changed(HUMMING, {"noise.sources.0.level": "40 dB"}), level="warning", says="most of it from fan"),
    Case("noise.at-seat", "fail", changed(HUMMING, {"noise.sources.0.level": "33 dB"}), level="note"),
    # Both together: 3.01 dB more.
    Case("noise.at-seat", "pass", changed(LIT, {"noise.sources": [FAN]}), (SHEET,), figure=FIGURE + 3.0103, source="two alike"),
    Case("noise.at-seat", "fail", changed(HUMMING, {"noise.level": "36 dB"}), level="warning", says="most of it background"),
    # By octave: 40 dB at 1 kHz are 40 A-weighted.
    Case("noise.at-seat", "fail", changed(HUMMING, {"noise.sources": [{"id": "fan", "position": at(0.0, 2.0), "octaves": {"1 kHz": "40 dB"}}]}),
         level="warning", figure=FIGURE + 12.0, source="A-weighting is nought at 1 kHz"),
    Case("noise.at-seat", "fail", changed(HUMMING, {**CRITICAL, "noise.sources.0.level": "32 dB"}), level="warning"),
    Case("noise.at-seat", "review", changed(HUMMING, {"noise.sources.0.level": "35.2 dB"})),
    Case("noise.at-seat", "open", room(), says="noise"),
    Case("noise.at-seat", "open", room(noise={"nc": 20}), says="sources"),
    Case("noise.at-seat", "open", changed(HUMMING, {"noise.sources.0.level": None}), says="level"),
    Case("noise.at-seat", "open", changed(HUMMING, {"noise.sources.0.position": None}), says="position"),
    Case("noise.at-seat", "open", LIT, (changed(SHEET, {"picture.noise": None, "picture.contrast": 1000}),), says="noise"),
    Case("noise.at-seat", "open", changed(HUMMING, {"picture": None}), says="picture"),
    # Of a background only a number is known: at NC 40 some 36 to 48.6 dB A-weighted, above whatever is wanted.
    Case("noise.at-seat", "fail", changed(HUMMING, {"noise.nc": 40}), level="warning", says="most of it background"),
    Case("noise.at-seat", "fail", changed(HUMMING, {**CRITICAL, "noise.nr": 40}), level="warning"),
    # A-weighted alone it is judged here, for no curve can be laid on it.
    Case("noise.at-seat", "fail", room(noise={"level": "40 dB", "sources": "none"}), level="warning", figure=40.0),
    Case("noise.at-seat", "open", room(noise={"sources": [HUM]}), says="octaves.63 Hz"),
    Case("noise.at-seat", "open", changed(HUMMING, {"noise.octaves": {"1 kHz": "20 dB"}}), says="octaves.63 Hz"),
    # Bare concrete: 2.9 s by Sabine to 2.0 s, furniture taken between; a fan is as loud as in no furnished room.
    Case("noise.at-seat", "fail", changed(HUMMING, {**BARE, "noise.sources.0.level": "31 dB"}), level="warning"),
    Case("noise.at-seat", "notApplicable", room(noise={"sources": "none"})),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("noise.criterion", room(noise={"octaves": NC_15}), "noise.octaves.1 kHz", 17.0, 40.0, 2, unit="dB"),
    Edge("noise.rating", changed(SOFT, {**CRITICAL, "noise.octaves": NR_0}), "noise.octaves.1 kHz", 0.0, 30.0, 2, unit="dB"),
    Edge("noise.at-seat", room(noise={"level": "28 dB", "sources": [{**FAN, "level": "0 dB"}]}), "noise.level", 20.0, 40.0, 2,
         unit="dB"),
]  # fmt: skip
