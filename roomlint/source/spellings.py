"""Names of channels and layouts as people type them, and what ITU-R BS.2051 calls them.

A label there says layer, side and angle: M the ear layer, U the upper, B the bottom; + left, - right; three digits of
azimuth. A layout says upper + middle + bottom loudspeakers. Everyday numbers go the other way round, ear layer . LFE .
upper, and everyday letters say no angle, so that some mean one label among five loudspeakers and another among seven.
"""

from __future__ import annotations

import re
from typing import Final

_SIDES: Final = {"l": "+", "r": "-", "left": "+", "right": "-"}
_BARE = re.compile(r"[\s_\-./]+")
_NUMBERED = re.compile(r"(?P<layer>uh|[mutb])(?P<sign>[+-]?)(?P<angle>\d{1,3})(?P<side>[lr]?)")
_DOTTED = re.compile(r"(\d{1,2})[.,](\d{1,2})(?:[.,](\d{1,2}))?(?:[.,](\d{1,2}))?")
_TWO = re.compile(r"(\d{1,2})\+(\d{1,2})")
_MOST_DEG: Final = 180

_SURROUND: Final = "{0}110 with five in the ear layer, {0}090 with seven"
_PAIRS: Final = {
    "M{0}030": ("", "f", "front", "main"),
    _SURROUND.replace("{0}", "M{0}"): ("s", "sur", "surround"),
    "M{0}090": ("ss", "side", "sidesurround"),
    "M{0}135": ("rs", "b", "back", "rear", "sb", "surroundback", "rearsurround", "backsurround"),
    "M{0}060": ("w", "wide", "frontwide"),
    "M{0}SC": ("sc", "screen"),
    "U{0}045 with seven or more in the ear layer, U{0}030 with five": (
        "tf", "topfront", "fh", "h", "frontheight", "height", "upperfront",
    ),
    "U{0}090": ("tm", "ts", "topmiddle", "topside", "sideheight", "upperside"),
    "U{0}135 with seven or more in the ear layer, U{0}110 with five": (
        "tr", "tb", "toprear", "topback", "rh", "rearheight", "upperrear",
    ),
}  # fmt: skip
"""Labels of a left (+) or a right (-) by what is typed beside its side, before or after it."""
_ALONE: Final = {
    "M+000": ("c", "cc", "fc", "cf", "center", "centre", "frontcenter", "frontcentre", "m000"),
    "M+180": ("cs", "bc", "rc", "rearcentre", "rearcenter", "backcentre", "backcenter", "m180"),
    "LFE1": ("sub", "subwoofer", "sw", "lfe0", "bass"),
    "T+000": ("voiceofgod", "top", "zenith", "tc", "overhead"),
}


def right_label(typed: str) -> str:
    """Return what the standard calls a channel that people write otherwise; empty when nobody can tell."""
    bare = _BARE.sub("", typed.casefold())
    alone = next((label for label, names in _ALONE.items() if bare in names), "")
    if alone:
        return alone
    return _numbered(_BARE.sub("", typed.casefold().replace("-", "!")).replace("!", "-")) or _sided(bare)


def _sided(bare: str) -> str:
    for side, sign in sorted(_SIDES.items(), key=lambda one: -len(one[0])):
        rests = {bare.removeprefix(side)} if bare.startswith(side) else set()
        rests |= {bare.removesuffix(side)} if bare.endswith(side) else set()
        # `sbl` and `tfr` put the side last, `ls` and `rtf` first; `lrs` is a rear of the left.
        for label, names in _PAIRS.items():
            if rests & set(names):
                return label.format(sign)
    return ""


def _numbered(text: str) -> str:
    match = _NUMBERED.fullmatch(text)
    if match is None or int(match["angle"]) > _MOST_DEG or (match["sign"] and match["side"]):
        return ""
    angle, sign = int(match["angle"]), match["sign"] or _SIDES.get(match["side"], "")
    name = f"{match['layer'].upper()}{{}}{angle:03d}"
    if angle in {0, _MOST_DEG}:
        return name.format("+")
    return name.format(sign) if sign else f"{name.format('+')} on the left, {name.format('-')} on the right"


def right_layout(typed: str) -> str:
    """Return the name, upper + middle + bottom, of a layout that people write otherwise; empty when nobody can tell."""
    bare = typed.strip().casefold()
    match = _DOTTED.fullmatch(bare)
    if match is not None:
        middle, lfe, upper, bottom = (int(group or 0) for group in match.groups())
        if (middle, lfe, match[3]) == (22, 2, None):
            return "9+10+3"
        return f"{upper}+{middle}+{bottom}"
    match = _TWO.fullmatch(bare)
    if match is not None:
        return f"{match[1]}+{match[2]}+0"
    return {"stereo": "0+2+0", "quad": "0+4+0"}.get(bare, "")
