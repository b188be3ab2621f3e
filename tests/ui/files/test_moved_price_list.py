"""A job saved in another place still finds the price list it remembers from the place of its file."""

import shutil

import pytest

from configurator.model import Job
from configurator.project_file import load, save
from configurator.resource_files import resource_path


@pytest.fixture
def window_on_file(bare_window, tmp_path):
    prices = tmp_path / "prices.csv"
    shutil.copy(resource_path("demo_openings", "kestrel_point_prices.csv"), prices)
    path = tmp_path / "job.json"
    save(Job.model_validate({"order": {"price_list": "prices.csv"}}), path)
    bare_window.session.open(path)
    return bare_window


def test_the_price_list_is_found_from_another_folder_and_back(window_on_file, tmp_path):
    files, session = window_on_file.files, window_on_file.session
    elsewhere = tmp_path / "elsewhere" / "job.json"
    elsewhere.parent.mkdir()
    assert files.write(elsewhere)
    assert load(elsewhere).order.price_list == str(tmp_path / "prices.csv")
    assert session.job.order.price_list == str(tmp_path / "prices.csv")
    assert not session.history.unsaved
    assert files.write(tmp_path / "again.json")
    assert load(tmp_path / "again.json").order.price_list == "prices.csv"


def test_a_save_that_is_refused_changes_nothing(window_on_file, tmp_path):
    files, session = window_on_file.files, window_on_file.session
    assert not files.write(tmp_path / "no such folder" / "job.json")
    assert session.job.order.price_list == "prices.csv"


def test_a_list_that_is_not_there_is_left_as_it_is(window_on_file, tmp_path):
    (tmp_path / "prices.csv").unlink()
    (tmp_path / "elsewhere").mkdir()
    assert window_on_file.files.write(tmp_path / "elsewhere" / "job.json")
    assert window_on_file.session.job.order.price_list == "prices.csv"
