"""How far each person is, kept in a small file of their own in the user's folder for what programs remember.

JSON: the person's name; for each template how often it was answered right and wrong at first try, how often
right in a row, how often of those among problems of other kinds, and the day it is due again; the day's set;
how many were answered on each day; the small jobs that were passed. A file is written whole or not at all.
One that cannot be read counts as none; what an earlier version left out is taken as not yet known.
"""

import hashlib
import json
import re
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import asdict, dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from configurator.practice.course import BY_KEY, LEVELS, of_level, of_topic
from configurator.practice.problem import Template
from configurator.project_file.writing import write_whole
from configurator.resource_files import state_folder

FORMAT = 1
LONGEST_NAME = 60
SET_OF_DAY = 10
_SUFFIX = ".practice.json"
_MOST = 10**9
_KNOWN_AFTER = 2
"""Right answers in a row, each when it was due: one alone may be luck."""
_DAYS = (1, 3, 7, 16, 35)
"""Days until a problem comes back after the first right answer in a row, the second and so on."""
_BETWEEN = 5
"""What was asked just now waits for so many others."""
_MOST_OLD_ONES = 7
"""Of a day's set: the rest is new, as long as there is any."""
_DAYS_KEPT = 90


@dataclass(frozen=True, slots=True)
class Tally:
    """How one template went: right and wrong at first try, and how often right in a row up to now.

    `mixed` is how many of those in a row came among problems of other kinds; `due` is the ISO day on which it
    comes back, empty where it is due at once.
    """

    right: int = 0
    wrong: int = 0
    in_a_row: int = 0
    mixed: int = 0
    due: str = ""

    @property
    def was_asked(self) -> bool:
        """Whether it was ever answered."""
        return self.right + self.wrong > 0

    @property
    def is_known(self) -> bool:
        """Whether it went right often enough in a row, days apart."""
        return self.in_a_row >= _KNOWN_AFTER

    def is_due(self, today: date) -> bool:
        """Say whether it has been asked and is to be asked again."""
        return self.was_asked and self.due <= today.isoformat()

    def with_answer(self, right: bool, today: date, mixed: bool = True, helped: bool = False) -> "Tally":
        """Return the tally with one more answer.

        A right one before its day, or with help, is no step on. A wrong one comes back the same day, once.
        """
        if not right:
            again = self.was_asked and self.in_a_row == 0 and self.due == today.isoformat()
            comes_back = today + timedelta(days=1) if again else today
            return Tally(self.right, self.wrong + 1, 0, 0, comes_back.isoformat())
        if helped or self.due > today.isoformat():
            due = max(self.due, (today + timedelta(days=1)).isoformat())
            return replace(self, right=self.right + 1, mixed=self.mixed + mixed, due=due)
        wait = timedelta(days=_DAYS[min(self.in_a_row, len(_DAYS) - 1)])
        due = (today + wait).isoformat()
        return Tally(self.right + 1, self.wrong, self.in_a_row + 1, self.mixed + mixed, due)


@dataclass(frozen=True, slots=True)
class Day:
    """The set of one day by template keys, and which of it were answered, right or not."""

    date: str = ""
    keys: tuple[str, ...] = ()
    done: Mapping[str, bool] = field(default_factory=dict)

    @property
    def right(self) -> int:
        """How many of the set went right."""
        return sum(self.done.values())

    @property
    def is_finished(self) -> bool:
        """Whether all of the set was answered."""
        return bool(self.keys) and len(self.done) == len(self.keys)


