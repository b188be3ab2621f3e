"""The window used at random, for a short while; `tests/bench/long_use.py` does it for long."""

import subprocess
import sys
from pathlib import Path

BENCH = Path(__file__).resolve().parents[1] / "bench" / "long_use.py"


def test_random_use_neither_ends_the_program_nor_leaves_loose_objects():
    words = [sys.executable, str(BENCH), "--steps", "200", "--seeds", "1", "--first", "7"]
    ended = subprocess.run(words, capture_output=True, text=True)
    assert ended.returncode == 0, ended.stdout + ended.stderr
    *_, last = ended.stdout.splitlines()
    seed, steps, *_ = last.split()
    assert (seed, steps) == ("7", "200")
    assert last.endswith("well")
