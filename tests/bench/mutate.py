"""Change the program at random places, one change at a time, and see whether the tests notice.

    python tests/bench/mutate.py [--mutants 150] [--seed N] [--room geometry] [--known FOLDER] [--again FILE]

Each mutant is a copy of the tree with one change in the core: a comparison turned or moved by its limit, a
condition negated, and for or, plus for minus, a constant beside the one written, least for most, a
statement dropped, a limit rounded the other way. First the tests that run the changed line are tried on it,
the quickest first, then the files of tests near the module, until one fails or the time is out. Which tests
run which line is learnt by a run on the clean tree, and kept in `--known` for the next time.

Each mutant is printed as killed or survived, those that survived with their change. Annotations, docstrings
and words are left alone. The sample is another one each time; the seed printed draws it again. `--again`
tries the survivors of an earlier output anew.
"""

import argparse
import ast
import difflib
import importlib
import itertools
import os
import random
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import time
import traceback
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

ROOT = Path(__file__).resolve().parents[2]
ROOMS = ("geometry", "rules", "order", "study", "units.py")
BROAD = ("test_units.py", "geometry", "rules", "order", "study", "wording", "documents")
"""Tests that run on a mutant which those near it let live; those of the window and of the painters do not."""
COPIED = ("configurator", "resources", "demo_openings", "tests")
SETTINGS = """[pytest]
addopts = --strict-markers --import-mode=importlib
pythonpath = .
filterwarnings =
    error
    ignore:Module already imported
"""
QUIET = ("-q", "-n", "0", "-p", "no:pytest-qt", "-p", "no:randomly", "-p", "no:cacheprovider")
EVERYTHING = "tests/rules/test_every_finding.py"
"""Studies a hundred openings as it is read, so that no test of it is known to run their lines."""
BROKEN = 99
NEAR, LIMIT = 10.0, 60
"""Seconds that the tests of the changed line may take, and of processor time that a mutant may take."""
TURNED: dict[type[ast.cmpop], tuple[str, ...]] = {
    ast.Lt: ("<=", ">="), ast.LtE: ("<", ">"), ast.Gt: (">=", "<="), ast.GtE: (">", "<"), ast.Eq: ("!=",),
    ast.NotEq: ("==",), ast.Is: ("is not",), ast.IsNot: ("is",), ast.In: ("not in",), ast.NotIn: ("in",),
}  # fmt: skip
"""The first of two moves the limit by nothing, which is no change where a tolerance is part of it."""
NO_WIDTH = re.compile(r"TOLERANCE|_ROUNDING|_SAME|_?CLOSE\b|_ON_A_STEP")
"""Names of what two numbers may differ by and still be one."""
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
            within = bool(NO_WIDTH.search(ast.unparse(one) + ast.unparse(other)))
            for put in TURNED[type(sign)][within and len(TURNED[type(sign)]) > 1 :]:
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

    def visit_keyword(self, node: ast.keyword) -> None:
        """Leave alone what only guards: `strict` of zip."""
        if node.arg != "strict":
            self.visit(node.value)

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


# --- Which tests notice what ---


