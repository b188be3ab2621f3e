import pytest

from configurator.model import Job
from configurator.ui.state.session import Session
from configurator.ui.window.openings import OpeningsList


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
    assert heights == {24}
    while listed.session.opening is not None:
        listed.session.remove_opening()
    assert shown(listed) == []
    listed.session.add_opening()
    assert shown(listed) == [("101", "101")]
    assert listed.list.visualItemRect(listed.list.item(0)).height() == 24
