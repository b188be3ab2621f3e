import pytest
from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester

from configurator.ui.schedule.arranging import Wanted
from configurator.ui.schedule.columns import COLUMNS, PLACES, UNKNOWN
from configurator.units import Display


@pytest.fixture
def watched(schedule):
    """The model under the eyes of Qt's own tester: pytest-qt fails the test for what that complains of."""
    tester = QAbstractItemModelTester(schedule, QAbstractItemModelTester.FailureReportingMode.Warning)
    yield schedule
    del tester


def index(model, mark, key):
    row = next(row for row in range(model.rowCount()) if model.index(row, 0).data() == mark)
    return model.index(row, PLACES[key])


def emitted(signal):
    calls = []
    signal.connect(lambda *arguments: calls.append(arguments))
    return calls


def test_qts_own_tester_finds_nothing_wrong_whatever_is_done(watched, session):
    for wanted in (Wanted(words="crew"), Wanted(grouped="like"), Wanted(words="nowhere"), Wanted(column=4)):
        watched.arrange(wanted)
    watched.arrange(Wanted())
    assert watched.setData(index(watched, "112A", "quantity"), "3")
    session.undo()
    watched.answers.work_out(watched.members(0)[0])
    watched.tell_answered([0])
    assert watched.rowCount() == 14
    assert watched.rowCount(watched.index(0, 0)) == 0
    assert watched.columnCount() == len(COLUMNS)


def test_a_row_says_what_is_known_and_that_the_rest_is_not_worked_out(schedule, cell):
    said = [schedule.index(1, place).data() for place in range(len(COLUMNS))]
    assert said == [
        "112A", "Crew mess to corridor", "1", "RH", "3'-0\" x 7'-0\"", "", "single", "knocked-down drywall",
        "hollow metal, 18 gage", "1-3/4 in", "", "yes", "", "",
        UNKNOWN, UNKNOWN, "○ assumed", "□ not ordered", UNKNOWN, "", "",
    ]  # fmt: skip
    schedule.answers.work_out(schedule.members(1)[0])
    assert [cell(schedule, "112A", key) for key in ("hinge", "angle")] == ["3 x 4-1/2 x 4-1/2", "178.8°"]
    assert cell(schedule, "112A", "findings").endswith("notes")


def test_lengths_are_in_the_units_on_show(schedule, session, cell):
    session.show_in(Display(metric=True))
    assert cell(schedule, "112A", "size") == "914.4 x 2133.6 mm"


def test_a_size_in_whole_millimetres_is_read_as_a_fraction_and_typed_as_it_is(schedule, session, cell):
    session.select("112A")
    session.edit("size", "915 x 2134 mm")
    schedule.show_job()
    assert cell(schedule, "112A", "size") == "3'-0 1/32\" x 7'-0 1/64\""
    edited = index(schedule, "112A", "size").data(Qt.ItemDataRole.EditRole)
    assert edited == "915 mm x 2134 mm"


def test_heads_have_titles_and_cells_are_spoken(schedule):
    assert schedule.headerData(4, Qt.Orientation.Horizontal, Qt.ItemDataRole.DisplayRole) == "Opening size"
    assert schedule.headerData(4, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole) == "width x height"
    assert schedule.headerData(0, Qt.Orientation.Vertical, Qt.ItemDataRole.DisplayRole) is None
    role = Qt.ItemDataRole.AccessibleTextRole
    assert index(schedule, "112A", "hand").data(role) == "Hand: RH"
    assert index(schedule, "112A", "angle").data(role) == "Opens to: not worked out yet"
    assert index(schedule, "112A", "questions").data(role) == "Questions: nothing"
    assert schedule.data(QModelIndex(), role) is None


def test_findings_are_coloured_by_the_worst_and_named_in_the_tooltip(schedule):
    row = index(schedule, "160A", "findings").row()
    schedule.answers.work_out(schedule.members(row)[0])
    found = index(schedule, "160A", "findings")
    assert found.data().startswith("1 error")
    assert "error: " in found.data(Qt.ItemDataRole.ToolTipRole)
    assert found.data(Qt.ItemDataRole.ForegroundRole) != index(schedule, "112A", "findings").data(
        Qt.ItemDataRole.ForegroundRole
    )


