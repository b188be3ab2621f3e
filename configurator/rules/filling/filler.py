"""Taking a usual value where none was given, and remembering that it was taken."""

from collections.abc import Mapping
from dataclasses import dataclass

from configurator.model import Opening
from configurator.model.outline import sizes_of
from configurator.rules.finding import Source
from configurator.tables import frame_profile, frame_usual


class NotGivenError(ValueError):
    """A value that has no usual one and was not given; `field` is its path in the opening."""

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field


@dataclass(frozen=True, slots=True)
class Assumed:
    """A value nobody gave: what was taken for it and where that comes from."""

    value: float | str | bool | None
    because: str
    source: str
    mark_of_source: str


class Filler:
    """Collects what was taken for each field that nobody gave."""

    def __init__(self, opening: Opening) -> None:
        self.opening = opening
        self.assumed: dict[str, Assumed] = {}
        frame = opening.frame
        self._profile = None if frame.profile is None else frame_profile(frame.profile)
        self._of_profile = {} if self._profile is None else _paths(self._profile.sizes)
        self._known: dict[str, float] = {} if frame.sizes_from == "usual" else self._of_profile
        if frame.outline is not None:
            self._known = self._known | _paths(sizes_of(frame.outline))

    def take(self, path: str, given: float | None, usual: float, because: str, source: Source) -> float:
        """Return what was given, or take the usual value and remember at `path` that it was taken."""
        if given is not None:
            return float(given)
        if path in self._known:
            return self._known[path]
        if self._profile is not None and path in self._of_profile:
            usual, source = self._of_profile[path], self._profile.cited
            because = f"usual of the profile {self._profile.profile}"
        self.assumed[path] = Assumed(usual, because, source.text, source.mark)
        return usual

    def of_frame(self, path: str, given: float | None, thickness: float, because: str = "") -> float:
        """Return what was given, or take the usual value of that kind of frame, inches."""
        kind = self.opening.frame.kind
        row = frame_usual(kind)[path.split(".")[1]]
        usual = row.for_door(thickness)
        if usual is None:
            raise NotGivenError(
                path, f"{path} has no usual value for a frame of kind {kind}: it must be given"
            )
        return self.take(path, given, usual, because or f"usual for a {kind} frame", row.cited)


def _paths(sizes: Mapping[str, float]) -> dict[str, float]:
    """Return sizes of a frame by their paths in an opening."""
    return {f"frame.{key}": value for key, value in sizes.items()}
