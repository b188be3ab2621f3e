"""How far long work is, on the last line of a terminal; nothing is said where no person looks on."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

SAID_AFTER = 1.0
"""Seconds of work before the first word: what is done sooner needs none."""
BETWEEN = 0.2
"""Seconds between two words."""
_CLEAR = "\r\x1b[K"

Told = Callable[[int, int], bool]
"""Told how much is done, and of how much; always says to go on: Ctrl+C ends work in a terminal."""


@contextmanager
def told(what: str) -> Iterator[Told | None]:
    """Give a function to be told how far the work is; None where standard error is no terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    said = False
    next_word = time.monotonic() + SAID_AFTER

    def tell(done: int, total: int) -> bool:
        nonlocal said, next_word
        if (now := time.monotonic()) >= next_word:
            said, next_word = True, now + BETWEEN
            sys.stderr.write(f"{_CLEAR}{what}: {done:,} of {total:,}")
            sys.stderr.flush()
        return True

    try:
        yield tell
    finally:
        if said:
            sys.stderr.write(_CLEAR)
            sys.stderr.flush()
