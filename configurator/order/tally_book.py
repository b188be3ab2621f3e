"""The tallies of a job as it is worked on: kept by opening, so that an edit costs one study."""

from collections.abc import Sequence

from configurator.model import JobFacts, Opening
from configurator.order.like_openings import study_key
from configurator.order.studied import study_or_fault
from configurator.order.tally import Kept, Tally, of_another, tally


class TallyBook:
    """Answers for any opening of a job with its facts; of openings that are alike one is studied."""

    def __init__(self, facts: JobFacts | None = None) -> None:
        self._facts = facts or JobFacts()
        self._by_record: dict[int, Tally] = {}
        self._by_key: dict[str, Tally] = {}
        self._kept: Kept = {}

    def use_facts(self, facts: JobFacts) -> None:
        """Answer for other facts of the job; its standard hinge counts in every answer."""
        if facts.standard_hinge != self._facts.standard_hinge:
            self._by_record.clear()
            self._by_key.clear()
        self._facts = facts

    def known(self, opening: Opening) -> Tally | None:
        """Return the tally of this very record if it was worked out."""
        return self._by_record.get(id(opening))

    def of(self, opening: Opening) -> Tally:
        """Return the tally of an opening, studied now unless that of a like one is known."""
        found = self._by_record.get(id(opening))
        if found is not None:
            return found
        key = study_key(opening)
        if key not in self._by_key:
            self._by_key[key] = tally(study_or_fault(opening, self._facts), self._facts, self._kept)
        # A tally holds its record, so that no other one can come to have that identity.
        found = self._by_record[id(opening)] = of_another(self._by_key[key], opening)
        return found

    def forget_others(self, openings: Sequence[Opening]) -> None:
        """Forget what belongs to records that are no longer there, once these are the most."""
        if len(self._by_record) > 2 * len(openings) + 100:
            there = {id(opening) for opening in openings}
            self._by_record = {place: kept for place, kept in self._by_record.items() if place in there}
            self._by_key = {study_key(one.opening): one for one in self._by_record.values()}
            self._kept = {}
