from configurator.model import Job, Revision
from configurator.ui.state import edits
from configurator.ui.state.status_warning import settled_changes


def job_of(*statuses, **more):
    openings = tuple(
        edits.edited(
            edits.typical_opening(f"{112 + place}A"),
            {"order_state" if status == "ordered" else "status": status},
        )
        for place, status in enumerate(statuses)
    )
    return Job(openings=openings, **more)


def changed(job, path, value, places=(0,)):
    openings = tuple(
        edits.edited(opening, {path: value}) if place in places else opening
        for place, opening in enumerate(job.openings)
    )
    return edits.with_openings(job, openings)


def said(job, path, value, places=(0,), told=frozenset()):
    return settled_changes(job.openings, changed(job, path, value, places), told)


def test_an_opening_that_was_ordered_is_named_when_it_is_changed():
    told, sentence = said(job_of("ordered"), "quantity", 2)
    assert sentence == "112A is marked ordered; no order of this job is kept as a revision to compare with."
    assert told == {"112A"}


def test_what_was_ordered_is_where_the_revisions_are():
    revision = Revision.model_construct(number=1)
    job = job_of("ordered").model_copy(update={"revisions": (revision,)})
    after = changed(job_of("ordered"), "quantity", 2).model_copy(update={"revisions": (revision,)})
    _, sentence = settled_changes(job.openings, after, frozenset())
    assert sentence == "112A is marked ordered; what was ordered is kept under revisions."


def test_an_approved_one_too_and_many_are_named_in_short():
    _, sentence = said(job_of(*["approved"] * 5), "hand", "LH", range(5))
    assert (
        sentence == "112A, 113A, 114A and 2 more are marked approved; what is changed now was not approved."
    )


def test_nothing_is_said_of_others_nor_of_notes_nor_twice():
    assert said(job_of("assumed"), "quantity", 2) == (frozenset(), "")
    assert said(job_of("field verified"), "quantity", 2)[1] == ""
    for path, value in (("notes", "seen"), ("questions", "which?"), ("order_state", "not ordered")):
        assert said(job_of("ordered"), path, value)[1] == ""
    assert said(job_of("ordered"), "quantity", 2, told=frozenset({"112A"})) == (frozenset({"112A"}), "")


def test_it_is_said_again_once_the_status_was_set_anew():
    told, _ = said(job_of("assumed"), "order_state", "ordered", told=frozenset({"112A"}))
    assert told == frozenset()


def test_one_that_is_removed_or_renamed_is_named():
    job = job_of("ordered", "assumed")
    fewer = edits.with_openings(job, job.openings[1:])
    assert settled_changes(job.openings, fewer, frozenset())[1].startswith("112A is marked ordered")
    assert said(job, "mark", "999")[1].startswith("112A is marked ordered")
