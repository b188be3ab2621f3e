"""Change the program at random places, one change at a time, and see whether the tests notice.

    python tests/bench/mutate.py [--mutants 150] [--seed N] [--room geometry ...] [--at-once 1] [--again FILE]

Each mutant is a copy of the tree with one change in the core: a comparison turned or moved by its limit, a
condition negated, and for or, plus for minus, a constant beside the one written, least for most, a statement
dropped, a limit rounded the other way. First the tests near the module run on it, then those of every room
that stands on it, until one fails or the time is out. Each mutant is printed as killed or survived, those
that survived with their change. Annotations, docstrings and words are left alone. The sample is another one
each time; the seed printed draws it again. `--again` tries the survivors of an earlier output anew.
"""

import argparse
import ast
import difflib
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue

ROOT = Path(__file__).resolve().parents[2]
ROOMS = ("geometry", "rules", "order", "study", "units.py")
BROAD = ("test_units.py", "geometry", "rules", "order", "study", "wording", "documents")
"""Tests that run on a mutant which those near it let live; those of the window and of the painters do not."""
COPIED = ("configurator", "resources", "demo_openings", "tests", "pyproject.toml")
NEAR, FAR = 90.0, 400.0
"""Seconds of processor time that the tests near a mutant, and all of them, may take; they need far less."""
TURNED: dict[type[ast.cmpop], tuple[str, ...]] = {
    ast.Lt: ("<=", ">="), ast.LtE: ("<", ">"), ast.Gt: (">=", "<="), ast.GtE: (">", "<"), ast.Eq: ("!=",),
    ast.NotEq: ("==",), ast.Is: ("is not",), ast.IsNot: ("is",), ast.In: ("not in",), ast.NotIn: ("in",),
}  # fmt: skip
SWAPPED: dict[type[ast.operator], str] = {
    ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*", ast.FloorDiv: "/", ast.Mod: "*",
}  # fmt: skip
OPPOSITE = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
WORDS = {"up": "down", "down": "up", "error": "warning", "warning": "note", "note": "warning"}
"""Words that decide a number or a weight: how a number is rounded, how grave a finding is."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """One change: in a file, from one place of its text to another, what is put there."""

    path: str
    begin: int
    end: int
    put: str

    def text(self) -> tuple[str, str]:
        """Return the file's text as it is and as the change makes it."""
        was = (ROOT / self.path).read_text("utf-8")
        return was, was[: self.begin] + self.put + was[self.end :]

    def diff(self) -> str:
        """Return the lines that change, with the place."""
        was, now = (text.splitlines() for text in self.text())
        lines = list(difflib.unified_diff(was, now, lineterm="", n=0))[2:]
        return "\n".join(f"    {line}" for line in (f"{self.path} {lines[0]}", *lines[1:]))


# --- What may be changed ---


