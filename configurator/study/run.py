"""The study of one opening: fill in, hang every leaf on every width, choose, and say what there is to say."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from configurator.model import Hinge, Issue, JobFacts, Opening, Way
from configurator.model.words import WidthPolicy
from configurator.rules.checks.manoeuvring import manoeuvring
from configurator.rules.checks.opening_findings import opening_findings
from configurator.rules.checks.way_findings import ways_worth_comparing
from configurator.rules.filling.usual import FilledOpening, fill
from configurator.rules.filling.ways import fill_way, way_hung_on
from configurator.rules.finding import Finding, by_consequence
from configurator.rules.hinge.angle_not_asked import settled
from configurator.rules.hinge.answers import Must, WidthChoice
from configurator.rules.hinge.stock import next_narrower, next_wider, stock_widths
from configurator.rules.hinge.width import choose_width
from configurator.rules.specification import Specification, compared_findings, specify
from configurator.study.candidate import Candidate, hang
from configurator.study.hang import HangsOn, HungLeaf, hang_leaves

_NO_STOCK = (4.0, 4.5)
_NO_FACTS = JobFacts()


class LeafHanger:
    """Hangs an opening's leaves on hinge widths, each once however often it is asked for.

    `standard` is the job's standard hinge, which counts in every leaf.
    """

    def __init__(self, filled: FilledOpening, standard: Hinge | None = None) -> None:
        self.filled, self.standard = filled, standard
        self.leaves = hang_leaves(filled, standard)
        self._by_name = {leaf.name: leaf for leaf in self.leaves}
        self._known: dict[tuple[str, HangsOn], Candidate] = {}
        self._musts: dict[str, Must] = {}
        self._choices: dict[str, WidthChoice] = {}

    def __call__(self, leaf: str, on: HangsOn) -> Candidate:
        """Return the named leaf on a hinge open width, inches, or hung another way.

        Raises ValueError with a sentence where it cannot be hung so.
        """
        found = self._known.get((leaf, on))
        if found is None:
            found = self._known[leaf, on] = hang(self._by_name[leaf], on, self)
        return found

    def in_way(self, leaf: str, way: Way) -> tuple[Candidate, ...]:
        """Return the named leaf hung another way, once for each side it swings to. Raises ValueError."""
        barrel = self.leaf(leaf).hinge.barrel.value
        return tuple(self(leaf, one) for one in fill_way(way, self.filled, barrel))

    def solved_so_far(self, leaf: str) -> tuple[Candidate, ...]:
        """Return the named leaf on every width of which anybody asked how far it opens, narrow to wide."""
        found = (one for one in self._known.values() if one.leaf == leaf and one.way is None)
        solved = (one for one in found if one.solution.swing_is_known)
        return tuple(sorted(solved, key=lambda one: one.hinge_width))

    def must(self, leaf: str) -> Must:
        """Return what the named leaf's hinge width has to do; an angle that nobody asked for is settled."""
        if leaf not in self._musts:
            self._musts[leaf] = settled(self.filled, self.leaf(leaf).must, self)
        return self._musts[leaf]

    def choice(self, leaf: str) -> WidthChoice:
        """Return the width that is to be taken for the named leaf."""
        if leaf not in self._choices:
            self._choices[leaf] = choose_width(self.must(leaf), self)
        return self._choices[leaf]

    def otherwise(self, opening: Opening) -> "LeafHanger":
        """Return the hanger of another record of the opening, in the same job. Raises as `fill` does."""
        return LeafHanger(fill(opening, self.filled.width_policy), self.standard)

    def leaf(self, name: str) -> HungLeaf:
        """Return the leaf of that name, to be hung on any width."""
        return self._by_name[name]

    def let_go(self) -> None:
        """Forget what was hung, so that a study that nobody needs any more is freed at once.

        Every candidate knows its hanger; together they would wait for the collector.
        """
        self._known.clear()


@dataclass(frozen=True, slots=True)
class Study:
    """The whole answer for one opening."""

    opening: Opening
    candidates: tuple[Candidate, ...]
    specification: Specification
    findings: tuple[Finding, ...]
    hanger: LeafHanger = field(compare=False, repr=False)
    """The leaves as they were studied; it knows every width they were hung on."""
    issues: tuple[Issue, ...] = field(default=(), compare=False, repr=False)
    """The revisions that its sheets tell of; no answer depends on them."""

    @property
    def filled(self) -> FilledOpening:
        """The opening with every number filled in."""
        return self.hanger.filled

    @property
    def compared(self) -> tuple[float | Way, ...]:
        """What is set side by side: open widths, inches, and other ways of hanging, in their order."""
        given = (one.hinge_width if one.way is None else one.way.given for one in self.candidates)
        return self.opening.compare or tuple(dict.fromkeys(given))

    @property
    def butts(self) -> tuple[Candidate, ...]:
        """The candidates on a hinge of some open width, without those hung another way."""
        return tuple(one for one in self.candidates if one.way is None)

    @property
    def leaves(self) -> tuple[HungLeaf, ...]:
        """The opening's leaves, each to be hung on any width."""
        return self.hanger.leaves

    @property
    def standard(self) -> Hinge | None:
        """The job's standard hinge that it was studied with."""
        return self.hanger.standard

    @property
    def recommended(self) -> dict[str, Any]:
        """The recommended hinge as the results contract names it; none where an error stands against it."""
        return {} if self.errors else self.specification.as_data()

    @property
    def errors(self) -> tuple[Finding, ...]:
        """What keeps the hinge that was chosen from being recommended."""
        return tuple(one for one in self.findings if one.severity == "error")

    def of_leaf(self, name: str) -> "Study":
        """Return the study with the candidates of one leaf only; all of them where there is no such leaf."""
        of_it = tuple(one for one in self.candidates if one.leaf == name)
        return replace(self, candidates=of_it) if of_it else self

    def all_findings(self) -> tuple[Finding, ...]:
        """Return the opening's findings and its candidates', by consequence, each sentence once."""
        of_widths = (found for candidate in self.candidates for found in candidate.findings)
        return by_consequence((*self.findings, *of_widths))

    def as_data(self) -> dict[str, Any]:
        """Return the study as the results contract names it."""
        return {
            "mark": self.opening.mark,
            "candidates": [candidate.as_data() for candidate in self.candidates],
            "recommended": self.recommended,
            "not_recommended": self.specification.as_data() if self.errors else {},
            "manoeuvring": [side.as_data() for side in manoeuvring(self.filled)],
            "findings": [finding.as_data() for finding in self.findings],
        }


