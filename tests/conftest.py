import gc
import os

import pytest

from tests import sweeps

# Before anything imports Qt: the tests draw into memory and need no display.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sweeps.use_profile()
if "GC_THRESHOLD" in os.environ:  # so that what is freed at a bad moment is freed in the tests
    gc.set_threshold(int(os.environ["GC_THRESHOLD"]))


@pytest.fixture(scope="session", autouse=True)
def not_the_users_state_folder(tmp_path_factory):
    """No test touches what the user's own programs remember, and none finds it."""
    os.environ["XDG_STATE_HOME"] = str(tmp_path_factory.mktemp("state"))


@pytest.fixture
def own_state_folder(tmp_path, monkeypatch):
    """A folder of the test's own for unsaved work."""
    folder = tmp_path.with_name(f"{tmp_path.name}-state")
    folder.mkdir()
    monkeypatch.setenv("XDG_STATE_HOME", str(folder))
    return folder
