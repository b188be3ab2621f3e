"""One judgement: an opening in words and as its file has it, and what must be ordered or said of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal


@dataclass(frozen=True)
class Judgement:
    """What an expert would order, or must be told.

    `opening` has the keys of a project file; mark and size are the usual ones where they are left out.
    `recommended` are parts of the hinge as `compare --json` names them, `findings` codes that must be there
    and `silent` codes that must not. `says` has a code and words its message must hold, `assumed` paths that
    must be listed as assumed. `order` are keys of the first order line, and `held` the errors that
    keep the order without one; `job` are the facts of the job. `because` has a part of the hinge and words
    that its reason must hold.
    """

    words: str
    opening: Mapping[str, Any]
    recommended: Mapping[str, Any] = field(default_factory=dict)
    findings: tuple[str, ...] = ()
    silent: tuple[str, ...] = ()
    says: Mapping[str, str] = field(default_factory=dict)
    assumed: tuple[str, ...] = ()
    order: Mapping[str, Any] = field(default_factory=dict)
    held: tuple[str, ...] = ()
    job: Mapping[str, Any] = field(default_factory=dict)
    because: Mapping[str, str] = field(default_factory=dict)
    source: str = "common practice, no source"
    mark: Literal["read", "common practice", "from memory", "derived"] = "common practice"
