import math

import pytest

from configurator.drawing.client.client_page import client_page
from configurator.drawing.pages.page import paper_named, scale_named
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.drawing.pages.on_page import dimensions, named, outside, overlapping, texts

LETTER = paper_named("Letter")
JOB = JobFacts(name="Kestrel Point Ferry Terminal", client="Kestrel Point Harbor District", date="2026-03-02")


def page_of(study, paper=LETTER, scale=None, display=None):
    return client_page(study, JOB, paper, scale, display or Display())


def said(page) -> str:
    return " ".join(text for text, _ in texts(page))


def test_it_stands_upright_on_any_paper():
    assert (page_of(demo("112A")).paper.width, page_of(demo("112A")).paper.height) == (215.9, 279.4)
    upright = paper_named("A4").turned()
    assert page_of(demo("112A"), upright).paper == upright


def test_it_shows_two_widths_at_one_scale_with_how_far_the_hinge_stands_out():
    page = page_of(demo("112A"))
    assert len(page.details) == 2
    assert len({one.scale for one in page.details}) == 1
    assert named(page, "barrel past frame face") == pytest.approx([0.665, 0.915])


def test_no_word_of_the_trade_stands_on_it():
    words = said(page_of(demo("112A")))
    for word in ("barrel", "encroachment", "inset", "rabbet face", "pin axis", "backset"):
        assert word not in words


def test_it_has_sentences_table_recommendation_and_what_to_note():
    words = said(page_of(demo("112A")))
    assert "Door 112A, Crew mess to corridor" in words
    assert "On a hinge 4 in wide the door opens to 171.7°, where the door meets the chair rail." in words
    assert "way through, door square open 33-1/16 in 32-13/16 in 1/4 in narrower" in words
    assert "What we recommend 3 hinges, 4-1/2 x 4-1/2 in" in words
    assert "Please note With a 4-1/2 x 4 hinge the leaf meets the chair rail at 171.7°" in words
    assert "Not measured yet, taken as usual" in words
    assert "2026-03-02" in words


def test_only_the_recommended_width_is_called_so():
    titles = [text for text, _ in texts(page_of(demo("112A"))) if text.startswith("Hinge ")]
    assert titles == ["Hinge 4 in wide", "Hinge 4-1/2 in wide, recommended"]


def test_it_says_how_far_open_each_door_is_drawn():
    assert [text for text, _ in texts(page_of(demo("112A"))) if text.startswith("open ")] == [
        "open 171.7°",
        "open 178.8°",
    ]


def test_a_larger_paper_has_larger_type():
    sizes = [
        max(item.size for item in page_of(demo("112A"), paper_named(name)).furniture
            if getattr(item, "text", "").startswith("On a hinge"))
        for name in ("Letter", "Tabloid")
    ]  # fmt: skip
    assert sizes == [11.0, 14.5]


def test_a_single_width_has_one_picture():
    page = page_of(case_a(compare=[4]))
    assert len(page.details) == 1
    assert "difference" not in said(page)


def test_a_scale_that_is_asked_for_is_taken_or_refused():
    assert page_of(demo("112A"), scale=scale_named("1-1/2")).details[0].scale.name.startswith("1-1/2")
    with pytest.raises(ValueError, match="does not fit"):
        page_of(demo("112A"), scale=scale_named("full"))


@pytest.mark.parametrize("seed", range(24))
def test_texts_keep_apart_and_everything_is_to_scale(seed):
    paper = paper_named(("Letter", "A4", "Tabloid")[seed % 3])
    display = Display(metric=True) if seed % 4 == 3 else Display()
    page = page_of(random_study(seed), paper, display=display)
    assert overlapping(page) == []
    assert outside(page) == []
    for detail, one in dimensions(page):
        a, b = detail.view.to_sheet(one.line_a), detail.view.to_sheet(one.line_b)
        assert math.dist(a, b) / detail.scale.points == pytest.approx(abs(one.value), abs=1e-6)
        assert one.value >= 0 or "behind" in one.text or one.text == display.length(-one.value)


def test_what_warns_has_its_room_before_large_type_has():
    """A narrow opening whose hinges all meet the column, with many cautions: none is left out on letter."""
    crowd = case_a(
        leaves="dutch",
        size={"width": 30, "height": 83.5},
        obstructions=[{"kind": "column", "start": 0.5, "diameter": 8, "offset": 6}],
        use={"fire_rated": True, "wanted_angle": 180},
        compare=[4, 4.5, 5, 6],
    )
    page = page_of(crowd)
    words = "".join("".join(text for text, _ in texts(page)).split())
    warned = [one.message for one in crowd.all_findings() if one.severity in ("error", "warning")]
    assert len(warned) > 6
    assert all("".join(message.split()) in words for message in warned)
