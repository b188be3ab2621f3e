"""Valid jobs at random, of every kind and of extreme sizes, through every command and every sheet.

    python tests/bench/check_jobs.py [--jobs 1500] [--seed N] [--minutes M]

What may stand in a job is taken from the program's own JSON Schema: every key, every word, every bound. What
the program refuses is taken out again until the job is valid. Each job goes through every command that reads
one, and each of its openings onto a sheet of every kind; formats take turns. A command may refuse in words;
an error that is no refusal, data that is no data, or twenty seconds of work are faults. Returns 1 when there
is one.
"""

import argparse
import contextlib
import io
import itertools
import json
import math
import random
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))

MOST_SECONDS = 20.0
ALLOWED = (0, 1, 2, 3)
LEFT_OUT = {"version", "format", "global_id", "revisions", "accepted"}
"""Keys whose values must agree with something outside an opening."""
TEXTS = ("a", "Crew mess to corridor", "x" * 300, "=1+1", "Ünïcode · 扉", "two\nlines")
SIZES = (1 / 64, 0.25, 1.0, 1.75, 4.5, 36.0, 84.0, 120.0)


class Maker:
    """Makes values at random from a schema."""

    def __init__(self, schema: dict[str, Any], chance: random.Random) -> None:
        self._named, self.chance = schema["$defs"], chance

    def opening(self, mark: str) -> dict[str, Any]:
        """Return an opening that may or may not be valid."""
        made: dict[str, Any] = self._record("Opening", self.chance.choice((0.15, 0.3, 0.6)))
        width, height = self.chance.choice(
            ((36, 84), (36, 84), (30, 80), (72, 96), (12, 24), (1, 1), (300, 300))
        )
        return {**made, "mark": mark, "size": {"width": width, "height": height}}

    def _record(self, name: str, share: float) -> dict[str, Any]:
        record = self._named[name]
        wanted = set(record.get("required", ()))
        keys = [key for key in record["properties"] if key not in LEFT_OUT]
        taken = [key for key in keys if key in wanted or self.chance.random() < share]
        return {key: self._value(record["properties"][key], share) for key in taken}

    def _value(self, schema: dict[str, Any], share: float) -> Any:
        if "$ref" in schema:
            return self._record(schema["$ref"].rpartition("/")[2], share)
        if "anyOf" in schema:
            return self._value(self.chance.choice(schema["anyOf"]), share)
        if "enum" in schema:
            return self.chance.choice(schema["enum"])
        if "const" in schema:
            return schema["const"]
        kinds = schema.get("type", "string")
        return self._plain(self.chance.choice(kinds) if isinstance(kinds, list) else kinds, schema, share)

    def _plain(self, kind: str, schema: dict[str, Any], share: float) -> Any:
        if kind in ("number", "integer"):
            number = self._number(schema)
            return int(number) if kind == "integer" else number
        if kind == "array":
            items = schema.get("items", {"type": "number"})
            return [self._value(items, share) for _ in range(self.chance.randrange(4))]
        if kind == "object":
            return {"Remark": "kept"} if schema.get("additionalProperties") else {}
        if kind == "boolean":
            return self.chance.random() < 0.5
        if kind == "string" and "unit" in schema:
            return self.chance.choice(("4-1/2", "3'-0\"", "114 mm", "1.75"))
        return self.chance.choice(TEXTS) if kind == "string" else None

    def _number(self, schema: dict[str, Any]) -> float:
        low = schema.get("minimum", schema.get("exclusiveMinimum", 0.0))
        high = schema.get("maximum", schema.get("exclusiveMaximum", 400.0))
        usual = [size for size in SIZES if low < size < high]
        if usual and self.chance.random() < 0.75:
            return float(self.chance.choice(usual))
        return float(self.chance.choice((low, high, low + (high - low) / 1000, (low + high) / 2)))


def valid_job(schema: dict[str, Any], seed: int) -> Any:
    """Return a valid job of one to three openings; what is refused is taken out."""
    from configurator.project_file import ProjectFileError, parse

    chance = random.Random(seed)
    maker = Maker(schema, chance)
    openings = [maker.opening(f"{number}A") for number in range(1, chance.choice((2, 2, 3, 4)))]
    document = {"format": "opening-project", "version": 1}
    document |= {"job": {"name": "Kestrel Point"}, "openings": openings}
    for _ in range(60):
        try:
            return parse(json.dumps(document).encode())
        except ProjectFileError as error:
            for fault in error.faults:
                _take_out(document, fault.field)
    return None


def _take_out(document: Any, path: str) -> None:
    """Take what stands at a path out of a document; of one that must be there, what it stands in."""
    steps = path.replace("[", ".").replace("]", "").split(".")
    place, above = document, []
    for step in steps:
        above.append((place, int(step) if step.isdigit() else step))
        place = place[above[-1][1]] if _has(place, above[-1][1]) else None
    for holder, key in reversed(above):
        if _has(holder, key) and key not in ("size", "mark", "openings"):
            del holder[key]
            return
        if key == "size":
            holder["size"] = {"width": 36, "height": 84}
    # A fault of the whole opening: nothing is left of it but what it must have.
    for opening in document["openings"]:
        if len(opening) > 2:
            del opening[next(key for key in list(opening)[::-1] if key not in ("mark", "size"))]


