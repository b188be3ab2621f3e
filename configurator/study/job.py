"""What there is to say of a whole job: what no opening by itself can know."""

from collections.abc import Callable, Iterator, Sequence

from configurator.rules.finding import Finding, holding
from configurator.rules.hinge.answers import tried
from configurator.rules.hinge.uniform import Chosen, uniform_findings
from configurator.rules.hinge.width import does_all
from configurator.rules.specification import LeafSpecification
from configurator.study.run import LeafHanger, Study


def job_findings(studies: Sequence[Study]) -> tuple[Finding, ...]:
    """Return what is to be said of the openings of a job together: whether one hinge width would do for all.

    Openings that an error holds are left out: their hinges are not ordered.
    """
    return uniform_findings([one for study in studies for one in _chosen(study)])


def width_does_all(hanger: LeafHanger, leaf: str, width: float) -> bool:
    """Say whether a hinge open width, inches, does all that the named leaf of an opening needs."""
    found = tried(hanger, leaf, width)
    return not isinstance(found, str) and does_all(found, hanger.must(leaf))


def known_widths(hanger: LeafHanger, leaf: str) -> dict[float, bool]:
    """Return, for each width that a leaf was studied on so far, whether it does all that the leaf needs."""
    must = hanger.must(leaf)
    return {one.hinge_width: does_all(one, must) for one in hanger.solved_so_far(leaf)}


def _chosen(study: Study) -> Iterator[Chosen]:
    if holding(study.findings, study.opening.order_despite):
        return
    for leaf in study.specification.leaves:
        if leaf.can_be_had:
            yield Chosen(
                mark=study.opening.mark,
                height=leaf.parts["height"].value,
                width=leaf.parts["width"].value,
                hinges=leaf.parts["count"].value * study.opening.quantity,
                does_all=_does_all(study, leaf),
                complete=leaf.complete,
            )


def _does_all(study: Study, leaf: LeafSpecification) -> Callable[[float], bool]:
    return lambda width: width_does_all(study.hanger, leaf.leaf, width)
