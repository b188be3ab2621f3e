from datetime import date, timedelta

from configurator.documents.practice import progress_document
from configurator.practice.course import TOPICS, course, of_topic
from configurator.practice.progress import Progress

DAY = date(2026, 11, 25)


def test_it_says_topic_by_topic_what_is_known_and_what_is_weak():
    progress, first, second = Progress("Wren"), *course()[:2]
    for day in (0, 1):
        progress = progress.with_answer(first, True, DAY + timedelta(days=day))
    progress = progress.with_answer(second, False, DAY + timedelta(days=1)).with_job(1, DAY)
    document = progress_document(progress, DAY + timedelta(days=1))
    assert document.heading == (("Name", "Wren"),)
    head = dict(document.head)
    assert head["Known"] == f"1 of {len(of_topic(''))} kinds of problem"
    assert head["Practised"] == "2 days, 3 answers; 2 days in a row"
    assert head["Small jobs passed"] == "levels 1"
    topics, weak = document.sheets
    assert len(topics.rows) == len(TOPICS)
    assert topics.rows[0] == ("Sizes", len(of_topic("sizes")), 1, "weak", 3, 2)
    assert weak.rows == (("Opening height from figures", "sizes", 1, 1, "now"),)


def test_of_somebody_new_there_is_nothing_weak():
    document = progress_document(Progress("Ash"), DAY)
    assert len(document.sheets) == 1
    assert dict(document.head)["Small jobs passed"] == "none yet"
