"""Holds the pages to what a browser makes of them: pages.py JOURNAL...

Of each journal the work sheet and the bay card are written, with prices and an estimate where there are any, and loaded by a headless
Chromium at the width of a phone and of a desk, light and dark, and printed. Held are: nothing wider than its window, every picture
there and drawn, no word torn apart, no text outside its picture and none fainter than 4.5 to 1 against what it stands on, no script, nothing fetched, and
one printed sheet of letter paper and of A4. It needs the package, as `pip install ./bindings-python` gives it, and Chromium.
"""

import base64
import json
import os
import re
import shutil
import socket
import struct
import subprocess
import sys
import tempfile
import time
import urllib.request
from pathlib import Path
from typing import Any

import brimline
from brimline import LevelCheck, Pack, PriceList

CONTRAST = 4.5
NAMES = ("chromium", "chromium-browser", "google-chrome")

# What is measured inside the page. It runs from outside: the page's own policy lets nothing run.
MEASURE = r"""
(() => {
  const luminance = ([r, g, b]) => {
    const linear = [r, g, b].map(c => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  };
  const colour = text => (text.match(/[\d.]+/g) || []).map(Number);
  const ground = element => {
    for (let at = element; at; at = at.parentElement) {
      const own = colour(getComputedStyle(at).backgroundColor);
      if (own.length && (own.length < 4 || own[3] > 0)) return own;
    }
    return [255, 255, 255];
  };
  const faint = [];
  let texts = 0;
  for (const element of document.body.querySelectorAll("*")) {
    const own = [...element.childNodes].some(node => node.nodeType === 3 && node.data.trim());
    if (!own || ["TITLE", "DESC", "STYLE", "title", "desc", "style"].includes(element.tagName)) continue;
    texts += 1;
    const style = getComputedStyle(element);
    const ink = colour(element.ownerSVGElement ? style.fill : style.color);
    const grounds = [ground(element.ownerSVGElement ? element.ownerSVGElement.parentElement : element)];
    if (element.ownerSVGElement) {
      // A text of a picture may lie on a band.
      const box = element.getBoundingClientRect();
      for (const band of element.ownerSVGElement.querySelectorAll(".band")) {
        const other = band.getBoundingClientRect();
        if (box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom)
          grounds.push(colour(getComputedStyle(band).fill));
      }
    }
    for (const under of grounds) {
      const [a, b] = [luminance(ink), luminance(under)].sort((x, y) => y - x);
      const contrast = (a + 0.05) / (b + 0.05);
      if (contrast < CONTRAST) faint.push([element.textContent.slice(0, 40), contrast.toFixed(2)]);
    }
  }
  const wide = [...document.body.querySelectorAll("*")]
    .filter(element => !element.closest(".wide table") && element.getBoundingClientRect().right > innerWidth + 0.5)
    .map(element => element.tagName + " " + element.textContent.slice(0, 40));
  const spilt = [...document.querySelectorAll("svg text")].filter(text => {
    const [box, all] = [text.getBoundingClientRect(), text.ownerSVGElement.getBoundingClientRect()];
    return box.left < all.left - 1 || box.right > all.right + 1 || box.top < all.top - 1 || box.bottom > all.bottom + 1;
  }).map(text => text.textContent);
  // A long word, as a digest, may be broken; no other.
  const torn = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (node.parentElement.closest("svg, style, title")) continue;
    for (const word of node.data.matchAll(/[\p{L}\p{N}]+/gu)) {
      if (word[0].length > 24) continue;
      const range = document.createRange();
      range.setStart(node, word.index);
      range.setEnd(node, word.index + word[0].length);
      const tops = [...range.getClientRects()].map(box => Math.round(box.top));
      if (Math.max(...tops) - Math.min(...tops) > 4) torn.push(word[0]);
    }
  }
  const pictures = [...document.querySelectorAll("svg")].map(svg => svg.getBoundingClientRect().height);
  return {
    scroll: document.documentElement.scrollWidth, width: innerWidth, texts, faint, wide, torn, spilt, pictures,
    scripts: document.scripts.length, fetched: performance.getEntriesByType("resource").map(entry => entry.name),
    ground: colour(getComputedStyle(document.body).backgroundColor),
  };
})()
""".replace("CONTRAST", str(CONTRAST))


