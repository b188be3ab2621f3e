"""How far long work is, on the last line of a terminal; nothing is said where no person looks on."""

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager

from configurator.long_work import Progress, unwatched

SAID_AFTER = 1.0
"""Seconds of work before the first word: what is done sooner needs none."""
BETWEEN = 0.2
"""Seconds between two words."""
_CLEAR = "\r\x1b[K"


@contextmanager
def told(what: str) -> Iterator[Progress]:
    """Give a function to be told how far the work is; it says so only where standard error is a terminal."""
    if not sys.stderr.isatty():
        yield unwatched
        return
    said = False
    next_word = time.monotonic() + SAID_AFTER

    def tell(done: int, total: int) -> None:
        nonlocal said, next_word
        if (now := time.monotonic()) >= next_word:
            said, next_word = True, now + BETWEEN
            sys.stderr.write(f"{_CLEAR}{what}: {done:,} of {total:,}")
            sys.stderr.flush()

    try:
        yield tell
    finally:
        if said:
            sys.stderr.write(_CLEAR)
            sys.stderr.flush()
