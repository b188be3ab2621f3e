"""Whether two hundred openings of every kind and mounting keep the bars of a sheet, on every paper.

Every thing that stands there is named with its figures, every pin and every size of the frame is measured,
no text lies over another, no leader runs through one, and every DXF passes its audit: read back from PDF and
DXF. Takes some minutes.
Run: .venv/bin/python tests/bench/check_sheets.py [HOW MANY [FIRST]]
Ends with status 1 and a line for each fault where one is found.
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.export.sheet_bars import faults

HOW_MANY = 200


def main() -> int:
    """Print every fault and how many there are of each kind of sheet."""
    words = [int(word) for word in sys.argv[1:]]
    count = words[0] if words else HOW_MANY
    first = words[1] if len(words) > 1 else 0
    found: Counter[str] = Counter()
    for seed in range(first, first + count):
        for fault in faults(seed):
            print(fault)
            found[fault.split()[1]] += 1
    print(f"{count} openings: {dict(found) or 'no fault'}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
