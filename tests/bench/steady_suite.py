"""Whether the suite says the same ten times: plain, in random order, on a busy machine, collecting eagerly.

Run it as `python tests/bench/steady_suite.py [HOW ...]` with nothing else running; HOW is one or more of the
names in TIMES, and all of them if none is given. It prints a line a run and what failed in it, and ends with
0 if nothing did.
"""

import argparse
import os
import random
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
BAR = 150.0
"""Seconds of a run as it is, on two idle cores."""
CORES = os.cpu_count() or 1
TIMES = {"plain": 3, "random": 3, "busy": 2, "eager": 2}
"""How a run is made, and how often.

Busy: beside it a process a core does nothing but count. Eager: garbage is looked for after every twenty new
objects, so that what can be freed at a bad moment is.
"""


@dataclass(frozen=True)
class Run:
    """How one run of the suite went."""

    how: str
    seconds: float
    code: int
    counts: str
    failed: tuple[str, ...]


def arguments_of(how: str) -> tuple[list[str], dict[str, str], str]:
    """Return what pytest is given, what its environment has besides, and what to call the run."""
    if how == "random":
        seed = random.randrange(1_000_000)
        return ["-p", "randomly", f"--randomly-seed={seed}"], {}, f"random {seed}"
    return [], {"GC_THRESHOLD": "20"} if how == "eager" else {}, how


@contextmanager
def kept_busy(count: int) -> Iterator[None]:
    """So many processes that count for ever."""
    busy = [subprocess.Popen([sys.executable, "-c", "while True: pass"]) for _ in range(count)]
    try:
        yield
    finally:
        for process in busy:
            process.kill()
            process.wait()


def run(how: str) -> Run:
    """Run the suite once."""
    more, environment, name = arguments_of(how)
    command = [sys.executable, "-m", "pytest", *more]
    with kept_busy(CORES if how == "busy" else 0):
        began = time.monotonic()
        done = subprocess.run(
            command, cwd=ROOT, env={**os.environ, **environment}, capture_output=True, text=True, check=False
        )
        seconds = time.monotonic() - began
    counts = re.findall(r"^=*\s*(\d+ (?:passed|failed|error).*?) in ", done.stdout, re.MULTILINE)
    failed = re.findall(r"^(?:FAILED|ERROR) (\S+)", done.stdout, re.MULTILINE)
    return Run(name, seconds, done.returncode, counts[-1] if counts else "no result", tuple(failed))


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("how", nargs="*", choices=[[], *TIMES], help="which runs; all if none is named")
    wanted = parser.parse_args().how or list(TIMES)
    print(f"{'run':>3}  {'how':<15} {'seconds':>7}  result", flush=True)
    runs: list[Run] = []
    for name in (how for how in wanted for _ in range(TIMES[how])):
        one = run(name)
        runs.append(one)
        late = f", over the bar of {BAR:.0f} s" if name == "plain" and one.seconds > BAR else ""
        print(
            f"{len(runs):>3}  {one.how:<15} {one.seconds:>7.0f}  {one.counts}, ended {one.code}{late}",
            flush=True,
        )
        for test in one.failed:
            print(f"     {test}", flush=True)
    green = sum(one.code == 0 for one in runs)
    print(f"{green} of {len(runs)} green")
    return 0 if green == len(runs) else 1


if __name__ == "__main__":
    sys.exit(main())
