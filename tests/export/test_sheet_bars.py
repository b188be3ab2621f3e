"""A few openings of every kind against the bars of a sheet; `tests/bench/check_sheets.py` takes 200."""

from dataclasses import replace

import pytest

from configurator.drawing.base.primitives import Text
from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import sheet_maker
from configurator.model import JobFacts
from tests.export.sheet_bars import display_of, faults, faults_of, studied
from tests.sweeps import sized

SEEDS = range(900, 900 + sized(6, 60))


@pytest.mark.parametrize("seed", SEEDS)
def test_sheets_of_openings_at_random_keep_the_bars(seed):
    papers_in_turn = list(papers().values())
    assert list(faults(seed, [papers_in_turn[seed % len(papers_in_turn)]])) == []


def test_a_name_that_is_gone_and_texts_over_one_another_are_seen():
    seed = next(seed for seed in range(100) if studied(seed).opening.obstructions)
    answer, display = studied(seed), display_of(seed)
    page = sheet_maker("plan")(answer, JobFacts(), papers()["Letter"], None, display, (1, 1))
    assert list(faults_of(answer, page, "plan", display)) == []
    bare = replace(page, details=(), furniture=())
    seen = " ".join(faults_of(answer, bare, "plan", display))
    assert "is not named with its figures in the PDF" in seen
    assert "pin axis off door face is nowhere" in seen
    over = Text("A-ANNO-TEXT", (100.0, 300.0), "over one another", 8.0)
    twice = replace(page, furniture=(*page.furniture, over, over))
    assert "lies over" in " ".join(faults_of(answer, twice, "plan", display))
