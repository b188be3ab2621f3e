"""What a terminal is shown: of a study, and of its widths, with the widths as data."""

import json

import pytest

from configurator.cli import main
from configurator.export.plain_text import job_as_text, widths_as_text
from configurator.resource_files import resource_path
from configurator.rules.finding import Finding
from configurator.study import study
from configurator.study.widths.leaf_widths import widths_of
from tests.openings import RAIL, plain_opening

DEMO = str(resource_path("demo_openings", "kestrel_point.json"))


def test_the_text_begins_with_the_answer():
    lines = widths_as_text("9", widths_of(study(plain_opening(obstructions=[RAIL])))).splitlines()
    assert lines[1:4] == [
        "9: widths and angles",
        "--------------------",
        "Least hinge open width for 180°: 4-3/8 in exactly; next in stock 4-1/2.",
    ]
    assert lines[4].startswith("Barrel free by 1/32 in from 3.893 in; opens to 180° from 4-3/8 in")
    assert [line.split()[0] for line in lines[5:]] == ["Open", "4", "4-1/2", "5", "6", "7", "8"]


def test_each_leaf_of_two_has_a_heading_of_its_own():
    text = widths_as_text("9", widths_of(study(plain_opening(leaves="dutch", split_height=42))))
    assert "9, lower leaf: widths and angles" in text
    assert "9, upper leaf: widths and angles" in text


@pytest.mark.parametrize("asked", [True, False])
def test_the_command_adds_them_when_asked(capsys, asked):
    assert main(["compare", DEMO, "--mark", "112A", *(["--widths"] if asked else [])]) == 0
    assert ("112A: widths and angles" in capsys.readouterr().out) is asked


def test_the_command_adds_them_to_the_data(capsys):
    assert main(["compare", DEMO, "--mark", "112A", "--json", "--widths"]) == 0
    (opening,) = json.loads(capsys.readouterr().out)["openings"]
    (leaf,) = opening["widths"]
    assert leaf["next_in_stock"] == 4.5
    assert main(["compare", DEMO, "--mark", "112A", "--json"]) == 0
    assert "widths" not in json.loads(capsys.readouterr().out)["openings"][0]


def test_a_source_that_is_its_own_mark_is_said_once():
    practice = "common practice, no source"
    found = Finding("usual", "note", "Take the usual.", practice, "common practice")
    assert job_as_text((found,)).endswith(f"note: Take the usual. [{practice}]\n")


def test_a_source_beside_its_mark_says_both():
    found = Finding("plan", "note", "It fits.", "worked out from the plan", "derived")
    assert "[worked out from the plan (derived here)]" in job_as_text((found,))


@pytest.mark.parametrize(
    ("mark", "said"),
    [
        ("112A", "Recommended: 3 hinges 4-1/2 x 4-1/2."),
        ("126C", "No hinge is recommended: 1 error stands against it."),
    ],
)
def test_it_says_which_hinges_are_recommended_or_that_none_is(capsys, mark, said):
    main(["compare", DEMO, "--mark", mark])
    assert said in capsys.readouterr().out.splitlines()