@dataclass(frozen=True, slots=True)
class Progress:
    """What one person has practised."""

    person: str
    tallies: Mapping[str, Tally] = field(default_factory=dict)
    day: Day = field(default_factory=Day)
    days: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    """For each ISO day how many were answered, and how many of them right at first try."""
    jobs: Mapping[str, str] = field(default_factory=dict)
    """The levels whose small job was passed, each with the ISO day."""

    def of(self, template: Template) -> Tally:
        """Return how a template went so far."""
        return self.tallies.get(template.key, Tally())

    def with_answer(
        self, template: Template, right: bool, today: date, mixed: bool = True, helped: bool = False
    ) -> "Progress":
        """Return the progress with one more answer."""
        key, iso = template.key, today.isoformat()
        tally = self.of(template).with_answer(right, today, mixed, helped)
        asked, good = self.days.get(iso, (0, 0))
        days = dict(sorted({**self.days, iso: (asked + 1, good + right)}.items())[-_DAYS_KEPT:])
        day = self.day
        if day.date == iso and key in day.keys and key not in day.done:
            day = replace(day, done={**day.done, key: right})
        return replace(self, tallies={**self.tallies, key: tally}, days=days, day=day)

    def with_job(self, level: int, today: date) -> "Progress":
        """Return the progress with the small job of a level passed."""
        return replace(self, jobs={**self.jobs, str(level): today.isoformat()})

    def known(self, topic: str) -> int:
        """Return how many templates of a topic are known; of all for an empty name."""
        return sum(1 for template in of_topic(topic) if self.of(template).is_known)

    def is_known(self, topic: str) -> bool:
        """Say whether a topic is known: every kind of it, and each among problems of other kinds too."""
        tallies = [self.of(template) for template in of_topic(topic)]
        return all(one.is_known and one.mixed for one in tallies)

    def has_met(self, level: int) -> bool:
        """Say whether every kind of problem of a level went right at least once."""
        return all(self.of(template).right for template in of_level(level))

    def weak(self) -> tuple[Template, ...]:
        """Return the templates that went wrong and are not known again, the most often missed first."""
        missed = [one for one in of_topic("") if self.of(one).wrong and not self.of(one).is_known]
        return tuple(sorted(missed, key=lambda one: -self.of(one).wrong))

    def days_in_a_row(self, today: date) -> int:
        """Return on how many days in a row up to today, or to yesterday, anything was answered."""
        day = today if today.isoformat() in self.days else today - timedelta(days=1)
        count = 0
        while day.isoformat() in self.days:
            count, day = count + 1, day - timedelta(days=1)
        return count

    def next_template(
        self, topic: str, today: date, recent: Iterable[str] = (), left_out: Iterable[str] = ()
    ) -> Template:
        """Return what comes next of a topic, of the whole course for an empty name.

        First what is due again, then what is new, from the beginning on, then what is least known; nothing of
        what was asked just now (`recent`) and what was `left_out` only after all else.
        """
        pool, late = of_topic(topic), frozenset(left_out)
        just_now = frozenset(tuple(recent)[-min(_BETWEEN, len(pool) - 1) :] if len(pool) > 1 else ())
        pool = tuple(one for one in pool if one.key not in just_now)
        return min(pool, key=lambda one: (one.key in late, *self._rank(one, today)))

    def _rank(self, template: Template, today: date) -> tuple[int, int, str]:
        tally = self.of(template)
        kind = 0 if tally.is_due(today) else 1 if not tally.was_asked else 2
        return kind, tally.in_a_row if kind != 1 else 0, tally.due if kind != 1 else ""

    def on(self, today: date) -> "Progress":
        """Return the progress with the set of a day: what is due, then what is new, topics mixed."""
        if self.day.date == today.isoformat():
            return self
        ranked = sorted(of_topic(""), key=lambda one: self._rank(one, today))
        due = [one for one in ranked if self.of(one).is_due(today)]
        new = [one for one in ranked if not self.of(one).was_asked]
        rest = [one for one in ranked if one not in due and one not in new]
        chosen = [*due[:_MOST_OLD_ONES], *new, *due[_MOST_OLD_ONES:], *rest][:SET_OF_DAY]
        return replace(self, day=Day(today.isoformat(), tuple(one.key for one in _mixed(chosen))))

    def next_of_day(self) -> Template | None:
        """Return the next of the day's set that was not answered; None once it is finished."""
        return next((BY_KEY[key] for key in self.day.keys if key not in self.day.done), None)


def _mixed(templates: list[Template]) -> list[Template]:
    """Order templates so that no two of a topic follow one another where it can be helped."""
    left, ordered = list(templates), list[Template]()
    while left:
        last = ordered[-1].topic if ordered else ""
        chosen = next((one for one in left if one.topic != last), left[0])
        left.remove(chosen)
        ordered.append(chosen)
    return ordered


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
    return Progress(
        person,
        _tallies(data.get("templates")),
        _day(data.get("day")),
        _days(data.get("days")),
        _jobs(data.get("jobs")),
    )


def save_progress(progress: Progress) -> None:
    """Keep a person's progress. Raises OSError."""
    path = file_of(progress.person)
    path.parent.mkdir(parents=True, exist_ok=True)
    data = {
        "opening_practice": FORMAT,
        "person": progress.person,
        "templates": {key: asdict(one) for key, one in sorted(progress.tallies.items())},
        "day": {"date": progress.day.date, "set": progress.day.keys, "done": dict(progress.day.done)},
        "days": dict(progress.days),
        "jobs": dict(progress.jobs),
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
    return {key: _tally(one) for key, one in _pairs(data) if key in BY_KEY and isinstance(one, dict)}


def _tally(data: dict[str, Any]) -> Tally:
    right, wrong, in_a_row, mixed = (_count(data.get(key)) for key in ("right", "wrong", "in_a_row", "mixed"))
    return Tally(right, wrong, in_a_row, mixed, _iso(data.get("due")))


def _count(value: Any) -> int:
    return value if type(value) is int and 0 <= value < _MOST else 0


def _iso(value: Any) -> str:
    """Return a day as it is kept; empty for anything that is none."""
    try:
        return date.fromisoformat(value).isoformat() if isinstance(value, str) else ""
    except ValueError:
        return ""


def _pairs(data: Any) -> list[tuple[Any, Any]]:
    return list(data.items()) if isinstance(data, dict) else []


def _day(data: Any) -> Day:
    given = dict(_pairs(data))
    listed = given.get("set")
    known = (
        [key for key in listed if isinstance(key, str) and key in BY_KEY] if isinstance(listed, list) else []
    )
    keys = tuple(dict.fromkeys(known))
    done = {key: right for key, right in _pairs(given.get("done")) if key in keys and isinstance(right, bool)}
    return Day(_iso(given.get("date")), keys, done) if keys else Day()


def _days(data: Any) -> dict[str, tuple[int, int]]:
    found = {}
    for day, counts in _pairs(data):
        if _iso(day) and isinstance(counts, list) and len(counts) == 2 and _count(counts[0]):
            found[_iso(day)] = (_count(counts[0]), _count(counts[1]))
    return found


def _jobs(data: Any) -> dict[str, str]:
    levels = {str(level) for level in LEVELS}
    return {level: _iso(day) for level, day in _pairs(data) if level in levels and _iso(day)}


def strength(progress: Progress, topic: str) -> str:
    """Say how a topic stands: `new`, `begun`, `weak` or `known`; the course for an empty name."""
    templates = of_topic(topic)
    if progress.is_known(topic):
        return "known"
    if not any(progress.of(one).was_asked for one in templates):
        return "new"
    weak = set(progress.weak())
    return "weak" if any(one in weak for one in templates) else "begun"
