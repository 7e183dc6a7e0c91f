"""What the team records beside the geometry: project, survey, modes, calibration, handover, waivers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element

if TYPE_CHECKING:
    from datetime import date

    from roomlint.design.base import Value


@dataclass(frozen=True, slots=True)
class Project(Element):
    """Which job this is and which rules of the outside world it lives under."""

    KIND: ClassVar[str] = "project"

    title: str | None = None
    stage: str | None = None
    """survey, design, rough-in or handover."""
    region: str | None = None
    reference: str = "home"
    """home or critical: which windows give warnings."""
    electrical_code: str | None = None
    building_code: str | None = None
    seismic_category: str | None = None
    children: bool | None = None


@dataclass(frozen=True, slots=True)
class Survey(Element):
    """How the room was measured."""

    KIND: ClassVar[str] = "survey"

    tolerance_m: Value | None = None
    temperature_degc: Value | None = None


@dataclass(frozen=True, slots=True)
class Mode(Element):
    """A listening mode: which channels play."""

    KIND: ClassVar[str] = "listening mode"

    title: str | None = None
    layout: str | None = None
    channels: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Setting(Element):
    """What is entered in the processor for one loudspeaker or subwoofer."""

    KIND: ClassVar[str] = "setting"

    delay_s: Value | None = None
    distance_m: Value | None = None
    level_db: Value | None = None
    measured_level_db: Value | None = None
    crossover_hz: Value | None = None
    inverted: bool | None = None


@dataclass(frozen=True, slots=True)
class Step(Element):
    """A step of the calibration, or an item of the handover."""

    KIND: ClassVar[str] = "step"

    what: str = ""
    done: bool | None = None
    by: str | None = None
    on: str | None = None
    evidence: str | None = None


@dataclass(frozen=True, slots=True)
class Calibration(Element):
    """How the room was or will be set up."""

    KIND: ClassVar[str] = "calibration"

    reference_level_db: Value | None = None
    hours_a_week: float | None = None
    settings: tuple[Setting, ...] = ()
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True, slots=True)
class Waiver(Element):
    """A failure accepted on the record."""

    KIND: ClassVar[str] = "waiver"

    rule: str = ""
    subject: str = ""
    because: str | None = None
    approved_by: str | None = None
    until: date | None = None
    bound: str | None = None
    """No worse than this: a quantity as text, in the figure's unit."""
    document: str | None = None
