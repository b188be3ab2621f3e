import math
from dataclasses import replace

import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Polygon, Text
from configurator.drawing.pages.page import papers, scale_named, scales
from configurator.drawing.pages.plan_page import SMALL, plan_page
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo, demo_pair, random_study

LETTER = papers()["Letter"]


def page(study, paper=LETTER, scale=None, display=None, job=None, number=(1, 1)):
    return plan_page(study, job or JobFacts(), paper, scale, display or Display(), number)


def texts(found):
    return [item.text for item in found.furniture if isinstance(item, Text)]


def dimensions(found):
    return [
        (one, detail) for detail in found.details for one in detail.primitives if isinstance(one, Dimension)
    ]


def test_every_width_has_its_plan_and_its_small_plan_at_listed_scales():
    found = page(demo("112A"))
    assert [detail.name.startswith(SMALL) for detail in found.details] == [False, True, False, True]
    for detail in found.details:
        assert detail.scale in scales(False)
        assert detail.view.scale == pytest.approx(72 * detail.scale.ratio)
    assert found.title == "112A plan"


def test_all_plans_are_at_one_scale_and_all_small_ones_too():
    for seed in range(10):
        found = page(random_study(seed))
        plans = {one.scale for one in found.details if not one.name.startswith(SMALL)}
        whole = {
            one.scale for one in found.details if one.name.startswith(SMALL) and "latch side" not in one.name
        }
        assert len(plans) == 1
        assert len(whole) <= 1


def test_a_dimension_is_as_long_on_paper_as_it_says():
    for mark in ("112A", "205A", "140A"):
        found = dimensions(page(demo(mark)))
        assert found
        for one, detail in found:
            a, b = detail.view.to_sheet(one.line_a), detail.view.to_sheet(one.line_b)
            assert math.dist(a, b) / 72 / detail.scale.ratio == pytest.approx(one.value, abs=1e-9)


def test_the_clear_width_and_the_pin_are_dimensioned_for_each_width():
    names = [one.name for one, _ in dimensions(page(demo("112A")))]
    assert names.count("clear width at 90") == 2
    assert names.count("pin axis off door face") == 2


def test_findings_cautions_assumptions_and_how_to_read_it_are_on_the_sheet():
    words = " ".join(texts(page(demo("112A"), papers()["Tabloid"])))
    for finding in demo("112A").all_findings():
        assert finding.message in words
    assert "Assumed, not given" in words
    assert "pull side up" in words
    assert "RH" in texts(page(demo("112A")))
    assert "171.7°, leaf on the chair rail" in words


def test_the_scale_asked_for_is_drawn_and_one_too_large_is_refused():
    found = page(demo("112A"), scale=scale_named("1-1/2"))
    assert found.details[0].scale == scale_named("1-1/2")
    with pytest.raises(ValueError, match="does not fit on Letter"):
        page(demo("112A"), scale=scale_named("full"))


def test_a_scale_at_which_only_one_width_fits_draws_the_recommended_one_large():
    study = case_a(compare=[4, 4.5, 5, 6])
    found = page(study, scale=scale_named("3"))
    assert 0 < len(found.details) < 8
    assert any("recommended" in detail.name for detail in found.details)
    assert f"{len(found.details) // 2} of 4 are drawn at this scale" in " ".join(texts(found))
    assert {"4 in wide hinge", "6 in wide hinge"} <= set(texts(found))


def test_more_widths_than_a_table_holds_are_counted_and_none_is_lettered_over_another():
    study = case_a(leaves="dutch", compare=[3, 3.5, 4, 4.5, 5, 6, 7, 8])
    said = texts(page(study))
    assert "8 of 16 widths" in said
    assert "…" not in said
    assert sum(text.startswith(("upper, ", "lower, ")) for text in said) == 8
    assert "16 widths" not in " ".join(texts(page(study, papers()["Arch C"])))


CORNER = {"kind": "return wall", "side": "hinge", "start": 4}


