"""Older project files brought up to what this program reads, one small step a version."""

from collections.abc import Callable, Mapping
from typing import Any

from configurator.model import VERSION

Document = dict[str, Any]
Step = Callable[[Document], Document]

STEPS: Mapping[int, Step] = {}
"""A version to the step that makes the next one of it. Version 1 is the first and still the present one, so
there is no step yet; whoever raises VERSION adds one here and a sample of the old file to the tests."""


def with_order_apart(document: Document) -> Document:
    """Return the document with what was ordered noted apart: it once stood in the place of the status.

    What had been measured of such an opening was overwritten, so it is assumed. An older program refuses the
    new key by name and misreads nothing, so the version stays.
    """
    openings = document.get("openings")
    if not isinstance(openings, list):
        return document
    return {**document, "openings": [_with_order_apart(opening) for opening in openings]}


def _with_order_apart(opening: Any) -> Any:
    if not isinstance(opening, dict) or opening.get("status") != "ordered":
        return opening
    without = {key: value for key, value in opening.items() if key != "status"}
    return {"order_state": "ordered"} | without


def brought_up(document: Document, to: int = VERSION, steps: Mapping[int, Step] = STEPS) -> Document:
    """Return the document as a file of version `to` would hold it; one of that version is left as it is.

    The file on disk is not touched: it takes its new form when it is saved.
    """
    for version in range(document["version"], to):
        document = {**steps[version](document), "version": version + 1}
    return document
