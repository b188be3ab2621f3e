"""What there is to say of a whole job: what no opening by itself can know."""

from collections.abc import Callable, Iterator, Sequence

from configurator.model import Hinge, JobFacts
from configurator.rules.answers import tried
from configurator.rules.finding import Finding
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.specification import LeafSpecification, must_of
from configurator.rules.uniform import Chosen, uniform_findings
from configurator.rules.width import does_all
from configurator.study.hang import hung_leaves
from configurator.study.records import Study
from configurator.study.run import Hung


def job_findings(studies: Sequence[Study], job: JobFacts | None = None) -> tuple[Finding, ...]:
    """Return what is to be said of the openings of a job together: whether one hinge width would do for all.

    Leaves on which no width does everything are left out: they want another mend first.
    """
    standard = job.standard_hinge if job is not None else None
    return uniform_findings([one for study in studies for one in _chosen(study, standard)])


def _chosen(study: Study, standard: Hinge | None) -> Iterator[Chosen]:
    for leaf in study.specification.leaves:
        if leaf.complete:
            yield Chosen(
                mark=study.opening.mark,
                height=leaf.parts["height"].value,
                width=leaf.parts["width"].value,
                hinges=leaf.parts["count"].value * study.opening.quantity,
                does_all=_does_all(study, leaf, standard),
            )


def _does_all(study: Study, leaf: LeafSpecification, standard: Hinge | None) -> Callable[[float], bool]:
    """Return a question to the geometry; it is answered for the few widths that a whole job may take."""
    known = {one.hinge_width: one for one in study.candidates if one.leaf == leaf.leaf}

    def answer(width: float) -> bool:
        hinges = leaf_hinges(study.filled, standard)
        (hinge,) = (one for one in hinges if one.leaf.name == leaf.leaf)
        found = known.get(width) or tried(
            Hung(study.filled, hung_leaves(study.filled, hinges, standard)), leaf.leaf, width
        )
        return not isinstance(found, str) and does_all(found, must_of(study.filled, hinge))

    return answer
