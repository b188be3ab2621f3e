"""Feed the program strange input, steered by what it reaches: none may crash it, hang it, swell it, or write.

    python tests/bench/fuzz.py [--inputs 1000000] [--target NAME ...]

Needs `pip install atheris`, a fuzzer that follows the branches taken (Linux, Python 3.11). Each target is a
process of its own: the bytes of a project file, its keys and values changed one by one, lengths and sizes, a
price list, a schedule as CSV, a workbook, and command lines. An input may be refused in words or taken;
anything else (an error that is no refusal, two seconds, 500 MB, a file written) ends the target, and the
input that did it is kept. Returns 1 when any was found.
"""

import argparse
import contextlib
import copy
import importlib
import io
import json
import os
import pkgutil
import random
import subprocess
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
DEMOS = sorted((ROOT / "demo_openings").glob("*.json"))
SECONDS, MEGABYTES = 2, 500
"""Of processor time, so that a busy machine is no fault; and resident."""
HUNG = 60
KEPT = Path(tempfile.gettempdir()) / "fuzz-found"
"""Where an input is kept that did something it should not."""
Target = Callable[[bytes], None]
ODD: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 1e-9, 1e308, 10**30, 0.1, 3.5, 181, "", " ", "4-1/2", "3'-0\"", "1e9",
    "x" * 3000, "\x00", "\x9b", "\ud800", "\u202e", "=1+1", [], {}, [[]], [0] * 300, {"": 0}, "pair", "dutch",
)  # fmt: skip
WORDS = [
    "compare",
    "draw",
    "order",
    "schedule",
    "import",
    "kinds",
    "desktop",
    "--json",
    "--mark",
    "112A",
    "--all",
    "--out",
    "x.pdf",
    "x.csv",
    "--sheet",
    "plan",
    "prep",
    "--scale",
    "--width",
    "--spare",
    "--since",
    "--strict",
    "--metric",
    "--only",
    "doors",
    "--field",
    "--dry-run",
    "--into",
    "-",
    "--",
    "4-1/2",
    "5%",
    "99999999999",
]


# --- What is fed ---


def project_bytes(data: bytes) -> None:
    """Read a project file as it comes."""
    from configurator.project_file import ProjectFileError, dump, parse

    with contextlib.suppress(ProjectFileError):
        job = parse(data)
        assert parse(dump(job)) == job, "what was written reads otherwise"


def project_keys(data: bytes) -> None:
    """Read a demo job in which a few values were put in place of others, and study it where it is taken."""
    from configurator.project_file import ProjectFileError, parse
    from configurator.study import study

    chance = random.Random(data)
    document = copy.deepcopy(chance.choice(_documents()))
    document["openings"] = chance.sample(document["openings"], 1)
    for _ in range(chance.randrange(1, 4)):
        _put_something(document, chance)
    try:
        job = parse(json.dumps(document).encode())
    except ProjectFileError as error:
        str(error).encode()
        return
    for opening in job.openings:
        with contextlib.suppress(ValueError):
            json.dumps(study(opening, job.job).as_data(), allow_nan=False)


def lengths(data: bytes) -> None:
    """Read lengths and sizes."""
    from configurator.units import LengthError, parse_length, parse_opening_size

    text = data.decode("utf-8", "surrogateescape")  # what is no letter becomes a lone surrogate
    for read in (parse_length, parse_opening_size):
        with contextlib.suppress(LengthError):
            read(text)


def prices(data: bytes) -> None:
    """Read a price list."""
    from configurator.order.price_list import PriceListError, parse_prices

    with contextlib.suppress(PriceListError):
        parse_prices(data)


def schedule(data: bytes) -> None:
    """Take a schedule, as far as asking what it would change."""
    _import(b"Mark,Width,Height,Hand,Type\n" + data if data[:1] > b"\x80" else data, "doors.csv")


def workbook(data: bytes) -> None:
    """Take a workbook whose sheet is strange."""
    parts = io.BytesIO()
    with zipfile.ZipFile(parts, "w") as book:
        for name, text in _workbook_parts().items():
            book.writestr(name, text if name != "xl/worksheets/sheet1.xml" else _spliced(text, data))
    _import(parts.getvalue(), "doors.xlsx")


def command_lines(data: bytes) -> None:
    """Give the program odd words; those that name a file name one that it may not write."""
    chance = random.Random(data)
    known = (*WORDS, "", str(DEMOS[0]), data.decode("latin-1")[:40])
    words = chance.choices(known, k=chance.randrange(7))
    _command(["compare" if not words or words[0].startswith("-") else words[0], *words[1:]])


TARGETS: dict[str, tuple[Target, float]] = {
    "project bytes": (project_bytes, 0.45),
    "project keys": (project_keys, 0.05),
    "lengths": (lengths, 0.3),
    "prices": (prices, 0.15),
    "schedule": (schedule, 0.03),
    "workbook": (workbook, 0.01),
    "command lines": (command_lines, 0.01),
}
"""What is fed, and its share of all inputs: as many as take about the same time."""


def _put_something(document: Any, chance: random.Random) -> None:
    place: Any = document
    while True:
        keys = list(place) if isinstance(place, dict) else list(range(len(place)))
        if not keys:
            return
        key = chance.choice(keys)
        inner = place[key]
        if not isinstance(inner, dict | list) or chance.random() < 0.15:
            place[key] = copy.deepcopy(chance.choice(ODD)) if chance.random() < 0.7 else _near(inner, chance)
            return
        place = inner


def _near(value: Any, chance: random.Random) -> Any:
    return value * chance.choice((0, -1, 0.5, 2, 10, 100)) if isinstance(value, int | float) else value


