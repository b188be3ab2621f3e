"""Old files: a real sample of every version that ever was, and the steps between them."""

import json
import re
from pathlib import Path

import pytest

from configurator import project_file
from configurator.model import VERSION
from configurator.project_file import ProjectFileError, dump, load, parse
from configurator.project_file.migrations import STEPS, brought_up

SAMPLES = Path(__file__).parent / "old_formats"


def test_there_is_a_sample_of_every_version_and_a_step_from_every_older_one():
    samples, wanted = (
        {path.name for path in SAMPLES.iterdir()},
        {f"version_{n}.json" for n in range(1, VERSION + 1)},
    )
    assert samples == wanted, "a real file of each in tests/project_file/old_formats/"
    assert set(STEPS) == set(range(1, VERSION)), "a step for each in project_file/migrations.py"
    told = (project_file.__doc__ or "").partition("Format history")[2].partition("Keys\n")[0]
    lines = re.findall(r"^(\d+) +\w", told, re.MULTILINE)
    assert lines == [str(n) for n in range(1, VERSION + 1)], "a line for each in project_file/__init__.py"


@pytest.mark.parametrize("path", sorted(SAMPLES.iterdir()), ids=lambda path: path.stem)
def test_every_old_file_is_read_and_takes_the_present_form(path):
    before = path.read_bytes()
    assert json.loads(before)["version"] == int(re.sub(r"\D", "", path.stem))
    job = load(path)
    assert [opening.mark for opening in job.openings][:2] == ["101A", "112A"]
    assert json.loads(dump(job))["version"] == VERSION
    assert parse(dump(job)) == job
    assert path.read_bytes() == before


def test_steps_are_taken_one_after_the_other_from_where_the_file_is():
    steps = {1: lambda old: {**old, "a": 1}, 2: lambda old: {**old, "b": old.get("a", 0) + 1}}
    assert brought_up({"version": 1}, 3, steps) == {"version": 3, "a": 1, "b": 2}
    assert brought_up({"version": 2}, 3, steps) == {"version": 3, "b": 1}
    assert brought_up({"version": 3}, 3, steps) == {"version": 3}


def test_the_document_given_is_left_as_it_was():
    document = {"version": 1}
    brought_up(document, 2, {1: lambda old: {**old, "a": 1}})
    assert document == {"version": 1}


@pytest.mark.parametrize(("version", "words"), [(0, "whole number"), (VERSION + 1, "newer program")])
def test_what_is_no_version_or_a_newer_one_is_refused_by_name(version, words):
    data = json.dumps({"format": "opening-project", "version": version, "openings": []}).encode()
    with pytest.raises(ProjectFileError, match=words) as caught:
        parse(data)
    assert caught.value.faults[0].field == "version"


def test_ordered_was_a_status_once_and_is_a_state_of_its_own():
    """What had been measured before it was ordered was overwritten, so it is assumed."""
    rows = [
        {"mark": "1", "size": "3070", "status": "ordered"},
        {"mark": "2", "size": "3070", "status": "approved"},
        {"mark": "3", "size": "3070", "status": "ordered", "order_state": "received"},
    ]
    old = {"format": "opening-project", "version": 1, "openings": rows}
    job = parse(json.dumps(old).encode())
    assert [(one.status, one.order_state) for one in job.openings] == [
        ("assumed", "ordered"), ("approved", "not ordered"), ("assumed", "received"),
    ]  # fmt: skip
    assert rows[0]["status"] == "ordered", "what was read stays as it is"
    assert "status" not in json.loads(dump(job))["openings"][0]
    assert parse(dump(job)) == job
