"""Rules of an invented firm."""

from roomlint.review import Level, Window, practice, rule


@rule(
    "layout.example-ear-height",
    level=Level.NOTE,
    basis=practice("the firm's own habit"),
    each=lambda room: room.design.seats,
    reads=("seats[].ear",),
    since="1.0.0",
    window=Window(0.9, 1.3, "m"),
    at="ear.height",
)
def ear_height(room, seat):
    """Ears are at the height of people who sit.

    Why: A seat drawn at another height moves every angle of the room.

    How decided: The height of the ear above the floor is compared with the window.

    Remedy: Correct the ear's height.

    When to waive: On a riser, where the height is meant.
    """
    from roomlint.measure.figure import figure
    from roomlint.review import need

    return figure("ear height", "m", lambda height: height, need(seat.ear, seat, "ear").z)
