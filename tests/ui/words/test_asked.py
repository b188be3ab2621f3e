"""F1 asks about whatever has the keyboard."""

from PySide6.QtWidgets import QLineEdit, QPushButton, QTableWidget, QVBoxLayout, QWidget

from configurator.ui.kit.fields import field_for
from configurator.ui.words.here import asked_about
from configurator.wording.glossary import word_at


def test_a_field_is_asked_about_by_its_path(qtbot, session):
    field = field_for(session, "door.thickness")
    qtbot.addWidget(field)
    assert asked_about(field.editor) == "door.thickness"


def test_what_tells_of_itself_is_asked(window):
    row = window.work.findings.rows[0]
    button = row.findChild(QPushButton) or row
    assert asked_about(button) == row.finding.message


def test_a_table_is_asked_about_by_the_head_of_its_column(qtbot):
    table = QTableWidget(1, 2)
    qtbot.addWidget(table)
    table.setHorizontalHeaderLabels(["Mark", "Hand"])
    assert asked_about(table) == ""
    table.setCurrentCell(0, 1)
    assert asked_about(table) == "Hand"


def test_the_comparison_of_two_leaves_counts_its_headings(window, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    table = window.work.comparison
    table.setCurrentCell(0, 0)
    assert asked_about(table) == ""  # the heading of the active leaf
    table.setCurrentCell(1, 0)
    assert asked_about(table) == "greatest_angle_bare"
    second = next(n for n in range(1, table.rowCount()) if table.text(n, 0) == "Inactive leaf")
    table.setCurrentCell(second + 1, 0)
    assert asked_about(table) == "greatest_angle_bare"


def test_nothing_is_known_of_a_plain_widget(qtbot):
    root = QWidget()
    qtbot.addWidget(root)
    line = QLineEdit()
    QVBoxLayout(root).addWidget(line)
    assert asked_about(line) == ""
    assert asked_about(None) == ""


def test_a_part_of_the_hinge_is_asked_about_by_its_field(window):
    later = window.work.under.later["Hinge"]
    window.work.under.setCurrentWidget(later)
    panel = later.page
    for row in range(panel.list.rowCount()):
        panel.list.setCurrentCell(row, 0)
        place = asked_about(panel.list)
        assert place.startswith("hinge.") or panel._selected() is None
        if place:
            assert place in word_at(place).where
