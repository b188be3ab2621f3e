"""Long work told on a terminal."""

import io
from types import SimpleNamespace

import pytest

from configurator.cli import shared
from configurator.cli.shared import progress_line


class Terminal(io.StringIO):
    def isatty(self):
        return True


@pytest.fixture
def screen(monkeypatch):
    """A terminal on standard error, and a clock that goes on by a second with every look."""
    screen, clock = Terminal(), iter(range(1000))
    monkeypatch.setattr(shared, "sys", SimpleNamespace(stderr=screen))
    monkeypatch.setattr(shared, "time", SimpleNamespace(monotonic=lambda: float(next(clock))))
    return screen


def test_a_person_is_told_and_the_line_is_cleared_at_the_end(screen):
    with progress_line("Working out openings") as tell:
        tell(1200, 10000)
        tell(1201, 10000)
    assert screen.getvalue() == (
        "\r\x1b[KWorking out openings: 1,200 of 10,000\r\x1b[KWorking out openings: 1,201 of 10,000\r\x1b[K"
    )


def test_short_work_needs_no_word(screen, monkeypatch):
    monkeypatch.setattr(shared, "time", SimpleNamespace(monotonic=lambda: 0.0))
    with progress_line("Working out openings") as tell:
        tell(1, 2)
    assert screen.getvalue() == ""


def test_the_line_is_cleared_when_the_work_ends_in_an_error(screen):
    def work():
        with progress_line("Working out openings") as tell:
            tell(1, 2)
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        work()
    assert screen.getvalue().endswith("\r\x1b[K")


def test_nobody_looks_on(monkeypatch):
    screen, clock = io.StringIO(), iter(range(1000))
    monkeypatch.setattr(shared, "sys", SimpleNamespace(stderr=screen))
    monkeypatch.setattr(shared, "time", SimpleNamespace(monotonic=lambda: float(next(clock))))
    with progress_line("Working out openings") as tell:
        tell(1, 2)
    assert screen.getvalue() == ""
