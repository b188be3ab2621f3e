from configurator.model import Hinge, JobFacts, Opening
from configurator.ui.schedule.answers import Answer, Answers, answer_of
from configurator.ui.state import edits

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}


def opening(mark="101", **more):
    return Opening.model_validate({"mark": mark, "size": "3070", "hand": "RH", **more})


class Counting:
    """Answers without studying, and counts how often it was asked."""

    def __init__(self):
        self.asked = []

    def __call__(self, opening, facts):
        self.asked.append(opening.mark)
        return Answer(opening.mark, "", None, 0, 0, 0, "")


def test_an_answer_says_hinges_angle_and_findings_as_the_printed_schedule_does():
    use = {"wanted_angle": 180, "closer": True, "locked": True, "accessible": True}
    found = answer_of(opening(obstructions=[RAIL], use=use, compare=[4, 4.5]), JobFacts())
    assert found.hinge == "3 x 4-1/2 x 4-1/2"
    assert (found.angle, found.least_angle) == ("180°", 180)
    assert (found.errors, found.fault) == (0, "")
    assert found.counted == f"{found.notes} notes"


def test_what_cannot_be_studied_is_an_error_with_its_fault():
    found = answer_of(opening(size={"width": 36, "height": 5}, door={"undercut": 12}), JobFacts())
    assert found.hinge == "not worked out"
    assert found.fault
    assert found.counted == "1 error"
    assert found.fault in found.findings


def test_counts_are_in_words_and_singular_where_they_are_one():
    assert Answer("", "", None, 2, 1, 0, "").counted == "2 errors, 1 warning"
    assert Answer("", "", None, 0, 0, 0, "").counted == "none"


def test_an_answer_is_worked_out_once_for_a_record_and_for_like_ones():
    studier = Counting()
    answers = Answers(studier)
    one, like, other = opening("1"), opening("2", location="Galley"), opening("3", hand="LH")
    assert answers.known(one) is None
    for each in (one, one, like, other):
        answers.work_out(each)
    assert studier.asked == ["1", "3"]
    assert answers.known(like) is answers.known(one)


def test_a_whole_job_is_answered_as_each_opening_is_and_what_is_done_stays():
    job = [opening("1"), opening("2", location="Galley"), opening("3", hand="LH"), opening("4", quantity=2)]
    answers, singly = Answers(), Answers()
    steps = answers.work_out_all(job)
    while next(steps) < 2:
        pass
    steps.close()
    assert sum(answers.known(one) is not None for one in job) == 2
    *_, last = answers.work_out_all(job)
    assert last == len(job)
    assert [answers.known(one) for one in job] == [singly.work_out(one) for one in job]
    assert answers.known(job[1]) is answers.known(job[0])


def test_an_edit_forgets_nothing_but_the_edited_one():
    answers = Answers(Counting())
    one = opening("1")
    answers.work_out(one)
    assert answers.known(edits.edited(one, {"hand": "LH"})) is None
    assert answers.known(one) is not None


def test_the_standard_hinge_of_the_job_counts_in_every_answer():
    answers = Answers()
    one = opening("1")
    assert answers.work_out(one).hinge == "3 x 4-1/2 x 4"
    answers.use_facts(JobFacts(name="Kestrel Point"))
    assert answers.known(one) is not None
    answers.use_facts(JobFacts(standard_hinge=Hinge(height=4.5, width=4.5)))
    assert answers.known(one) is None
    assert answers.work_out(one).hinge == "3 x 4-1/2 x 4-1/2"


def test_records_that_are_gone_are_forgotten_once_they_are_most():
    answers = Answers(Counting())
    openings = [opening(str(number), location=str(number)) for number in range(300)]
    for each in openings:
        answers.work_out(each)
    answers.forget_others(openings[:150])
    assert answers.known(openings[299]) is not None
    answers.forget_others(openings[:90])
    assert answers.known(openings[299]) is None
    assert answers.known(openings[0]) is not None