@pytest.mark.parametrize(
    ("key", "typed", "path", "value"),
    [
        ("quantity", "3", "quantity", 3),
        ("location", "Galley", "location", "Galley"),
        ("location", "", "location", None),
        ("hand", "LHR", "hand", "LHR"),
        ("order_state", "ordered", "order_state", "ordered"),
        ("leaves", "pair", "leaves", "pair"),
        ("questions", "Which lock?", "questions", "Which lock?"),
    ],
)
def test_a_cell_is_edited_through_the_session_as_one_named_step(schedule, session, key, typed, path, value):
    changed = emitted(schedule.dataChanged)
    assert schedule.setData(index(schedule, "112A", key), typed)
    assert getattr(session.job.openings[1], path) == value
    assert session.history.undo_name == f"change {COLUMNS[PLACES[key]].title.lower()} of 112A"
    assert [(top.row(), end.row()) for top, end, _ in changed] == [(1, 1)]
    session.undo()
    assert not session.history.unsaved


def test_a_size_is_typed_as_the_trade_writes_it_and_a_mark_changes_everywhere(schedule, session):
    assert schedule.setData(index(schedule, "112A", "size"), "3068")
    assert session.job.openings[1].size.height == 80
    assert schedule.setData(index(schedule, "112A", "mark"), "112X")
    assert session.mark == "112X"
    assert session.history.undo_name == "change mark of 112A"


@pytest.mark.parametrize(
    ("key", "typed", "said"),
    [
        ("quantity", "0", "112A: quantity must be at least 1 and at most 100000; 0 was given"),
        ("quantity", "two", "112A, quantity: “two” is not a whole number."),
        ("size", "wide", "112A, opening size: “wide” is not an opening size"),
        ("mark", "101A", "101A, mark: it stands twice; each opening has its own"),
        ("mark", "", "112A, mark: this key is missing and must be given"),
        ("frame", "welded steel, butted", "112A: frame proud of wall must be given"),
    ],
)
def test_a_value_that_cannot_be_is_refused_with_the_reason(schedule, session, key, typed, said):
    job, lines = session.job, emitted(schedule.refused)
    assert not schedule.setData(index(schedule, "112A", key), typed)
    assert session.job is job
    assert len(lines) == 1
    assert lines[0][0].startswith(said)


def test_what_is_worked_out_and_what_is_so_already_is_not_taken(schedule, session):
    job = session.job
    assert not schedule.flags(index(schedule, "112A", "angle")) & Qt.ItemFlag.ItemIsEditable
    assert not schedule.setData(index(schedule, "112A", "angle"), "90")
    assert not schedule.setData(index(schedule, "112A", "hand"), "RH")
    assert session.job is job


def test_edits_of_one_cell_in_a_row_are_one_step(schedule, session):
    for typed in ("2", "3"):
        schedule.setData(index(schedule, "112A", "quantity"), typed)
    session.undo()
    assert session.job.openings[1].quantity == 1
    assert session.history.undo_name is None


def test_an_edited_row_stays_where_it_is_until_it_is_arranged_anew(schedule):
    schedule.arrange(Wanted(words="rh ", column=PLACES["mark"]))
    row = index(schedule, "112A", "hand").row()
    assert schedule.setData(schedule.index(row, PLACES["mark"]), "999")
    assert schedule.index(row, 0).data() == "999"
    assert schedule.setData(schedule.index(row, PLACES["hand"]), "LH")
    assert schedule.index(row, 0).data() == "999"


def test_only_the_rows_that_changed_are_told(schedule, session):
    changed = emitted(schedule.dataChanged)
    openings = list(session.job.openings)
    for place in (2, 3, 7):
        openings[place] = openings[place].model_copy(update={"quantity": 9})
    session.take_openings(tuple(openings), "change quantity", "112A")
    assert [(top.row(), end.row()) for top, end, _ in changed] == [(2, 3), (7, 7)]


def test_another_number_of_openings_is_arranged_anew(schedule, session):
    assert not schedule.show_job()
    session.changed.disconnect()
    session.remove_opening()
    assert schedule.show_job()


def test_like_ones_in_one_row_cannot_be_edited_in_place(schedule, session):
    session.add_opening(session.opening)
    schedule.arrange(Wanted(grouped="like", words="crew mess to corridor"))
    assert schedule.index(0, 0).data() == "112A, 112C"
    assert schedule.index(0, PLACES["quantity"]).data() == "2"
    assert not schedule.flags(schedule.index(0, 0)) & Qt.ItemFlag.ItemIsEditable
    assert not schedule.setData(schedule.index(0, 0), "x")
    session.edit("location", "Galley")
    schedule.arrange(Wanted(grouped="like", words="112"))
    assert "2 places" in [schedule.index(row, 1).data() for row in range(schedule.rowCount())]


def test_a_persistent_index_outlives_edits_and_not_a_new_arrangement(schedule):
    kept = QPersistentModelIndex(schedule.index(3, 0))
    schedule.setData(schedule.index(3, PLACES["quantity"]), "7")
    assert kept.isValid()
    assert kept.row() == 3
    schedule.arrange(Wanted())
    assert not kept.isValid()
