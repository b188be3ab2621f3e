"""Random jobs as a user could make them, for what must hold of any file."""

from typing import Any

from hypothesis import strategies as st

from configurator.model import Job
from tests.openings import BOX, RAIL, plain_data

words = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=12)
"""Any letters: quotes, backslashes, brackets and what ends in `.0,` are among what must come back."""
awkward = st.sampled_from(["36.0,", '"', "\\", "\\u0041", "1e-5", "3'-0\"", "[{", "Ä – ½", "4.0"])
texts = (words | awkward).filter(lambda text: text.strip() == text and text.isprintable())
lengths = st.integers(1, 192).map(lambda n: n / 64) | st.floats(1e-7, 3, exclude_min=True)


def _openings(marks: list[str]) -> st.SearchStrategy[list[dict[str, Any]]]:
    return st.tuples(*(_opening(mark) for mark in marks)).map(list)


def _opening(mark: str) -> st.SearchStrategy[dict[str, Any]]:
    changes = st.fixed_dictionaries(
        {},
        optional={
            "location": texts,
            "notes": st.none() | texts,
            "fire_minutes": st.integers(0, 480),
            "details": st.fixed_dictionaries({}, optional={"head": texts, "sill": st.none() | texts}),
            "other_columns": st.dictionaries(texts, texts, max_size=2),
            "questions": st.none() | texts,
            "quantity": st.integers(1, 99),
            "door": st.fixed_dictionaries({}, optional={"thickness": st.none() | st.floats(0.5, 3)}),
            "compare": st.lists(st.integers(64, 500).map(lambda n: n / 64), max_size=4, unique=True),
            "obstructions": st.lists(lengths.map(lambda out: RAIL | {"projection": out}), max_size=2),
            "hardware": st.lists(lengths.map(lambda out: BOX | {"projection": out}), max_size=2),
            "hinge_locations": st.sampled_from(
                [{"rule": "7 and 11"}, {"tops": [5, 37, 69.5]}, {"tops": None}]
            ),
            "tolerances": st.fixed_dictionaries({"gaps": st.none() | st.floats(0, 0.1)}),
            "status": st.sampled_from(["assumed", "approved"]),
        },
    )
    return changes.map(lambda change: plain_data(**change, mark=mark))


jobs: st.SearchStrategy[Job] = st.builds(
    lambda facts, openings: Job.model_validate({"job": facts, "openings": openings}),
    st.fixed_dictionaries(
        {}, optional={"name": texts, "notes": texts, "standard_hinge": st.just({"width": 4.5})}
    ),
    st.lists(texts, max_size=4, unique=True).flatmap(_openings),
)
