"""Openings of an order, worked out by the real rules."""

from configurator.export.document import read_csv
from configurator.long_work import Cancelled
from configurator.model import Job
from configurator.order.book import tally_job
from configurator.order.take_off import TakeOff, take_off
from tests.openings import plain_data

USUAL = {"compare": [4], "door": {"thickness": 1.75, "latch_bevel": 0.0625}, "use": {"wanted_angle": 90}}


def data(mark, **changes):
    """An opening 36 x 84 whose hinges are three 4-1/2 x 4, as keys of a file."""
    return plain_data(**{**USUAL, **changes}, mark=mark)


def job_of(*openings, **facts) -> Job:
    """A job of openings given as keys of a file."""
    return Job.model_validate({"job": facts, "openings": openings})


def ordered(*openings, facts=None, **options) -> TakeOff:
    """The take-off of openings given as keys of a file."""
    job = job_of(*openings, **(facts or {}))
    return take_off(tally_job(job), job.job, **options)


def table_of(path):
    """The rows of a CSV file by the headings over them; what it is and whose stand above an empty line."""
    rows = read_csv(path.read_bytes())
    first = next(number for number, row in enumerate(rows) if not any(row)) + 1
    return [dict(zip(rows[first], row, strict=True)) for row in rows[first + 1 :]]


def stop_at(most, told=None):
    """Return a progress that ends the work once so much is done; `told` keeps what it was told."""

    def progress(done, total):
        if told is not None:
            told.append(done)
        if done >= most:
            raise Cancelled

    return progress
