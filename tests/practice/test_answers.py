import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.practice.answers import AngleAnswer, CountAnswer, LengthAnswer, UnreadableError
from configurator.practice.written import (
    ChoiceAnswer,
    CodeAnswer,
    HingeSizeAnswer,
    OpeningSizeAnswer,
    yes_or_no,
)


@pytest.mark.parametrize("typed", ["4-1/2", "4 1/2", "4.5", '4-1/2"', "4½", "114.3 mm", " 4-1/2 in "])
def test_a_length_is_read_as_the_trade_writes_it(typed):
    assert LengthAnswer(4.5).is_right(typed)


def test_a_length_beside_the_right_one_is_wrong_at_the_stated_precision():
    answer = LengthAnswer(0.75)
    assert answer.hint.startswith("Inches, to the nearest 1/64")
    assert answer.is_right("49/64") is False
    assert answer.is_right("47/64") is False
    assert answer.is_right("-3/4") is False
    sixteenth = LengthAnswer(35.0636, 1 / 16)
    assert sixteenth.shown == "35-1/16 in"
    assert sixteenth.is_right("35-1/16")
    assert not sixteenth.is_right("35")
    assert not sixteenth.is_right("35-1/8")


def test_a_decimal_length_is_shown_and_marked_at_its_places():
    answer = LengthAnswer(0.043280, 0.001)
    assert answer.shown == "0.043 in"
    assert answer.is_right("0.043")
    assert answer.is_right("0.04328")
    assert not answer.is_right("0.044")
    assert not answer.is_right("0.042")
    assert LengthAnswer(0.0433, 0.01).hint == "Inches, to the nearest hundredth: 9.99"


def test_a_value_halfway_between_two_steps_makes_no_problem():
    assert LengthAnswer(0.665, 0.001).is_clear()
    assert not LengthAnswer(0.665, 0.01).is_clear()
    assert not AngleAnswer(171.5).is_clear()
    assert AngleAnswer(171.4).is_clear()


@pytest.mark.parametrize("typed", ["171.8", "171.8°", "171.8 deg", "171.79 degrees"])
def test_an_angle_is_read_with_and_without_its_unit(typed):
    assert AngleAnswer(171.788, 0.1).is_right(typed)


@pytest.mark.parametrize("typed", ["171.7", "171.9", "180"])
def test_an_angle_a_tenth_beside_is_wrong(typed):
    assert not AngleAnswer(171.788, 0.1).is_right(typed)


@pytest.mark.parametrize(
    "typed", ["4", "four", "Four", "4 ea", "4 each", "4 hinges", "4 pcs", "2 pair", "two pairs"]
)
def test_a_count_is_read_in_words_and_with_its_unit(typed):
    assert CountAnswer(4).is_right(typed)


def test_a_count_of_screws_takes_its_short_name():
    for typed in ("832 screws", "832 wood screws", "832", "832 ea", "832 screw"):
        assert CountAnswer(832, "wood screws").is_right(typed), typed
    assert CountAnswer(1248, "wood screws").is_right("1,248")
    assert CountAnswer(42, "doors").is_right("forty-two doors")


@pytest.mark.parametrize("typed", ["3-10 x 6-8", "3'-10\" x 6'-8\"", "31068", "3-10 by 6-8"])
def test_an_opening_size_is_read_in_every_notation(typed):
    assert OpeningSizeAnswer(46, 80).is_right(typed)


def test_an_opening_size_turned_about_is_named():
    answer = OpeningSizeAnswer(36, 84)
    assert answer.is_right("3070")
    assert not answer.is_right("7030")
    assert (
        answer.slip_of("7-0 x 3-0") == "That is height first, as a hinge is written. A door is width first."
    )


def test_a_length_is_right_in_either_unit_within_the_precision_asked():
    answer = LengthAnswer(7.65625)
    for typed in ("7-21/32", "7.656", "7.66", "194.5 mm", "194 mm", "7 21/32"):
        assert answer.is_right(typed), typed
    for typed in ("7-5/8", "7.67", "195 mm", "193 mm", "194.9 mm"):
        assert not answer.is_right(typed), typed