class Tab:
    """A page of a browser, spoken to over its debugging socket with the standard library alone."""

    def __init__(self, url: str) -> None:
        host, port, path = re.fullmatch(r"ws://([^:/]+):(\d+)(/.*)", url).groups()  # type: ignore[union-attr]
        self.socket = socket.create_connection((host, int(port)), timeout=60)
        key = base64.b64encode(os.urandom(16)).decode()
        self.socket.sendall(
            f"GET {path} HTTP/1.1\r\nHost: {host}:{port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
            f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n\r\n".encode()
        )
        answer = b""
        while not answer.endswith(b"\r\n\r\n"):
            answer += self.socket.recv(1)
        assert b" 101 " in answer.split(b"\r\n")[0], answer
        self.asked = 0

    def close(self) -> None:
        self.socket.close()

    def _bytes(self, count: int) -> bytes:
        read = b""
        while len(read) < count:
            part = self.socket.recv(count - len(read))
            assert part, "the browser hung up"
            read += part
        return read

    def _message(self) -> Any:
        whole = b""
        while True:
            first, second = self._bytes(2)
            length = second & 0x7F
            if length == 126:
                (length,) = struct.unpack(">H", self._bytes(2))
            elif length == 127:
                (length,) = struct.unpack(">Q", self._bytes(8))
            whole += self._bytes(length)
            if first & 0x80:
                return json.loads(whole)

    def ask(self, method: str, **params: Any) -> Any:
        self.asked += 1
        data = json.dumps({"id": self.asked, "method": method, "params": params}).encode()
        mask = os.urandom(4)
        size = struct.pack(">BB", 0x81, 0x80 | len(data)) if len(data) < 126 else (
            struct.pack(">BBH", 0x81, 0xFE, len(data)) if len(data) < 65536 else struct.pack(">BBQ", 0x81, 0xFF, len(data))
        )
        self.socket.sendall(size + mask + bytes(byte ^ mask[place % 4] for place, byte in enumerate(data)))
        while True:
            message = self._message()
            if message.get("id") == self.asked:
                assert "error" not in message, message
                return message["result"]

    def value(self, expression: str) -> Any:
        told = self.ask("Runtime.evaluate", expression=expression, returnByValue=True)
        assert "exceptionDetails" not in told, told
        return told["result"]["value"]


def chromium() -> str | None:
    return next(filter(None, map(shutil.which, NAMES)), None)


def opened(browser: str, folder: str) -> tuple[subprocess.Popen[bytes], Tab]:
    options = ["--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--remote-debugging-port=0"]
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    process = subprocess.Popen([browser, *options, f"--user-data-dir={folder}", "about:blank"], **quiet)  # type: ignore[call-overload]
    port = Path(folder) / "DevToolsActivePort"
    for _ in range(300):
        if port.exists() and port.read_text().strip():
            break
        time.sleep(0.1)
    number = port.read_text().splitlines()[0]
    with urllib.request.urlopen(f"http://127.0.0.1:{number}/json") as answer:
        tabs = [tab for tab in json.load(answer) if tab["type"] == "page"]
    return process, Tab(tabs[0]["webSocketDebuggerUrl"])


def load(tab: Tab, page: Path, width: int, scheme: str) -> None:
    phone = width < 600
    tab.ask("Emulation.setDeviceMetricsOverride", width=width, height=900, deviceScaleFactor=1, mobile=phone)
    tab.ask("Emulation.setEmulatedMedia", media="", features=[{"name": "prefers-color-scheme", "value": scheme}])
    tab.ask("Page.navigate", url=page.as_uri())
    for _ in range(100):
        if tab.value("location.href") == page.as_uri() and tab.value("document.readyState") == "complete":
            return
        time.sleep(0.02)
    raise AssertionError(f"{page} does not load")


def printed(tab: Tab, width: float, height: float) -> int:
    pdf = tab.ask("Page.printToPDF", paperWidth=width, paperHeight=height, preferCSSPageSize=False)["data"]
    return len(re.findall(rb"/Type\s*/Page\b", base64.b64decode(pdf)))


