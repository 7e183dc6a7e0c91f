"""Cases of listening modes."""

from __future__ import annotations

from typing import Any

from channel_rooms import EMPTY, LS, RS, SHEETS, C, L, R

from roomlint.sample import room
from roomlint.testing import Case, Never, changed

FILM = {"id": "film", "layout": "0+5+0"}
MUSIC = {"id": "music", "layout": "0+2+0"}
FIVE = changed(room(L, R, C, LS, RS), {"listening_modes": [FILM, MUSIC], "subwoofers": [{"id": "sub"}]})
MODES = "listening_modes"
BARE = {"loudspeakers.0.label": None}


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of five loudspeakers with a mode for film and one for music."""
    return Case(f"channel.{rule}", kind, changed(more.pop("base", FIVE), changes or {}), SHEETS, **more)


CASES: list[Case | Never] = [
    on("mode-channels", "pass"),
    on("mode-channels", "fail", {f"{MODES}.0": {"id": "film", "channels": ["M+030", "U+045"]}},
       subject="listening mode/film", level="error", says="no loudspeaker plays U+045"),
    # A layout is played without what is declared and not fitted, and that must not be listed by itself.
    on("mode-channels", "pass", {"loudspeakers.2": None, "electronics.processor.unfitted": ["M+000"]}),
    on("mode-channels", "fail", {"loudspeakers.2": None, "electronics.processor.unfitted": ["M+000"],
                                 f"{MODES}.0": {"id": "film", "channels": ["M+000"]}}, subject="listening mode/film"),
    on("mode-channels", "fail", {"subwoofers": []}, subject="listening mode/film", says="LFE1"),
    on("mode-channels", "open", {f"{MODES}.0": {"id": "film", "title": "Film"}}, subject="listening mode/film", says="channels"),
    on("mode-channels", "open", BARE, says="label"),
    on("mode-channels", "open", {MODES: None}, says="listening_modes"),
    on("mode-channels", "fail", {f"{MODES}.1": {**MUSIC, "channels": ["M+030", "M-030", "M+000"]}}, subject="listening mode/music",
       says="lists M+000 otherwise"),
    on("mode-channels", "pass", {f"{MODES}.1": {**MUSIC, "channels": ["M+030", "M-030", "LFE1"]}}),
    on("mode-channels", "notApplicable", {MODES: []}),

    on("stereo-mode", "pass", says="music"),
    on("stereo-mode", "pass", {f"{MODES}.1": {"id": "music", "channels": ["M-030", "M+030", "LFE1"]}}),
    on("stereo-mode", "fail", {f"{MODES}.1": None}, level="warning", says="plays the front pair alone"),
    on("stereo-mode", "fail", {f"{MODES}.1": {"id": "music", "channels": ["M+030", "M-030", "M+000"]}}),
    on("stereo-mode", "fail", {MODES: []}),
    on("stereo-mode", "open", {f"{MODES}.1": {"id": "music", "title": "Music"}}, says="channels"),
    on("stereo-mode", "open", {MODES: None}, says="listening_modes"),
    on("stereo-mode", "open", BARE, says="label"),
    on("stereo-mode", "notApplicable", {"loudspeakers.0": None}),

    on("full-mode", "pass", says="film"),
    on("full-mode", "fail", {f"{MODES}.0": None}, level="warning", says="M+000, M+110, M-110 play in none"),
    on("full-mode", "fail", {f"{MODES}.0": {"id": "film", "channels": ["M+000", "M+110", "M-110"]}}, says="at once"),
    on("full-mode", "fail", {MODES: []}),
    # The low-frequency channel is one of them, where a subwoofer carries it.
    on("full-mode", "fail", {f"{MODES}.0": {"id": "film", "channels": ["M+030", "M-030", "M+000", "M+110", "M-110"]},
                             "subwoofers.0.label": "LFE1"}, says="LFE1 play"),
    on("full-mode", "pass", {f"{MODES}.0": {"id": "film", "channels": ["M+030", "M-030", "M+000", "M+110", "M-110"]}}),
    on("full-mode", "open", {f"{MODES}.0": {"id": "film", "title": "Film"}}, says="channels"),
    on("full-mode", "open", {MODES: None}),
    on("full-mode", "open", BARE, says="label"),
    on("full-mode", "notApplicable", base=EMPTY),
]  # fmt: skip
