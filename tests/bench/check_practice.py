"""Every template of practice over many seeds: what the tests ask of a few seeds, asked of thousands.

    .venv/bin/python tests/bench/check_practice.py 1000

Exactly one right answer within the precision stated; what lies on the wrong side of a limit is wrong; every
slip is wrong and told by its own sentence; a choice has no answer that is right for more than 60 % of the
seeds; hinge sizes are in stock. Of one seed in fifty every lettering of the picture is there, in four
sizes, before and after the answer, inside it and over no other. Prints figures, and how long a problem
takes to pose.
"""

import sys
import time
from collections import Counter
from itertools import product
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.practice.course import TEMPLATES
from configurator.practice.problem import Template, pose
from configurator.practice.written import ChoiceAnswer
from tests.practice.sweep import MOST_OF_ONE_ANSWER, SIZES, check, check_picture, named_slips


def swept(template: Template, seeds: int) -> tuple[list[float], Counter[str], int]:
    """Pose and check a template's problems: milliseconds each, how often an option is right, slips named."""
    times, right, named = [], Counter[str](), set[str]()
    for seed in range(seeds):
        start = time.perf_counter()
        posed = pose(template, seed)
        times.append(1000 * (time.perf_counter() - start))
        check(posed)
        if seed % 50 == 0:
            for size, told in product(SIZES, (False, True)):
                check_picture(posed, size, told)
        if isinstance(posed.problem.answer, ChoiceAnswer):
            right[posed.problem.answer.right] += 1
        named |= named_slips(posed.problem)
    return times, right, len(named)


def main() -> None:
    """Check every template."""
    seeds = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    only = sys.argv[2:]
    slowest, uneven, unnamed, failed = [], [], [], []
    for template in TEMPLATES:
        if only and template.key not in only:
            continue
        try:
            times, right, named = swept(template, seeds)
        except (AssertionError, RuntimeError) as error:
            failed.append((template.key, str(error)[:300]))
            continue
        slowest.append((median(times), template.key))
        if right:
            uneven.append((max(right.values()) / seeds, template.key))
        if not named:
            unnamed.append(template.key)
    for key, error in failed:
        print(f"FAILED {key}: {error}")
    print(f"{len(TEMPLATES)} templates, {seeds} seeds each: {len(TEMPLATES) - len(failed)} hold")
    print(f"without a named slip: {', '.join(unnamed) or 'none'}")
    print("most uneven choices:", *(f"{share:.0%} {key};" for share, key in sorted(uneven, reverse=True)[:6]))
    for took, key in sorted(slowest, reverse=True)[:4]:
        print(f"{took:6.2f} ms  {key}")
    sys.exit(bool(failed or unnamed or any(share > MOST_OF_ONE_ANSWER for share, _ in uneven)))


if __name__ == "__main__":
    main()
