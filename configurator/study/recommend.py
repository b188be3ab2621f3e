"""The recommended hinge of an opening, so far as the plan decides it."""

from typing import Any

from configurator.model import Hinge
from configurator.rules.usual import FilledOpening
from configurator.study.hang import HingeBody, HungLeaf


def recommend(
    filled: FilledOpening, leaves: tuple[HungLeaf, ...], body: HingeBody, standard: Hinge | None
) -> dict[str, Any]:
    return {"height": body.height}
