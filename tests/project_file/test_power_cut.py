"""The short form of the script that cuts the power at every call of a save, a freeze and an import."""

import random

import pytest

from configurator.project_file import writing
from tests.bench.power_cut import commands, cut_during


def outcomes(folder):
    for kind, path, command in commands(folder, random.Random(5)):
        path.parent.mkdir(exist_ok=True)
        yield kind, cut_during(command, path)


def test_whatever_a_power_cut_leaves_the_file_is_the_old_or_the_new_one(tmp_path):
    found = dict(outcomes(tmp_path))
    assert list(found) == ["save, new", "save over", "save, two names", "freeze", "import", "import, new"]
    for kind, outcome in found.items():
        assert outcome.wrong == (), kind
        assert outcome.outcomes > outcome.calls > 10, kind


def without_sync(handle, data):
    with open(handle, "wb") as file:  # noqa: PTH123 - a handle
        file.write(data)


@pytest.mark.parametrize(
    ("left_out", "instead"), [("_write_out", without_sync), ("_sync_folder", lambda _: None)]
)
def test_a_save_that_does_not_wait_for_the_disk_is_found_out(left_out, instead, tmp_path, monkeypatch):
    monkeypatch.setattr(writing, left_out, instead)
    kind, outcome = next(outcomes(tmp_path))
    assert kind == "save, new"
    assert outcome.wrong
