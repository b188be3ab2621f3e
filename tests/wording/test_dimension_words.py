from configurator.units import Display
from configurator.wording.dimension_words import (
    BOTH,
    FRAME,
    PIN_DOOR,
    PIN_FRAME,
    WALL,
    Measured,
    explained,
    wordings,
)

NAMES = (WALL, FRAME, BOTH, PIN_DOOR, PIN_FRAME)


def measured(value):
    return tuple(Measured((0.0, 0.0), (0.0, value), value, name, "A-ANNO-DIMS") for name in NAMES)


def test_the_words_grow_shorter_before_they_are_dropped():
    found = wordings(measured(0.375), Display(), 8.0, plain=False)
    assert [one.texts[-1] for one in found] == [
        "3/8 in pin axis off frame face",
        "3/8 in pin off frame",
        "3/8 in pin off frame",
        "3/8 in pin/frame",
        "3/8 in",
    ]
    assert [one.size for one in found] == [8.0, 8.0, 7.0, 7.0, 8.0]


def test_plain_words_come_first_where_they_are_asked_for():
    assert wordings(measured(0.375), Display(), 8.0, plain=True)[0].texts == (
        "3/8 in barrel stands out from wall",
        "3/8 in barrel stands out from frame",
        "3/8 in barrel stands out from frame and wall",
        "3/8 in pin stands off door",
        "3/8 in pin stands off frame",
    )


def test_below_zero_is_said_as_behind_and_never_with_a_sign():
    for plain in (False, True):
        *worded, brief, bare = wordings(measured(-0.125), Display(), 8.0, plain)
        for one in worded:
            assert all(text.startswith("1/8 in ") and " behind " in text for text in one.texts)
        assert brief.texts[-1] == "1/8 in pin behind frame"
        assert set(bare.texts) == {"1/8 in behind"}


def test_at_zero_it_is_not_behind():
    assert wordings(measured(0.0), Display(), 8.0, plain=False)[3].texts[-1] == "0 in pin/frame"


def test_what_is_told_on_hovering_says_where_it_is_measured_from():
    for item in measured(0.375):
        assert "measured from" in explained(item, Display())
    behind = explained(measured(-0.125)[0], Display())
    assert behind == "barrel lies behind the wall, measured from the wall face: 1/8 in"
