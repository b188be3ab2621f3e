import csv

import pytest

from configurator.intake.fields import FIELDS, fields_named
from configurator.intake.words import accepted, says_nothing, word
from configurator.model.paths import vocabulary
from configurator.resource_files import resource_path

OWN = {"swing": {"in", "out"}, "flag": {"yes", "no"}}
VOCABULARIES = {
    "hand": "hand", "leaves": "leaves", "door": "door.construction", "frame": "frame.kind",
    "exposure": "use.exposure", "traffic": "use.traffic", "hung_on": "hung_on", "status": "status",
}  # fmt: skip


def rows(name):
    with resource_path("intake", name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_every_word_means_one_that_a_project_file_accepts():
    for row in rows("words.csv"):
        allowed = OWN.get(row["field"]) or {*vocabulary()[VOCABULARIES[row["field"]]], "double egress"}
        assert row["means"] in {*allowed, ""}, row
        assert row["means"] or row["because"], row
        assert word(row["field"], row["written"]).means == row["means"]


def test_no_word_stands_twice_with_two_meanings():
    seen = {}
    for row in rows("words.csv"):
        key = row["field"], "".join(filter(str.isalnum, row["written"]))
        assert seen.setdefault(key, row["means"]) == row["means"], row


def test_every_heading_leads_to_its_field():
    for row in rows("headings.csv"):
        assert row["field"] in FIELDS
        assert row["field"] in fields_named(row["heading"]), row
        assert row["field"] in fields_named(row["heading"].upper()), row


def test_only_door_stands_for_two_things():
    assert {row["heading"] for row in rows("headings.csv") if len(fields_named(row["heading"])) > 1} == {
        "door"
    }


@pytest.mark.parametrize(
    ("field", "first"), [("hand", "LH"), ("frame", "knocked-down drywall"), ("swing", "in")]
)
def test_a_refusal_can_name_what_is_accepted(field, first):
    assert accepted(field).startswith(first)


def test_what_says_nothing_and_what_does():
    assert all(says_nothing(cell) for cell in ("", "-", "—", "N/A", "n.a.", "--", " . "))
    assert not any(says_nothing(cell) for cell in ("0", "no", "none", "x", "-1"))