class Known:
    """Which tests run each line of the core, and how long each takes; learnt by one run on a clean tree."""

    def __init__(self, folder: Path, tree: Path) -> None:
        if not (folder / "times.xml").exists():
            self._learn(folder, tree)
        from coverage import CoverageData

        self._data = CoverageData(str(folder / "lines"))
        self._data.read()
        self._files = {
            str(Path(name).relative_to(_common(name))): name for name in self._data.measured_files()
        }
        self.times: dict[str, float] = {}
        for case in ElementTree.parse(folder / "times.xml").iter("testcase"):
            place = case.attrib["classname"].replace(".", "/") + ".py"
            self.times[f"{place}::{case.attrib['name']}"] = float(case.attrib["time"])

    @staticmethod
    def _learn(folder: Path, tree: Path) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        words = [
            "--cov-report=",
            "--cov=configurator",
            "--cov-context=test",
            f"--junitxml={folder / 'times.xml'}",
        ]
        own = os.environ | {"COVERAGE_FILE": str(folder / "lines")}
        tests = [f"tests/{name}" for name in BROAD]
        done = subprocess.run(
            [sys.executable, "-m", "pytest", *QUIET, *words, *tests], cwd=tree, env=own, check=False
        )
        if done.returncode:
            (folder / "times.xml").unlink(missing_ok=True)
            sys.exit("the tests fail without any change")

    def of(self, mutant: Mutant) -> tuple[list[str], list[str]]:
        """Return the tests that run the lines of a change, the quickest first, and the files to try after."""
        text = (ROOT / mutant.path).read_text("utf-8")
        lines = range(text.count("\n", 0, mutant.begin) + 1, text.count("\n", 0, mutant.end) + 2)
        by_line = self._data.contexts_by_lineno(self._files.get(mutant.path, ""))
        tests = {one.partition("|")[0] for line in lines for one in by_line.get(line, ())} & self.times.keys()
        quickest = sorted(tests, key=lambda one: self.times[one])
        total = itertools.accumulate(self.times[one] for one in quickest)
        taken = [one for one, until in zip(quickest, total, strict=True) if until < NEAR]
        return taken, list(dict.fromkeys([EVERYTHING, *near(mutant.path)]))


def _common(name: str) -> str:
    """Return the folder of the tree that a measured file stands in."""
    return name[: name.rindex("/configurator/")]


def near(path: str) -> list[str]:
    """Return the tests near a module: those of its name, those that import it, those of its folder."""
    module = Path(path).with_suffix("")
    dotted = ".".join(module.parts)
    tests = [one for name in BROAD for one in sorted((ROOT / "tests" / name).rglob("test_*.py"))]
    tests.append(ROOT / "tests/test_units.py")
    named = [one for one in tests if one.stem == f"test_{module.name}"]
    importing = [one for one in tests if re.search(rf"{re.escape(dotted)}\b", one.read_text("utf-8"))]
    folder = ROOT / "tests" / module.parent.relative_to("configurator")
    beside = [one for one in tests if one.parent == folder]
    return list(dict.fromkeys(str(one.relative_to(ROOT)) for one in (*named, *importing, *beside)))


# --- One mutant ---


class Noticed:
    """Notes the first test that fails; examples are not made smaller, for one failure is enough."""

    def __init__(self) -> None:
        self.by = ""

    def pytest_sessionstart(self) -> None:
        """Take the examples as they come."""
        from hypothesis import Phase, settings

        settings.register_profile("mutants", settings(phases=(Phase.explicit, Phase.generate), database=None))
        settings.load_profile("mutants")

    def pytest_runtest_logreport(self, report: Any) -> None:
        """Note a failure."""
        if report.failed:
            self.by = self.by or report.nodeid

    def pytest_collectreport(self, report: Any) -> None:
        """Note tests that cannot even be read."""
        self.pytest_runtest_logreport(report)


def notices(tests: tuple[list[str], list[str]], tree: Path) -> str:
    """Run the tests in this process until one fails; return which, empty where all pass."""
    import pytest

    os.chdir(tree)
    resource.setrlimit(resource.RLIMIT_CPU, (LIMIT, LIMIT + 5))
    for each in filter(None, tests):
        noticed = Noticed()
        status = pytest.main([*QUIET, "-x", "--tb=no", *each], plugins=[noticed])
        if status == pytest.ExitCode.USAGE_ERROR and not noticed.by:
            # A test has another name than when it was learnt: its whole file is run.
            status = pytest.main(
                [*QUIET, "-x", "--tb=no", *{one.partition("::")[0] for one in each}], [noticed]
            )
        if noticed.by or status:
            return noticed.by or f"status {status}"
    return ""


