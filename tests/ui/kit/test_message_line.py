from configurator.ui.kit.message_line import MessageLine


def test_a_sentence_replaces_the_last_and_an_empty_one_takes_it_away(qtbot):
    line = MessageLine()
    qtbot.addWidget(line)
    line.say("One.")
    line.say("Two.")
    assert line.text() == "Two."
    assert not line.isHidden()
    line.say("")
    assert line.isHidden()


def test_a_question_stands_until_it_is_answered(qtbot):
    line = MessageLine()
    qtbot.addWidget(line)
    answered = []
    line.ask("lock", "Whose?", [("Mine", lambda: answered.append("mine")), ("Theirs", lambda: None)])
    line.say("Something else.")
    line.say("")
    assert not line.isHidden()
    assert list(line.questions["lock"].buttons) == ["Mine", "Theirs"]
    line.questions["lock"].buttons["Mine"].click()
    assert answered == ["mine"]
    assert line.questions == {}
    assert line.isHidden()


def test_a_question_replaces_the_one_about_the_same_only(qtbot):
    line = MessageLine()
    qtbot.addWidget(line)
    line.ask("lock", "One?")
    line.ask("change", "Two?")
    line.ask("lock", "Three?")
    assert {about: row.words.text() for about, row in line.questions.items()} == {
        "change": "Two?",
        "lock": "Three?",
    }
    line.ask("lock", "")
    assert list(line.questions) == ["change"]


def test_a_question_can_be_put_away_unanswered_and_asked_again_by_its_answer(qtbot):
    line = MessageLine()
    qtbot.addWidget(line)
    line.ask("lock", "One?", [("Again", lambda: line.ask("lock", "Two?"))])
    line.questions["lock"].buttons["Again"].click()
    assert line.questions["lock"].words.text() == "Two?"
    line.questions["lock"].put_away.emit()
    assert line.questions == {}
    assert line.isHidden()
