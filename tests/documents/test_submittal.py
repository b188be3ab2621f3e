"""The submittal: cover, schedule, order lines and cautions in one document."""

from configurator.documents.submittal import NOT_KNOWN_HERE, cautions_of, submittal_document
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from tests.order.cases import data, job_of

FIRE = data("2", use={"fire_rated": True, "wanted_angle": 90})


def submitted(*openings, **facts):
    job = job_of(*openings, **facts)
    tallies = tally_job(job)
    return submittal_document(tallies, take_off(tallies, job.job))


def table(document, title):
    (found,) = [one for one in document.workbook if one.title == title]
    return found


def test_the_cover_says_whose_job_it_is_and_how_much():
    document = submitted(data("1", quantity=2), data("2", status="approved"), name="Terminal", notes="rush")
    assert table(document, "Job").rows == (
        ("Job", "Terminal"),
        ("Notes", "rush"),
        ("Openings", "3 under 2 marks: 2 assumed, 1 approved"),
        ("Hinges", "9 hinges = 4-1/2 pair"),
    )


def test_parts_stand_in_the_order_they_are_read():
    document = submitted(data("1"), data("2", hung_on="pivots"), name="Terminal")
    titles = [one.title for one in document.sheets]
    assert titles == ["Hardware by opening", "Order", "Not ordered", "Cautions"]
    assert document.cover
    assert document.head[0] == ("Openings", "2 under 2 marks: 2 assumed")


def test_a_fire_door_is_cautioned_about_with_its_mark_and_source():
    document = submitted(data("1"), FIRE)
    (row,) = [row for row in table(document, "Cautions").rows if "listing" in row[1]]
    assert row[0] == "warning"
    assert row[2] == "2"
    assert row[3]
    assert NOT_KNOWN_HERE in document.notes


def test_each_caution_stands_once_with_all_its_marks():
    job = job_of(FIRE, {**FIRE, "mark": "3"})
    tallies = tally_job(job)
    found = cautions_of(tallies, take_off(tallies, job.job))
    sentences = [one.finding.message for one in found]
    assert len(sentences) == len(set(sentences))
    assert ("2", "3") in [one.marks for one in found]


def test_what_nobody_measured_is_named():
    assert any(
        note.startswith("1 mark is assumed, not measured: 1.")
        for note in submitted(data("1"), data("2", status="field verified")).notes
    )
    assert not any("not measured" in note for note in submitted(data("2", status="field verified")).notes)


def test_one_table_holds_all_of_it():
    (whole,) = submitted(data("1", quantity=20), data("2", hung_on="pivots"), name="Terminal").data
    by_part = {}
    for row in whole.rows:
        by_part.setdefault(row[0], []).append(row)
    assert set(by_part) >= {"job", "heading", "hardware", "order", "left out"}
    assert by_part["order"][0][2:5] == (60, "butt hinge", "4-1/2 x 4")
    assert by_part["left out"][0][8] == "2"
    assert all(len(row) == len(whole.columns) for row in whole.rows)


def test_an_empty_job_has_a_cover():
    assert table(submitted(), "Job").rows == (("Openings", "none"), ("Hinges", "0 hinges = 0 pair"))


def test_what_is_not_known_here_goes_into_every_file():
    document = submitted(data("1"))
    assert document.workbook[-1].rows[-1] == (NOT_KNOWN_HERE,)
    assert document.data[0].rows[-1][7] == NOT_KNOWN_HERE
    assert document.notes[-1] == NOT_KNOWN_HERE


def test_what_was_ordered_is_still_only_assumed():
    document = submitted(*(data(str(n), order_state="ordered" if n > 1 else "not ordered") for n in range(5)))
    cover = dict(table(document, "Job").rows)
    assert cover["Openings"] == "5 under 5 marks: 5 assumed; 2 not ordered, 3 ordered"
    assert any("5 marks are assumed, not measured" in note for note in document.notes)
