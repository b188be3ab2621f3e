"""Check what a client is told against the study, on thousands of openings at random; print what is wrong.

Run: .venv/bin/python tests/bench/check_client.py [count]     (2,000 openings where no count is given)
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.study.widths.width_pair import width_pair
from configurator.wording.verdict import verdicts
from tests.wording.test_verdict_agrees import DISPLAYS, faults_of, opening_at_random


def main() -> None:
    """Ask every opening, and count the kinds of verdicts that were looked at."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    wrong, states = 0, Counter[str]()
    for seed in range(count):
        found, display = opening_at_random(seed), DISPLAYS[seed % 3]
        states.update(one.state for one in verdicts(found, width_pair(found), display))
        for fault in faults_of(found, display):
            wrong += 1
            print(f"{seed}: {fault}")
    print(f"{count} openings, {sum(states.values())} verdicts {dict(states)}: {wrong} faults")


if __name__ == "__main__":
    main()
