"""No text runs as a formula, and every text comes back the same."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.cells import shield, unshield

FORMULAS = ["=1+1", "+cmd", "-2", "@x", "\t=1", "\r=1", "\n=1", "  =1", "＝1", "=", "-"]


@pytest.mark.parametrize("text", FORMULAS)
def test_what_would_run_gets_an_apostrophe(text):
    assert shield(text) == "'" + text
    assert unshield(shield(text)) == text


@pytest.mark.parametrize("text", ["", "112A", "4-1/2 x 4", "a=1", "it's", " x", "½"])
def test_other_text_is_left_alone(text):
    assert shield(text) == text
    assert unshield(text) == text


@pytest.mark.parametrize("text", ["'", "''", "'=1", "'112A", "''=1"])
def test_text_with_an_apostrophe_of_its_own_keeps_it(text):
    assert shield(text) == "'" + text
    assert unshield(shield(text)) == text


def test_an_apostrophe_that_somebody_else_wrote_before_plain_text_stays():
    assert unshield("'112A") == "'112A"


@given(st.text(alphabet=st.sampled_from("=+-@' \t\r\na1＝"), max_size=6) | st.text(max_size=20))
def test_every_text_comes_back_the_same(text):
    cell = shield(text)
    assert unshield(cell) == text
    assert not cell.lstrip().startswith(("=", "+", "-", "@"))
