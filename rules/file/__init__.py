"""Chapter file: what the room file says twice and differently, and the waivers that stand in it."""

from __future__ import annotations

from roomlint.review import practice

ONCE = practice("one fact is written once; where it stands twice the two agree")
