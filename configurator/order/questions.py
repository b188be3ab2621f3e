"""The questions to the architect that a job still has, opening by opening."""

from configurator.model import Job, Opening

NO_QUESTIONS = "No opening of this job has a question to the architect."


def with_questions(job: Job) -> tuple[Opening, ...]:
    """Return the openings that have a question, in the order of the job."""
    return tuple(opening for opening in job.openings if opening.questions and opening.questions.strip())


def questions_text(job: Job) -> str:
    """Return all questions as a text to send: the job, then each mark with its location and question."""
    asked = with_questions(job)
    if not asked:
        return NO_QUESTIONS
    about = ", ".join(fact for fact in (job.job.name, job.job.number) if fact)
    head = f"Questions to the architect{': ' if about else ''}{about}"
    return "\n\n".join([head, *(_question(opening) for opening in asked)])


def _question(opening: Opening) -> str:
    name = ", ".join(filter(None, (opening.mark, opening.location)))
    lines = "\n".join(f"  {line}" for line in (opening.questions or "").strip().splitlines())
    return f"{name}\n{lines}"
