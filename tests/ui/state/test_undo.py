"""Undo and redo through the session, over whatever a user may do."""

import tempfile
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from configurator.project_file import load
from configurator.ui.state.session import Session
from tests.sweeps import examples

EDITS = st.tuples(
    st.sampled_from(["location", "size.width", "door.thickness", "job.name", "quantity", "mark"]),
    st.sampled_from([1, 2, "3", "x", None]),
)
ACTIONS = st.lists(
    EDITS | st.sampled_from(["add", "copy", "remove", "next", "undo", "redo", "save"]), max_size=20
)


def act(session: Session, action: object, path: Path) -> None:
    marks = [opening.mark for opening in session.job.openings]
    if isinstance(action, tuple):
        session.edit(*action)
    elif action == "add":
        session.add_opening()
    elif action == "save":
        session.save(path)
    elif action in ("undo", "redo"):
        getattr(session, action)()
    elif not marks:
        return
    elif action == "copy":
        session.add_opening(session.opening)
    elif action == "remove":
        session.remove_opening()
    else:
        session.select(marks[-1])


@examples(30)
@given(ACTIONS)
def test_undo_to_the_start_gives_the_first_state_and_redo_the_last(actions):
    session = Session(studier=lambda *_: None)
    first = on_disk = session.job
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.json"
        for action in actions:
            act(session, action, path)
            on_disk = session.job if action == "save" else on_disk
            assert session.history.unsaved or session.job == on_disk
            assert not path.exists() or load(path) == on_disk
        session.let_go()
    while session.history.redo_name is not None:
        session.redo()
    last = session.job
    while session.history.undo_name is not None:
        session.undo()
    assert session.job == first
    while session.history.redo_name is not None:
        session.redo()
    assert session.job == last


def test_steps_are_named_and_typing_in_one_field_is_one_step():
    session = Session(studier=lambda *_: None)
    for text in ("G", "Ga", "Gal"):
        session.edit("location", text)
    assert session.history.undo_name == "change location of 101"
    session.undo()
    assert session.opening.location is None
    assert session.history.redo_name == "change location of 101"


def test_typing_on_after_a_save_is_a_step_of_its_own(tmp_path):
    session = Session(studier=lambda *_: None)
    session.edit("location", "Gal")
    session.save(tmp_path / "job.json")
    session.edit("location", "Galley")
    session.undo()
    assert session.opening.location == "Gal"
    assert not session.history.unsaved
    session.let_go()
