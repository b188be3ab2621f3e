"""Schemas of the project file and of every result: what we write and read is as they say, key by key."""

import json

import pytest
from jsonschema import Draft202012Validator

from configurator.cli import main
from configurator.cli.schema import SCHEMAS
from configurator.resource_files import resource_path
from tests.openings import plain_data

DEMOS = ("kestrel_point", "pairs_and_dutch")
OTHER_HINGES = [
    {"mounting": mounting} for mounting in ("swing clear", "half mortise", "half surface", "full surface")
]


def schema(name):
    return json.loads(resource_path("schema", f"{name}.json").read_bytes())


def closed(part):
    """Return a schema that takes no key it does not name: other programs may meet new ones, our tests not."""
    if isinstance(part, list):
        return [closed(each) for each in part]
    if not isinstance(part, dict):
        return part
    found = {key: closed(value) for key, value in part.items()}
    return {"additionalProperties": False, **found} if "properties" in part else found


def lacks(name, data):
    faults = Draft202012Validator(closed(schema(name))).iter_errors(data)
    return [f"resources/schema/{name}.json, {fault.json_path}: {fault.message[:200]}" for fault in faults]


def printed(capsys, *words):
    assert main([str(word) for word in words]) == 0
    return json.loads(capsys.readouterr().out)


def job_file(tmp_path, *openings, **more):
    path = tmp_path / "job.json"
    path.write_text(json.dumps({"format": "opening-project", "version": 1, "openings": openings, **more}))
    return path


@pytest.mark.parametrize("name", SCHEMAS)
def test_each_is_a_schema_and_is_printed_as_it_stands_in_the_resources(capsys, name):
    wanted = f"write what `opening-configurator schema {name}` prints into resources/schema/{name}.json"
    assert printed(capsys, "schema", name) == schema(name), wanted
    Draft202012Validator.check_schema(schema(name))


@pytest.mark.parametrize("demo", DEMOS)
def test_the_demo_jobs_are_project_files(demo):
    assert lacks("project", json.loads(resource_path("demo_openings", f"{demo}.json").read_bytes())) == []


@pytest.mark.parametrize(
    ("given", "right"),
    [
        ({"door": {"thickness": "1-3/4"}}, True),
        ({"door": {"thickness": None}, "compare": None}, True),
        ({"door": {"thickness": 7}}, False),
        ({"door": {"thickness": True}}, False),
        ({"door": {"thick": 1.75}}, False),
        ({"hand": "left"}, False),
        ({"obstructions": [{"kind": "chair rail", "projection": "44 mm"}]}, True),
        ({"obstructions": [{"kind": "chair rail", "projection": -1}]}, False),
    ],
)
def test_the_schema_of_the_project_file_takes_and_refuses_what_the_program_does(
    tmp_path, capsys, given, right
):
    path = job_file(tmp_path, plain_data(**given))
    assert (lacks("project", json.loads(path.read_bytes())) == []) is right
    assert (main(["compare", str(path)]) == 0) is right
    capsys.readouterr()


@pytest.mark.parametrize("demo", DEMOS)
def test_every_result_of_the_demo_jobs_is_as_its_schema_says(capsys, demo):
    path = resource_path("demo_openings", f"{demo}.json")
    prices = resource_path("demo_openings", "kestrel_point_prices.csv")
    assert lacks("comparison", printed(capsys, "compare", path, "--json", "--widths")) == []
    assert lacks("order", printed(capsys, "order", path, "--json", "--screw-pack", 100)) == []
    assert lacks("schedule", printed(capsys, "schedule", path, "--json")) == []
    if demo == "kestrel_point":
        assert lacks("order", printed(capsys, "order", path, "--json", "--prices", prices)) == []


@pytest.mark.parametrize("mark", ["301A", "304A"])
def test_how_sure_it_is_of_two_leaves_is_as_its_schema_says(capsys, mark):
    path = resource_path("demo_openings", "pairs_and_dutch.json")
    result = printed(capsys, "compare", path, "--mark", mark, "--json", "--widths", "--sure")
    assert lacks("comparison", result) == []


def test_results_of_other_mountings_and_of_what_is_not_hung_here(tmp_path, capsys):
    others = [plain_data(mark=f"M{place}", hinge=one) for place, one in enumerate(OTHER_HINGES)]
    path = job_file(tmp_path, *others, plain_data(mark="P", hung_on="pivots"))
    assert lacks("comparison", printed(capsys, "compare", path, "--json", "--widths", "--sure")) == []
    assert lacks("order", printed(capsys, "order", path, "--json")) == []


def test_a_quote_and_what_lies_on_the_shelf(tmp_path, capsys):
    path, prices = job_file(tmp_path, plain_data(mark="A"), plain_data(mark="B")), tmp_path / "prices.csv"
    prices.write_text("size,price\n,10.00\n")
    quoted = printed(capsys, "order", path, "--json", "--as", "cost", "--prices", prices, "--margin", 25)
    assert quoted["quote"]
    assert lacks("order", quoted) == []
    shelf = printed(
        capsys, "order", path, "--json", "--substitute", f"5 x 5 for {quoted['lines'][0]['size']}"
    )
    assert [one["mark"] for one in shelf["substitution"]["openings"]] == ["A", "B"]
    assert lacks("order", shelf) == []


def test_what_changed_since_an_order_and_the_words(tmp_path, capsys):
    path = job_file(tmp_path, plain_data(mark="A"), plain_data(mark="B"))
    frozen = printed(capsys, "order", path, "--json", "--freeze", "as sent", "--with-errors")
    assert frozen["revision"] == 1
    assert lacks("order", frozen) == []
    job = json.loads(path.read_bytes())
    job["openings"][1]["hinge"] = {"height": 5}
    path.write_text(json.dumps(job))
    assert lacks("project", job) == []
    changes = printed(capsys, "order", path, "--json", "--since", 1)
    assert [one["mark"] for one in changes["openings"]] == ["B"]
    assert lacks("order-changes", changes) == []
    assert lacks("kinds", printed(capsys, "kinds", "--json")) == []


def test_a_key_that_is_missing_or_new_is_seen(capsys):
    data = printed(capsys, "compare", resource_path("demo_openings", "kestrel_point.json"), "--json")
    del data["openings"][0]["candidates"][0]["pin_across"]
    data["openings"][0]["new"] = 1
    assert len(lacks("comparison", data)) == 2


@pytest.mark.parametrize(
    ("words", "kind"), [(["compare"], "comparison"), (["order"], "order"), (["schedule"], "schedule")]
)
def test_a_result_says_what_it_is_first(capsys, words, kind):
    data = printed(capsys, *words, resource_path("demo_openings", "pairs_and_dutch.json"), "--json")
    assert list(data)[:3] == ["format", "version", "units"]
    assert data["format"] == f"opening-{kind}"
    assert data["units"] == {"length": "in", "angle": "degrees", "weight": "lb"}
