import pytest

from configurator.drawing.base.dimension_strokes import ARROW, strokes_of
from configurator.drawing.base.primitives import Dimension
from configurator.drawing.base.view import paper

SHEET = paper(400, 400)


def upright(length, shoulder=()):
    top = 10 + length
    ends = {"a": (0, 10), "b": (0, top), "line_a": (50, 10), "line_b": (50, top)}
    return Dimension(
        "A-ANNO-DIMS", **ends, text="1 in", text_at=(60, 30), name="n", value=1.0, shoulder=shoulder
    )


@pytest.mark.parametrize("length", [2.0, 2.5 * ARROW, 2.7 * ARROW, 100.0])
def test_both_arrowheads_touch_the_extension_lines(length):
    tips = [arrow[0] for arrow in strokes_of(upright(length), SHEET).arrows]
    assert tips == [(50, 10), (50, 10 + length)]


def test_arrowheads_stand_between_where_there_is_room_and_outside_where_not():
    (low, _), *_ = [strokes_of(upright(100.0), SHEET).arrows]
    assert low[1][1] > 10
    (low, high), *_ = [strokes_of(upright(5.0), SHEET).arrows]
    assert low[1][1] < 10
    assert high[1][1] > 15


def test_extension_lines_leave_a_gap_and_run_past_the_line():
    first = strokes_of(upright(100.0), SHEET).lines[0]
    assert 0 < first[0][0] < 3
    assert first[1] == (52, 10)


def test_the_line_runs_on_to_its_shoulder():
    line = strokes_of(upright(100.0, ((50, 150), (90, 150))), SHEET).lines[-1]
    assert line == ((50, 10), (50, 110), (50, 150), (90, 150))


def test_a_dimension_measured_at_its_own_line_needs_no_extension():
    flat = Dimension("A-ANNO-DIMS", (0, 0), (30, 0), (0, 0), (30, 0), "1 in", (15, 5), "n", 1.0)
    assert len(strokes_of(flat, SHEET).lines) == 1
