import pytest


@pytest.fixture(autouse=True)
def _nothing_left_behind(own_state_folder):
    """Every test begins without unsaved work of another."""