def study(opening: Opening, job: JobFacts | None = None, *, compared: bool = True) -> Study:
    """Study one opening: every candidate's answers, the recommended hinge and why, and the findings.

    With `compared` False only the first of several widths is a candidate: an order wants none that is hung
    to stand beside the one taken. All else is the same. Raises NotGivenError, naming the field, where a value
    that has no usual one is missing, and ValueError with a sentence where a hinge cannot be mounted as asked.
    """
    standard, policy = (_NO_FACTS if job is None else job).asks_of_hinges
    return _study(opening, standard, policy, compared)


def study_as(known: Study, opening: Opening) -> Study:
    """Study another record as `known` was studied: for the same job. Raises as `study` does."""
    return _study(opening, known.standard, known.filled.width_policy)


def _study(
    opening: Opening, standard: Hinge | None, policy: WidthPolicy | None, compared: bool = True
) -> Study:
    filled = fill(opening, policy)
    hanger = LeafHanger(filled, standard)
    specification = specify(filled, [leaf.hinge for leaf in hanger.leaves], hanger, standard)
    entries = opening.compare or _usual_entries(hanger, specification)
    widths = [one for one in entries if not isinstance(one, Way)]
    shown = entries if compared or len(widths) < len(entries) else widths[:1]
    leaves = (_hung(hanger, specification, leaf.name, shown) for leaf in hanger.leaves)
    candidates = tuple(one for leaf in leaves for one in leaf)
    if shown is entries:
        widths = [one.hinge_width for one in candidates if one.way is None]
    beside = compared_findings(specification, widths, entries)
    worth = ways_worth_comparing(filled, [leaf.hinge for leaf in hanger.leaves], entries)
    found = (*opening_findings(filled), *specification.findings, *beside, *worth)
    return Study(opening, candidates, specification, by_consequence(found), hanger)


def _hung(
    hanger: LeafHanger, specification: Specification, leaf: str, entries: Sequence[float | Way]
) -> Iterator[Candidate]:
    """Yield a leaf on every width and in every way compared, in their order, each once."""
    known = set()
    for entry in entries:
        if isinstance(entry, Way) and entry.hung_on == "butt hinge" and entry.axis_off_face is None:
            entry = _width_taken(specification, leaf)
        found = hanger.in_way(leaf, entry) if isinstance(entry, Way) else (hanger(leaf, entry),)
        yield from (one for one in found if id(one) not in known)
        known |= {id(one) for one in found}


def _width_taken(specification: Specification, leaf: str) -> float:
    """Return the open width of the hinge taken for a leaf: where a butt usually stands."""
    (own,) = (one for one in specification.leaves if one.leaf == leaf)
    return own.parts["width"].value or _NO_STOCK[-1]


def _usual_entries(hanger: LeafHanger, specification: Specification) -> Sequence[float | Way]:
    """Return what is compared where nobody chose: the widths, and before one of them what it hangs on."""
    way, widths = way_hung_on(hanger.filled.opening), _usual_widths(hanger, specification)
    return widths if way is None else (way, *widths[:1])


def _usual_widths(hanger: LeafHanger, specification: Specification) -> Sequence[float]:
    """Return the widths taken for the leaves; beside a single one the next narrower, or the next wider.

    A narrower one that has an error shows nothing worth comparing.
    """
    taken = {leaf.parts["width"].value for leaf in specification.leaves} - {None}
    height = max(leaf.hinge.height.value for leaf in hanger.leaves)
    if not taken:
        return (stock_widths(height) or _NO_STOCK)[:2]
    if len(taken) > 1:
        return sorted(taken)
    (width,) = taken
    narrower, wider = next_narrower(height, width), next_wider(height, width)
    if narrower is not None and _without_error(hanger, narrower):
        return narrower, width
    return (width,) if wider is None else (width, wider)


def _without_error(hanger: LeafHanger, width: float) -> bool:
    found = [one for leaf in hanger.leaves for one in hanger(leaf.name, width).findings]
    return not any(one.severity == "error" for one in found)
