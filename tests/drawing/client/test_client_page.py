from pathlib import Path

import pytest

from configurator.drawing.client.client_page import client_page
from configurator.drawing.pages.page import FITTED, paper_named, scale_named
from configurator.model import JobFacts, Shop
from configurator.units import Display
from configurator.wording.client_words import client_cautions
from tests.drawing.cases import case_a, demo, random_study
from tests.drawing.pages.on_page import outside, overlapping, texts

LETTER = paper_named("Letter")
JOB = JobFacts(
    name="Kestrel Point Ferry Terminal",
    client="Kestrel Point Harbor District",
    prepared_by="the counter",
    date="2026-03-02",
)


def page_of(study, paper=LETTER, scale=None, display=None, **more):
    return client_page(study, JOB, paper, scale, display or Display(), **more)


def said(page) -> str:
    return " ".join(text for text, _ in texts(page))


def test_it_stands_upright_on_any_paper():
    assert (page_of(demo("112A")).paper.width, page_of(demo("112A")).paper.height) == (215.9, 279.4)
    upright = paper_named("A4").turned()
    assert page_of(demo("112A"), upright).paper == upright


def test_it_shows_the_rooms_and_magnifiers_of_both_hinges_each_at_one_scale():
    page = page_of(demo("112A"))
    names = [one.name for one in page.details]
    assert sorted(names) == ["Hinge 4 in wide", "Hinge 4-1/2 in wide", "magnified", "magnified"]
    assert len({one.scale for one in page.details}) == 2
    assert {one.scale.name for one in page.details} == {FITTED}


def test_no_word_of_the_trade_stands_on_it():
    for mark in ("112A", "205A", "140A"):
        words = said(page_of(demo(mark))).lower()
        for word in ("barrel", "encroachment", "inset", "rabbet face", "pin axis", "backset", "[", "source"):
            assert word not in words, (mark, word)


def test_it_has_verdicts_advice_recommendation_and_what_to_note():
    words = said(page_of(demo("112A")))
    assert "Door 112A, Crew mess to corridor" in words
    assert "The door meets the chair rail." in words
    assert "4 in hinge the door meets the chair rail before it is fully open." in words
    assert "hinge stands out 21/32 in" in words
    assert "What we recommend 3 hinges, 4-1/2 x 4-1/2 in" in words
    assert "Not measured yet, taken as usual" in words
    assert "2026-03-02" in words
    assert "the counter" in words


def test_no_room_behind_the_door_is_told_of_one_that_does_not_lie_flat():
    assert "lies open flat" not in said(page_of(demo("160A")))


def test_only_the_hinge_to_take_is_called_our_choice():
    titles = [text for text, _ in texts(page_of(demo("112A"))) if text.startswith("Hinge ")]
    assert titles[0] == "Hinge 4 in wide"
    assert titles[1].startswith("Hinge 4-1/2 in wide")
    assert titles[1] != "Hinge 4-1/2 in wide"


def test_a_larger_paper_has_larger_type():
    sizes = [
        max(item.size for item in page_of(demo("112A"), paper_named(name)).furniture
            if getattr(item, "text", "").startswith("Opens all"))
        for name in ("Letter", "Tabloid")
    ]  # fmt: skip
    assert sizes[1] > 1.25 * sizes[0]


def test_a_single_width_has_one_picture():
    page = page_of(case_a(compare=[4]))
    assert [one.name for one in page.details] == ["Hinge 4 in wide", "magnified"]


def test_a_scale_that_is_asked_for_is_taken_or_refused():
    page = page_of(demo("112A"), scale=scale_named("1/4"))
    assert page.details[0].scale == scale_named("1/4")
    assert page.details[0].view.scale == pytest.approx(scale_named("1/4").points)
    with pytest.raises(ValueError, match="does not fit"):
        page_of(demo("112A"), scale=scale_named("full"))


def test_the_shop_is_named_and_its_logo_has_its_room():
    page = page_of(demo("112A"), shop=Shop("Harbor Doors and Frames", Path("logo.png")))
    assert "Harbor Doors and Frames" in said(page)
    path, box = page.logo
    assert path == Path("logo.png")
    assert all(not box.overlaps(other) for _, other in texts(page))
    assert page_of(demo("112A")).logo is None


def test_further_lines_stand_under_the_advice():
    assert "It costs nothing more." in said(page_of(demo("112A"), also=("It costs nothing more.",)))


@pytest.mark.parametrize("seed", range(24))
def test_texts_keep_apart(seed):
    paper = paper_named(("Letter", "A4", "Tabloid")[seed % 3])
    display = Display(metric=True) if seed % 4 == 3 else Display()
    page = page_of(random_study(seed), paper, display=display)
    assert overlapping(page) == []
    assert outside(page) == []


def test_what_warns_has_its_room_before_large_type_has():
    """A narrow opening whose hinges all meet the column, with many cautions: none is left out on letter."""
    crowd = case_a(
        leaves="dutch",
        size={"width": 30, "height": 83.5},
        obstructions=[{"kind": "column", "start": 0.5, "diameter": 8, "offset": 6}],
        use={"fire_rated": True, "wanted_angle": 180},
        compare=[4, 4.5, 5, 6],
    )
    words = "".join(said(page_of(crowd)).split())
    cautions = client_cautions(crowd)
    assert cautions
    assert all("".join(one.split()) in words for one in cautions)
