from configurator.model import Job
from configurator.order.questions import NO_QUESTIONS, questions_text, with_questions


def job(*openings, **facts):
    rows = [{"size": "3070", **opening} for opening in openings]
    return Job.model_validate({"job": facts, "openings": rows})


def test_each_question_stands_under_its_mark_and_location():
    asked = job(
        {"mark": "101", "location": "Hall", "questions": "Which lock?\nWho supplies it?"},
        {"mark": "102"},
        {"mark": "103", "questions": " Rated? "},
        name="Kestrel Point Ferry Terminal",
        number="26-118",
    )
    assert questions_text(asked) == (
        "Questions to the architect: Kestrel Point Ferry Terminal, 26-118\n\n"
        "101, Hall\n  Which lock?\n  Who supplies it?\n\n"
        "103\n  Rated?"
    )


def test_a_job_without_a_name_and_a_job_without_questions():
    assert questions_text(job({"mark": "1", "questions": "?"})) == "Questions to the architect\n\n1\n  ?"
    assert questions_text(job({"mark": "1", "questions": " \n"})) == NO_QUESTIONS
    assert with_questions(job()) == ()
