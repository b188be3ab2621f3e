"""What is to be measured, beside what the program has so far."""

from configurator.documents.field_sheet import MOST_MEASURES, block_count, field_blocks
from configurator.model import Opening
from configurator.units import Display
from tests.order.cases import data


def opening(**changes):
    return Opening.model_validate(data("112A", **changes))


def blocks(*openings, display=None):
    return list(field_blocks(openings, display))


def measured(**changes):
    """The measures of one opening by their names."""
    (block,) = blocks(opening(**changes))
    return {one.name: (one.value, one.how) for one in block.measures}


def test_every_single_opening_has_its_own_blanks():
    found = blocks(opening(quantity=3))
    assert [block.which for block in found] == ["1 of 3", "2 of 3", "3 of 3"]
    assert block_count([opening(quantity=3), opening()]) == 4
    assert blocks(opening())[0].which == ""


def test_given_values_are_told_from_usual_ones():
    known = measured(frame={"kind": "knocked-down drywall", "face": 2}, wall={"thickness": 4.875})
    assert known["Frame face width"] == ("2 in", "given")
    assert known["Wall thickness, all layers"] == ("4-7/8 in", "given")
    assert known["Rabbet depth: frame face back to the stop"] == ("1-15/16 in", "assumed")
    assert known["Opening width, rabbet to rabbet"] == ("36 in", "given")


def test_layers_of_a_wall_give_its_thickness():
    layers = [{"name": "board", "thickness": 0.625}, {"name": "block", "thickness": 4}]
    assert measured(wall={"layers": layers})["Wall thickness, all layers"] == ("4-5/8 in", "given")


def test_a_frame_behind_the_wall_face_is_said_so():
    known = measured(frame={"kind": "welded steel, butted"}, wall={"thickness": 5.75, "frame_proud": -0.5})
    assert known["Frame stands out from wall, pull side"] == ("-1/2 in", "given")
    assert known["Wall thickness, all layers"] == ("5-3/4 in", "given")


def test_a_rail_is_measured_in_all_that_counts():
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    known = measured(obstructions=[rail, {"kind": "return wall", "start": 4}])
    assert known["Chair rail, hinge side: stands off by"] == ("1-3/4 in", "given")
    assert known["Chair rail, hinge side: begins this far from the frame"] == ("1/2 in", "given")
    assert known["Chair rail, hinge side: bottom and top above floor"] == ("32 in to 36 in", "given")
    assert known["Return wall, hinge side: bottom and top above floor"] == ("full height", "assumed")
    assert "Return wall, hinge side: stands off by" not in known


def test_heights_of_one_end_only():
    base = {"kind": "base", "projection": 0.5, "top": 4}
    shelf = {"kind": "other", "projection": 9, "bottom": 60, "side": "latch"}
    known = measured(obstructions=[base, shelf])
    assert known["Base, hinge side: bottom and top above floor"][0] == "floor to 4 in"
    assert known["Obstruction, latch side: bottom and top above floor"][0] == "60 in up"


def test_existing_hinges_and_hand_are_asked_for():
    known = measured(hand=None)
    assert known["Hand, seen from the key side"] == ("not known", "not known")
    assert known["Existing hinge preparation, height x width"] == ("not known", "not known")
    old = {"height": 4.5, "width": 4, "leaf_thickness": 0.134, "corner": "square", "count": 3}
    known = measured(existing_hinge=old)
    assert known["Existing hinge preparation, height x width"] == ("4-1/2 x 4", "given")
    assert known["Existing hinge corners, radius in inches"] == ("square", "given")
    assert known["Top of each hinge below the head rabbet"] == ("3 hinges a leaf", "given")
    assert measured(prepared_height=4.5)["Existing hinge preparation, height x width"][0] == "4-1/2 high"
    only_wide = measured(existing_hinge={"width": 4})
    assert only_wide["Existing hinge preparation, height x width"][0] == "4 wide"


def test_lengths_in_millimetres():
    (block,) = blocks(opening(), display=Display(metric=True))
    values = {one.name: one.value for one in block.measures}
    assert values["Opening width, rabbet to rabbet"] == "914.4 mm"
    assert "914 x 2134 mm" in block.words


def test_an_opening_with_more_than_a_page_has_a_second_block():
    rails = [{"kind": "chair rail", "projection": 1, "start": n} for n in range(12)]
    first, second = blocks(opening(obstructions=rails))
    assert len(first.measures) == MOST_MEASURES
    assert (first.continued, second.continued) == (False, True)
    assert second.words == "continued"
