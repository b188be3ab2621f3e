import pytest
from PySide6.QtCore import QVariantAnimation

from configurator.ui.client import canvas as module
from configurator.ui.client.canvas import Player


@pytest.fixture
def quick(monkeypatch):
    """What is played is over at once; else a test has seconds to stop it."""
    monkeypatch.setattr(module, "MILLISECONDS_A_DEGREE", 0.6)


@pytest.fixture
def player(qtbot, session):
    """A player that follows its session."""
    player = Player(session, session)
    player.end = 171.8
    session.changed.connect(lambda _: player.follow())
    return player


def test_it_plays_from_closed_to_the_end_and_only_onward(qtbot, quick, player, session):
    session.swing(180)
    angles = []
    session.changed.connect(lambda _: angles.append(session.angle))
    with qtbot.waitSignal(player.turned_on, check_params_cb=lambda on: not on):
        player.play()
    assert angles[0] == 0
    assert angles == sorted(angles)
    assert session.angle == 171.8
    assert not player.playing


def test_it_plays_on_from_where_the_door_stands(qtbot, quick, player, session):
    session.swing(100)
    angles = []
    session.changed.connect(lambda _: angles.append(session.angle))
    with qtbot.waitSignal(player.turned_on, check_params_cb=lambda on: not on):
        player.play()
    assert min(angles) >= 100


def test_it_can_be_paused_and_goes_on(qtbot, player, session, monkeypatch):
    session.swing(0)
    player.toggle()
    qtbot.waitUntil(lambda: session.angle > 5)
    player.toggle()
    stands = session.angle
    assert 5 < stands < 171.8
    clock = QVariantAnimation()
    clock.setDuration(60)
    with qtbot.waitSignal(clock.finished):
        clock.start()
    assert session.angle == stands
    monkeypatch.setattr(module, "MILLISECONDS_A_DEGREE", 0.6)
    with qtbot.waitSignal(player.turned_on, check_params_cb=lambda on: not on):
        player.toggle()
    assert session.angle == 171.8


def test_it_gives_way_to_whoever_else_turns_the_door(qtbot, player, session):
    session.swing(0)
    player.play()
    qtbot.waitUntil(lambda: session.angle > 5)
    session.swing(170)
    assert not player.playing
    assert session.angle == 170
