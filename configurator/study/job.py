"""What there is to say of a whole job: what no opening by itself can know."""

from collections.abc import Callable, Iterator, Sequence

from configurator.model import Hinge, JobFacts
from configurator.rules.finding import Finding
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.specification import LeafSpecification, must_of
from configurator.rules.uniform import Chosen, uniform_findings
from configurator.rules.usual import FilledOpening
from configurator.rules.width import Must, does_all
from configurator.study.hang import hung_leaves
from configurator.study.records import Candidate, Study
from configurator.study.run import Hung


def job_findings(studies: Sequence[Study], job: JobFacts | None = None) -> tuple[Finding, ...]:
    """Return what is to be said of the openings of a job together: whether one hinge width would do for all.

    Leaves on which no width does everything are left out: they want another mend first.
    """
    standard = job.standard_hinge if job is not None else None
    return uniform_findings([one for study in studies for one in _chosen(study, standard)])


def width_does_all(filled: FilledOpening, leaf: str, standard: Hinge | None, width: float) -> bool:
    """Say whether a hinge open width, inches, does all that the named leaf of an opening needs."""
    found = hung_on(filled, leaf, standard, width)
    return found is not None and does_all(found, _must(filled, leaf, standard))


def hung_on(filled: FilledOpening, leaf: str, standard: Hinge | None, width: float) -> Candidate | None:
    """Return the named leaf on a hinge open width, inches; None where such a hinge cannot be mounted."""
    hung = Hung(filled, hung_leaves(filled, leaf_hinges(filled, standard), standard))
    try:
        return hung(leaf, width)
    except ValueError:
        return None


def known_widths(study: Study, leaf: str, standard: Hinge | None) -> dict[float, bool]:
    """Return, for each width that a study has hung the leaf on, whether it does all that the leaf needs."""
    must = _must(study.filled, leaf, standard)
    return {one.hinge_width: does_all(one, must) for one in study.candidates if one.leaf == leaf}


def _must(filled: FilledOpening, leaf: str, standard: Hinge | None) -> Must:
    (hinge,) = (one for one in leaf_hinges(filled, standard) if one.leaf.name == leaf)
    return must_of(filled, hinge)


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
    """Return a question that is answered for the few widths that a whole job may take."""

    def answer(width: float) -> bool:
        known = known_widths(study, leaf.leaf, standard)
        return known[width] if width in known else width_does_all(study.filled, leaf.leaf, standard, width)

    return answer
