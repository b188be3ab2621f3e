import gc
import os

import pytest

from tests import sweeps

# Before anything imports Qt: the tests draw into memory and need no display.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sweeps.use_profile()
# Seldom, which saves a tenth of the time; 20 frees in the tests what is freed at a bad moment.
gc.set_threshold(int(os.environ.get("GC_THRESHOLD", 10_000)))


def pytest_collection_finish() -> None:
    """Leave what all tests share out of every later collection."""
    gc.collect()
    gc.freeze()


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
