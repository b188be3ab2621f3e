"""How far each person is, kept in a small file of their own in the user's folder for what programs remember.

JSON: the person's name, and for each template how often it was answered right and wrong at first try, and how
often right in a row. A file is written whole or not at all. One that cannot be read counts as none.
"""

import hashlib
import json
import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from configurator.practice.course import BY_KEY, of_topic
from configurator.practice.problem import Template
from configurator.project_file.writing import write_whole
from configurator.resource_files import state_folder

FORMAT = 1
LONGEST_NAME = 60
_SUFFIX = ".practice.json"
_MOST = 10**9


@dataclass(frozen=True, slots=True)
class Tally:
    """How one template went: right and wrong at first try, and how often right in a row up to now."""

    right: int = 0
    wrong: int = 0
    in_a_row: int = 0

    def with_answer(self, right: bool) -> "Tally":
        """Return the tally with one more answer."""
        if right:
            return Tally(self.right + 1, self.wrong, self.in_a_row + 1)
        return Tally(self.right, self.wrong + 1, 0)


@dataclass(frozen=True, slots=True)
class Progress:
    """What one person has practised."""

    person: str
    tallies: Mapping[str, Tally] = field(default_factory=dict)

    def of(self, template: Template) -> Tally:
        """Return how a template went so far."""
        return self.tallies.get(template.key, Tally())

    def with_answer(self, template: Template, right: bool) -> "Progress":
        """Return the progress with one more answer."""
        return replace(self, tallies={**self.tallies, template.key: self.of(template).with_answer(right)})

    def known(self, topic: str) -> int:
        """Return how many templates of a topic went right the last time; of all for an empty name."""
        return sum(1 for template in of_topic(topic) if self.of(template).in_a_row)

    def next_template(self, topic: str, after: Template | None = None) -> Template:
        """Return what comes next: the one least often right in a row, the easiest first.

        What comes after another one goes on from there, so that leaving problems out leads through them all.
        """
        known = of_topic(topic)
        if after in known:
            place = known.index(after) + 1
            known = (*known[place:], *known[: place - 1]) or known  # the same again only where it is alone
        return min(known, key=lambda template: self.of(template).in_a_row)


def practice_folder() -> Path:
    """Return where progress is kept."""
    return state_folder() / "practice"


def file_of(person: str) -> Path:
    """Return the file of a person; whatever is in the name, it is a plain file in the folder."""
    plain = re.sub(r"[^a-z0-9]+", "-", person.lower()).strip("-")[:24] or "somebody"
    digest = hashlib.sha256(person.encode("utf-8", "surrogatepass")).hexdigest()[:8]
    return practice_folder() / f"{plain}-{digest}{_SUFFIX}"


def load_progress(person: str) -> Progress:
    """Return what is kept of a person; nothing where there is no file, or none that can be read."""
    data = _read(file_of(person))
    return Progress(person, _tallies(data.get("templates")))


def save_progress(progress: Progress) -> None:
    """Keep a person's progress. Raises OSError."""
    path = file_of(progress.person)
    path.parent.mkdir(parents=True, exist_ok=True)
    data = {
        "opening_practice": FORMAT,
        "person": progress.person,
        "templates": {
            key: {"right": one.right, "wrong": one.wrong, "in_a_row": one.in_a_row}
            for key, one in sorted(progress.tallies.items())
        },
    }
    write_whole(path, (json.dumps(data, indent=1) + "\n").encode())


def clear_progress(person: str) -> None:
    """Forget a person: their file is removed. Raises OSError."""
    file_of(person).unlink(missing_ok=True)


def people() -> tuple[str, ...]:
    """Return the names of everybody whose progress is kept here, who practised last first."""
    found: dict[str, float] = {}
    with suppress(OSError):
        for path in practice_folder().glob(f"*{_SUFFIX}"):
            name = _read(path).get("person")
            if isinstance(name, str) and file_of(name) == path:
                found[name] = path.stat().st_mtime
    return tuple(sorted(found, key=lambda name: (-found[name], name)))


def _read(path: Path) -> dict[str, Any]:
    try:
        data = json.loads(path.read_bytes())
    except (OSError, ValueError, RecursionError):
        return {}
    return data if isinstance(data, dict) and data.get("opening_practice") == FORMAT else {}


def _tallies(data: Any) -> dict[str, Tally]:
    if not isinstance(data, dict):
        return {}
    return {key: _tally(one) for key, one in data.items() if key in BY_KEY and isinstance(one, dict)}


def _tally(data: dict[str, Any]) -> Tally:
    counts = (data.get(key) for key in ("right", "wrong", "in_a_row"))
    return Tally(*(count if type(count) is int and 0 <= count < _MOST else 0 for count in counts))
