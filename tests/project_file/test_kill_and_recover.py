"""The short form of the script that kills the program two hundred times."""

import pytest

from tests.bench.kill_and_recover import MOST_LOST, killed_run


@pytest.mark.parametrize("seed", range(5))
def test_killed_at_any_moment_the_file_is_whole_and_the_work_comes_back(seed, monkeypatch, own_state_folder):
    monkeypatch.setenv("XDG_STATE_HOME", str(own_state_folder))  # put back what the run sets
    outcome = killed_run(seed, seconds=6 if seed == 1 else 1.5)
    assert outcome.wrong == ""
    assert outcome.seconds_lost <= MOST_LOST
