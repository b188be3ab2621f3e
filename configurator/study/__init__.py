"""study(opening) -> Study: every candidate's answers, the findings, the recommended hinge and why."""

from configurator.study.candidate import Candidate
from configurator.study.job import job_findings
from configurator.study.run import Study, study

__all__ = ["Candidate", "Study", "job_findings", "study"]
