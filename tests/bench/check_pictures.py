"""Whether in the window's picture nothing lies over anything, of fifty openings at forty angles each.

No two texts, no text under a line, no two things on one leader, the same dimension in the same words in every
panel, at the sizes the picture has in windows of 1280 x 800 to 1920 x 1080. Takes some minutes.
Run: .venv/bin/python tests/bench/check_pictures.py [HOW MANY [FIRST]]
Ends with status 1 and a line for each fault where one is found.
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.drawing.plan.part_dimensions import KINDS
from configurator.drawing.plan.sheet import plan_sheet
from configurator.study import Study
from tests.drawing.cases import random_study as crowded_study
from tests.drawing.plan.picture_bars import ANGLES, faults
from tests.export.random_sheets import display_of
from tests.export.random_sheets import random_study as any_study

SIZES = ((630.0, 322.0), (681.0, 307.0), (1095.0, 510.0))
"""Points: of 96 to the inch, what the picture has at 1280 x 800, 1366 x 768 and 1920 x 1080."""
HOW_MANY = 50


def study_of(seed: int) -> Study:
    """Return an opening with much along its wall and many widths, or one of every kind, pairs too."""
    return crowded_study(seed) if seed % 2 else any_study(seed)


def main() -> int:
    """Print every kind of fault of an opening once, with how often it is there."""
    words = [int(word) for word in sys.argv[1:]]
    count, first = words[0] if words else HOW_MANY, words[1] if len(words) > 1 else 0
    found: Counter[str] = Counter()
    for seed in range(first, first + count):
        for width, height in SIZES:
            study, plain, swept = study_of(seed), seed % 3 == 1, seed % 5 == 0
            kinds = KINDS if seed % 4 == 3 else ()
            sheet = plan_sheet(study, display_of(seed), width, height, plain=plain, swept=swept, kinds=kinds)
            own = Counter(fault for angle in ANGLES for fault in faults(sheet, angle))
            for fault, times in own.items():
                print(f"{seed} {width:g} x {height:g}: {fault} at {times} angles", flush=True)
            found += own
    print(f"{count} openings at {len(ANGLES)} angles and {len(SIZES)} sizes: {sum(found.values())} faults")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