_read: list[Any] = []


def _documents() -> list[Any]:
    if not _read:
        _read.extend(json.loads(path.read_bytes()) for path in DEMOS)
    return _read


_parts: dict[str, bytes] = {}


def _workbook_parts() -> dict[str, bytes]:
    if not _parts:
        from openpyxl import Workbook

        book, written = Workbook(), io.BytesIO()
        for row in (("Mark", "Width", "Height", "Hand"), ("1", "3-0", "7-0", "RH"), ("2", 914, 2134, "LH")):
            book.active.append(row)
        book.save(written)
        with zipfile.ZipFile(written) as parts:
            _parts.update({name: parts.read(name) for name in parts.namelist()})
    return _parts


def _spliced(text: bytes, data: bytes) -> bytes:
    at = int.from_bytes(data[:2], "big") % len(text)
    return text[:at] + data[2:] + text[at + len(data) // 3 :]


def _import(data: bytes, name: str) -> None:
    path = _folder() / name
    with allowed():
        path.write_bytes(data)
    _command(["import", str(path), "--into", str(_folder() / "none.json"), "--dry-run"])


def _command(words: list[str]) -> None:
    from configurator.cli import main

    said, complained = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(complained):
        try:
            status = main(words)
        except SystemExit as left:
            status = int(left.code or 0)
        except PermissionError:
            return
    assert status in (0, 1, 2, 3), f"status {status} of {words!r}: {complained.getvalue()[-800:]}"
    assert status in (0, 1) or not said.getvalue(), f"refused {words!r}, and yet printed"


# --- One target ---

_writing: list[bool] = []
_TO_WRITE = os.O_WRONLY | os.O_RDWR | os.O_CREAT


@contextlib.contextmanager
def allowed() -> Iterator[None]:
    """Let this script itself write."""
    _writing.append(True)
    try:
        yield
    finally:
        _writing.pop()


def _folder() -> Path:
    return Path(os.environ["FUZZ_FOLDER"])


def _forbid_writing(event: str, given: tuple[Any, ...]) -> None:
    """Refuse, from below every library, to open a file for writing or to start a program."""
    writes = event == "open" and (set(given[1] or "") & set("wax+") or int(given[2] or 0) & _TO_WRITE)
    if not _writing and (writes or event in ("os.rename", "os.remove", "os.mkdir", "subprocess.Popen")):
        raise PermissionError(13, "Permission denied")


def _timed(target: Target) -> Target:
    def fed(data: bytes) -> None:
        began = time.process_time()
        target(data)
        took = time.process_time() - began
        assert took < SECONDS, f"it took {took:.1f} s"

    return fed


def feed(name: str, inputs: int) -> None:
    """Feed one target in this process; does not return."""
    import atheris

    with atheris.instrument_imports(include=["configurator"]):
        for module in pkgutil.walk_packages([str(ROOT / "configurator")], "configurator."):
            if not module.name.startswith(("configurator.ui", "configurator.__main__")):
                importlib.import_module(module.name)

    target, _ = TARGETS[name]
    _workbook_parts()
    with allowed(), contextlib.suppress(Exception):
        target(DEMOS[0].read_bytes())  # what is loaded on use is loaded now
    corpus = _folder() / "seeds"
    with allowed():
        corpus.mkdir()
        seeds = [path.read_bytes()[:4000] for path in DEMOS] + [b"4-1/2", b"height,width,price\n4.5,4,3.10\n"]
        for number, seed in enumerate([*seeds, b"Mark,Size,Hand\n1,3070,RH\n2,3-0 x 7-0,LHR\n"]):
            (corpus / str(number)).write_bytes(seed)
    sys.addaudithook(_forbid_writing)
    limits = [f"-runs={inputs}", f"-timeout={HUNG}", f"-rss_limit_mb={MEGABYTES}", "-max_len=8192"]
    atheris.Setup(
        [sys.argv[0], *limits, "-print_final_stats=1", f"-artifact_prefix={KEPT}/", str(corpus)],
        _timed(target),
    )
    atheris.Fuzz()


def main() -> int:
    """Feed every target in turn and print a line of each."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--inputs", type=int, default=1_000_000, help="of all targets together")
    asked.add_argument("--target", action="append", choices=list(TARGETS))
    asked.add_argument("--child", help=argparse.SUPPRESS)
    given = asked.parse_args()
    sys.path.insert(0, str(ROOT))
    if given.child is not None:
        feed(given.child, given.inputs)
    bad = 0
    KEPT.mkdir(exist_ok=True)
    for name in given.target or TARGETS:
        inputs = max(1, round(given.inputs * TARGETS[name][1]))
        words = [sys.executable, __file__, "--child", name, "--inputs", str(inputs)]
        began = time.monotonic()
        with tempfile.TemporaryDirectory(prefix="fuzz-") as folder:
            own = os.environ | {"FUZZ_FOLDER": folder, "XDG_STATE_HOME": folder, "XDG_DATA_HOME": folder}
            done = subprocess.run(
                words, env=own, capture_output=True, text=True, errors="replace", check=False
            )
        found = dict(line.split()[:2] for line in done.stderr.splitlines() if line.startswith("stat::"))
        took = time.monotonic() - began
        peak = found.get("stat::peak_rss_mb:", "?")
        ended = "nothing found" if done.returncode == 0 else f"FOUND SOMETHING ({done.returncode})"
        print(f"{name:14} {inputs:9,} inputs {took:7.0f} s {peak:>5} MB  {ended}", flush=True)
        if done.returncode:
            bad += 1
            print(done.stderr[-3000:], flush=True)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
