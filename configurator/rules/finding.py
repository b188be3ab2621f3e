"""What the program has to say about an opening: a finding, and the reason behind a choice."""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from types import MappingProxyType
from typing import Any, Literal

from configurator.sentences import written
from configurator.tables import MARKS, Mark, Source
from configurator.units import Display

Severity = Literal["error", "warning", "note"]
SEVERITIES: tuple[Severity, ...] = ("error", "warning", "note")
__all__ = [
    "MARKS",
    "SEVERITIES",
    "Alternative",
    "Finding",
    "Fix",
    "Later",
    "Mark",
    "Reason",
    "Source",
    "by_consequence",
    "finding",
    "holding",
    "reason",
]
NOTHING: Mapping[str, float] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Fix:
    """A mend that one click can make: the place in the opening's record, and the value to put there.

    `path` is dotted, as "door.thickness" or "obstructions.0.projection". `label` is a sentence with marks.
    """

    path: str
    value: Any
    label: str

    def said(self, display: Display) -> str:
        """Return what the button says."""
        return written(self.label, display)


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to say: a code, a severity, and a sentence a client understands that ends in what to do.

    `sentence` holds its lengths and angles as marks, which `said` writes as a display does. `numbers` are
    inches, degrees or pounds as their names say. `fix` may hold several changes made as one; `other_fixes`
    are other ways to mend the same, each by itself.
    """

    code: str
    severity: Severity
    sentence: str
    source: str
    mark_of_source: Mark
    numbers: Mapping[str, float] = field(default_factory=lambda: NOTHING)
    fix: tuple[Fix, ...] = ()
    other_fixes: tuple[tuple[Fix, ...], ...] = ()

    @property
    def message(self) -> str:
        """The sentence in inches, as other tools read it."""
        return written(self.sentence)

    def said(self, display: Display) -> str:
        """Return the sentence as a display shows it."""
        return written(self.sentence, display)

    @property
    def fixes(self) -> tuple[tuple[Fix, ...], ...]:
        """Every way to mend it, the likeliest first."""
        return (self.fix, *self.other_fixes) if self.fix else self.other_fixes

    def as_data(self) -> dict[str, Any]:
        """Return the finding as the results contract names it."""
        return {
            "code": self.code,
            "severity": self.severity,
            "message": self.message,
            "numbers": dict(self.numbers),
            "source": self.source,
            "mark_of_source": self.mark_of_source,
        }


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another value that could be chosen, and what it would cost or break: words with marks."""

    value: Any
    effect: str

    def said(self, display: Display) -> str:
        """Return the effect as a display shows it."""
        return written(self.effect, display)


class Later(Sequence[Alternative]):
    """Alternatives that are worked out when somebody looks at them: each may be a leaf to hang."""

    def __init__(self, work: Callable[[], Iterable[Alternative]]) -> None:
        self._work = work

    @cached_property
    def _found(self) -> tuple[Alternative, ...]:
        return tuple(self._work())

    def __len__(self) -> int:
        return len(self._found)

    def __getitem__(self, place: Any) -> Any:
        return self._found[place]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and self._found == tuple(other)

    def __hash__(self) -> int:
        return hash(self._found)


@dataclass(frozen=True, slots=True)
class Reason:
    """A chosen value with its because (words with marks), its source, and what else could be chosen."""

    value: Any
    because: str
    source: str
    mark: Mark
    alternatives: Sequence[Alternative] = ()

    def said(self, display: Display) -> str:
        """Return the because as a display shows it."""
        return written(self.because, display)

    def as_data(self) -> dict[str, str]:
        """Return the reason as the results contract names it."""
        return {"reason": written(self.because), "source": self.source, "mark_of_source": self.mark}


def finding(
    code: str,
    severity: Severity,
    sentence: str,
    source: Source,
    fix: tuple[Fix, ...] = (),
    **numbers: float,
) -> Finding:
    """Make a finding from a source record; the keywords are the numbers it rests on."""
    return Finding(code, severity, sentence, source.text, source.mark, MappingProxyType(numbers), fix)


ASKS = frozenset(
    {
        "alloy ask first", "angle not asked for", "ask about preparation", "depth not known", "hand unknown",
        "lock unknown", "measure the old hinge", "measured from where", "no casing given", "not said",
        "sizes not given", "template decides", "tile in the throat", "type not checked", "weight unknown",
    }
)  # fmt: skip
"""Codes of findings that ask for something; where they are notes they stand before the other notes."""
DOUBTFUL = ("weight unknown", "door weight")
"""What rests on a weight that is only estimated stands last among its like."""


def by_consequence(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings in the order to read them, each sentence once.

    What is refused, what fails, what is warned of, what is asked, what is noted.
    """
    once = {(one.code, one.sentence): one for one in findings}.values()
    return tuple(sorted(once, key=_consequence))


def _consequence(one: Finding) -> tuple[bool, int, bool, bool]:
    notes = one.severity == "note" and one.code not in ASKS
    return one.code != "refused", SEVERITIES.index(one.severity), notes, one.code in DOUBTFUL


def holding(findings: Iterable[Finding], accepted: Collection[str]) -> tuple[Finding, ...]:
    """Return the errors that hold an order: those whose codes the user has not accepted."""
    return tuple(one for one in findings if one.severity == "error" and one.code not in accepted)


def reason(value: Any, because: str, source: Source, *alternatives: Alternative) -> Reason:
    """Make a reason from a source record."""
    return Reason(value, because, source.text, source.mark, alternatives)
