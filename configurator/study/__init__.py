"""One opening answered: every leaf on every hinge width, the hinge chosen and why, and what there is to say.

In: an opening's record and the job's facts. Out: a `Study` with its `Candidate`s, the one record that tables,
pictures, sheets and files read; the specification, the findings, and the hanger, which knows every width that
a leaf was hung on. `hang` takes records to leaves, `candidate` puts the geometry's answers in the words of
the results, `run` is the study, `job` what is said of a whole job, `change` what an edit did; `events` and
`over_the_swing` look at a study already made, `typical` has openings to picture words on. The rooms `widths`,
`what_if`, `tolerance` and `derivation` are asked only when wanted and are not loaded with this one. Above
`rules` and `geometry`; knows no drawing, no order, no file and no window. Inches and degrees.
"""

from configurator.study.candidate import Candidate
from configurator.study.job import job_findings
from configurator.study.run import Study, study

__all__ = ["Candidate", "Study", "job_findings", "study"]
