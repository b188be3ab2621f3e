"""The recommended hinge of an opening, so far as the plan decides it."""

from typing import Any

from configurator.study.hang import HingeBody, HungLeaf
from configurator.rules.usual import FilledOpening
from configurator.model import Hinge


def recommend(filled: FilledOpening, leaves: tuple[HungLeaf, ...], body: HingeBody, standard: Hinge | None) -> dict[str, Any]:
    return {"height": body.height}
