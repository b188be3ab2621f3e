import json

import pytest

from configurator.cli import main
from tests.openings import RAIL, plain_data


def job(path, **changes):
    file = path / "job.json"
    changes = {"door": {"latch_bevel": 0.0625}, **changes}
    opening = plain_data(obstructions=[RAIL], **changes)
    file.write_text(json.dumps({"format": "opening-project", "version": 1, "openings": [opening]}))
    return str(file)


def test_how_sure_stands_beside_every_candidate_only_when_asked_for(tmp_path, capsys):
    file = job(tmp_path)
    assert main(["compare", file, "--json", "--sure"]) == 0
    narrow, wide = json.loads(capsys.readouterr().out)["openings"][0]["candidates"]
    assert narrow["how_sure"]["works"] is False
    assert wide["how_sure"]["works"] is True
    assert wide["how_sure"]["margin"] == pytest.approx(1 / 8, abs=2e-9)
    assert 0 < wide["how_sure"]["chance"] < 1
    assert wide["how_sure"]["draws"] == 10_000
    assert main(["compare", file, "--json"]) == 0
    assert "how_sure" not in capsys.readouterr().out


def test_the_text_has_a_line_for_every_width_and_the_tolerances_below(tmp_path, capsys):
    file = job(tmp_path, tolerances={"hinge_width": "1/32"})
    assert main(["compare", file, "--sure"]) == 0
    said = capsys.readouterr().out.split("1: how sure\n===========\n")[1]
    assert said.startswith("4 in hinge: Does not work as drawn: it stops at 171.7°")
    assert "\n4-1/2 in hinge: Works as drawn with 1/8 in to spare, but " in said
    assert "The wall thickness matters most." in said
    assert "hinge width 1/32 in" in said
    assert "hinge width 1/32 in (assumed)" not in said
    assert "frame setting 1/16 in (assumed)" in said


def test_both_leaves_are_named(tmp_path, capsys):
    file = job(tmp_path, leaves="dutch", compare=[4.5])
    assert main(["compare", file, "--sure"]) == 0
    said = capsys.readouterr().out
    assert "4-1/2 in hinge, upper leaf: Works" in said
    assert "4-1/2 in hinge, lower leaf: Works" in said


def test_tolerances_that_leave_no_door_are_refused_as_input(tmp_path, capsys):
    file = job(tmp_path, door={"thickness": 0.5}, tolerances={"door_thickness": 0.5})
    assert main(["compare", file, "--sure"]) == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert "openings[0].tolerances: A thickness tolerance of 1/2 in leaves nothing of a door" in shown.err
