"""An editor is served by the schema alone: a real language server for YAML completes, explains and refuses with it."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

SERVER = "yaml-language-server@1.25.0"
ROOM = """\
# yaml-language-server: $schema={schema}
roomlint: 1
room:
  size: {{width: banana, length: 5 m}}
  ceiling:
    shape: flat
    height: 2.5 m
seats:
  - id: middle
    ear: {{from_left: 2 m, from_front: 3 m, height: 1.1 m}}
    ri
"""


class Client:
    """Speaks the language server protocol over the pipes of a server."""

    def __init__(self, command: list[str]) -> None:
        self.server = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, bufsize=0
        )
        self.number = 0
        self.told: list[dict[str, Any]] = []

    def send(self, message: dict[str, Any]) -> None:
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        assert self.server.stdin is not None
        self.server.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))

    def take(self) -> dict[str, Any]:
        """Return the next message; answers on the way what the server asks for."""
        out = self.server.stdout
        assert out is not None
        size = 0
        while line := out.readline().strip():
            if line.lower().startswith(b"content-length:"):
                size = int(line.split(b":")[1])
        assert size, "the server has ended"
        body = b""
        while len(body) < size:
            body += out.read(size - len(body))
        message: dict[str, Any] = json.loads(body)
        if "method" in message and "id" in message:
            items = message.get("params", {}).get("items", [])
            answer = [
                {"validate": True, "hover": True, "completion": True} if one["section"] == "yaml" else {}
                for one in items
            ]
            self.send({"id": message["id"], "result": answer or None})
        return message

    def ask(self, method: str, **params: Any) -> Any:
        self.number += 1
        self.send({"id": self.number, "method": method, "params": params})
        while True:
            message = self.take()
            if message.get("id") == self.number and "method" not in message:
                return message["result"]
            self.told.append(message)

    def end(self) -> None:
        with self.server:
            self.server.kill()

    def diagnostics(self) -> list[str]:
        """Return what the server tells of the file, as soon as it tells anything."""
        while True:
            for message in self.told:
                if message.get("method") == "textDocument/publishDiagnostics" and message["params"]["diagnostics"]:
                    return [one["message"] for one in message["params"]["diagnostics"]]
            self.told.append(self.take())


def server_in(folder: Path) -> list[str]:
    """Return the command of a language server for YAML, installed from npm; skips where that cannot be."""
    if os.environ.get("CI"):
        pytest.skip("the network's packages are no part of a run in CI")
    if shutil.which("npm") is None or shutil.which("node") is None:
        pytest.skip("npm is missing, so there is no language server to drive")
    program = folder / "node_modules" / ".bin" / "yaml-language-server"
    if not program.exists():
        command = ["npm", "install", "--no-audit", "--no-fund", "--silent", "--ignore-scripts", SERVER]
        try:
            subprocess.run(command, cwd=folder, check=True, capture_output=True, timeout=240)
        except (subprocess.SubprocessError, OSError):
            pytest.skip("npm cannot install the language server here")
    return [str(program), "--stdio"]


def test_a_language_server_completes_explains_and_refuses_by_our_schema(
    tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    assert request.config.cache is not None
    client = Client(server_in(Path(request.config.cache.mkdir("language-server"))))
    schema = tmp_path / "room.schema.json"
    schema.write_text((files("roomlint.schemas") / "room.schema.json").read_text(encoding="utf-8"), encoding="utf-8")
    text = ROOM.format(schema=schema.as_uri())
    lines = text.splitlines()
    uri = (tmp_path / "a.room.yaml").as_uri()
    try:
        client.ask("initialize", processId=os.getpid(), rootUri=tmp_path.as_uri(), capabilities={
            "workspace": {"configuration": True},
            "textDocument": {"completion": {"completionItem": {"documentationFormat": ["markdown"]}}},
        })  # fmt: skip
        client.send({"method": "initialized", "params": {}})
        opened = {"uri": uri, "languageId": "yaml", "version": 1, "text": text}
        client.send({"method": "textDocument/didOpen", "params": {"textDocument": opened}})

        told = client.diagnostics()
        assert any("pattern" in one for one in told), told

        ceiling = {"line": lines.index("    shape: flat"), "character": 5}
        hover = client.ask("textDocument/hover", textDocument={"uri": uri}, position=ceiling)
        assert "Its shape." in json.dumps(hover)

        at = {"line": len(lines) - 1, "character": 6}
        found = client.ask("textDocument/completion", textDocument={"uri": uri}, position=at)
        labels = {one["label"] for one in found["items"]}
        assert {"riser", "row", "facing"} <= labels
        assert "width" in labels
    finally:
        client.end()
