import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.study.derivation.terms import (
    Negative,
    Number,
    Symbol,
    add,
    call,
    half,
    less,
    over,
    spelled,
    times,
)

W, T, b = Symbol("W", 4.5), Symbol("T", 1.75), Symbol("b", 0.25)
beta = Symbol("beta", -0.0625, "plain")


def text(term, write=None):
    return "".join(piece.text for piece in term.pieces(write))


def fractions(value, _unit):
    return {4.5: "4-1/2", 1.75: "1-3/4", 0.25: "1/4", -0.0625: "−1/16"}.get(value, f"{value:g}")


def test_a_formula_reads_in_letters_and_in_numbers_and_comes_to_its_value():
    offset = less(half(W), less(T, b))
    assert text(offset) == "W/2 − (T − b)"
    assert text(offset, fractions) == "(4-1/2)/2 − (1-3/4 − 1/4)"
    assert offset.value == 0.75


def test_products_are_written_side_by_side_in_letters_and_crossed_in_numbers():
    assert text(times(Number(2), W)) == "2 W"
    assert text(times(Number(2), W), fractions) == "2 × (4-1/2)"
    assert text(times(T, add(W, b))) == "T (W + b)"


def test_a_number_below_zero_is_bracketed_after_a_sign_but_not_at_the_start():
    assert text(add(W, beta), fractions) == "4-1/2 + (−1/16)"
    assert text(add(beta, W), fractions) == "−1/16 + 4-1/2"


def test_taking_away_nothing_leaves_nothing_to_write():
    assert text(less(W, Number(0))) == "W"
    assert text(less(Number(0), W)) == "−W"
    assert text(less(Number(0), Negative(W))) == "W"
    assert text(less(W, Negative(T))) == "W + T"
    assert text(add(W, Negative(T))) == "W − T"


def test_angles_are_degrees_and_exact_at_the_quarter_turns():
    for turn, cosine, sine in ((0, 1, 0), (90, 0, 1), (180, -1, 0), (270, 0, -1), (-90, 0, -1)):
        assert call("cos", Number(turn, "angle")).value == cosine
        assert call("sin", Number(turn, "angle")).value == sine
    assert call("cos", Number(60, "angle")).value == pytest.approx(0.5)
    assert call("arctan2", Number(1), Number(1)).value == pytest.approx(45)
    assert call("arccos", Number(1 + 1e-15)).value == 0.0
    assert text(Number(90, "angle")) == "90°"


def test_greek_letters_are_written_as_such():
    assert [spelled(name) for name in ("rho_c", "theta", "n_pin", "g_h")] == ["ρ_c", "θ", "n·pin", "g_h"]


def test_letters_are_told_in_their_order():
    assert [one.name for one in call("max", over(W, T), Negative(b)).letters()] == ["W", "T", "b"]


_terms = st.recursive(
    st.floats(-8, 8).map(Number),
    lambda inner: st.tuples(st.sampled_from([add, less, times]), inner, inner).map(
        lambda t: t[0](t[1], t[2])
    ),
    max_leaves=6,
)


@given(_terms)
def test_what_is_written_reads_back_to_the_same_value(term):
    """Brackets stand wherever they are needed: the text, read by the usual rules, gives the value again."""
    written = "".join(
        piece.text if not piece.text.lstrip("−").replace(".", "").isalnum() else f"({piece.text})"
        for piece in exact(term)
    )
    value = eval(written.replace("−", "-").replace(" × ", "*"))
    assert math.isclose(value, term.value, rel_tol=1e-9, abs_tol=1e-9)


def exact(term):
    """The pieces with every number in full."""

    def full(one):
        match one:
            case Number(value=value):
                return Symbol("n", value)
            case Negative(term=inner):
                return Negative(full(inner))
        return type(one)(one.sign, full(one.left), full(one.right))

    return full(term).pieces(lambda value, _: repr(value).replace("-", "−", 1) if value < 0 else repr(value))
