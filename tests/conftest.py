import os

import pytest

# Before anything imports Qt: the tests draw into memory and need no display.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def own_state_folder(tmp_path_factory, monkeypatch):
    """A folder of the test's own for unsaved work: a test must not touch, nor find, the user's."""
    folder = tmp_path_factory.mktemp("state")
    monkeypatch.setenv("XDG_STATE_HOME", str(folder))
    return folder
