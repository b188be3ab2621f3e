import pytest
from PySide6.QtCore import QModelIndex, Qt

from configurator.model import Job
from configurator.ui.state.session import Session
from configurator.ui.window.openings import SIGNS, OpeningsList


@pytest.fixture
def listed(qtbot):
    rows = [{"mark": str(number), "size": "3070"} for number in range(101, 106)]
    found = OpeningsList(Session(Job.model_validate({"openings": rows})))
    qtbot.addWidget(found)
    found.session.changed.connect(lambda _: found.show_state())
    found.show_state()
    return found


def shown(listed):
    items = [listed.list.item(row) for row in range(listed.list.count())]
    return [(item.text(), item.toolTip()) for item in items]


def test_only_the_opening_that_changed_is_written_anew(listed):
    items = [listed.list.item(row) for row in range(5)]
    listed.session.select("103")
    listed.session.edit("location", "Galley")
    listed.session.edit("mark", "103A")
    assert [listed.list.item(row) for row in range(5)] == items
    assert shown(listed)[2] == ("103A", "103A: Galley")
    assert shown(listed)[1] == ("102", "102")
    assert listed.list.currentRow() == 2


def test_another_number_of_openings_is_another_list(listed):
    listed.session.select("102")
    listed.session.remove_opening()
    assert [mark for mark, _ in shown(listed)] == ["101", "103", "104", "105"]
    listed.session.undo()
    assert [mark for mark, _ in shown(listed)] == ["101", "102", "103", "104", "105"]
    listed.session.undo()
    assert len(shown(listed)) == 5


def test_every_row_is_as_high_and_the_last_opening_may_go(listed):
    listed.show()
    heights = {listed.list.visualItemRect(listed.list.item(row)).height() for row in range(5)}
    assert heights == {36}
    while listed.session.opening is not None:
        listed.session.remove_opening()
    assert shown(listed) == []
    listed.session.add_opening()
    assert shown(listed) == [("101", "101")]
    assert listed.list.visualItemRect(listed.list.item(0)).height() == 36


def marks(listed):
    return [listed.list.item(row).text() for row in range(listed.list.count())]


def in_sight(listed):
    return [mark for row, mark in enumerate(marks(listed)) if not listed.list.isRowHidden(row)]


def test_an_opening_is_found_as_it_is_typed_by_its_mark_or_its_location(qtbot, listed):
    listed.session.select("104")
    listed.session.edit("location", "Galley store")
    listed.show()
    qtbot.keyClicks(listed.words, "gal")
    assert in_sight(listed) == ["104"]
    assert not listed.list.dragEnabled()
    qtbot.keyClick(listed.words, Qt.Key.Key_Escape)
    assert in_sight(listed) == marks(listed)
    qtbot.keyClicks(listed.words, "103")
    qtbot.keyClick(listed.words, Qt.Key.Key_Return)
    assert listed.session.mark == "103"
    listed.session.edit("mark", "999")
    assert in_sight(listed) == []


def test_rows_are_dragged_into_another_order_and_one_undo_takes_it_back(listed):
    listed.session.select("102")
    model = listed.list.model()
    assert model.moveRow(QModelIndex(), 1, QModelIndex(), 4)  # what a drop below the fourth row does
    assert [one.mark for one in listed.session.job.openings] == ["101", "103", "104", "102", "105"]
    assert listed.session.history.undo_name == "move 102"
    assert listed.session.mark == "102"
    assert marks(listed) == ["101", "103", "104", "102", "105"]
    listed.session.undo()
    assert marks(listed) == ["101", "102", "103", "104", "105"]


def test_an_opening_is_moved_and_stepped_to_by_keys_and_stays_at_the_ends(listed):
    listed.shift(1)
    assert marks(listed) == ["102", "101", "103", "104", "105"]
    listed.shift(-1)
    listed.shift(-1)
    assert marks(listed) == ["101", "102", "103", "104", "105"]
    listed.step(1)
    assert listed.session.mark == "102"
    listed.step(-9)
    assert listed.session.mark == "101"


RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
STANDING = {
    "101": {},
    "102": {"obstructions": [RAIL]},
    "103": {"use": {"fire_rated": True}, "door": {"undercut": 2}},
    "104": {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}},
}


def test_a_sign_tells_how_an_opening_stands_by_shape_colour_and_words(qtbot):
    rows = [{"mark": mark, "size": "3070", "compare": [4, 4.5], **more} for mark, more in STANDING.items()]
    listed = OpeningsList(Session(Job.model_validate({"openings": rows})))
    qtbot.addWidget(listed)
    listed.show_state()
    listed.resize(120, 400)
    listed.show()
    listed.begin()
    qtbot.waitUntil(lambda: not listed.standings.working.running)
    found = {item.text(): item for item in (listed.list.item(row) for row in range(4))}
    said = {mark: item.data(Qt.ItemDataRole.AccessibleTextRole) for mark, item in found.items()}
    wanted = {}
    for mark in STANDING:
        listed.session.select(mark)
        study = listed.session.study
        severities = {one.severity for one in study.all_findings()} if study else {"refused"}
        worst = next((each for each in ("refused", "error", "warning") if each in severities), "fine")
        wanted[mark] = {"error": "fails", "warning": "warns"}.get(worst, worst)
    assert {mark: said[mark] for mark in STANDING} == {
        mark: f"{mark}, {SIGNS[standing][2]}" for mark, standing in wanted.items()
    }
    assert {"warns", "refused"} <= set(wanted.values())
    assert len({sign for sign, _, _ in SIGNS.values()}) == len(SIGNS)


def test_only_what_is_in_view_is_worked_out(qtbot):
    rows = [{"mark": str(number), "size": "3070"} for number in range(1, 201)]
    listed = OpeningsList(Session(Job.model_validate({"openings": rows})))
    qtbot.addWidget(listed)
    listed.show_state()
    listed.resize(120, 400)
    listed.show()
    listed.begin()
    qtbot.waitUntil(lambda: not listed.standings.working.running)
    worked = [row for row in range(200) if listed.list.item(row).data(Qt.ItemDataRole.AccessibleTextRole)]
    assert worked == list(listed.rows_in_view())
    assert 3 < len(worked) < 20


def test_a_right_click_offers_what_can_be_done_with_an_opening(bare_window):
    assert bare_window.openings.list.contextMenuPolicy() == Qt.ContextMenuPolicy.ActionsContextMenu
    offered = [action.text() for action in bare_window.openings.list.actions()]
    assert offered == [
        "Add an opening",
        "Copy the opening",
        "Remove the opening",
        "Move the opening up",
        "Move the opening down",
    ]