class Places(ast.NodeVisitor):
    """Collects every change that can be made in one file."""

    def __init__(self, path: str, text: str) -> None:
        self.path, self.text, self.found = path, text, list[Mutant]()
        self._lines = [0]
        for line in text.splitlines(keepends=True):
            self._lines.append(self._lines[-1] + len(line))
        self.visit(ast.parse(text))

    def _at(self, line: int, column: int) -> int:
        whole = self.text[self._lines[line - 1] : self._lines[line]]
        return self._lines[line - 1] + len(whole.encode()[:column].decode())

    def _span(self, node: ast.expr | ast.stmt) -> tuple[int, int]:
        assert node.end_lineno is not None
        assert node.end_col_offset is not None
        return self._at(node.lineno, node.col_offset), self._at(node.end_lineno, node.end_col_offset)

    def _put(self, begin: int, end: int, put: str) -> None:
        self.found.append(Mutant(self.path, begin, end, put))

    def _between(self, one: ast.expr, other: ast.expr, put: str) -> None:
        """Replace the sign between two expressions; brackets and comments beside it stay."""
        begin, end = self._span(one)[1], self._span(other)[0]
        if sign := re.search(r"(not\s+in|is\s+not|in|is|and|or|[<>=!+*/%-]+)", self.text[begin:end]):
            self._put(begin + sign.start(), begin + sign.end(), put)

    def visit_Compare(self, node: ast.Compare) -> None:
        for one, sign, other in zip((node.left, *node.comparators), node.ops, node.comparators, strict=False):
            for put in TURNED[type(sign)]:
                self._between(one, other, put)
        self.generic_visit(node)

    def visit_BoolOp(self, node: ast.BoolOp) -> None:
        put = "or" if isinstance(node.op, ast.And) else "and"
        if len(node.values) == 2:
            self._between(node.values[0], node.values[1], put)
        for value in node.values:
            begin, end = self._span(value)
            self._put(begin, end, "True" if put == "or" else "False")
        self.generic_visit(node)

    def visit_BinOp(self, node: ast.BinOp) -> None:
        words = any(
            isinstance(one, ast.JoinedStr | ast.Constant) and not _number(one)
            for one in (node.left, node.right)
        )
        if type(node.op) in SWAPPED and not words:
            self._between(node.left, node.right, SWAPPED[type(node.op)])
        self.generic_visit(node)

    def visit_UnaryOp(self, node: ast.UnaryOp) -> None:
        begin, end = self._span(node)
        if isinstance(node.op, ast.Not | ast.USub):
            inner = self._span(node.operand)
            self._put(begin, end, f"({self.text[inner[0] : inner[1]]})")
        self.generic_visit(node)

    def visit_Constant(self, node: ast.Constant) -> None:
        begin, end = self._span(node)
        if isinstance(node.value, bool):
            self._put(begin, end, str(not node.value))
        elif isinstance(node.value, int | float):
            self._put(begin, end, repr(node.value + 1))
        elif node.value in WORDS and self.text[begin] in "'\"":
            self._put(begin, end, repr(WORDS[str(node.value)]))

    def visit_If(self, node: ast.If) -> None:
        self._tested(node)

    def visit_IfExp(self, node: ast.IfExp) -> None:
        self._tested(node)

    def visit_While(self, node: ast.While) -> None:
        self._tested(node)

    def _tested(self, node: ast.If | ast.IfExp | ast.While) -> None:
        if not isinstance(node.test, ast.Compare | ast.BoolOp):
            begin, end = self._span(node.test)
            self._put(begin, end, f"(not ({self.text[begin:end]}))")
        self.generic_visit(node)

    def visit_comprehension(self, node: ast.comprehension) -> None:
        for test in node.ifs:
            begin, end = self._span(test)
            self._put(begin, end, "True")
        self.generic_visit(node)

    def visit_Call(self, node: ast.Call) -> None:
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        if name in OPPOSITE:
            end = self._span(node.func)[1]
            self._put(end - len(name), end, OPPOSITE[name])
        if name not in ("TypeVar", "Field", "dataclass"):
            self.generic_visit(node)

    def visit_Expr(self, node: ast.Expr) -> None:
        if not isinstance(node.value, ast.Constant):
            self._put(*self._span(node), "pass")
            self.generic_visit(node)

    def visit_AugAssign(self, node: ast.AugAssign) -> None:
        self._put(*self._span(node), "pass")
        self.generic_visit(node)

    def visit_Raise(self, node: ast.Raise) -> None:
        self._put(*self._span(node), "pass")

    def visit_Continue(self, node: ast.Continue) -> None:
        self._put(*self._span(node), "pass")

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if node.value is not None:
            self.visit(node.value)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        for each in (
            *node.decorator_list,
            *node.args.defaults,
            *filter(None, node.args.kw_defaults),
            *node.body,
        ):
            self.visit(each)

    def visit_Assert(self, node: ast.Assert) -> None:
        """Leave alone what is said for readers."""

    def visit_FormattedValue(self, node: ast.FormattedValue) -> None:
        self.visit(node.value)

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        """Leave text alone: before Python 3.12 its parts do not know where they stand."""


def _number(node: ast.expr) -> bool:
    return (
        isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
    )


def mutants(rooms: list[str]) -> Iterator[Mutant]:
    """Yield every change that can be made in the rooms."""
    for room in rooms:
        start = ROOT / "configurator" / room
        for path in sorted(start.rglob("*.py")) if start.is_dir() else [start]:
            yield from Places(str(path.relative_to(ROOT)), path.read_text("utf-8")).found


# --- One mutant ---


