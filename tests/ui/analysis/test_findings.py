"""The list of findings: in the order of consequence, each source folded away until it is asked for."""

import pytest

from configurator.ui.analysis.findings import FindingsPanel
from configurator.ui.state.session import Session
from tests.openings import RAIL


@pytest.fixture
def panel(qtbot):
    session = Session()
    made = FindingsPanel(session)
    qtbot.addWidget(made)
    session.edit("obstructions", [RAIL | {"projection": 6}])
    session.edit("hinge.bearing", "plain")
    session.edit("use.closer", True)
    session.edit("door.construction", "hollow metal, 18 gage")
    made.resize(500, 800)
    made.show()
    made.show_state()
    return made


def test_sources_fold_away_until_one_is_asked_for(panel):
    assert panel.rows
    assert not any(row.source.isVisible() for row in panel.rows)
    first = panel.rows[0]
    first.to_source.click()
    assert first.source.isVisible()
    assert first.source.text()
    assert [row.source.isVisible() for row in panel.rows[1:]] == [False] * (len(panel.rows) - 1)
    first.to_source.click()
    assert not first.source.isVisible()


def test_another_finding_in_a_row_has_its_source_folded(panel):
    panel.rows[0].to_source.click()
    panel.session.edit("hinge.bearing", "ball")
    panel.show_state()
    assert not panel.rows[0].source.isVisible()


def test_findings_stand_by_consequence(panel):
    shown = [row.finding for row in panel.rows]
    order = [one.severity for one in shown]
    assert order == sorted(order, key=["error", "warning", "note"].index)
    assert shown[0].code == "plain bearing with closer"
    notes = [one.code for one in shown if one.severity == "note"]
    assert notes.index("not said") < notes.index("door weight")
    assert notes[-1] == "door weight"