def faults(tab: Tab, page: Path) -> list[str]:
    found = []
    for width in (390, 1280):
        grounds = []
        for scheme in ("light", "dark"):
            load(tab, page, width, scheme)
            told = tab.value(MEASURE)
            grounds.append(sum(told["ground"][:3]))
            where = f"{page.name}, {width} wide, {scheme}"
            if told["scroll"] > told["width"] or told["wide"]:
                found.append(f"{where}: wider than its window: {told['wide'][:3]}")
            if told["faint"]:
                found.append(f"{where}: faint: {told['faint'][:5]}")
            if told["torn"]:
                found.append(f"{where}: words torn apart: {told['torn'][:5]}")
            if told["spilt"]:
                found.append(f"{where}: texts outside their picture: {told['spilt'][:5]}")
            if told["texts"] < 40:
                found.append(f"{where}: only {told['texts']} texts")
            if not told["pictures"] or min(told["pictures"]) < 50:
                found.append(f"{where}: pictures of {told['pictures']}")
            if told["scripts"] or told["fetched"]:
                found.append(f"{where}: {told['scripts']} scripts, fetched {told['fetched']}")
        if not grounds[0] > 600 > 200 > grounds[1]:
            found.append(f"{page.name}: light and dark are {grounds}")
    load(tab, page, 1280, "light")
    for paper, size in (("letter", (8.5, 11)), ("A4", (8.27, 11.69))):
        if (pages := printed(tab, *size)) != 1:
            found.append(f"{page.name}: {pages} pages of {paper}")
    return found


# A page that is wrong in every way that is looked for.
WRONG = """<!DOCTYPE html><html lang="en"><title>x</title><style>body{background:#fff;color:#999}p{width:2000px}</style>
<script>1</script><p>faint and wide</p><p style="width:2em;overflow-wrap:anywhere">unbreakable</p><p style="height:3000px">long</p></html>"""


TOOL = {"name": "click wrench, quarter-inch drive", "type": "setting_adjustable", "max": "25 N·m", "min": "5 N·m",
        "graduation": "0.5 N·m", "lever": "230 mm"}


def write(journal: Path, folder: Path) -> None:
    pack, prices, text = Pack.embedded(), PriceList.embedded(), journal.read_text()
    check = LevelCheck.replay(pack, text)
    before = LevelCheck.start(pack, check.journal_lines().splitlines()[0])
    given: dict[str, Any] = {
        "shop": ["Fernhollow Gear & Drive", "7 Weir Lane, Oddmere", "open 7:30 to 17:00"],
        "tool": TOOL, "adapter": "40 mm", "scan_unit": "°F", "container": "0.946 L", "record": "0123456789abcdef" * 4,
    }
    card = brimline.bay_card(pack, text, given)
    try:
        given |= {"prices": json.loads(prices.to_json()), "estimate": brimline.estimate(prices, before)}
        sheet = brimline.work_sheet(pack, text, given)
    except brimline.BrimlineError:
        # Not every invented fluid has a price.
        del given["prices"], given["estimate"]
        sheet = brimline.work_sheet(pack, text, given)
    (folder / f"{journal.stem}_sheet.html").write_text(sheet)
    (folder / f"{journal.stem}_card.html").write_text(card)
    # Without a tool the picture of the closing ends under the scale of the plug.
    (folder / f"{journal.stem}_sheet_bare.html").write_text(brimline.work_sheet(pack, text, {}))
    (folder / f"{journal.stem}_card_bare.html").write_text(brimline.bay_card(pack, text, {}))


def main() -> int:
    browser = chromium()
    if browser is None:
        print(f"pages.py: none of {', '.join(NAMES)} is installed: nothing was looked at", file=sys.stderr)
        return 2
    with (
        tempfile.TemporaryDirectory() as written,
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as scratch,
    ):
        for journal in sys.argv[1:]:
            write(Path(journal), Path(written))
        pages = sorted(Path(written).glob("*.html"))
        if not pages:
            print("usage: pages.py JOURNAL...", file=sys.stderr)
            return 1
        process, tab = opened(browser, scratch)
        try:
            found = [fault for page in pages for fault in faults(tab, page)]
            wrong = Path(scratch) / "wrong.html"
            wrong.write_text(WRONG)
            seen = " ".join(faults(tab, wrong))
            for fault in ("wider", "faint", "torn", "texts", "pictures", "scripts", "light and dark", "pages of letter"):
                if fault not in seen:
                    found.append(f"a page that is wrong is not seen to be: {fault}")
        finally:
            tab.close()
            process.kill()
            process.wait()
    print("\n".join(found) or f"{len(pages)} pages are as they should be")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
