"""The study of one opening: fill in, hang every leaf on every width, choose, and say what there is to say."""

from collections.abc import Iterator

from configurator.geometry.solve import solve
from configurator.model import Hinge, JobFacts, Opening
from configurator.rules.leaves import leaves_of
from configurator.rules.opening_findings import opening_findings
from configurator.rules.stock import next_wider, stock_widths
from configurator.rules.usual import FilledOpening, fill
from configurator.study.candidate import candidate
from configurator.study.hang import HingeBody, HungLeaf, hanging, hinge_body, hung_leaves, stop_radians
from configurator.study.recommend import recommend
from configurator.study.records import Candidate, Study

_NO_STOCK = (4.0, 4.5)


def study(opening: Opening, job: JobFacts | None = None) -> Study:
    """Study one opening: every candidate's answers, the recommended hinge and why, and the findings.

    Raises NotGivenError, naming the field, where a value that has no usual one is missing, and ValueError
    with a sentence where a hinge cannot be mounted as asked.
    """
    filled = fill(opening)
    standard = job.standard_hinge if job is not None else None
    body = _body(filled, standard)
    leaves = hung_leaves(filled, body.height)
    widths = opening.compare or _usual_widths(filled, leaves, body)
    candidates = tuple(hang(filled, leaf, body, width) for leaf in leaves for width in widths)
    recommended = recommend(filled, leaves, body, standard)
    return Study(opening, filled, candidates, recommended, opening_findings(filled))


def hang(filled: FilledOpening, leaf: HungLeaf, body: HingeBody, width: float) -> Candidate:
    """Return one leaf on one hinge open width."""
    solution = solve(
        hanging(filled, leaf, body, width),
        leaf.leaf,
        leaf.hardware,
        leaf.obstructions,
        leaf.other,
        stop_radians(filled),
    )
    return candidate(filled, leaf, body, solution)


def _body(filled: FilledOpening, standard: Hinge | None) -> HingeBody:
    """Return the hinge of the leaf that needs the highest: all leaves of an opening take one height."""
    bodies = (hinge_body(filled, standard, leaf, "standard") for leaf in leaves_of(filled))
    return max(bodies, key=lambda body: body.height)


def _usual_widths(filled: FilledOpening, leaves: tuple[HungLeaf, ...], body: HingeBody) -> tuple[float, ...]:
    """Return the least stock width without an error, then the next wider."""
    known = stock_widths(body.height) or _NO_STOCK
    least = next(_without_error(filled, leaves, body, known), known[0])
    wider = next_wider(body.height, least)
    return (least,) if wider is None else (least, wider)


def _without_error(
    filled: FilledOpening, leaves: tuple[HungLeaf, ...], body: HingeBody, widths: tuple[float, ...]
) -> Iterator[float]:
    for width in widths:
        found = [f for leaf in leaves for f in hang(filled, leaf, body, width).findings]
        if not any(one.severity == "error" for one in found):
            yield width
