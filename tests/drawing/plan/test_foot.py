import pytest

from configurator.drawing.base.primitives import Polyline, Text
from configurator.drawing.plan.sheet import FOOT, FOOT_OF_FILE, foot, plan_sheet
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import demo

FACTS = JobFacts(name="Kestrel Point Ferry Terminal", number="26-118")


def lines(width=864.0, job=None, display=None):
    found = foot(demo("112A"), display or Display(), 20.0, width, job)
    return [one.text for one in found if isinstance(one, Text)]


def test_on_the_screen_the_mark_comes_first():
    assert lines()[0].startswith(
        "112A · seen from above, pull side up, hinges right · all at one scale · frame"
    )


def test_a_file_says_of_which_opening_and_job_it_is():
    location = demo("112A").opening.location
    reading, whose, _ = lines(job=FACTS)
    assert reading.startswith("seen from above")
    assert whose == (
        f"opening 112A · {location} · 3'-0\" x 7'-0\" · Kestrel Point Ferry Terminal · job 26-118"
    )


def test_a_date_stands_only_where_the_job_has_one():
    assert lines(job=FACTS.model_copy(update={"date": "3 May 2026"}))[1].endswith("job 26-118 · 3 May 2026")
    assert lines(job=JobFacts())[1].endswith("3'-0\" x 7'-0\"")


def test_what_does_not_fit_is_left_off_from_the_end():
    assert lines(width=240.0, job=FACTS)[1].startswith("opening 112A")
    assert "Kestrel" not in lines(width=240.0, job=FACTS)[1]


def test_the_panels_leave_room_for_both_lines():
    alone, file = (plan_sheet(demo("112A"), Display(), 864, 540, job) for job in (None, FACTS))
    assert {window.bottom for window in alone.windows} == {FOOT}
    assert {window.bottom for window in file.windows} == {FOOT_OF_FILE}


@pytest.mark.parametrize(
    ("metric", "scale", "label", "inches"),
    [
        (False, 30.0, "2 in", 2.0),  # 60 points: just fits
        (False, 30.1, "1 in", 1.0),
        (True, 30.0, "50 mm", 50 / 25.4),
        (True, 31.0, "20 mm", 20 / 25.4),
    ],
)
def test_the_scale_bar_is_in_the_unit_of_the_dimensions(metric, scale, label, inches):
    parts = foot(demo("112A"), Display(metric=metric), scale, 864.0, None)
    (base,) = [one for one in parts if isinstance(one, Polyline)]
    assert base.points[1][0] - base.points[0][0] == pytest.approx(inches * scale)
    assert [one.text for one in parts if isinstance(one, Text)][-1] == label
