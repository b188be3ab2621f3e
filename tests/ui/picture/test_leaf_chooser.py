"""The picture of a pair or a Dutch door: both leaves, or one of them larger."""

import pytest

from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.ui.state.session import Session


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def session(qapp):
    """The job of pairs and Dutch doors, with an equal pair on show."""
    path = resource_path("demo_openings", "pairs_and_dutch.json")
    return Session(load(path), path)


def titles(window):
    return window.work.picture.canvas.accessible_summary()


def test_one_leaf_at_a_time_with_the_small_picture(window):
    chooser, canvas = window.work.leaves, window.work.picture.canvas
    assert [button.text() for button in chooser.buttons.values()] == [
        "Both leaves",
        "Active leaf",
        "Inactive leaf",
    ]
    assert chooser.buttons[""].isChecked()
    assert len(canvas._sheet.panels) == 4
    chooser.buttons["inactive"].click()
    assert chooser.buttons["inactive"].isChecked()
    assert not chooser.buttons[""].isChecked()
    assert [panel.inset is not None for panel in canvas._sheet.panels] == [True, True]
    assert titles(window).count("inactive leaf") == 2
    chooser.buttons[""].click()
    assert len(canvas._sheet.panels) == 4


def test_an_edit_and_a_swing_keep_the_leaf(window):
    chooser, session = window.work.leaves, window.session
    chooser.buttons["active"].click()
    session.edit("compare", [4])
    session.swing(45)
    assert titles(window) == "4-1/2 x 4 hinge, recommended, active leaf"
    assert session.pictured is session.pictured


def test_another_kind_of_opening_has_its_own_leaves_or_none(window):
    chooser, session = window.work.leaves, window.session
    chooser.buttons["active"].click()
    session.select("304A")
    assert list(chooser.buttons) == ["", "upper", "lower"]
    assert chooser.buttons[""].isChecked()
    assert len(window.work.picture.canvas._sheet.panels) == 2
    session.select("306A")
    assert chooser.isHidden()
    session.select("301A")
    assert not chooser.isHidden()


def test_the_table_and_the_findings_keep_both(window):
    window.work.leaves.buttons["active"].click()
    assert {one.leaf for one in window.session.study.candidates} == {"active", "inactive"}
    assert {one.leaf for one in window.session.pictured.candidates} == {"active"}