def near(path: str) -> list[str]:
    """Return the tests near a module: those of its name, those that import it, those of its folder."""
    module = Path(path).with_suffix("")
    dotted = ".".join(module.parts)
    tests = [one for one in sorted((ROOT / "tests").rglob("test_*.py")) if "ui" not in one.parts]
    named = [one for one in tests if one.stem == f"test_{module.name}"]
    importing = [one for one in tests if re.search(rf"{re.escape(dotted)}\b", one.read_text("utf-8"))]
    folder = ROOT / "tests" / module.parent.relative_to("configurator")
    beside = sorted(folder.glob("test_*.py")) if folder != ROOT / "tests" else []
    core = [one for one in (*named, *importing, *beside) if one.relative_to(ROOT / "tests").parts[0] in BROAD]
    return list(dict.fromkeys(str(one.relative_to(ROOT)) for one in core))


def tried(mutant: Mutant, tree: Path) -> str:
    """Run the tests on a copy of the tree with the change; return what killed it, empty where it lived."""
    was, now = mutant.text()
    try:
        compile(now, mutant.path, "exec")
    except SyntaxError:
        return "it does not compile"
    (tree / mutant.path).write_text(now, "utf-8")
    try:
        first = near(mutant.path)
        far = [f"tests/{name}" for name in BROAD]
        return (first and _failed(first, tree, NEAR)) or _failed(
            [*far, *(f"--deselect={one}" for one in first)], tree, FAR
        )
    finally:
        (tree / mutant.path).write_text(was, "utf-8")


def _failed(tests: list[str], tree: Path, limit: float) -> str:
    words = [
        "-m",
        "pytest",
        "-x",
        "-q",
        "-n",
        "0",
        "-p",
        "no:cacheprovider",
        "--no-header",
        "--tb=no",
        *tests,
    ]
    own = os.environ | {"PYTHONDONTWRITEBYTECODE": "1", "QT_QPA_PLATFORM": "offscreen"}
    # The limit is of processor time, so that a busy machine kills no mutant.
    command = f'ulimit -t {limit:.0f}; exec "$@"'
    done = subprocess.run(
        ["bash", "-c", command, "bash", sys.executable, *words],
        cwd=tree, env=own, capture_output=True, text=True, check=False, timeout=20 * limit,
    )  # fmt: skip
    if done.returncode == 0:
        return ""
    failed = re.search(r"^(?:FAILED|ERROR) (\S+)", done.stdout, re.MULTILINE)
    return failed[1] if failed else f"status {done.returncode}"


def main() -> int:
    """Try a sample and print a line of each; return 1 when more than one in twenty lived."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--mutants", type=int, default=150)
    asked.add_argument("--seed", type=int, default=random.SystemRandom().randrange(10**6))
    asked.add_argument("--room", action="append", choices=ROOMS)
    asked.add_argument("--at-once", type=int, default=1)
    asked.add_argument("--again", type=Path, help="an output of this script")
    given = asked.parse_args()
    every = list(mutants(given.room or list(ROOMS)))
    if given.again:
        survived = set(re.findall(r"survived {2}(\S+)", given.again.read_text("utf-8")))
        sample = [one for one in every if _key(one) in survived]
    else:
        sample = random.Random(given.seed).sample(every, min(given.mutants, len(every)))
    print(f"seed {given.seed}: {len(sample)} of {len(every):,} changes", flush=True)
    alive = _all(sample, given.at_once)
    print(
        f"{len(sample) - alive} killed, {alive} survived: {(len(sample) - alive) / max(len(sample), 1):.1%}"
    )
    return int(alive > len(sample) / 20)


def _key(mutant: Mutant) -> str:
    """Return what finds the change again while its file stays as it is."""
    return f"{mutant.path}:{mutant.begin}-{mutant.end}:{mutant.put.replace(' ', '_')}"


def _all(sample: list[Mutant], at_once: int) -> int:
    trees: SimpleQueue[Path] = SimpleQueue()

    def one(mutant: Mutant) -> bool:
        tree, began = trees.get(), time.monotonic()
        try:
            killer = tried(mutant, tree)
        finally:
            trees.put(tree)
        word = "killed  " if killer else "survived"
        told = f"{time.monotonic() - began:4.0f} s {word}  {_key(mutant)}  "
        print(told + (killer or f"\n{mutant.diff()}"), flush=True)
        return not killer

    with tempfile.TemporaryDirectory(prefix="mutants-") as folder, ThreadPoolExecutor(at_once) as several:
        for number in range(at_once):
            trees.put(_copy(Path(folder) / str(number)))
        return sum(several.map(one, sample))


def _copy(tree: Path) -> Path:
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, tree / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            tree.mkdir(parents=True, exist_ok=True)
            shutil.copy(source, tree / name)
    return tree


if __name__ == "__main__":
    sys.exit(main())
