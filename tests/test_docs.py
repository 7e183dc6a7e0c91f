"""The documentation shows what the program prints today: every command in it is run, every block compared.

In a page, these run in order, in a fresh copy of the example projects:

- a block `console` that begins with `$ command`: the command is run; the block must show its output. A comment
  `<!-- show ... -->` before it picks lines: one pattern a line, each the next line of the output that it is found in;
  what lies between is cut to `...`. `pattern => cut` also cuts what `cut` matches within the line.
- `<!-- run ... -->`: shell commands that a reader need not see.
- `<!-- append FILE -->` before a block: the block is added to that file.
- `<!-- edit FILE -->` before a block `diff`: lines with `-` are replaced by lines with `+`.

`python tests/test_docs.py --write` writes the pages anew, or those that are named.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
import textwrap
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
import yaml

from roomlint import __version__

CHECKOUT = Path(__file__).parent.parent
DOCS = CHECKOUT / "docs"
WIDTH = 110
CUT = "..."
PAGES = {
    "docs/workflow.md": "example_projects",
    "docs/first-room.md": "den",
    "docs/editors.md": "example_projects",
    "docs/sound.md": "example_projects",
    "README.md": ".",
}
"""Page to the folder that its commands run in, an empty one where it is none of ours."""
NOTE = re.compile(r"<!-- (show|run|append|edit)\b(.*?)-->\n", re.DOTALL)
BLOCK = re.compile(r"```(\w+)\n(.*?)```\n", re.DOTALL)


@dataclass
class Reader:
    """Follows a page: does in a folder what the page says, and notes what the page should show."""

    folder: Path
    environment: dict[str, str]
    text: str
    at: int = 0
    out: list[str] = field(default_factory=list)

    def follow(self) -> str:
        """Return the page with every block showing what was printed."""
        note: tuple[str, str] | None = None
        for match in sorted([*NOTE.finditer(self.text), *BLOCK.finditer(self.text)], key=lambda found: found.start()):
            self.out.append(self.text[self.at : match.start()])
            self.at = match.end()
            if match.re is NOTE:
                note = match[1], match[2].strip()
                if note[0] == "run":
                    self.shell(note[1], must=True)
                self.out.append(match[0])
                continue
            self.out.append(self.block(match, *(note or ("", ""))))
            note = None
        return "".join(self.out) + self.text[self.at :]

    def block(self, match: re.Match[str], kind: str, what: str) -> str:
        if match[1] == "console" and match[2].startswith("$ "):
            return self.console(match[2], what if kind == "show" else "")
        if kind == "append":
            with (self.folder / what).open("a", encoding="utf-8") as file:
                file.write(match[2])
        elif kind == "edit":
            self.edit(self.folder / what, match[2].splitlines())
        return match[0]

    @staticmethod
    def edit(path: Path, lines: list[str]) -> None:
        old = "\n".join(line[1:] for line in lines if line[0] != "+")
        new = "\n".join(line[1:] for line in lines if line[0] != "-")
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, f"{path.name} does not hold once:\n{old}"
        path.write_text(text.replace(old, new), encoding="utf-8")

    def console(self, block: str, show: str) -> str:
        commands = [line for line in block.splitlines() if line.startswith("$ ")]
        assert len(commands) == 1, f"one command a block: {commands}"
        lines = self.shell(commands[0][2:]).splitlines()
        shown = picked(lines, show.splitlines(), commands[0]) if show else lines
        # A file that is shown stands as it is: folded, it would be another one.
        fold = as_it_is if commands[0].startswith("$ cat ") else folded
        return "\n".join(["```console", commands[0], *(part for line in shown for part in fold(line)), "```", ""])

    def shell(self, command: str, *, must: bool = False) -> str:
        done = subprocess.run(
            ["bash", "-c", f"set -e\n{command}" if must else command],
            cwd=self.folder,
            env=self.environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            check=False,
            timeout=300,
        )
        assert not must or done.returncode == 0, f"{command}\n{done.stdout}"
        assert "Traceback" not in done.stdout, f"{command}\n{done.stdout}"
        return done.stdout


def picked(lines: list[str], patterns: list[str], command: str) -> list[str]:
    """Return the next line for each pattern, with a cut wherever lines were left out."""
    shown: list[str] = []
    after = 0
    for entry in patterns:
        pattern, _, cut = entry.partition(" => ")
        index = next((index for index in range(after, len(lines)) if re.search(pattern, lines[index])), None)
        assert index is not None, f"{command}: nothing more matches {pattern!r}"
        if index > after:
            shown.append(CUT)
        shown.append(re.sub(f" *(?:{cut}) *", f" {CUT} ", lines[index]) if cut else lines[index])
        after = index + 1
    return shown if after == len(lines) else [*shown, CUT]


def as_it_is(line: str) -> list[str]:
    return [line]


def folded(line: str) -> list[str]:
    """Return a line folded to the page, its further lines set in."""
    if len(line) <= WIDTH:
        return [line.rstrip()]
    inset = " " * (len(line) - len(line.lstrip()) + 4)
    return textwrap.wrap(line, WIDTH, subsequent_indent=inset, break_long_words=False, break_on_hyphens=False)


def followed(page: str, folder: Path) -> str:
    """Return a page as it should be, by following it in an empty folder."""
    shutil.copytree(CHECKOUT / "example_projects", folder / "example_projects")
    # An editable install or a plain one: the command of this very Python.
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    kept = {key: value for key, value in os.environ.items() if not key.startswith(("GIT_", "PYTEST", "PYTHON"))}
    environment = {
        **kept,
        "PATH": path,
        "HOME": str(folder),
        "PYTHONPATH": str(folder / "installed"),
        "CHECKOUT": str(CHECKOUT),
        "PRE_COMMIT_COLOR": "never",
        "PRE_COMMIT_HOME": str(folder / "pre-commit"),
        "COLUMNS": "100",
    }
    text = (CHECKOUT / page).read_text(encoding="utf-8")
    (folder / PAGES[page]).mkdir(exist_ok=True)
    return Reader(folder / PAGES[page], environment, text).follow()


@pytest.mark.parametrize("page", PAGES)
def test_every_block_shows_what_its_command_prints(page: str, tmp_path: Path) -> None:
    assert (CHECKOUT / page).read_text(encoding="utf-8") == followed(page, tmp_path)


def test_a_block_that_went_stale_is_set_right(tmp_path: Path) -> None:
    page = "<!-- show\n^two => w\n-->\n```console\n$ printf 'one\\ntwo\\nthree\\n'\nold\n```\n"
    shown = Reader(tmp_path, dict(os.environ), page).follow()
    assert shown.endswith("three\\n'\n...\nt ... o\n...\n```\n")


def test_a_line_that_is_no_longer_printed_is_told(tmp_path: Path) -> None:
    page = "<!-- show\nfour\n-->\n```console\n$ echo one\nfour\n```\n"
    with pytest.raises(AssertionError, match="nothing more matches 'four'"):
        Reader(tmp_path, dict(os.environ), page).follow()


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """Return a repository whose last commit changed its one room."""
    room = tmp_path / "rooms" / "one.room.yaml"
    room.parent.mkdir()
    git = ["git", "-c", "user.name=team", "-c", "user.email=team@example.org", "-C", str(tmp_path)]
    subprocess.run([*git, "init", "--quiet"], check=True)
    for width in ("4.5 m", "4.6 m"):
        room.write_text(f"roomlint: 1\nroom:\n  size: {{width: {width}, length: 6.0 m}}\n", encoding="utf-8")
        subprocess.run([*git, "add", "--all"], check=True)
        subprocess.run([*git, "commit", "--quiet", "--no-verify", "--message", width], check=True)
    return tmp_path


def scripts(flow: dict[str, Any]) -> list[str]:
    """Return the shell commands of a workflow file of either form."""
    steps = [step.get("run", "") for job in flow.get("jobs", {}).values() for step in job["steps"]]
    jobs = [line for job in flow.values() if isinstance(job, dict) for line in job.get("script", ())]
    return [*steps, *jobs]


@pytest.mark.parametrize("file", sorted((DOCS / "ci").glob("*.yml")), ids=lambda file: file.stem)
def test_workflow_files_run_commands_that_exist(file: Path, repository: Path) -> None:
    reviews = [line for line in scripts(yaml.safe_load(file.read_text(encoding="utf-8"))) if "roomlint check" in line]
    assert reviews
    environment = {
        **os.environ,
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}",
        "CI_MERGE_REQUEST_DIFF_BASE_SHA": "HEAD^1",
        "AGAINST": "--against HEAD^1 --gate-new",
        "GITHUB_OUTPUT": os.devnull,
    }
    for review in reviews:
        done = subprocess.run(
            ["bash", "-c", review], cwd=repository, env=environment, capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, review + done.stdout + done.stderr
        written = re.findall(r"--write [a-z-]+=(\S+)", review)
        assert written
        for name in written:
            assert (repository / name).stat().st_size
            (repository / name).unlink()


def test_a_workflow_file_asks_for_no_right_that_it_does_not_use() -> None:
    flow = yaml.safe_load((DOCS / "ci" / "actions-alerts.yml").read_text(encoding="utf-8"))
    assert flow["permissions"] == {}
    assert flow["jobs"]["review"]["permissions"] == {
        "contents": "read",
        "pull-requests": "write",
        "security-events": "write",
    }
    used = [step["uses"] for step in flow["jobs"]["review"]["steps"] if "uses" in step]
    assert used
    assert all(re.fullmatch(r"[\w./-]+@[0-9a-f]{40}", name) for name in used), used


def test_the_version_that_a_team_is_told_to_pin_is_this_one() -> None:
    told = [DOCS.parent / "README.md", *sorted((DOCS / "ci").glob("*.yml"))]
    pins = {
        file.name: re.findall(r"(?:rev: |roomlint\.git@)v(\d+\.\d+\.\d+)", file.read_text("utf-8")) for file in told
    }
    assert pins == {name: [__version__] for name in pins}


def test_an_incomplete_review_is_not_uploaded() -> None:
    """A host would close the alerts of every room that was not seen."""
    flow = yaml.safe_load((DOCS / "ci" / "actions-alerts.yml").read_text(encoding="utf-8"))
    (upload,) = [step for step in flow["jobs"]["review"]["steps"] if "upload-sarif" in step.get("uses", "")]
    assert "outputs.status == '0' || steps.review.outputs.status == '1'" in upload["if"]


def test_the_comment_is_found_by_the_marker_that_the_report_starts_with() -> None:
    from roomlint.report.markdown import MARKER

    flows = list((DOCS / "ci").glob("*.yml"))
    assert flows
    for file in flows:
        assert 'startswith("<!-- roomlint:")' in file.read_text(encoding="utf-8")
    assert MARKER.startswith("<!-- roomlint:")


def test_the_second_host_s_inline_report_is_made_of_the_alerts(tmp_path: Path) -> None:
    import json

    flow = yaml.safe_load((DOCS / "ci" / "pipeline-merge-request.yml").read_text(encoding="utf-8"))
    place = {"artifactLocation": {"uri": "rooms/a%20b.room.yaml"}, "region": {"startLine": 7}}
    alert = {
        "ruleId": "mount.x",
        "level": "error",
        "message": {"text": "picture: wrong."},
        "locations": [{"physicalLocation": place}],
        "partialFingerprints": {"primaryLocationLineHash": "abc:1"},
    }
    (tmp_path / "roomlint.sarif").write_text(json.dumps({"runs": [{"results": [alert]}]}), encoding="utf-8")
    subprocess.run(["bash", "-ec", flow["roomlint"]["after_script"][0]], cwd=tmp_path, check=True)
    assert json.loads((tmp_path / "roomlint-quality.json").read_text(encoding="utf-8")) == [
        {
            "description": "picture: wrong.",
            "check_name": "mount.x",
            "fingerprint": "abc:1",
            "severity": "critical",
            "location": {"path": "rooms/a b.room.yaml", "lines": {"begin": 7}},
        }
    ]


if __name__ == "__main__" and sys.argv[1:2] == ["--write"]:
    for name in sys.argv[2:] or PAGES:
        with tempfile.TemporaryDirectory() as made:
            new = followed(name, Path(made))
        (CHECKOUT / name).write_text(new, encoding="utf-8")
