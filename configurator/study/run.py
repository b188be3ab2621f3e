"""The study of one opening: fill in, hang every leaf on every width, choose, and say what there is to say."""

from configurator.geometry.solve import scene, solve_scene
from configurator.model import JobFacts, Opening
from configurator.rules.compared import compared_findings
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.opening_findings import opening_findings
from configurator.rules.specification import specify
from configurator.rules.stock import next_wider, stock_widths
from configurator.rules.usual import FilledOpening, fill
from configurator.study.candidate import candidate
from configurator.study.hang import HungLeaf, hanging, hung_leaves
from configurator.study.records import Candidate, Study
from configurator.study.stop_place import given_stop, stop_radians

_NO_STOCK = (4.0, 4.5)


class Hung:
    """An opening's leaves, each hung on a width once however often it is asked for."""

    def __init__(self, filled: FilledOpening, leaves: tuple[HungLeaf, ...]) -> None:
        self.filled = filled
        self.leaves = {leaf.hinge.leaf.name: leaf for leaf in leaves}
        self._known: dict[tuple[str, float], Candidate] = {}

    def __call__(self, leaf: str, width: float) -> Candidate:
        """Return the named leaf on a hinge open width, inches."""
        if (leaf, width) not in self._known:
            self._known[leaf, width] = hang(self.filled, self.leaves[leaf], width)
        return self._known[leaf, width]


def study(opening: Opening, job: JobFacts | None = None) -> Study:
    """Study one opening: every candidate's answers, the recommended hinge and why, and the findings.

    Raises NotGivenError, naming the field, where a value that has no usual one is missing, and ValueError
    with a sentence where a hinge cannot be mounted as asked.
    """
    filled = fill(opening)
    standard = job.standard_hinge if job is not None else None
    leaves = hung_leaves(filled, leaf_hinges(filled, standard), standard)
    hung = Hung(filled, leaves)
    widths = opening.compare or _usual_widths(hung)
    candidates = tuple(hung(leaf, width) for leaf in hung.leaves for width in widths)
    specification = specify(filled, hung, standard)
    compared = compared_findings(specification, widths)
    found = (*opening_findings(filled), *specification.findings, *compared)
    return Study(opening, filled, candidates, specification, found)


def hang(filled: FilledOpening, leaf: HungLeaf, width: float) -> Candidate:
    """Return one leaf on one hinge open width, inches."""
    plan = scene(hanging(filled, leaf, width), leaf.leaf, leaf.hardware, leaf.obstructions, leaf.other)
    stop = given_stop(filled, leaf, plan)
    return candidate(filled, leaf, solve_scene(plan, stop_radians(filled, stop)), stop)


def _usual_widths(hung: Hung) -> tuple[float, ...]:
    """Return the least stock width without an error, then the next wider."""
    height = max(leaf.hinge.height.value for leaf in hung.leaves.values())
    known = stock_widths(height) or _NO_STOCK
    least = next((width for width in known if _without_error(hung, width)), known[0])
    wider = next_wider(height, least)
    return (least,) if wider is None else (least, wider)


def _without_error(hung: Hung, width: float) -> bool:
    found = [one for leaf in hung.leaves for one in hung(leaf, width).findings]
    return not any(one.severity == "error" for one in found)
