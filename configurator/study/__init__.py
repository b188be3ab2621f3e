"""study(opening) -> Study: every candidate's answers, the findings, the recommended hinge and why."""

from configurator.study.job import job_findings
from configurator.study.records import Candidate, StoppedBy, Study
from configurator.study.run import study

__all__ = ["Candidate", "StoppedBy", "Study", "job_findings", "study"]
