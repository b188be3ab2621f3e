"""Openings for the rules' tests, hung by the real geometry on whatever width the rules ask for."""

from configurator.model import Hinge, JobFacts, Opening
from configurator.rules.specification import Specification
from configurator.study.run import study
from tests.openings import LEVER

__all__ = ["LEVER", "codes", "found", "opening", "specified"]

USUAL = {
    "mark": "1",
    "hand": "LH",
    "size": {"width": 36, "height": 84},
    "door": {"construction": "hollow metal, 18 gage"},
    "wall": {"thickness": 4.875},
    "use": {"locked": True, "closer": True, "accessible": True, "wanted_angle": 180},
}


def opening(**changes) -> Opening:
    """Return the usual opening with changes; a group given as a dict is merged into the usual one."""
    data = dict(USUAL)
    for key, value in changes.items():
        merged = isinstance(value, dict) and isinstance(data.get(key), dict)
        data[key] = {**data[key], **value} if merged else value
    return Opening.model_validate(data)


def specified(given: Opening, standard: Hinge | None = None) -> Specification:
    """Return the specification of an opening, with the real geometry behind it."""
    return study(given, JobFacts(standard_hinge=standard)).specification


def found(spec: Specification, code: str):
    """Return the one finding with that code."""
    (one,) = [finding for finding in spec.findings if finding.code == code]
    return one


def codes(spec: Specification) -> set[str]:
    """Return the codes of all findings."""
    return {finding.code for finding in spec.findings}
