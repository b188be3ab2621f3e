"""An order frozen in the job's file, and what has changed since it went out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.documents.changes import changes_as_data, changes_document
from configurator.model import Job, Revision
from configurator.order.book import tally_job
from configurator.order.lines import NO_SPARE, Spare, parse_spare
from configurator.order.revisions import (
    RevisionError,
    changes_since,
    freeze,
    marked_ordered,
    print_of,
    spare_of,
    standing,
    with_revision,
)
from configurator.order.take_off import take_off
from configurator.project_file import ProjectFileError, dump, parse
from tests.openings import ON_PIVOTS, plain_opening
from tests.order.cases import data, job_of
from tests.sweeps import examples


def order_of(job, spare=None):
    return take_off(tally_job(job), job.job, spare)


def frozen(*openings, spare=None):
    job = job_of(*openings)
    return with_revision(job, freeze(job, order_of(job, spare), "2026-11-25", "first order"))


def since(job, *openings):
    """What changed if the openings of a job with a revision are now these."""
    now = Job.model_validate({**job.model_dump(exclude_unset=True), "openings": openings})
    revision = now.revisions[-1]
    return changes_since(revision, now, order_of(now, spare_of(revision)))


def test_a_revision_is_what_was_ordered():
    (revision,) = frozen(
        data("1", quantity=2), data("2", hinge={"width": 5}), spare=parse_spare("5%")
    ).revisions
    assert (revision.number, revision.date, revision.note, revision.spare) == (
        1, "2026-11-25", "first order", "5%",
    )  # fmt: skip
    assert [(line.width, line.marks, line.spare) for line in revision.lines] == [
        (4, {"1": 6}, 1),
        (5, {"2": 3}, 1),
    ]
    assert revision.lines[0].screws == {"machine": "8"}
    assert set(revision.openings) == {"1", "2"}


def test_nothing_changed_says_so():
    job = frozen(data("1"), data("2"))
    found = since(job, data("1"), data("2"))
    assert (found.lines, found.openings) == ((), ())
    assert found.words() == "Nothing has changed since revision 1."


def test_tile_on_the_wall_after_the_order_changes_three_hinges():
    """The width goes up: three of the old to return and three of the new to order."""
    job = frozen(data("1", quantity=1), data("2"))
    found = since(job, data("1", hinge={"width": 4.5}), data("2"))
    assert [(line.hinge.width, line.was, line.now, line.order, line.back) for line in found.lines] == [
        (4, 6, 3, 0, 3),
        (4.5, 0, 3, 3, 0),
    ]
    (opening,) = found.openings
    assert (opening.mark, opening.kind, opening.differs) == ("1", "other hinges", ("width",))
    assert found.words() == (
        "Since revision 1, 1 opening is not as it was: 3 hinges more to order, 3 no longer wanted."
    )


def test_an_order_says_which_revision_it_is():
    job = frozen(data("1"), data("2"), spare=parse_spare("5%"))
    assert standing(job_of(data("1")), order_of(job)) == ""
    assert standing(job, order_of(job, parse_spare("5%"))) == "as kept in revision 1 of 2026-11-25"
    assert standing(job, order_of(job)) == "not as kept in revision 1 of 2026-11-25", "no spare"
    other = Job.model_validate({**job.model_dump(exclude_unset=True), "openings": [data("1")]})
    assert standing(other, order_of(other, parse_spare("5%"))).startswith("not as kept")


def test_a_revision_that_cannot_be_read_is_said():
    job = frozen(data("1"))
    (revision,) = job.revisions
    line = revision.lines[0].model_copy(update={"screws": {"machine": "many"}})
    broken = job.model_copy(update={"revisions": (revision.model_copy(update={"lines": (line,)}),)})
    assert standing(broken, order_of(job)) == "revision 1 of 2026-11-25 cannot be read"


def test_openings_come_and_go():
    found = since(frozen(data("1"), data("2")), data("2"), data("3", quantity=2))
    assert [(one.mark, one.kind) for one in found.openings] == [("1", "gone"), ("3", "new")]
    (line,) = found.lines
    assert (line.was, line.now, found.order, found.back) == (6, 9, 3, 0)


def test_another_quantity_is_a_change_of_the_opening():
    (opening,) = since(frozen(data("1")), data("1", quantity=2)).openings
    assert opening.differs == ("quantity",)


def test_an_opening_that_changed_and_takes_the_same_hinges_is_named():
    found = since(frozen(data("1")), data("1", size={"width": 35, "height": 84}))
    assert (found.lines, found.openings, found.same_hinges) == ((), (), ("1",))
    assert found.words() == (
        "Nothing has changed since revision 1. 1 opening was described anew and takes the same hinges."
    )


@pytest.mark.parametrize(
    "change", [{"use": {"fire_rated": True}}, {"hinge": {"screws": {"machine": 12, "wood": 12}}}]
)
def test_a_label_or_other_screws_return_and_order_nothing(change):
    """They make no other product: what lies at the supplier is what is wanted."""
    found = since(frozen(data("1"), data("2")), data("1", **change), data("2"))
    assert (found.lines, found.openings, found.order, found.back) == ((), (), 0, 0)


def test_lines_of_one_product_frozen_apart_are_one_product():
    """As an order was kept that had a line of its own for labelled doors."""
    job = frozen(data("1"), data("2", use={"fire_rated": True}))
    assert [(line.fire, line.marks) for line in job.revisions[-1].lines] == [
        (False, {"1": 3}),
        (True, {"2": 3}),
    ]
    assert since(job, data("1"), data("2")).lines == ()


def test_status_location_and_notes_are_not_the_opening():
    changed = data("1", order_state="ordered", location="moved", notes="seen")
    assert since(frozen(data("1")), changed).openings == ()


def test_the_print_knows_no_usual_values():
    plain, said = (
        job_of(data("1", **changes)).openings[0] for changes in ({}, {"quantity": 1, "notes": None})
    )
    assert print_of(plain) == print_of(said)
    assert print_of(plain) != print_of(job_of(data("1", quantity=2)).openings[0])


def test_the_same_spare_is_asked_for_again():
    job = frozen(data("1", quantity=20), spare=parse_spare("5%"))
    assert spare_of(job.revisions[0]) == parse_spare("5%")
    (line,) = since(job, data("1", quantity=21)).lines
    assert (line.was, line.now) == (63, 67)
    assert spare_of(frozen(data("1")).revisions[0]) == NO_SPARE


def test_spare_that_cannot_be_read_is_refused():
    with pytest.raises(RevisionError, match="revision 1, spare: "):
        spare_of(Revision.model_validate({"number": 1, "spare": "lots"}))


def test_numbers_go_up_by_one_and_stand_once():
    job = frozen(data("1"))
    second = freeze(job, order_of(job))
    assert second.number == 2
    assert [one.number for one in with_revision(job, second).revisions] == [1, 2]
    with pytest.raises(RevisionError, match="a revision 1 or a later one"):
        with_revision(job, job.revisions[0])


def test_an_order_that_does_not_add_up_is_not_frozen():
    job = job_of(data("1"))
    order = order_of(job)
    object.__setattr__(order.reconciliation, "by_lines", 2)
    with pytest.raises(RevisionError, match="DIFFER"):
        freeze(job, order)


def test_a_file_with_revisions_comes_back_byte_for_byte():
    job = frozen(
        data("1", hinge={"screws": {"machine": 25}}), data("=2", leaves="dutch"), spare=Spare(each=2)
    )
    first = dump(job)
    again = parse(first)
    assert again == job
    assert dump(again) == first
    assert again.revisions[0].lines[0].screws["machine"] in ("8", "25/3")


def test_a_file_without_revisions_has_no_such_key():
    assert b"revisions" not in dump(job_of(data("1")))


@pytest.mark.parametrize(
    ("revisions", "field"),
    [
        ([{"number": 0}], "revisions[0].number"),
        ([{"number": 2}, {"number": 1}], "revisions"),
        ([{"number": 1}, {"number": 1}], "revisions"),
        ([{"number": 1, "by": "me"}], "revisions[0].by"),
        ([{"number": 1, "lines": [{}]}], "revisions[0].lines[0].item"),
    ],
)
def test_a_file_with_bad_revisions_is_refused_by_field(revisions, field):
    import json

    document = {"format": "opening-project", "version": 1, "revisions": revisions}
    with pytest.raises(ProjectFileError) as refused:
        parse(json.dumps(document).encode())
    assert refused.value.faults[0].field == field


COUNTS = st.dictionaries(st.sampled_from("ABCDE"), st.tuples(st.integers(1, 9), st.sampled_from([4, 5])))


@examples(25)
@given(COUNTS, COUNTS)
def test_what_was_ordered_and_the_changes_make_what_is_wanted(before, after):
    def openings(counts):
        return [data(mark, quantity=n, hinge={"width": w}) for mark, (n, w) in counts.items()]

    job = frozen(*openings(before))
    found = since(job, *openings(after))
    was, now = (sum(3 * n for n, _ in counts.values()) for counts in (before, after))
    assert was + found.order - found.back == now
    assert {one.mark for one in found.openings} == {
        mark for mark in {*before, *after} if before.get(mark) != after.get(mark)
    }


def test_the_openings_of_an_order_are_marked_ordered_and_nothing_else_of_them_changes():
    held = data("3", hinge={"count": 2})
    job = job_of(data("1"), data("2", **ON_PIVOTS), held, data("4", order_state="ordered"))
    order = order_of(job)
    ordered = marked_ordered(job, order)
    assert [one.order_state for one in ordered.openings] == ["ordered", "ordered", "not ordered", "ordered"]
    assert {one.status for one in ordered.openings} == {"assumed"}, "to order verifies nothing"
    assert ordered.openings[2] is job.openings[2]
    assert parse(dump(ordered)) == ordered
    later = with_revision(ordered, freeze(ordered, order))
    assert changes_since(later.revisions[-1], later, order_of(later)).openings == ()


def test_an_opening_that_an_error_holds_since_is_named_so():
    (one,) = since(frozen(data("1"), data("2")), data("1", hinge={"count": 2}), data("2")).openings
    assert (one.mark, one.kind, one.now) == ("1", "held by an error", ())


# --- What is no butt ---


def _job(*openings):
    return Job(openings=tuple(openings))


def test_what_is_no_butt_is_kept_and_compared():
    pivots = plain_opening(mark="1", **ON_PIVOTS, quantity=2)
    loop = plain_opening(mark="2", hinge={"transfer": "door loop", "wires": 4})
    job = _job(pivots, loop)
    kept = freeze(job, order_of(job))
    assert not changes_since(kept, job, order_of(job)).ways
    assert Revision.model_validate(kept.model_dump(exclude_none=True)) == kept

    more = _job(plain_opening(mark="1", **ON_PIVOTS, quantity=3), plain_opening(mark="2"))
    changes = changes_since(kept, more, order_of(more))
    assert [(one.what.item, one.was, one.now, one.order, one.back) for one in changes.ways] == [
        ("offset pivot, top and bottom", 2, 3, 1, 0),
        ("door loop", 1, 0, 0, 1),
    ]
    assert {one.mark: one.differs for one in changes.openings} == {
        "1": ("what it hangs on",),
        "2": ("what it hangs on",),
    }
    assert "Of what is no butt 1 more to order, 1 no longer wanted." in changes.words()
    assert [one["return"] for one in changes_as_data(changes)["other_ways"]] == [0, 1]
    assert "Hung another way" in [table.title for table in changes_document(changes).data]


def test_an_axis_typed_as_it_is_usual_is_the_same_thing():
    usual = {"hung_on": "offset pivot"}
    given = {**usual, "axis_off_face": 0.75, "axis_from_heel": 0.75}
    job, typed = (_job(plain_opening(**ON_PIVOTS, compare=[one])) for one in (usual, given))
    kept = freeze(job, order_of(job))
    assert changes_since(kept, typed, order_of(typed)).ways == ()


def test_a_revision_that_kept_no_other_ways_says_so():
    job = _job(plain_opening(**ON_PIVOTS))
    old = freeze(job, order_of(job)).model_copy(update={"other_ways": None})
    changes = changes_since(old, job, order_of(job))
    assert changes.ways is None
    assert "not kept in it: compare that by hand" in changes.words()
    assert changes_as_data(changes)["other_ways"] is None