def _has(place: Any, key: Any) -> bool:
    if isinstance(place, dict):
        return key in place
    return isinstance(place, list) and isinstance(key, int) and key < len(place)


# --- Commands ---


def commands(job: Path, seed: int, marks: list[str]) -> Iterator[list[str]]:
    """Yield every command line that a job is given; formats, papers and units take turns with the seed."""
    from configurator.drawing.pages.page import papers
    from configurator.drawing.sheets import SHEETS

    name, out, mark = str(job), job.parent, marks[seed % len(marks)]
    metric = ["--metric"] * (seed % 2)
    table, paper = ("csv", "xlsx", "pdf")[seed % 3], list(papers())[seed % len(papers())]
    paper_of_order = ("order", "supplier", "quote", "cost", "receiving", "labels", "floor labels")[seed % 7]
    yield ["compare", name, "--json"]
    yield ["compare", name, "--widths", "--sure", "--strict", *metric]
    yield ["order", name, "--json", "--spare", "5%"]
    yield ["order", name, "--as", paper_of_order, "--out", str(out / f"order.{table}")]
    yield ["order", name, "--submittal", "--out", str(out / "submittal.pdf")]
    yield ["schedule", name, "--json"]
    yield ["schedule", name, "--out", str(out / f"doors.{table}")]
    yield ["schedule", name, "--field", "--out", str(out / "field.pdf"), *metric]
    yield ["topics", name, "--out", str(out / "topics.bcf")]
    for number, sheet in enumerate(SHEETS):
        ending = ("pdf", "svg", "dxf", "png")[(seed + number) % 4]
        file = str(out / f"{sheet}.{ending}")
        yield ["draw", name, "--mark", mark, "--sheet", sheet, "--paper", paper, "--out", file, *metric]
    yield ["draw", name, "--mark", mark, "--out", str(out / "picture.png"), "--angle", "37", "--swept"]
    yield ["order", name, "--freeze", "sent", "--with-errors"]
    yield ["order", name, "--since", "1"]
    yield ["import", str(out / "doors.csv"), "--into", name, "--dry-run"]


def tried(words: list[str]) -> tuple[str, int]:
    """Run a command line; return what is wrong, empty when nothing is, and its status."""
    from configurator.cli import main

    said, complained, began = io.StringIO(), io.StringIO(), time.process_time()
    status, wrong = -1, ""
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(complained):
        try:
            status = main(words)
        except SystemExit as left:
            status = int(left.code or 0)
        except BaseException:
            wrong = traceback.format_exc()[-1500:]
    took = time.process_time() - began
    if not wrong and status not in ALLOWED:
        wrong = f"status {status}: {complained.getvalue()[-1500:]}"
    if not wrong and took > MOST_SECONDS:
        wrong = f"it took {took:.0f} s"
    if not wrong and "--json" in words and status in (0, 1):
        wrong = _no_data(said.getvalue())
    return wrong, status


def _no_data(text: str) -> str:
    try:
        json.loads(text, parse_constant=lambda word: 1 / 0)
    except (ValueError, ZeroDivisionError) as error:
        return f"no JSON: {error!r}"
    return ""


def main() -> int:
    """Try so many jobs and print what is wrong with any."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--jobs", type=int, default=1500)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--minutes", type=float, default=math.inf)
    given = asked.parse_args()
    from configurator.project_file import save

    _, schema = _schema()
    told, faults, until = Counter[str](), 0, time.monotonic() + 60 * given.minutes
    for seed in itertools.islice(itertools.count(given.seed), given.jobs):
        if time.monotonic() > until:
            break
        job = valid_job(schema, seed)
        told["jobs" if job else "given up"] += 1
        with tempfile.TemporaryDirectory(prefix="jobs-") as folder:
            path = Path(folder) / "job.json"
            if job is not None:
                save(job, path)
                told["openings"] += len(job.openings)
            for words in commands(path, seed, [one.mark for one in job.openings]) if job else ():
                wrong, status = tried(words)
                told[f"{words[0]}: status {status}"] += 1
                if wrong:
                    faults += 1
                    print(f"job {seed}: {' '.join(words)}\n{wrong}", flush=True)
    print(*(f"{count:7,} {what}" for what, count in sorted(told.items())), f"{faults:7,} faults", sep="\n")
    return int(bool(faults))


def _schema() -> tuple[int, dict[str, Any]]:
    from configurator.cli import main as command

    said = io.StringIO()
    with contextlib.redirect_stdout(said):
        status = command(["schema", "project"])
    return status, json.loads(said.getvalue())


if __name__ == "__main__":
    sys.exit(main())
