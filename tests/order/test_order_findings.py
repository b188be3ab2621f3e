"""Everything that is said of an order: plain, with its source, and with what to do."""

import re
from dataclasses import replace

import pytest

from configurator.order.book import tally_job
from configurator.order.order_findings import name_marks, sum_findings
from configurator.order.reconcile import reconcile
from configurator.rules.finding import MARKS
from tests.order.cases import data, job_of, ordered

HANDED = {"mounting": "swing clear"}
LOW = {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}}
WIRED = {"leaves": "pair", "size": {"width": 72, "height": 84}, "hinge": {"electric": 2}}


def everything():
    order = ordered(
        data("1", hand=None, hinge=HANDED),
        data("2", **LOW),
        data("3", **WIRED),
        data("4", hand="LH", hinge=HANDED),
    )
    job = job_of(data("1"))
    line = ordered(data("1")).lines[0]
    line = replace(line, parts={hinge: {"1": 2} for hinge in line.parts})
    return (*order.findings, *sum_findings(reconcile([line], tally_job(job), ())))


SAID = everything()


def test_all_that_an_order_can_say_is_among_them():
    own = {"hand of the hinge", "not studied", "electric hinge leaf", "sold by height", "lines differ"}
    assert own <= {said.finding.code for said in SAID}


@pytest.mark.parametrize("said", SAID, ids=lambda said: said.finding.code)
def test_a_buyer_understands_it(said):
    words = said.finding.message
    assert words[0].isupper() or words[0].isdigit()
    assert words.endswith((".", "?"))
    assert not re.search(r"_|None|nan|[{}\[\]]", words)
    assert said.finding.source
    assert said.finding.mark_of_source in MARKS
    assert set(said.as_data()) >= {
        "code",
        "severity",
        "message",
        "numbers",
        "source",
        "mark_of_source",
        "marks",
    }
    assert re.search(r"\b(give|check|say|order|take|change|ask|make)\b", words, re.IGNORECASE)


def test_its_marks_stand_before_a_sentence_that_does_not_name_them():
    by_code = {said.finding.code: said for said in SAID}
    assert by_code["hand of the hinge"].words.startswith("1: A swing clear hinge is handed")
    assert by_code["lines differ"].words == by_code["lines differ"].finding.message


@pytest.mark.parametrize(
    ("count", "words"), [(0, ""), (6, "M0, M1, M2, M3, M4, M5"), (7, "M0, M1, M2, M3, M4, M5 and 1 more")]
)
def test_a_few_marks_are_named_and_the_rest_counted(count, words):
    assert name_marks([f"M{n}" for n in range(count)]) == words
