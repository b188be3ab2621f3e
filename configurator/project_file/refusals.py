"""What is said when a project file cannot be read, written or had."""

from configurator.model.faults import Fault

LARGEST_FILE = 160 * 1024 * 1024
"""Bytes. Ten thousand openings with much said of each take about a tenth of this."""


class ProjectFileError(Exception):
    """A project file that could not be read or written; `faults` has a line for each reason."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults


def refusal(field: str, message: str) -> ProjectFileError:
    """Return a refusal of one line."""
    return ProjectFileError((Fault(field, message),))


def reason(error: OSError | ValueError) -> str:
    """Return the system's own words for what went wrong, to stand within a sentence."""
    return (getattr(error, "strerror", None) or str(error)).lower()
