"""A pair and a Dutch door in the form: what is added goes where it goes on such a door."""

import pytest
from PySide6.QtWidgets import QToolButton

from tests.ui.form.test_form import choose


@pytest.fixture
def window(edited_window):
    return edited_window


def add(window, name):
    window.work.form.sections["Hardware"].open()
    editor = window.work.form.sections["Hardware"].body
    button = next(b for b in editor.findChildren(QToolButton) if b.accessibleName() == "add to hardware")
    next(action for action in button.menu().actions() if action.text() == name).trigger()
    return window.session.opening.hardware[-1]


def codes(window):
    return {one.code for one in window.session.study.all_findings()}


def test_a_shelf_goes_on_top_of_the_lower_leaf_of_a_dutch_door(window):
    session = window.session
    session.edit_many({"leaves": "dutch", "obstructions": []})
    shelf = add(window, "Shelf")
    # Opening 84 high, divided at 42, split gap 1/8: the lower leaf ends at 41-15/16, and is 35-3/4 wide.
    assert (shelf.leaf, shelf.face, shelf.height, shelf.vertical) == ("lower", "pull", 41.4375, 1)
    assert (shelf.from_latch_edge, shelf.width) == (17.875, 33.75)
    assert "leaves open in order" not in codes(window)
    assert "leaf" in window.work.form.field("hardware.0.leaf").path
    session.edit("split_height", 48)
    assert add(window, "Shelf").height == 48 - 1 / 16 - 0.5


def test_an_astragal_covers_the_gap_of_a_dutch_door(window):
    window.session.edit_many({"leaves": "dutch", "obstructions": []})
    strip = add(window, "Astragal")
    assert (strip.leaf, strip.face, strip.height) == ("upper", "pull", 42)
    assert "leaves open in order" in codes(window)
    assert "hardware meets first" not in {
        one.code for one in window.session.study.all_findings() if "astragal" in one.message
    }


def test_an_astragal_covers_the_gap_of_a_pair(window):
    window.session.edit_many({"leaves": "pair", "size": "6070", "obstructions": []})
    strip = add(window, "Astragal")
    assert (strip.leaf, strip.from_latch_edge, strip.width) == ("active", -0.0625, 2)
    assert (strip.vertical, strip.height) == (83.875 - 0.75, (83.875 + 0.75) / 2)
    found = [one for one in window.session.study.all_findings() if one.code == "leaves open in order"]
    assert [one.severity for one in found] == ["note"]


@pytest.mark.parametrize("leaves", ["pair", "dutch"])
def test_which_leaf_is_asked_only_of_two(window, leaves):
    session = window.session
    session.edit("leaves", leaves)
    field = window.work.form.field("hardware.0.leaf")
    first, other = ("active", "inactive") if leaves == "pair" else ("lower", "upper")
    words = [field.editor.itemText(place) for place in range(field.editor.count())]
    assert words[0] == f"{first} (assumed)"
    assert sorted(words[1:]) == sorted([first, other])
    choose(field, other)
    assert session.opening.hardware[0].leaf == other
    session.edit_many({"leaves": "single", "hardware": []})
    add(window, "Lever")
    window.work.form.sections["Hardware"].open()
    with pytest.raises(KeyError):
        window.work.form.field("hardware.0.leaf")


def test_a_leaf_given_that_is_not_there_is_still_shown(window):
    session = window.session
    session.edit("leaves", "dutch")
    field = window.work.form.field("hardware.0.leaf")
    choose(field, "upper")
    session.edit("leaves", "pair")
    assert field.editor.currentText() == "upper"
    assert "hardware on no leaf" in codes(window)
