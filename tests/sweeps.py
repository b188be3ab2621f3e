"""How far sweeps over openings at random go: a good sample in every run, all of it when asked.

`SWEEPS=wide pytest` goes as far as a sweep is worth waiting for, and hypothesis draws new examples. Without
it every run looks at the same openings, so that the suite says the same of the same code.
"""

import os

from hypothesis import HealthCheck, settings

WIDE = os.environ.get("SWEEPS") == "wide"


def sized(usual: int, wide: int) -> int:
    """Return how many to look at: few enough for every run, or all when the sweep is to be wide."""
    return wide if WIDE else usual


def examples(usual: int) -> settings:
    """Return the settings of a property: so many examples in every run, twenty times as many when wide."""
    return settings(max_examples=sized(usual, 20 * usual))


def use_profile() -> None:
    """Repeat the same examples unless the sweep is wide, and never judge the time that one takes."""
    settings.register_profile(
        "suite",
        derandomize=not WIDE,
        deadline=None,
        max_examples=sized(30, 1000),
        suppress_health_check=[HealthCheck.too_slow],
    )
    settings.load_profile("suite")
