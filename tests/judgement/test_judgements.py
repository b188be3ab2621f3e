"""What an expert would order of an opening, or must be told; each part of it is a table of its own."""

from importlib import import_module
from pathlib import Path

import pytest

from configurator.model import Job
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.study import study
from tests.judgement.judgement import Judgement

PARTS = sorted(path.stem for path in Path(__file__).parent.glob("cases_*.py"))
ALL: tuple[Judgement, ...] = tuple(
    case for part in PARTS for case in import_module(f"tests.judgement.{part}").CASES
)
USUAL = {"mark": "1", "size": "3070"}


@pytest.mark.parametrize("case", ALL, ids=lambda case: case.words)
def test_judgement(case):
    job = Job.model_validate({"job": case.job, "openings": [{**USUAL, **case.opening}]})
    answer = study(job.openings[0], job.job)
    data = answer.as_data()
    assert {key: data["recommended"].get(key) for key in case.recommended} == case.recommended
    said = {one["code"]: one["message"] for one in data["findings"]}
    assert not set(case.findings) - set(said)
    assert not set(case.silent) & set(said)
    for code, words in case.says.items():
        assert words in said[code]
    for part, words in case.because.items():
        assert words in data["recommended"]["because"][part]["reason"]
    assert not set(case.assumed) - set(answer.filled.assumed)
    if case.order or case.held:
        ordered = take_off(tally_job(job), job.job).as_data()
        held = [code for one in ordered["not_ordered"] if one["why"] == "held" for code in one["codes"]]
        assert sorted(case.held) == sorted(held)
        assert bool(ordered["lines"]) == bool(case.order)
        assert all({key: line.get(key) for key in case.order} == case.order for line in ordered["lines"][:1])
