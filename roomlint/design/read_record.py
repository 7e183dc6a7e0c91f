"""Reads project, survey, listening modes, calibration, handover and waivers."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from roomlint.design.reader import Reader, unique
from roomlint.design.record import Calibration, Mode, Project, Setting, Step, Survey, Waiver

if TYPE_CHECKING:
    from collections.abc import Iterable


def read_project(root: Reader, fallback: str) -> Project:
    """Return the project; without a code the file's own name serves."""
    reader = root.below("project") or Reader(root.node, root.book)
    has = root.at("project") is not None
    codes = reader.below("codes") if has else None
    return Project(
        at=reader.node,
        id=(reader.text("code") if has else None) or fallback,
        title=reader.text("title") if has else None,
        stage=reader.text("stage") if has else None,
        region=reader.text("region") if has else None,
        reference=(reader.text("reference") if has else None) or "home",
        electrical_code=codes.text("electrical") if codes is not None else None,
        building_code=codes.text("building") if codes is not None else None,
        seismic_category=codes.text("seismic_category") if codes is not None else None,
        children=reader.flag("children") if has else None,
    )


def read_survey(root: Reader) -> Survey:
    """Return the survey; its tolerance is what every surveyed length of the file carries."""
    reader = root.below("survey")
    if reader is None:
        return Survey(at=root.node, id="survey")
    tolerance = reader.length("tolerance")
    root.book.tolerance_m = tolerance.value if tolerance is not None else 0.0
    return Survey(
        at=reader.node,
        id="survey",
        tolerance_m=tolerance,
        temperature_degc=reader.quantity("temperature", "temperature"),
    )


def read_modes(root: Reader) -> tuple[Mode, ...]:
    """Return the listening modes."""
    unique(root.each("listening_modes"), "listening mode")
    return tuple(
        Mode(
            at=reader.node,
            id=reader.text("id") or "",
            title=reader.text("title"),
            layout=reader.text("layout"),
            channels=reader.texts("channels"),
        )
        for reader in root.each("listening_modes")
    )


def read_calibration(root: Reader, sources: Iterable[str]) -> Calibration:
    """Return the calibration; `sources` are the ids of all loudspeakers and subwoofers."""
    reader = root.below("calibration")
    if reader is None:
        return Calibration(at=root.node, id="calibration")
    unique(reader.each("settings"), "setting for")
    names = tuple(sources)
    return Calibration(
        at=reader.node,
        id="calibration",
        reference_level_db=reader.quantity("reference_level", "level"),
        hours_a_week=reader.number("hours_a_week"),
        settings=tuple(
            Setting(
                at=below.node,
                id=below.one_of("id", names, "loudspeaker or subwoofer") or "",
                delay_s=below.quantity("delay", "time"),
                distance_m=below.length("distance"),
                level_db=below.quantity("level", "level"),
                measured_level_db=below.quantity("measured_level", "level"),
                crossover_hz=below.quantity("crossover", "frequency", positive=True),
                inverted=below.flag("inverted"),
            )
            for below in reader.each("settings")
        ),
        steps=_steps(reader, "steps"),
    )


def read_handover(root: Reader) -> tuple[Step, ...]:
    """Return the items to verify before handover."""
    return _steps(root, "handover")


def _steps(reader: Reader, key: str) -> tuple[Step, ...]:
    unique(reader.each(key), "step")
    return tuple(
        Step(
            at=below.node,
            id=below.text("id") or "",
            what=below.text("what") or "",
            done=below.flag("done"),
            by=below.text("by"),
            on=below.text("on"),
            evidence=below.text("evidence"),
        )
        for below in reader.each(key)
    )


def read_waivers(root: Reader) -> tuple[Waiver, ...]:
    """Return the waivers; whether they hold is judged by the rules of chapter `file`."""
    return tuple(
        Waiver(
            at=reader.node,
            id=f"{reader.text('rule')} for {reader.text('subject')}",
            rule=reader.text("rule") or "",
            subject=reader.text("subject") or "",
            because=reader.text("because"),
            approved_by=reader.text("approved_by"),
            until=_day(reader, "until"),
            bound=reader.text("bound"),
            document=reader.text("document"),
        )
        for reader in root.each("waivers")
    )


def _day(reader: Reader, key: str) -> date | None:
    node = reader.at(key)
    if node is None:
        return None
    try:
        return date.fromisoformat(str(node.value))
    except ValueError:
        reader.book.tell(
            node, f"{node.value!r} is not a day of the calendar; write year-month-day, such as 2027-06-30."
        )
        return None
