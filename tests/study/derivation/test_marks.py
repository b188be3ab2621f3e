"""Every letter's line on the plan is as long as the letter says, and lies where the letter is measured."""

import math

import pytest

from configurator.geometry.pin import locate_pin
from configurator.study.derivation.marks import marks_of
from tests.geometry.openings import case_a

H = case_a(4.5, g_l=0.15625, beta=0.0625, m_d=0.14, m_f=0.15, b_f=0.375, k=0.125, T=1.6875)
PIN = locate_pin(H)
MARKS = marks_of(H, PIN, 72.0)
PULL, STOP = -H.i, -H.i - H.T
ACROSS = {
    # Each from where to where across, and how far off the frame face.
    "O": (0, H.O, 0), "O_2": (0, 72, 0), "F": (-H.F, 0, 0), "g_h": (0, H.g_h, PULL),
    "g_l": (H.O - H.g_l, H.O, PULL),
    "d_b": (PIN.x_p - H.d_b / 2, PIN.x_p + H.d_b / 2, PIN.y_p), "x_p": (0, PIN.x_p, PIN.y_p),
    "t": (-H.t, 0, STOP / 2), "a": (0, H.g_h, STOP / 2), "m_d": (H.g_h, H.g_h + 0.14, STOP / 2),
    "m_f": (-0.15, 0, STOP / 2),
}  # fmt: skip
ALONG = {
    # Each from where to where off the frame face, and how far across.
    "D": (0, -H.D, -H.F), "R": (0, -H.R, 0), "p": (-H.p, 0, -H.F), "T": (STOP, PULL, H.g_h),
    "k": (-H.R, STOP, H.s / 2),
    "i": (0, PULL, H.g_h), "b": (STOP, STOP + H.b, H.g_h), "o": (PULL, PIN.y_p, PIN.x_p),
    "y_p": (0, PIN.y_p, PIN.x_p),
    "b_f": (-H.R, -H.R + 0.375, 0),
}  # fmt: skip


@pytest.mark.parametrize("letter", ACROSS)
def test_what_is_measured_across_the_opening(letter):
    left, right, off = ACROSS[letter]
    ((start, end),) = MARKS[letter].lines
    assert (*start, *end) == pytest.approx((left, off, right, off))


@pytest.mark.parametrize("letter", ALONG)
def test_what_is_measured_off_the_frame_face(letter):
    near, far, across = ALONG[letter]
    ((start, end),) = MARKS[letter].lines
    assert (*start, *end) == pytest.approx((across, near, across, far))


def test_what_has_two_lines_or_lies_aslant():
    stops = [((0, -H.R), (H.s, -H.R)), ((72 - H.s, -H.R), (72, -H.R))]
    assert [list(map(pytest.approx, line)) for line in stops] == [list(line) for line in MARKS["s"].lines]
    ((stop, pull),) = MARKS["beta"].lines
    assert (stop[1], pull[1]) == pytest.approx((STOP, PULL))
    assert pull[0] - stop[0] == pytest.approx(H.beta * H.T)
    for (pin, end), face in zip(MARKS["W"].lines, (H.g_h, 0.0), strict=True):
        assert pin == PIN.at
        assert end == pytest.approx((face, PIN.y_p - 2.25))
    assert {*MARKS} == {*ACROSS, *ALONG, "s", "beta", "W"}


def test_a_given_axis_is_measured_from_the_heel():
    pivot = case_a(axis=(0.75, 0.625), m_d=None, m_f=None)
    marks = marks_of(pivot, locate_pin(pivot), 36.0)
    ((start, end),) = marks["h_a"].lines
    assert math.dist(start, end) == pytest.approx(0.625)
    assert start[1] == end[1] == pytest.approx(0.75 - pivot.i)
    assert "b_f" not in marks
    ((left, right),) = marks["m_d"].lines
    assert right[0] - left[0] == pytest.approx(pivot.t)  # a mortise as deep as the leaf is thick