def test_a_least_size_is_wrong_on_its_short_side_however_near():
    answer = LengthAnswer(4.390625, limit="least")
    for typed in ("4-25/64", "4.391", "112 mm"):
        assert answer.is_right(typed), typed
    for typed in ("4.390", "4.3906", "4-3/8", "111 mm"):
        assert not answer.is_right(typed), typed
    assert answer.slip_of("4.390").startswith("Too small, if only by a little")
    assert answer.slip_of("4-13/32") != answer.slip_of("4.390")


def test_a_stock_size_is_that_size_alone():
    answer = LengthAnswer(4.5, limit="stock")
    assert answer.is_right("4-1/2")
    assert answer.is_right("114 mm")
    assert not answer.is_right("4.499")
    assert not answer.is_right("4.501")


def test_a_setting_is_a_whole_degree_and_never_past_the_touch():
    answer = AngleAnswer(104, setting=True)
    assert answer.is_right("104°")
    for typed in ("104.2", "104.4", "103.9", "105", "103"):
        assert not answer.is_right(typed), typed
    assert answer.slip_of("104.2").startswith("Too far, if only by a little")
    assert answer.slip_of("105").startswith("Too far, if only by a little")
    assert answer.slip_of("103.5") == "Such a stop is set in whole degrees."


@pytest.mark.parametrize(
    ("answer", "typed", "named"),
    [
        (LengthAnswer(4.5), "114.3", "millimetres"),
        (LengthAnswer(84), "7", "feet"),
        (LengthAnswer(0.75), "13/16", "Close"),
        (AngleAnswer(171.8, 0.1), "8.2", "counted back from the wall"),
        (CountAnswer(120), "60", "That is pairs"),
        (CountAnswer(120), "120 pair", "That is double"),
        (CountAnswer(120, in_pairs=True), "120", "That is hinges"),
        (HingeSizeAnswer(4.5, 4), "4 x 4-1/2", "width first"),
        (CodeAnswer("RHR", "hand"), "LHR", "Left and right"),
        (CodeAnswer("RHR", "hand"), "RH", "Check the swing"),
        (CodeAnswer("RHR", "hand"), "LH", "from inside"),
        (CodeAnswer("652", "BHMA number"), "626", "626 is satin chrome on brass or bronze."),
        (CodeAnswer("US26D", "US code"), "US26", "US26 is bright chrome."),
    ],
)
def test_the_slips_that_anybody_may_make_are_named(answer, typed, named):
    assert not answer.is_right(typed)
    assert named in answer.slip_of(typed)


@pytest.mark.parametrize("typed", ["120", "120 hinges", "60 pair", "60 pairs", "60 pr", "60 pr."])
def test_hinges_are_counted_one_by_one_or_in_pairs(typed):
    assert CountAnswer(120).is_right(typed)


def test_pairs_for_hinges_are_wrong():
    assert not CountAnswer(120).is_right("120 pair")
    assert not CountAnswer(120).is_right("60")


def test_where_pairs_are_asked_a_bare_number_is_pairs():
    answer = CountAnswer(3, in_pairs=True)
    assert answer.shown == "1-1/2 pair"
    for typed in ("1-1/2", "1.5", "1-1/2 pair", "3 hinges"):
        assert answer.is_right(typed), typed
    assert not answer.is_right("3")


def test_other_things_are_counted_by_their_name():
    answer = CountAnswer(380, "wood screws")
    assert answer.is_right("380")
    assert answer.is_right("380 wood screws")
    with pytest.raises(UnreadableError, match="whole number of wood screws"):
        answer.is_right("190 pair")


def test_a_hinge_size_is_height_first():
    answer = HingeSizeAnswer(4.5, 4)
    for typed in ("4-1/2 x 4", "4.5x4", "4-1/2 by 4", "4½ × 4"):
        assert answer.is_right(typed), typed
    assert not answer.is_right("4 x 4-1/2")
    with pytest.raises(UnreadableError, match="height x width"):
        answer.is_right("4-1/2")


@pytest.mark.parametrize("typed", ["RHR", "rhr", "right hand reverse", "Right-Hand Reverse bevel", "RHRB"])
def test_a_hand_is_read_in_its_spellings(typed):
    assert CodeAnswer("RHR", "hand").is_right(typed)
    assert not CodeAnswer("RH", "hand").is_right(typed)


