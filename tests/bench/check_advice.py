"""The advice of openings drawn at random: nothing opposed, no error recommended, no unknown passed over.

    .venv/bin/python tests/bench/check_advice.py 10000

Prints what is wrong with each opening at fault, by its seed, and how often each is so.
"""

import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.study import study
from tests.judgement.at_random import faults, opening_at_random

SHOWN = 20


def main() -> int:
    """Check as many openings as are asked for; the status tells whether any is at fault."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    found: Counter[int] = Counter()
    start = time.perf_counter()
    for seed in range(first, first + count):
        given, facts = opening_at_random(seed)
        for fault in faults(study(given, facts)):
            found[seed] += 1
            if sum(found.values()) <= SHOWN:
                print(f"{seed}: {fault}")
    took = time.perf_counter() - start
    print(f"{count} openings in {took:.0f} s: {len(found)} at fault, {sum(found.values())} faults")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
