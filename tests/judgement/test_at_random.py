"""Of no opening is opposite advice given, an error recommended, or an unknown passed over."""

from types import SimpleNamespace

import pytest

from configurator.rules.finding import Finding, Fix
from configurator.study import study
from tests.judgement.at_random import (
    GIVES,
    advice_of,
    contradictions,
    errors_recommended,
    faults,
    opening_at_random,
    unlisted,
)
from tests.rules.test_every_finding import FINDINGS
from tests.sweeps import sized

EACH = 25


@pytest.mark.parametrize("start", range(0, sized(75, 10_000), EACH))
def test_the_advice_of_openings_at_random(start):
    for seed in range(start, start + EACH):
        given, facts = opening_at_random(seed)
        assert faults(study(given, facts)) == [], seed


@pytest.mark.parametrize("finding", FINDINGS)
def test_every_code_gives_the_advice_it_may(finding):
    assert advice_of(finding) <= GIVES.get(finding.code, frozenset()), finding.message


def said(code, message, *fixes, severity="warning"):
    return Finding(code, severity, message, "worked out from the plan", "derived", fix=fixes)


WIDER, NARROWER = "Take 4-1/2 x 5.", "Take 4-1/2 x 4."


@pytest.mark.parametrize(
    ("one", "other", "opposed"),
    [
        (said("stops short", WIDER), said("too narrow to pass", NARROWER), True),
        (said("stops short", WIDER), said("barrel close", WIDER), False),
        (said("stops short", WIDER), said("reveal does it too", NARROWER), False),
        (said("a", "Take a wider hinge."), said("b", "a wider hinge is not the answer."), True),
        (said("a", "Take a wider hinge."), said("b", "No stock width does it."), True),
        (said("a", "Bevel the lock edge."), said("template decides", "Ask for the template."), True),
        (said("a", "Active leaf: take a wider hinge"), said("b", "try a narrower hinge"), False),
        (said("a", ".", Fix("hinge.count", 3, "")), said("b", ".", Fix("hinge.count", 4, "")), True),
        (said("a", ".", Fix("hinge.count", 3, "")), said("b", ".", Fix("hinge.count", 3, "")), False),
    ],
)
def test_what_is_opposed(one, other, opposed):
    findings = SimpleNamespace(all_findings=lambda: (one, other))
    pairs = [fault for fault in contradictions(findings) if " / " in fault]
    assert bool(pairs) == opposed
    assert bool(
        list(contradictions(SimpleNamespace(all_findings=lambda: (said("a", "Try a narrower hinge."),))))
    )


def test_an_error_that_is_recommended_and_an_unknown_that_is_not_listed_are_found():
    opening, _ = opening_at_random(0)
    whole = study(opening.model_validate({"mark": "1", "size": "3070"}))
    assert faults(whole) == []
    error = said("refused", "It does not go in.", severity="error")
    recommended = SimpleNamespace(
        findings=(error,), recommended=whole.recommended, specification=whole.specification,
        candidates=whole.candidates,
    )  # fmt: skip
    assert len(list(errors_recommended(recommended))) == 1
    known = {
        path: told for path, told in whole.filled.assumed.items() if path not in ("use.humid", "door.weight")
    }
    filled = SimpleNamespace(assumed=known)
    passed_over = SimpleNamespace(filled=filled, opening=whole.opening, leaves=whole.leaves)
    assert list(unlisted(passed_over)) == [
        "use.humid is not listed as assumed",
        "door.weight is not listed as assumed",
    ]
