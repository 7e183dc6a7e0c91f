"""The page in a real browser: nothing is fetched, nothing breaks, findings are found both ways, phones and print."""

from __future__ import annotations

import base64
import json
import os
import re
import shutil
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from click.testing import CliRunner

from roomlint.cli import main

if TYPE_CHECKING:
    from collections.abc import Iterator

pytest.importorskip("selenium", reason="needs selenium, which drives the browser")

from selenium import webdriver
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.ui import WebDriverWait

ROOT = Path(__file__).parents[3]
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
DRIVER = shutil.which("chromedriver")
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--hide-scrollbars",
)  # fmt: skip
AXE = [
    Path(place)
    for place in (os.environ.get("ROOMLINT_AXE", ""), *ROOT.glob(".venv*/axe/node_modules/axe-core/axe.min.js"))
    if place and Path(place).is_file()
]
pytestmark = [
    pytest.mark.skipif(CHROMIUM is None or DRIVER is None, reason="needs chromium and chromedriver (Debian packages)"),
    pytest.mark.xdist_group("browser"),
]
A3_PT = (1190.55, 841.89)
LONG_S = 120.0
"""A machine that is shared may take so long to show a page; nothing is judged by it."""


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Draw the basement: as many findings as a room may have."""
    pytest.importorskip("jinja2", reason="needs the packages of roomlint[draw]")
    target = tmp_path_factory.mktemp("drawing") / "basement.html"
    room = ROOT / "example_projects" / "basement" / "basement.room.yaml"
    done = CliRunner().invoke(main, ["draw", str(room), "--to", str(target), "--today", "2026-11-25"])
    assert done.exit_code == 0, done.output
    return target


@pytest.fixture(scope="module")
def browser() -> Iterator[webdriver.Chrome]:
    """Yield a browser without a window that tells what it asks the network for."""
    options = webdriver.ChromeOptions()
    options.binary_location = str(CHROMIUM)
    for flag in FLAGS:
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = webdriver.Chrome(options, webdriver.ChromeService(str(DRIVER)))
    yield driver
    driver.quit()


@pytest.fixture
def opened(browser: webdriver.Chrome, page: Path) -> webdriver.Chrome:
    browser.get_log("browser")
    browser.get_log("performance")
    browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": ""})
    browser.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride", {"width": 1400, "height": 900, "deviceScaleFactor": 1, "mobile": False}
    )
    browser.get("about:blank")  # so that no test meets the page as another one left it
    browser.get(page.as_uri())
    there = "return document.readyState === 'complete' && document.getElementById('f1') !== null"
    WebDriverWait(browser, LONG_S).until(lambda one: ran(one, there))
    return browser


def ran(browser: webdriver.Chrome, script: str, *values: object) -> Any:
    return browser.execute_script(script, *values)


def test_nothing_is_asked_of_the_network_and_nothing_breaks(opened: webdriver.Chrome) -> None:
    asked = [
        message["params"]["request"]["url"]
        for entry in opened.get_log("performance")
        for message in (json.loads(entry["message"])["message"],)
        if message["method"] == "Network.requestWillBeSent"
    ]
    assert asked == [opened.current_url]
    assert opened.get_log("browser") == []


def test_every_finding_of_the_review_is_listed_and_has_its_number_on_the_drawing(opened: webdriver.Chrome) -> None:
    listed = ran(
        opened, "return [...document.querySelectorAll('.finding:not(.m-open):not(.m-accepted)')].map(one => one.id)"
    )
    marked = set(ran(opened, "return [...document.querySelectorAll('#view-plan .mark')].map(one => one.dataset.of)"))
    assert len(listed) > 60
    assert set(listed) == marked


def test_no_view_cuts_off_a_mark_or_a_name(opened: webdriver.Chrome) -> None:
    """A mark beyond a wall, and the last of the row of what is at no place, are as much on the sheet as any."""
    cut = """return [...document.querySelectorAll('.view:not(.chart) .pan > svg')].flatMap(svg => {
        const whole = svg.getBoundingClientRect();
        return [...svg.querySelectorAll('.mark, text')].filter(one => {
            const box = one.getBoundingClientRect();
            return box.left < whole.left - 1 || box.right > whole.right + 1
                || box.top < whole.top - 1 || box.bottom > whole.bottom + 1;
        }).map(one => one.textContent);
    })"""
    assert ran(opened, cut) == []


def test_a_line_finds_its_marks_by_mouse_and_by_key(opened: webdriver.Chrome) -> None:
    button = opened.find_element(By.CSS_SELECTOR, "#f12 > button")
    button.click()
    assert button.get_attribute("aria-pressed") == "true"
    on = "return [...document.querySelectorAll('.mark.on')].map(one => one.dataset.of)"
    assert set(ran(opened, on)) == {"f12"}
    assert "before the port" in ran(opened, "return document.getElementById('said').textContent")
    other = opened.find_element(By.CSS_SELECTOR, "#f13 > button")
    other.send_keys(Keys.ENTER)
    assert set(ran(opened, on)) == {"f13"}
    other.send_keys(Keys.ESCAPE)
    assert ran(opened, on) == []


def test_a_mark_finds_its_line_by_mouse_and_by_key(opened: webdriver.Chrome) -> None:
    mark = opened.find_element(By.CSS_SELECTOR, "#view-plan .mark[data-of=f15]")
    ran(opened, "arguments[0].scrollIntoView({block: 'center'})", mark)
    mark.click()
    assert "on" in str(opened.find_element(By.ID, "f15").get_attribute("class")).split()
    key = opened.find_element(By.CSS_SELECTOR, "#view-plan .mark[data-of=f16]")
    ran(opened, "arguments[0].focus()", key)
    key.send_keys(Keys.SPACE)
    line = opened.find_element(By.ID, "f16")
    assert "on" in str(line.get_attribute("class")).split()
    assert line.is_displayed()
    assert key.get_attribute("aria-pressed") == "true"


def test_what_is_not_known_lights_up_what_it_is_of(opened: webdriver.Chrome) -> None:
    ran(opened, "document.querySelector('.finding.m-open[data-keys~=\"loudspeaker/rear-left\"] > button').click()")
    lit = ran(opened, "return [...document.querySelectorAll('.lit')].map(one => one.dataset.key)")
    assert set(lit) == {"loudspeaker/rear-left"}


def test_layers_go_and_come_back(opened: webdriver.Chrome) -> None:
    shown = "return getComputedStyle(document.querySelector('#view-plan .l-dimension')).display"
    assert ran(opened, shown) != "none"
    box = opened.find_element(By.CSS_SELECTOR, "[data-layer=dimension]")
    box.click()
    assert ran(opened, shown) == "none"
    box.click()
    assert ran(opened, shown) != "none"


def test_a_view_is_enlarged_and_fits_again(opened: webdriver.Chrome) -> None:
    width = "return document.querySelector('#view-plan svg').getBoundingClientRect().width"
    whole = ran(opened, width)
    opened.find_element(By.CSS_SELECTOR, "#view-plan [data-zoom=in]").click()
    assert ran(opened, width) > 1.4 * whole
    opened.find_element(By.CSS_SELECTOR, "#view-plan [data-zoom=fit]").click()
    assert ran(opened, width) == pytest.approx(whole)


def test_a_chart_tells_its_values_under_the_pointer_and_by_key(opened: webdriver.Chrome) -> None:
    pan = opened.find_element(By.CSS_SELECTOR, ".chart .pan")
    ran(opened, "arguments[0].focus()", pan)
    pan.send_keys(Keys.ARROW_RIGHT)
    readout = opened.find_element(By.CSS_SELECTOR, ".chart .readout")
    assert readout.text.startswith("frequency, Hz 20 ·")
    pan.send_keys(Keys.ARROW_RIGHT)
    assert readout.text.startswith("frequency, Hz 21 ·")
    first = ran(opened, "return [...document.querySelectorAll('tr[data-x=\"21\"] td')].map(one => one.textContent)")
    assert first
    assert all(value in readout.text for value in first)
    moved = """const svg = arguments[0], box = svg.getBoundingClientRect();
        svg.dispatchEvent(new PointerEvent('pointermove', {clientX: box.right - 1, clientY: box.top + 5}))"""
    ran(opened, moved, opened.find_element(By.CSS_SELECTOR, ".chart .pan > svg"))
    assert readout.text.startswith("frequency, Hz 80 ·")


def test_a_phone_shows_the_whole_width_and_a_tap_brings_the_mark_near(opened: webdriver.Chrome) -> None:
    opened.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride", {"width": 390, "height": 844, "deviceScaleFactor": 2, "mobile": True}
    )
    assert ran(opened, "return document.documentElement.scrollWidth") <= 390
    ran(opened, "document.querySelector('#f13 > button').click()")
    box = ran(
        opened,
        """const box = document.querySelector('#view-plan .mark.on').getBoundingClientRect();
        return [box.left, box.right, box.top, box.bottom, box.width, innerWidth, innerHeight]""",
    )
    left, right, top, bottom, width, wide, high = box
    assert width >= 14
    assert 0 <= left <= right <= wide
    assert 0 <= top <= bottom <= high


@pytest.mark.parametrize("how", ["the plus", "a line", "a tap on the plan"])
def test_on_a_phone_marks_become_as_large_as_a_finger(opened: webdriver.Chrome, how: str) -> None:
    opened.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride", {"width": 390, "height": 844, "deviceScaleFactor": 2, "mobile": True}
    )
    sizes = """return [...document.querySelectorAll('#view-plan .mark[role=button]')].map(one => {
        const box = one.getBoundingClientRect(); return Math.min(box.width, box.height);
    })"""
    assert min(ran(opened, sizes)) < 14
    if how == "the plus":
        opened.find_element(By.CSS_SELECTOR, "#view-plan [data-zoom=in]").click()
    elif how == "a line":
        ran(opened, "document.querySelector('#f13 > button').click()")
    else:
        mark = "document.querySelector('#view-plan .mark[data-of=f15]')"
        ran(opened, f"{mark}.scrollIntoView({{block: 'center'}})")
        where = (
            f"const box = {mark}.getBoundingClientRect(); return [box.left + box.width / 2, box.top + box.height / 2]"
        )
        x, y = ran(opened, where)
        tap = "document.elementFromPoint(arguments[0], arguments[1]).dispatchEvent(new MouseEvent('click', "
        tap += "{bubbles: true, clientX: arguments[0], clientY: arguments[1]}))"
        ran(opened, tap, x, y)
        # It is chance which mark a finger met: none is chosen, and the place that was tapped is still there.
        assert ran(opened, "return document.querySelectorAll('.finding.on').length") == 0
        now = ran(opened, where)
        assert now[1] == pytest.approx(y, abs=2)
        ran(opened, tap, *now)
        assert ran(opened, "return document.querySelector('.finding.on').id") == "f15"
    assert min(ran(opened, sizes)) >= 24


def test_print_gives_whole_pages_of_the_paper(opened: webdriver.Chrome) -> None:
    printed = base64.b64decode(
        opened.execute_cdp_cmd("Page.printToPDF", {"preferCSSPageSize": True, "printBackground": True})["data"]
    )
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", printed)
    assert 4 <= len(boxes) <= 8
    for wide, high in boxes:
        assert (float(wide), float(high)) == pytest.approx(A3_PT, abs=1.5)


def test_views_are_printed_at_their_scale(opened: webdriver.Chrome) -> None:
    opened.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
    for view in ("plan", "long", "cross", "ceiling"):
        mm, shown = ran(
            opened,
            """const svg = document.querySelector(`#view-${arguments[0]} .pan > svg`);
            return [svg.viewBox.baseVal.width, svg.getBoundingClientRect().width]""",
            view,
        )
        assert shown == pytest.approx(mm * 96.0 / 25.4, rel=1e-3)


@pytest.mark.skipif(not AXE, reason="needs axe-core: npm install --prefix .venv-test/axe axe-core, or ROOMLINT_AXE")
@pytest.mark.parametrize("width", [1400, 390])
def test_contrast_and_names_pass_an_accessibility_checker(opened: webdriver.Chrome, width: int) -> None:
    opened.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride",
        {"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": width < 500},
    )
    # The page lets no script in; the checker comes in over the driver.
    opened.execute_cdp_cmd("Page.setBypassCSP", {"enabled": True})
    opened.refresh()
    ran(opened, AXE[0].read_text(encoding="utf-8"))
    found = opened.execute_async_script(
        """const done = arguments[arguments.length - 1];
        axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']})
          .then(result => done(result.violations.map(one => [one.id, one.nodes.map(node => node.html.slice(0, 120))])))
          .catch(error => done([['failed', String(error)]]))"""
    )
    opened.execute_cdp_cmd("Page.setBypassCSP", {"enabled": False})
    assert found == []
