"""Nothing is told by colour alone: every colour that says something goes with a sign, a word or a line."""

import pytest
from PySide6.QtWidgets import QLabel

from configurator.drawing.base.style import layers, materials
from configurator.ui.analysis.findings import SIGNS, FindingRow

SIDE_BY_SIDE = (
    ("A-DOOR", "A-ANNO-REDL-PART"),
    ("A-DETL-MCUT", "A-ANNO-REDL-PART"),
    ("A-DOOR-HDWR", "A-ANNO-REDL-SMLL"),
    ("A-DOOR-SWPT", "A-DOOR-SWPT-HDWR"),
    ("A-CHRT-BARE", "A-CHRT-HDWR"),
    ("A-CHRT-HDWR", "A-CHRT-CLER"),
    ("A-CHRT-WANT", "A-CHRT-HDWR"),
    ("A-CHRT-WANT", "A-CHRT-CURS"),
    ("A-DOOR", "A-DOOR-NARW"),
    ("A-DETL-HNGE", "A-ANNO-WORD"),
    ("A-DOOR-FRAM", "A-ANNO-WORD"),
)
"""Lines that lie beside one another in a picture and mean different things."""


@pytest.mark.parametrize(("one", "other"), SIDE_BY_SIDE)
def test_lines_that_mean_different_things_differ_without_their_ink(one, other):
    first, second = layers()[one], layers()[other]
    assert (first.width, first.dash) != (second.width, second.dash)


def test_what_only_one_width_takes_up_is_hatched_another_way():
    assert materials()["narrower"].angle != materials()["wider"].angle


def test_a_severity_has_a_sign_and_a_word_of_its_own():
    assert len({sign.split()[0] for sign in SIGNS.values()}) == len(SIGNS)
    assert len({sign.split()[1] for sign in SIGNS.values()}) == len(SIGNS)


def test_a_finding_shows_its_sign(qtbot, session):
    for finding in session.study.all_findings():
        row = FindingRow(session)
        row.show_finding(finding)
        qtbot.addWidget(row)
        texts = [label.text() for label in row.findChildren(QLabel)]
        assert SIGNS[finding.severity] in texts


def test_a_refused_value_is_told_by_a_sign_and_a_sentence(window, session):
    field = window.work.form.field("door.thickness")
    session.edit("door.thickness", 99.0)
    assert field.note.text().startswith("⚠ ")
    assert len(field.note.text()) > 10
