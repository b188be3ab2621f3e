"""Tables of words."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QAbstractItemModelTester

from configurator.ui.kit.table import FittedTable, RowsTable
from configurator.ui.kit.table_model import Head, Row, RowsModel

HEADS = (Head("Mark", 20), Head("Hinges", 10, number=True))
ROWS = (Row(("112A", "3"), "112A", "the rail", "error"), Row(("=1+1", "6"), "=1+1"))


@pytest.fixture
def table(qtbot):
    table = RowsTable("marks", HEADS)
    qtbot.addWidget(table)
    table.show_rows(ROWS)
    return table


def test_the_model_keeps_qts_rules(qapp):
    model = RowsModel(HEADS)
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal)
    model.show(ROWS)
    model.show(ROWS[:1], HEADS[:1])
    assert (model.rowCount(), model.columnCount()) == (1, 1)
    tester.deleteLater()


def test_cells_and_heads_say_what_they_are(table):
    model = table.shown
    assert model.headerData(1, Qt.Orientation.Horizontal) == "Hinges"
    assert model.headerData(0, Qt.Orientation.Vertical) is None
    assert model.index(0, 0).data(Qt.ItemDataRole.ToolTipRole) == "the rail"
    assert model.index(1, 0).data(Qt.ItemDataRole.ToolTipRole) == "=1+1"
    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
    assert model.index(0, 1).data(Qt.ItemDataRole.TextAlignmentRole) == right
    light = model.index(0, 0).data(Qt.ItemDataRole.ForegroundRole)
    model.use_dark(True)
    assert model.index(0, 0).data(Qt.ItemDataRole.ForegroundRole) != light
    assert model.index(1, 0).data(Qt.ItemDataRole.ForegroundRole) is None


def test_what_is_chosen_stays_chosen_while_it_is_there(table):
    chosen = []
    table.chosen.connect(chosen.append)
    table.choose("=1+1")
    table.show_rows((Row(("99", "1"), "99"), *ROWS))
    assert table.current() == "=1+1"
    table.show_rows(ROWS[:1])
    assert table.current() is None
    assert chosen[0] == "=1+1"


def test_enter_opens_and_copy_takes_the_table_as_text(qtbot, table):
    opened = []
    table.opened.connect(opened.append)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    assert opened == []
    table.choose("112A")
    qtbot.keyClick(table, Qt.Key.Key_Return)
    assert opened == ["112A"]
    qtbot.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "Mark\tHinges\n112A\t3\n'=1+1\t6\n"


def test_sentences_are_broken_into_lines(qtbot):
    table = RowsTable("findings", (Head("Marks", 10), Head("Finding", 20)), wrapped=True)
    qtbot.addWidget(table)
    table.resize(200, 200)
    table.show()
    table.show_rows(
        [Row(("1", "a sentence that is longer than its column is wide " * 3)), Row(("2", "short"))]
    )
    assert table.rowHeight(0) > 2 * table.rowHeight(1)


def test_rows_and_columns_change_in_place_and_by_qts_rules(qapp):
    model = RowsModel(HEADS)
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal)
    told = []
    for name in ("rowsInserted", "rowsRemoved", "columnsInserted", "columnsRemoved", "modelReset"):
        getattr(model, name).connect(lambda *_, name=name: told.append(name))
    model.dataChanged.connect(lambda first, last, _: told.append((first.row(), last.row())))
    model.show(ROWS)
    assert told == ["rowsInserted"]
    model.show((ROWS[0], Row(("99", "1"), "99")))
    assert told[1:] == [(1, 1)]
    model.show(ROWS[:1], (*HEADS, Head("Note")))
    assert told[2:] == ["columnsInserted", "rowsRemoved"]
    assert model.index(0, 2).data() == ""
    model.show((), ())
    assert told[4:] == ["columnsRemoved", "rowsRemoved"]
    model.show(())
    assert "modelReset" not in told
    tester.deleteLater()


def test_a_quiet_table_stays_on_its_cell_and_copies_it(qtbot):
    table = FittedTable("numbers")
    qtbot.addWidget(table)
    table.fill(("Name", "Value"), [(("one", "1"), "the first"), (("two", "2"), "")])
    table.setCurrentCell(1, 1)
    table.fill(("Name", "Value"), [(("one", "1"), ""), (("two", "22"), ""), (("three", "3"), "")])
    assert (table.currentRow(), table.currentColumn()) == (1, 1)
    qtbot.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "22"
    assert (table.rowCount(), table.columnCount(), table.text(2, 0)) == (3, 2, "three")
    table.setCurrentCell(-1, -1)
    assert table.currentRow() == -1


def test_a_heading_stands_in_bold_and_an_empty_tip_is_none(qtbot):
    table = FittedTable("leaves", (Head("Leaf"), Head("Width")))
    qtbot.addWidget(table)
    table.show_rows([Row(("Active leaf",), heading=True), Row(("width", "36"), tip="")])
    model = table.shown
    assert model.index(0, 0).data(Qt.ItemDataRole.FontRole).bold()
    assert model.index(0, 1).data() == ""
    assert model.index(1, 0).data(Qt.ItemDataRole.FontRole) is None
    assert model.index(0, 0).data(Qt.ItemDataRole.ToolTipRole) == "Active leaf"
    assert model.index(1, 0).data(Qt.ItemDataRole.ToolTipRole) == ""


def test_the_last_column_is_stretched_only_while_nothing_is_cut_off(qtbot):
    table = FittedTable("widths")
    qtbot.addWidget(table)
    table.show()
    table.fill(("A", "B"), [(("short", "also short"), "")])
    table.resize(600, 100)
    assert table.horizontalHeader().stretchLastSection()
    table.resize(60, 100)
    assert not table.horizontalHeader().stretchLastSection()


def test_a_double_click_does_what_enter_does(qtbot):
    table = RowsTable("rows", (Head("Mark", 20),))
    qtbot.addWidget(table)
    table.show()
    table.show_rows([Row(("101",), key="a"), Row(("102",), key="b")])
    opened, entered = [], []
    table.opened.connect(opened.append)
    table.entered_row.connect(lambda index: entered.append(index.row()))
    table.choose("b")
    qtbot.keyClick(table, Qt.Key.Key_Return)
    place = table.visualRect(table.model().index(0, 0)).center()
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    qtbot.mouseDClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert opened == ["b", "a"]
    assert entered == [1, 0]
