"""Cases of product sheets that somebody guessed."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, changed

ROOM = changed(
    room(speaker("left", "M+030", -1.5, 2.6, product="box", mounting={"on": "front"})), {"project.stage": "rough-in"}
)


def on(kind: str, source: str | None, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of a sheet whose data are from somewhere."""
    sheet = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "provenance": source}
    data = {key: value for key, value in sheet.items() if value is not None}
    return Case("file.assumed-sheet", kind, changed(ROOM, changes or {}), [data], **more)


HEAVY = "file.mass-and-size"


def weighs(mass: str | None, kind: str = "loudspeaker") -> list[dict[str, Any]]:
    """Return the sheet of a box of 9.52 litres."""
    data = {"roomlint_product": 1, "id": "box", "kind": kind, "width": "200 mm", "height": "340 mm", "depth": "140 mm"}
    return [{**data, **({} if mass is None else {"mass": mass})}]


SCREEN = room(picture={"kind": "projection", "product": "box"})

CASES = [
    Case(HEAVY, "pass", ROOM, weighs("6.5 kg"), figure=0.6828, source="6.5 kg over 9.52 litres"),
    Case(
        HEAVY,
        "fail",
        ROOM,
        weighs("0.65 kg"),
        level="warning",
        figure=0.06828,
        source="a tenth of it",
        says="check mass",
    ),
    Case(HEAVY, "fail", ROOM, weighs("65 kg"), level="warning", figure=6.828, source="ten times as much"),
    Case(HEAVY, "review", ROOM, weighs("0.77 kg ± 0.1 kg")),
    Case(HEAVY, "open", ROOM, weighs(None), says="mass"),
    Case(HEAVY, "open", changed(ROOM, {"loudspeakers.0.product": None}), says="product"),
    Case(HEAVY, "notApplicable", SCREEN, weighs("0.2 kg", "screen"), says="air and cloth"),
    Case(HEAVY, "notApplicable", room()),
    on("pass", "data-sheet"),
    on("pass", "measured"),
    on("fail", "assumed", level="note", says="assumed"),
    on("fail", "assumed", {"project.stage": "handover"}),
    on("open", None, says="provenance"),
    on("open", "assumed", {"project.stage": None}, says="stage"),
    on("notApplicable", "assumed", {"project.stage": "design"}),
    on("open", "assumed", {"loudspeakers.0.product": None}, says="product"),
    # What holds it may have a sheet that somebody guessed.
    on("open", "measured", {"loudspeakers.0.mounting": None}, says="mounting"),
    on("fail", "assumed", {"loudspeakers.0.mounting": None}),
    Case("file.assumed-sheet", "notApplicable", room()),
]
EDGES = [Edge(HEAVY, ROOM, "mass", 0.5, 30.0, 2, unit="kg", products=weighs("6.5 kg"), sheet="box")]
