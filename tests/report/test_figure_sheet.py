"""The sheet of figures is as wide as the page: columns where they fit, else each row folded between its figures."""

from __future__ import annotations

from roomlint.measure.figure import Figure
from roomlint.measure.sheet import Lacking, Table
from roomlint.report.figure_sheet import sheet_text

AIM = Lacking("loudspeakers[0].aim", "aim", "left")


def figure(value, unit="m"):
    return Figure.plain("distance", unit, value, u=0.006)


def seat(*rows):
    return Table("seat middle", ("azimuth", "distance", "off axis"), rows)


LEFT = ("left M+030", (figure(30.0, "deg"), figure(2.5), AIM))
REAR = ("rear-left M+135", (figure(135.0, "deg"), figure(1.5), figure(12.0, "deg")))


def test_columns_stand_under_each_other_where_they_fit():
    assert sheet_text("den", [seat(LEFT, REAR)]) == (
        "den\n"
        "\n"
        "seat middle\n"
        "                   azimuth    distance       off axis\n"
        "  left M+030       30.0 deg   2.50 m ± 6 mm  -\n"
        "  rear-left M+135  135.0 deg  1.50 m ± 6 mm  12.0 deg\n"
        "  left M+030: not known: where it points\n"
    )


def test_a_row_folds_between_its_figures_where_they_do_not():
    text = sheet_text("den", [seat(LEFT, REAR)], width=40)
    assert max(map(len, text.splitlines())) <= 40
    assert "  rear-left M+135: azimuth 135.0 deg;\n      distance 1.50 m ± 6 mm;\n" in text


def test_a_column_of_which_nothing_is_known_is_left_to_the_list_below():
    text = sheet_text("den", [seat(LEFT)])
    assert "off axis" not in text
    assert "left M+030: not known: where it points" in text


def test_what_another_element_lacks_is_told_of_that_one():
    lacks = Lacking("loudspeakers[1].position", "position", "rear-left")
    text = sheet_text("den", [seat(("left M+030", (figure(30.0, "deg"), lacks, lacks)), REAR)])
    assert "rear-left M+135: not known: position" in text
    assert "left M+030: not known" not in text.replace("rear-left M+135: not known", "")
