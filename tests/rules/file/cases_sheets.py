"""Cases of product sheets that somebody guessed."""

from __future__ import annotations

from typing import Any

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


CASES = [
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