def crowded_study():
    """A short way to a return wall, a rail, a column on the latch side and a bumper."""
    return case_a(
        use={"wanted_angle": 90},
        compare=[4, 4.5, 6],
        obstructions=[
            CORNER,
            {"kind": "chair rail", "projection": 1.75, "start": 0.5, "length": 3, "bottom": 32, "top": 36},
            {"kind": "column", "side": "latch", "start": 6, "diameter": 12, "offset": 2},
        ],
    )


@pytest.mark.parametrize("paper", list(papers()))
def test_everything_that_stands_there_is_on_the_sheet_with_its_figures(paper):
    said = texts(page(crowded_study(), papers()[paper]))
    assert {"return wall", "chair rail", "column, latch side"} <= set(said)
    assert {"4 in", "runs out"} <= set(said)  # to the return wall
    assert {"1/2 in", "1-3/4 in", "3 in", "32 to 36 in"} <= set(said)
    assert {"6 in", "12 in round", "2 in"} <= set(said)


def test_a_door_stop_stands_in_the_table_with_its_place():
    said = texts(page(demo_pair("306A")))
    assert "What stands there" in said
    assert any(text.startswith("at ") and text.endswith(" in") for text in said)


def test_a_name_without_room_has_its_key_instead():
    keyed = [
        item.text
        for detail in page(crowded_study()).details
        for item in detail.primitives
        if isinstance(item, Text)
    ]
    named = " ".join(keyed)
    for key, name in (("1", "return wall"), ("2", "chair rail")):
        assert name in named or key in keyed


def test_no_plan_is_without_the_dimensions_of_its_pin_where_fewer_widths_leave_room():
    for study in (demo("171A"), demo_pair("303A"), crowded_study()):
        found = page(study)
        plans = [one for one in found.details if not one.name.startswith(SMALL)]
        for detail in plans:
            names = {one.name for one, where in dimensions(found) if where is detail}
            assert {"pin axis off door face", "pin axis off frame face"} <= names, study.opening.mark
        assert len({one.hinge_width for one in study.candidates}) >= len({one.scale for one in plans})


def test_leaves_of_a_dutch_door_that_look_the_same_are_drawn_once():
    dutch = page(case_a(leaves="dutch"))
    titles = [one.name for one in dutch.details if not one.name.startswith(SMALL)]
    assert titles == [
        "4-1/2 x 4 hinge, recommended, upper and lower leaf",
        "4-1/2 x 4-1/2 hinge, upper and lower leaf",
    ]
    lever = {
        "kind": "lever",
        "projection": 2.5,
        "from_latch_edge": 2.75,
        "width": 4,
        "height": 38,
        "vertical": 2,
    }
    carrying = page(case_a(leaves="dutch", hardware=[lever], use={"wanted_angle": 180}))
    assert not any(" and lower leaf" in one.name for one in carrying.details)


def test_a_job_with_more_things_than_the_table_holds_says_how_many_more():
    many = [{"kind": "chair rail", "projection": 1, "start": n, "length": 0.5} for n in range(60)]
    said = texts(page(case_a(obstructions=many)))
    (more,) = [text for text in said if text.startswith("and ")]
    assert int(more.split()[1]) == 60 - said.count("chair rail")


def test_millimetres_have_metric_scales_and_texts():
    found = page(demo("112A"), papers()["A4"], display=Display(metric=True))
    assert all(":" in detail.scale.name for detail in found.details)
    assert all(one.text.endswith(("mm", "90°")) or " mm " in one.text for one, _ in dimensions(found))


def test_no_ground_of_the_screen_is_printed():
    found = page(demo("112A"))
    fills = {item.fill for detail in found.details for item in detail.primitives if isinstance(item, Polygon)}
    assert "white" in fills
    assert "paper" not in fills


def test_no_text_of_the_furniture_meets_another():
    for seed in range(10):
        found = page(random_study(seed))
        items = [item for item in found.furniture if isinstance(item, Text)]
        boxes = [text_box(one.at, one.text, one.size, one.anchor, one.bold) for one in items]
        assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])


def test_without_a_width_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="no hinge width"):
        page(replace(demo("112A"), candidates=()))


def test_the_same_opening_gives_the_same_page():
    assert page(demo("205A")) == page(demo("205A"))