def test_finish_codes_are_read_in_their_spellings():
    assert CodeAnswer("652", "BHMA number").is_right("BHMA 652")
    assert CodeAnswer("US26D", "US code").is_right("us 26d")
    assert CodeAnswer("US26D", "US code").is_right("26D")
    assert not CodeAnswer("US26D", "US code").is_right("US26")
    with pytest.raises(UnreadableError):
        CodeAnswer("652", "BHMA number").is_right("satin chrome")


def test_an_option_is_picked_by_its_letter_its_words_or_their_beginning():
    answer = ChoiceAnswer("a wall bumper", ("a wider hinge", "a wall bumper", "nothing at all"))
    for typed in ("B", "b", "a wall bumper", "a wa"):
        assert answer.is_right(typed), typed
    assert not answer.is_right("A")
    for typed in ("a w", "D", "", "wider"):
        with pytest.raises(UnreadableError):
            answer.is_right(typed)


def test_options_that_are_alike_make_no_problem():
    assert not ChoiceAnswer("4 in", ("4 in", "4 IN")).is_clear()
    assert not ChoiceAnswer("5 in", ("4 in", "6 in")).is_clear()
    assert yes_or_no(True).is_clear()
    assert yes_or_no(True).right == "yes"


KINDS = (
    LengthAnswer(4.5),
    AngleAnswer(90, 0.1),
    CountAnswer(3),
    CountAnswer(3, in_pairs=True),
    CountAnswer(3, "wood screws"),
    HingeSizeAnswer(4.5, 4),
    OpeningSizeAnswer(36, 84),
    yes_or_no(True),
    *(
        CodeAnswer(right, kind)
        for right, kind in (("LH", "hand"), ("652", "BHMA number"), ("US3", "US code"))
    ),
)


@given(st.text(max_size=40))
def test_whatever_is_typed_is_marked_or_refused_in_words(typed):
    for answer in KINDS:
        refusal = ""
        try:
            marked = answer.is_right(typed)
            assert marked or isinstance(answer.slip_of(typed), str)
        except UnreadableError as error:
            marked, refusal = None, str(error)
        assert marked in (True, False) or refusal.endswith(".")


@pytest.mark.parametrize(
    ("answer", "typed"),
    [
        (LengthAnswer(4.5), "wide"),
        (LengthAnswer(4.5), ""),
        (AngleAnswer(90), "nan"),
        (AngleAnswer(90), "-90"),
        (CountAnswer(3), "threeish"),
        (CountAnswer(3), "3.5"),
        (CountAnswer(3), "9" * 400),
        (CountAnswer(3), "some pair"),
        (HingeSizeAnswer(4.5, 4), "a x b"),
        (CodeAnswer("LH", "hand"), "leftish"),
        (OpeningSizeAnswer(36, 84), "3-0"),
        (OpeningSizeAnswer(36, 84), "36 x 84"),
    ],
)
def test_what_cannot_be_read_is_asked_again_and_not_marked(answer, typed):
    with pytest.raises(UnreadableError):
        answer.is_right(typed)


@pytest.mark.parametrize(
    ("right", "typed"),
    [("LH", "left"), ("RH", "Right"), ("LHR", "left reverse"), ("RHR", "right hand reverse")],
)
def test_a_hand_is_read_in_the_words_that_the_answer_asks_for(right, typed):
    assert CodeAnswer(right, "hand").is_right(typed)


@pytest.mark.parametrize("typed", ["9'-9 3/8", "9-9 3/8", "9 ft 9-3/8", "9-9"])
def test_feet_turned_into_inches_are_not_answered_in_feet(typed):
    with pytest.raises(UnreadableError, match="inches alone"):
        LengthAnswer(117.375, turned=True).is_right(typed)
    assert LengthAnswer(117.375).is_right(typed) == (typed != "9-9")


@pytest.mark.parametrize("typed", ["117-3/8", "117 3/8", "117.375", "117 - 3/8"])
def test_inches_answer_what_is_turned_into_inches(typed):
    assert LengthAnswer(117.375, turned=True).is_right(typed)
