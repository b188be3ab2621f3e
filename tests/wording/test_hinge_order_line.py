"""The order line in the words of the trade, and what to heed before sending it."""

import pytest

from configurator.study import study
from configurator.wording.hinge_order_line import order_cautions, order_lines, order_text
from tests.rules.hung import opening


def text(**changes):
    return order_text(study(opening(**changes)))


def test_the_usual_door_word_for_word():
    assert text() == (
        "1: 3 each (1-1/2 pair) hinges, 4-1/2 x 4, ANSI/BHMA A156.1 A8112, full mortise, standard weight, "
        "antifriction bearing (ball), leaf 0.134 thick, 5 knuckles, steel, finish 652 (US26D), "
        "removable pin, flat button tips, square corners, 24 machine screws #12-24 x 1/2 flat head"
    )


def test_openings_alike_multiply_hinges_and_screws():
    # Three hinges of eight screws each, for 40 doors: 120 hinges are 60 pair, with 960 screws.
    found = text(quantity=40)
    assert found.startswith("1: 120 each (60 pair) hinges for 40 openings alike, ")
    assert found.endswith(", 960 machine screws #12-24 x 1/2 flat head")


def test_each_leaf_has_its_line():
    upper, lower = order_lines(study(opening(leaves="dutch")))
    assert upper.text.startswith("1, upper leaf: 2 each (1 pair) hinges, ")
    assert lower.text.startswith("1, lower leaf: 2 each (1 pair) hinges, ")
    assert text(leaves="dutch").splitlines() == [upper.text, lower.text]


def test_a_hinge_with_wires_splits_the_line_and_the_screws():
    plain, wired = text(hinge={"electric": 2}, quantity=2).splitlines()
    assert plain.startswith("1: 4 each (2 pair) hinges for 2 openings alike, 4-1/2 x 4, ")
    assert plain.endswith("32 machine screws #12-24 x 1/2 flat head")
    assert wired.startswith("1: 2 each (1 pair) hinges for 2 openings alike, 4-1/2 x 4, ")
    assert "electric: carries wires, hinge 2 from the top, 16 machine" in wired


def test_a_place_for_wires_that_is_not_there_splits_nothing():
    assert len(order_lines(study(opening(hinge={"electric": 4})))) == 1
    assert len(text(hinge={"electric": 3}).splitlines()) == 2


def test_of_two_leaves_it_asks_which_carries_wires():
    given = study(opening(leaves="dutch", hinge={"electric": 1}))
    plain, wired, lower = (line.text for line in order_lines(given))
    assert plain.startswith("1, upper leaf: 1 each (1/2 pair) hinge, ")
    assert wired.startswith("1, upper leaf: 1 each (1/2 pair) hinge, ")
    assert "electric: carries wires, hinge 1 from the top, 8 machine" in wired
    assert lower.startswith("1, lower leaf: 2 each (1 pair) hinges, ")
    assert [plain.count("electric"), lower.count("electric")] == [0, 0]
    assert any("on which leaf" in caution for caution in order_cautions(given))


@pytest.mark.parametrize(("number", "active", "inactive"), [(10, 5, 5), (7, 4, 3)])
def test_screws_by_hand_are_shared_by_the_leaves_and_not_given_to_each(number, active, inactive):
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    first, second = text(**pair, hinge={"screws": {"machine": number, "wood": 0}}).splitlines()
    assert first.endswith(f", {active} machine screws #12-24 x 1/2 flat head")
    assert second.endswith(f", {inactive} machine screws #12-24 x 1/2 flat head")


def test_stainless_stud_and_hand_are_said_where_they_matter():
    found = text(
        use={"exposure": "exterior", "coastal": True},
        hinge={"security_stud": True, "mounting": "swing clear"},
    )
    assert "stainless steel 316, finish 630 (US32D), removable pin, security stud, " in found
    assert ", hand LH, " in found
    assert "A156.1" not in found  # no type number is known for that mounting
    (held,) = order_lines(study(opening(hand=None, hinge={"mounting": "swing clear"})))
    assert ", hand not known, " in held.text
    assert "hand" not in text()


def test_a_finish_code_that_is_not_known_is_ordered_as_it_was_asked_for():
    (line,) = order_lines(study(opening(hinge={"finish_us": "US99"})))
    assert "steel, finish US99, " in line.text


def test_nothing_is_ordered_without_a_width_or_without_a_hinge():
    (line,) = order_lines(study(opening(hinge={"height": 11})))
    assert not line.can_order
    assert "nothing can be ordered" in line.text
    assert text(hinge={"height": 11}) == text(hung_on="pivots") == ""


def test_errors_and_a_label_are_said_first():
    assert order_cautions(study(opening())) == ()
    errors, label = order_cautions(study(opening(use={"fire_rated": True}, hinge={"bearing": "plain"})))
    assert errors.endswith("or say on the order's page: order it all the same.")
    assert label.startswith("Labelled fire door")
    assert "for a labelled fire door" in text(use={"fire_rated": True})
    (one,) = order_cautions(study(opening(hinge={"bearing": "plain"})))
    assert one.startswith("1 error holds this order")


TWO = {"hinge": {"count": 2}}


def test_a_hinge_that_an_error_holds_is_not_copied_as_an_order():
    held = study(opening(**TWO))
    assert order_text(held) == ""
    assert order_lines(held)[0].text.startswith("1: held by an error, not ordered: 2 each (1 pair) hinges")
    assert order_cautions(held)[0].startswith("1 error holds this order: read the findings")


def test_an_error_that_was_accepted_is_said_beside_the_line():
    accepted = study(opening(order_despite=["too few hinges"], **TWO))
    assert order_text(accepted).startswith("1: 2 each (1 pair) hinges")
    assert order_cautions(accepted)[0].startswith("Ordered all the same: ")


def test_a_swing_clear_hinge_is_ordered_by_its_height():
    found = text(hand="LH", hinge={"mounting": "swing clear"})
    assert "hand LH, sold by height, 4-1/2 high, opening clear at 90 to 95 degrees" in found
