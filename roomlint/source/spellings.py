"""Labels and layouts as people write them, and what ITU-R BS.2051 calls each of them.

A layout there says upper + middle + bottom loudspeakers; everyday numbers go the other way round, ear layer . LFE .
upper.
"""

from __future__ import annotations

import re
from typing import Final

FORM: Final = "layer M, U or B; + left or - right; three digits of degrees"
_NUMBERED: Final = re.compile(r"(UH|[MUTB])?([+-]?)(\d{1,3})")
_LETTERS: Final = {
    "L": "M+030", "R": "M-030", "C": "M+000", "LS": "M+110", "SL": "M+110", "RS": "M-110", "SR": "M-110",
    "LB": "M+135", "BL": "M+135", "RB": "M-135", "BR": "M-135",
}  # fmt: skip
"""The letters of ITU-R BS.775, and back for rear."""
_BASS: Final = frozenset({"lfe", "sw", "sub", "subwoofer", "bass"})
_UPPER: Final = frozenset({"upper", "top", "height", "overhead", "ceiling"})
_AZIMUTHS: Final = (
    (frozenset({"rear", "back"}), 135),
    (frozenset({"side"}), 90),
    (frozenset({"surround"}), 110),
)
_WIDEST_DEG: Final = 180
_DOTTED: Final = re.compile(r"(\d{1,2})[.,](\d{1,2})(?:[.,](\d{1,2}))?(?:[.,](\d{1,2}))?")
_TWO: Final = re.compile(r"(\d{1,2})\+(\d{1,2})")
_APART: Final = re.compile(r"(\d{1,2})\s*[-/ +]\s*(\d{1,2})\s*[-/ +]\s*(\d{1,2})")
"""A name with another sign between its numbers, or with blanks."""


def no_label(text: str) -> str:
    """Return that a text is no label, with the one that is meant where that can be told, and how labels are made."""
    meant = _meant(text)
    instead = f"write {meant}" if meant else "such as M+030, M+000, U-045, LFE1"
    return f"no loudspeaker label of ITU-R BS.2051: {instead} ({FORM})."


def _meant(text: str) -> str:
    bare = text.strip().upper().replace("\N{MINUS SIGN}", "-").replace(" ", "")
    if bare in _LETTERS:
        label = _LETTERS[bare]
        sign = label[1]
        others = f", or M{sign}090 beside the seats and M{sign}135 behind them" if label.endswith("110") else ""
        return f"{label}{others}"
    numbered = _NUMBERED.fullmatch(bare)
    if numbered is not None and int(numbered[3]) <= _WIDEST_DEG:
        layer, degrees = numbered[1] or "M", f"{int(numbered[3]):03d}"
        if numbered[2] or not int(degrees):
            return f"{layer}{numbered[2] or '+'}{degrees}"
        return f"{layer}+{degrees} on the left, {layer}-{degrees} on the right"
    return _of_words(frozenset(re.findall(r"[a-z]+", text.casefold())))


def _of_words(words: frozenset[str]) -> str:
    if words & _BASS:
        return "LFE1, and LFE2 for a second bass channel"
    if words & {"centre", "center"} and not words & {"left", "right"}:
        return f"{'U' if words & _UPPER else 'M'}+000"
    if not words & {"left", "right"}:
        return ""
    sign = "+" if "left" in words else "-"
    front = 45 if words & _UPPER else 30
    degrees = next((azimuth for named, azimuth in _AZIMUTHS if words & named), front)
    return f"{'U' if words & _UPPER else 'M'}{sign}{degrees:03d}"


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
    match = _APART.fullmatch(bare)
    if match is not None:
        return "+".join(match.groups())
    return {"stereo": "0+2+0", "quad": "0+4+0"}.get(bare, "")
