import pytest

from configurator.ui.form.special import WidthQuestion, read_hinge_width, size_question
from configurator.ui.kit.kinds import NotReadError
from configurator.units import Display

INCHES = Display()


def test_a_size_typed_height_first_is_asked_about():
    assert size_question(84, 36, INCHES) == "7'-0\" wide? Doors are width first. Swap?"
    assert size_question(84, 36, Display(metric=True)).startswith("2133.6 mm wide?")


@pytest.mark.parametrize(("width", "height", "asked"), [(83.9, 84, False), (84, 84, False), (84.1, 84, True)])
def test_only_an_opening_wider_than_high_is_asked_about(width, height, asked):
    assert bool(size_question(width, height, INCHES)) == asked


@pytest.mark.parametrize(
    ("text", "width"), [("4", 4), ("4 1/2", 4.5), ("4-1/2 x 4", 4), ("4-1/2 x 4-1/2", 4.5), ("5 x 6", 6)]
)
def test_a_width_is_read_alone_or_as_the_second_number_of_a_size(text, width):
    assert read_hinge_width(text, 4.5, INCHES) == width


def test_a_hinge_typed_width_first_is_asked_about():
    question = read_hinge_width("4 x 4-1/2", 4.5, INCHES)
    assert isinstance(question, WidthQuestion)
    assert question.sentence == "4 high? This door takes 4-1/2 high. Did you mean 4-1/2 x 4?"
    assert question.swapped == 4
    assert question.kept == 4.5


@pytest.mark.parametrize("text", ["", "wide", "4 x", "4 x 4 x 4", "-4"])
def test_what_is_no_width_is_said_in_words(text):
    with pytest.raises(NotReadError):
        read_hinge_width(text, 4.5, INCHES)
