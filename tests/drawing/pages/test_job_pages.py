"""Plans of several openings on a sheet with keynotes, and the index of a job's sheets."""

from functools import cache

import pytest

from configurator.drawing.base.primitives import Arc, Dimension, Text
from configurator.drawing.pages.frame import drawing_box
from configurator.drawing.pages.job_pages import with_index
from configurator.drawing.pages.page import papers, scale_named
from configurator.drawing.sheets import plans_of_job, sheet_maker
from configurator.model import Job
from configurator.order.revisions import print_of
from configurator.units import Display
from tests.drawing.cases import demo

MARKS = ("101A", "112A", "112B", "205A", "122A")


def words(page):
    return [one.text for one in page.furniture if isinstance(one, Text)]


@cache
def job():
    openings = tuple(demo(mark).opening for mark in MARKS)
    changed = {"number": 1, "openings": {"101A": print_of(openings[0])}}
    return Job.model_validate({"openings": [one.model_dump() for one in openings], "revisions": [changed]})


@cache
def together(paper="Letter", scale=None):
    asked = None if scale is None else scale_named(scale)
    return tuple(plans_of_job(map(demo, MARKS), job(), papers()[paper], asked, Display()))


def test_four_openings_stand_on_a_letter_sheet_and_all_on_a_tabloid():
    def marks(page):
        return [dict(tags)["MARK"] for tags in dict.fromkeys(one.opening for one in page.details)]

    assert [marks(page) for page in together()] == [list(MARKS[:4]), ["122A"]]
    assert [marks(page) for page in together("Tabloid")] == [list(MARKS)]


def test_each_plan_stays_in_its_cell_true_to_scale():
    (page, _) = together()
    room = drawing_box(page.paper)
    windows = [one.view.window for one in page.details]
    assert all(room.holds(one) for one in windows)
    assert not any(a.overlaps(b) for n, a in enumerate(windows) for b in windows[n + 1 :])
    assert all(one.view.scale == pytest.approx(one.scale.points) for one in page.details)


def test_a_caution_is_said_once_and_its_number_stands_in_a_circle_by_each_opening():
    (page, _) = together()
    said = words(page)
    found = [one for mark in MARKS[:4] for one in demo(mark).all_findings()]
    cautions = [one.said(Display()) for one in found if one.severity == "warning"]
    assert cautions
    assert "Keynotes" in said
    column = " ".join(said)
    for sentence in dict.fromkeys(cautions):
        assert column.count(sentence[:40]) == 1
    circles = [one for one in page.furniture if isinstance(one, Arc)]
    assert len(circles) >= 1
    assert {"1", "2"} <= set(said)


def test_what_has_no_room_for_words_in_a_plan_is_named_beside_it():
    (page, _) = together()
    said = words(page)
    bare = [
        one
        for detail in page.details
        for one in detail.primitives
        if isinstance(one, Dimension) and one.text in ("5/8 in", "7/8 in")
    ]
    assert bare
    for one in bare:
        assert any(text.startswith(f"{one.text} {one.name[:12]}") for text in said)


def test_a_scale_that_fits_no_cell_gives_each_opening_its_own_sheet():
    pages = together("Letter", "3")
    titles = [f"{mark} plan" for mark in ("101A", "112A", "112B", "122A")]
    assert [page.title for page in pages] == [*titles, "205A plans"]
    assert [text for text in words(pages[2]) if text == "3"] == ["3"]  # sheet 3, of as many as there will be


def test_the_index_has_every_opening_with_its_sheet_and_last_revision():
    index, *rest = with_index(together(), job(), papers()["Letter"], Display(), "plan")
    assert rest == list(together())
    assert not index.details
    rows = {}
    for one in (part for part in index.furniture if isinstance(part, Text)):
        rows.setdefault(round(one.at[1], 3), []).append(one.text)
    own = {row[1]: row for row in rows.values() if len(row) > 1 and row[1] in MARKS}
    assert {mark: row[0] for mark, row in own.items()} == dict(zip(MARKS, "11112", strict=True))
    assert "1" in own["101A"][5:]
    assert own["112A"][2:5] == ["Crew mess to corridor", "3'-0\" x 7'-0\"", "RH"]


def test_an_index_of_many_sheets_is_several_pages():
    make = sheet_maker("plan")
    page = make(demo("101A"), job().job, papers()["Letter"], None, Display())
    many = with_index([page] * 80, job(), papers()["Letter"], Display(), "plan")
    assert len(many) - 80 > 1
