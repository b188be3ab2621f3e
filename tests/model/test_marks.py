import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Opening
from configurator.model.marks import LONGEST_MARK, mark_order, next_mark
from tests.sweeps import examples

LETTERS = st.characters(min_codepoint=32, max_codepoint=0x24FF, exclude_categories=["Cc"])


@pytest.mark.parametrize(
    ("mark", "taken", "following"),
    [
        ("101", [], "101"),
        ("101", ["101"], "102"),
        ("101", ["101", "102"], "103"),
        ("112A", ["112A"], "112B"),
        ("112A", ["112A", "112B", "112C"], "112D"),
        ("112z", ["112z"], "112z 2"),
        ("112Z", ["112Z", "112Z 2"], "112Z 3"),
        ("D-09", ["D-09"], "D-10"),
        ("D-99", ["D-99"], "D-100"),
        ("Lobby", ["Lobby"], "Lobby 2"),
        ("A", ["A"], "B"),
        ("=1+1", ["=1+1"], "=1+2"),
        ("Tür Ä", ["Tür Ä"], "Tür Ä 2"),
        ("9" * 100, ["9" * 100], "9" * 90 + " 2"),
        ("x" * 98 + "99", ["x" * 98 + "99"], "x" * 90 + " 2"),
    ],
)
def test_the_next_mark_is_the_first_after_it_that_is_free(mark, taken, following):
    assert next_mark(mark, taken) == following


@examples(30)
@given(
    st.text(
        st.characters(min_codepoint=32, max_codepoint=0x24FF, exclude_categories=["Cc"]),
        min_size=1,
        max_size=LONGEST_MARK,
    )
)
def test_the_next_mark_is_always_another_and_a_mark(mark):
    following = next_mark(mark, {mark})
    assert following != mark
    assert Opening.model_validate({"mark": following, "size": "3070"}).mark == following


def test_a_long_mark_finds_its_next_however_many_are_taken():
    taken = {"x" * 98 + "99"}
    for _ in range(120):
        taken.add(next_mark("x" * 98 + "99", taken))
    assert len(taken) == 121
    assert max(len(mark) for mark in taken) <= LONGEST_MARK


def test_marks_are_put_in_order_as_people_count():
    marks = ["10A", "2B", "2A", "101", "a1", "A2", "=1+1", "1²"]
    assert sorted(marks, key=mark_order)[:5] == ["1²", "2A", "2B", "10A", "101"]
    assert mark_order("a1") == mark_order("A1")