def start(mutant: Mutant, tests: tuple[list[str], list[str]], tree: Path) -> tuple[int, Path]:
    """Put a mutant into a tree and begin to try it in a process of its own; return that where it tells."""
    _, now = mutant.text()
    (tree / mutant.path).write_text(now, "utf-8")
    told = tree / "told"
    told.unlink(missing_ok=True)
    if process := os.fork():
        return process, told
    nothing = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nothing, 1)
    try:
        told.write_text(f"by {notices(tests, tree)}", "utf-8")
        os._exit(0)
    except BaseException:
        traceback.print_exc(file=sys.__stderr__)
        os._exit(BROKEN)


def _all(sample: list[Mutant], known: Known, trees: list[Path]) -> int:
    """Try all, a tree each at a time; print a line of each and return how many lived."""
    waiting, running, alive = list(reversed(sample)), dict[int, tuple[Mutant, Path, Path, float]](), 0
    while waiting or running:
        while waiting and trees:
            mutant, tree = waiting.pop(), trees.pop()
            process, told = start(mutant, known.of(mutant), tree)
            running[process] = (mutant, tree, told, time.monotonic())
        process, status = os.wait()
        if os.waitstatus_to_exitcode(status) == BROKEN:
            sys.exit("the script itself failed")
        mutant, tree, told, began = running.pop(process)
        # One that was ended by its limit, or by the system, told nothing.
        killer = told.read_text("utf-8").removeprefix("by ") if told.exists() else "the time was out"
        (tree / mutant.path).write_text(mutant.text()[0], "utf-8")
        trees.append(tree)
        alive += not killer
        word = "killed  " if killer else "survived"
        told_as = f"{time.monotonic() - began:4.0f} s {word}  {_key(mutant)}  "
        print(told_as + (killer or f"\n{mutant.diff()}"), flush=True)
    return alive


def main() -> int:
    """Try a sample and print a line of each; return 1 when more than one in twenty lived."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--mutants", type=int, default=150)
    asked.add_argument("--seed", type=int, default=random.SystemRandom().randrange(10**6))
    asked.add_argument("--room", action="append", choices=ROOMS)
    asked.add_argument("--at-once", type=int, default=2)
    asked.add_argument("--known", type=Path, help="a folder that keeps which tests run which lines")
    asked.add_argument("--again", type=Path, help="an output of this script, whose survivors are tried")
    given = asked.parse_args()
    every = list(mutants(given.room or list(ROOMS)))
    if given.again:
        survived = set(re.findall(r"survived {2}(\S+)", given.again.read_text("utf-8")))
        sample = [one for one in every if _key(one) in survived]
    else:
        sample = random.Random(given.seed).sample(every, min(given.mutants, len(every)))
    print(f"seed {given.seed}: {len(sample)} of {len(every):,} changes", flush=True)
    for library in ("hypothesis", "numpy", "pydantic", "pytest", "openpyxl"):
        importlib.import_module(library)  # once, and not in every mutant's process
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        trees = [_copy(Path(folder) / str(number)) for number in range(given.at_once)]
        known = Known(given.known or Path(folder) / "known", trees[0])
        alive = _all(sample, known, trees)
    print(
        f"{len(sample) - alive} killed, {alive} survived: {(len(sample) - alive) / max(len(sample), 1):.1%}"
    )
    return int(alive > len(sample) / 20)


def _key(mutant: Mutant) -> str:
    """Return what finds the change again while the text before it stays as it is."""
    return f"{mutant.path}:{mutant.begin}-{mutant.end}:{mutant.put.replace(' ', '_')}"


def _copy(tree: Path) -> Path:
    tree.mkdir()
    for name in COPIED:
        shutil.copytree(ROOT / name, tree / name, ignore=shutil.ignore_patterns("__pycache__"))
    (tree / "pytest.ini").write_text(SETTINGS, "utf-8")
    return tree


if __name__ == "__main__":
    sys.dont_write_bytecode = True
    sys.exit(main())
