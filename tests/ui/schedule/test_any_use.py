"""Anything in any order: the table and the job never come apart, and Qt's own tester has no complaint."""

import random

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QAbstractItemModelTester
from PySide6.QtWidgets import QApplication

from tests.sweeps import sized

STEPS = sized(40, 500)
TYPED = ("5", "LH", "112A", "", "3070", "ordered", "zz")
CLIPS = ("LH", "5\tLH", "mark\thand\n900\tRH", "mark\tsize\n77\t3070", "\x00", "mark\tsize\n8\twide")


class User:
    """Somebody who does anything to the schedule, by a seed."""

    def __init__(self, window, page, seed):
        self.page, self.window, self.session = page, window, window.session
        self.random = random.Random(seed)

    def step(self):
        name = self.random.choice([name for name in dir(self) if name.startswith("do_")])
        getattr(self, name)()
        if self.random.random() < 0.5:
            QApplication.processEvents()
        return name

    def do_choose_rows(self):
        count = self.page.schedule.rowCount()
        rows = sorted(self.random.sample(range(count), min(count, self.random.randint(0, 3))))
        self.page.table.choose(rows, rows[0] if rows else None)

    def do_set(self):
        change = self.page.change
        change.choose(
            self.random.choice(["status", "hand", "quantity", "leaves", "use.wanted_angle", "size"])
        )
        change.word.setCurrentIndex(self.random.randrange(max(change.word.count(), 1)))
        change.text.setText(self.random.choice(["3", "90", "3068", "x", ""]))
        change.button.click()

    def do_type(self):
        model = self.page.schedule
        if model.rowCount():
            row, column = self.random.randrange(model.rowCount()), self.random.randrange(12)
            self.page.table.setCurrentIndex(model.index(row, column))
            model.setData(model.index(row, column), self.random.choice(TYPED))

    def do_find(self):
        text = self.random.choice(["", "", "1", "hall", "note", "zzz"])
        self.page.finder.words.setText(text)
        self.page.finder.words.textEdited.emit(text)

    def do_sort(self):
        order = self.random.choice(list(Qt.SortOrder))
        self.page.table.horizontalHeader().setSortIndicator(self.random.choice([-1, *range(12)]), order)

    def do_filter(self):
        finder = self.page.finder
        box = self.random.choice([finder.status, finder.findings])
        box.setCurrentIndex(self.random.choice([0, 0, 1]))
        box.activated.emit(0)

    def do_group(self):
        self.page.finder.grouped.setCurrentIndex(self.random.randrange(5))
        self.page.finder.grouped.activated.emit(0)

    def do_copy_and_paste(self):
        self.page.actions_of.copy()
        if self.random.random() < 0.5:
            QGuiApplication.clipboard().setText(self.random.choice(CLIPS))
        self.page.actions_of.paste()

    def do_duplicate_or_remove(self):
        self.random.choice([self.page.actions_of.duplicate, self.page.actions_of.remove])()

    def do_undo_or_redo(self):
        self.random.choice([self.session.undo, self.session.undo, self.session.redo])()

    def do_look_elsewhere(self):
        self.page.buttons["work"].click()
        if self.session.job.openings:
            self.session.select(self.random.choice(self.session.job.openings).mark)
        self.window.turn_to(self.random.choice(["", "schedule"]))
        self.window.turn_to("schedule")

    def do_change_the_standard(self):
        standard = self.random.choice([None, {"height": 4.5, "width": 4.5}])
        self.session.edit("job.standard_hinge", standard)

    def do_stop(self):
        self.page.working_line.cancel.click()
        self.page.trying_line.cancel.click()


@pytest.mark.parametrize("seed", range(sized(2, 5)))
def test_the_table_and_the_job_never_come_apart(window, in_window, seed):
    page = in_window
    tester = QAbstractItemModelTester(page.schedule, QAbstractItemModelTester.FailureReportingMode.Warning)
    user = User(window, page, seed)
    for number in range(STEPS):
        did = user.step()
        assert page.schedule.openings is window.session.job.openings, (number, did)
        current = page.table.currentIndex().row()
        if current >= 0:
            marks = [opening.mark for opening in page.schedule.members(current)]
            assert window.session.mark in marks, (number, did)
    while window.session.history.undo_name:
        window.session.undo()
    assert not window.isWindowModified()
    del tester
