"""Pages in place of the work: one at a time, the work folded away or below, nothing drawn out of sight."""

import pytest
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from configurator.ui.state.session import Session
from configurator.ui.window import pages
from configurator.ui.window.pages import Pages
from tests.ui.conftest import preferences_in


class Leaf(QWidget):
    """A page that notes what it is told, and has every signal."""

    left = Signal()
    said = Signal(str)
    work_wanted = Signal(bool)

    def __init__(self, session):
        super().__init__()
        self.told = []

    def show_state(self, by):
        self.told.append(by)


class Bare(QWidget):
    """A page with nothing but what it must have."""

    def __init__(self, session):
        super().__init__()

    def show_state(self, by):
        pass


@pytest.fixture
def turned(qtbot, monkeypatch, tmp_path):
    """Pages over some work, and how often something turned."""
    kinds = {"leaf": (__name__, "Leaf"), "bare": (__name__, "Bare")}
    monkeypatch.setattr(pages, "PAGES", kinds)
    monkeypatch.setattr(
        pages, "import_module", lambda _: __import__("types").SimpleNamespace(Leaf=Leaf, Bare=Bare)
    )
    work = QWidget()
    over = Pages(Session(), work, preferences_in(tmp_path))
    over.addWidget(work)
    qtbot.addWidget(over)
    over.show()
    return over


def test_a_page_is_made_when_first_shown_and_then_kept(turned):
    assert turned.made == {}
    turned.turn_to("leaf")
    leaf = turned.made["leaf"]
    turned.turn_to("bare")
    turned.turn_to("leaf")
    assert turned.made["leaf"] is leaf
    assert leaf.told == ["open", "open"]


def test_one_page_stands_in_place_of_the_work(turned):
    turned.turn_to("leaf")
    assert (turned.made["leaf"].isVisible(), turned.work.isVisible()) == (True, False)
    assert turned.work_is_folded
    turned.turn_to("bare")
    assert (turned.made["leaf"].isVisible(), turned.made["bare"].isVisible()) == (False, True)
    turned.turn_to("")
    assert (turned.made["bare"].isVisible(), turned.work.isVisible()) == (False, True)
    assert not turned.work_is_folded


def test_a_page_that_is_left_gives_the_work_back_and_what_it_says_is_passed_on(turned):
    said, turns = [], []
    turned.said.connect(said.append)
    turned.turned.connect(lambda: turns.append(turned.on_show))
    turned.turn_to("leaf")
    turned.made["leaf"].said.emit("Done.")
    turned.made["leaf"].left.emit()
    assert (said, turns) == (["Done."], ["leaf", ""])
    assert turned.work.isVisible()


def test_the_work_stands_below_only_the_page_that_wants_it(turned):
    turned.turn_to("leaf")
    turned.made["leaf"].work_wanted.emit(True)
    assert turned.work.isVisible()
    turned.turn_to("bare")
    assert not turned.work.isVisible()
    turned.turn_to("leaf")
    assert turned.work.isVisible()
    turned.made["leaf"].work_wanted.emit(False)
    assert not turned.work.isVisible()


def test_only_the_page_on_show_is_told_of_changes(turned):
    turned.show_state("edit")
    turned.turn_to("leaf")
    turned.show_state("edit")
    turned.turn_to("")
    turned.show_state("edit")
    assert turned.made["leaf"].told == ["open", "edit"]


@pytest.mark.parametrize("name", sorted(pages.PAGES))
def test_every_page_has_its_command_and_comes_and_goes(window, name):
    action = window.commands.actions_by_name[name]
    action.trigger()
    assert window.pages.on_show == name
    assert window.pages.made[name].isVisible()
    assert action.isChecked()
    action.trigger()
    assert window.pages.on_show == ""
    assert not action.isChecked()
    assert window.work.isVisible()


def test_the_list_beside_the_work_stays_as_folded_as_it_was(window):
    window.commands.actions_by_name["list"].trigger()
    window.turn_to("schedule")
    window.turn_to("")
    assert not window.openings.isVisible()
    window.commands.actions_by_name["list"].trigger()
    assert window.openings.isVisible()


def test_an_edit_out_of_sight_is_drawn_when_the_work_comes_back(window):
    window.turn_to("schedule")
    window.session.edit("location", "Galley")
    assert window.work.form.field("location").editor.text() == "Crew mess to corridor"
    window.turn_to("")
    assert window.work.form.field("location").editor.text() == "Galley"
    tips = [window.openings.list.item(row).toolTip() for row in range(window.openings.list.count())]
    assert "112A: Galley" in tips
