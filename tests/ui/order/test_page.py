"""The order in the window."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from configurator.documents.changes import changes_as_data
from configurator.project_file import load, parse
from configurator.project_file.writing import dump
from configurator.ui.kit import runner
from configurator.ui.order.page import OrderPage
from configurator.ui.state.session import Session
from tests.openings import ON_PIVOTS
from tests.order.cases import data, job_of

PRICES = Path(__file__).resolve().parents[3] / "demo_openings" / "kestrel_point_prices.csv"


def page_of(qtbot, session):
    page = OrderPage(session)
    qtbot.addWidget(page)
    session.changed.connect(page.show_state)
    page.show_state("open")
    qtbot.waitUntil(lambda: page.counted is not None)
    return page


@pytest.fixture
def page(qtbot, session):
    """The order page of the demo job, counted, its two errors accepted."""
    shown = page_of(qtbot, session)
    while held := [row.key for row in shown.left_out.shown.rows if row.key.why == "held"]:
        shown.left_out.choose(held[0])
        shown.release.click()
        qtbot.waitUntil(lambda: shown.counted is not None)
    return shown


def small(qtbot, *openings):
    return page_of(qtbot, Session(job_of(*openings)))


def column(table, title):
    place = [head.title for head in table.shown.heads].index(title)
    return [row.words[place] for row in table.shown.rows]


def offered(qtbot, page):
    with qtbot.waitSignal(page.beside.ended):
        page.uniform.ask.click()
    return page.uniform.buttons


def freeze(qtbot, page):
    """Freeze the order once it is counted: before that, freezing is refused."""
    qtbot.waitUntil(lambda: page.counted is not None)
    with qtbot.waitSignal(page.beside.ended):
        ask_freeze(page)
    qtbot.waitUntil(lambda: page.counted is not None)


def ask_freeze(page):
    page.revisions.freeze.click()
    if not page.question.isHidden():
        page.question.buttons["Freeze it as it is"].click()


def test_an_error_holds_an_opening_until_a_button_releases_it(qtbot):
    page = small(qtbot, data("1"), data("2", hinge={"count": 2}))
    assert page.sums.text().startswith("Lines 3 = openings 5 less 2 not ordered.")
    assert page.tabs.tabText(1) == "Not ordered (1)"
    assert not page.release.isEnabled()
    page.left_out.choose(page.left_out.shown.rows[0].key)
    page.release.click()
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.sums.text().startswith("Lines 5 = openings 5.")
    assert page.session.job.openings[1].order_despite == ("too few hinges",)
    page.cautions.choose(page.cautions.shown.rows[0].key)
    assert "Ordered all the same: 2." in column(page.cautions, "To heed before ordering")[0]
    page.hold.click()
    qtbot.waitUntil(lambda: page.counted is not None)
    assert column(page.left_out, "Why") == ["held"]
    page.session.undo()
    assert page.session.job.openings[1].order_despite == ("too few hinges",)


def test_freezing_with_errors_asks(qtbot):
    page = small(qtbot, data("1"), data("2", hinge={"count": 2}))
    page.revisions.freeze.click()
    assert page.question.words.text() == (
        "Held by an error, and not in this order: 2. Freeze the order as it is?"
    )
    page.question.put_away.emit()
    assert page.question.isHidden()
    assert page.session.job.revisions == ()
    freeze(qtbot, page)
    assert [list(line.marks) for line in page.session.job.revisions[0].lines] == [["1"]]


def test_the_lines_stand_with_quantity_pairs_and_proof(page):
    assert page.sums.text() == "Lines 45 = openings 45. 45 hinges = 22-1/2 pair."
    assert column(page.lines, "Each")[0] == "6"
    assert column(page.lines, "Pairs")[0] == "3 pair"
    assert column(page.lines, "Size, h x w")[0] == "3-1/2 x 3-1/2"
    assert column(page.lines, "Marks x hinges")[0] == "205A x 6"
    assert page.lines.isColumnHidden(3)
    assert column(page.marks, "Mark") == ["205A"], "those of the first line"


def test_what_stands_against_an_order_is_said_beside_its_proof(qtbot, page):
    """The demo job has two errors, which were accepted; it leaves nothing out."""
    assert page.warned.text() == "2 errors to heed before ordering."
    assert not page.warned.isHidden()
    out = small(qtbot, data("1"), data("2", **ON_PIVOTS, quantity=3))
    assert out.warned.text() == "Nothing is ordered for 3 openings."
    assert small(qtbot, data("1")).warned.isHidden()


def test_a_click_on_a_mark_shows_that_opening(qtbot, page):
    line = max(page.counted.order.lines, key=lambda line: len(line.by_mark))
    page.lines.choose(line.number)
    assert column(page.marks, "Mark") == list(line.by_mark)
    assert page.marks_of.text() == f"{len(line.by_mark)} marks of line {line.number}"
    page.show()
    with qtbot.waitSignal(page.left):
        place = page.marks.visualRect(page.marks.shown.index(1, 0)).center()
        qtbot.mouseClick(page.marks.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert page.session.mark == list(line.by_mark)[1]


def test_a_finding_shows_its_marks_all_of_them(page):
    said = next(row.key for row in page.cautions.shown.rows)
    page.cautions.choose(said)
    assert column(page.marks, "Mark") == list(said.marks)


def test_what_is_not_ordered_says_why_and_leads_there(qtbot):
    page = small(qtbot, data("1"), data("2", **ON_PIVOTS, quantity=3))
    assert column(page.left_out, "Why") == ["hung otherwise"]
    assert column(page.left_out, "Openings") == ["3"]
    assert page.tabs.tabText(1) == "Not ordered (1)"
    (left,) = [row.key for row in page.left_out.shown.rows]
    page.left_out.choose(left)
    assert column(page.marks, "Mark") == ["2"]
    with qtbot.waitSignal(page.left):
        page.left_out.opened.emit(left)
    assert page.session.mark == "2"


def test_an_allowance_is_typed_and_a_wrong_one_refused_beside_its_field(qtbot, page):
    qtbot.keyClicks(page.top.spare, "5%")
    assert page.sums.text().endswith("7 of them spare.")
    assert not page.lines.isColumnHidden(3)
    qtbot.keyClicks(page.top.spare, "x")
    assert page.top.refusal.text().startswith("A spare allowance is written as 5%")
    assert page.sums.text().endswith("7 of them spare."), "what held before holds"
    page.top.spare.clear()
    page.top.spare.textEdited.emit("")
    assert page.top.refusal.text() == ""
    assert page.lines.isColumnHidden(3)


def test_prices_are_shown_by_line_and_taken_away(page, tmp_path):
    page.use_prices(PRICES)
    assert "Amount" in [head.title for head in page.lines.shown.heads]
    assert page.cost.text().startswith("Total invented units ")
    few = tmp_path / "few.csv"
    few.write_text("width,price\n4,2\n")
    page.use_prices(few)
    assert "no price: 1, 5, 6, 7." in page.cost.text()
    assert column(page.lines, "Price")[0] == "no price"
    page.top.cross.click()
    assert "Amount" not in [head.title for head in page.lines.shown.heads]
    assert page.cost.isHidden()


def test_a_price_list_that_cannot_be_used_names_every_fault(page, tmp_path):
    page.use_prices(PRICES)
    wrong = tmp_path / "wrong.csv"
    wrong.write_text("width,price\n4,two\n5,\n")
    page.use_prices(wrong)
    assert page.panel.text.toPlainText().splitlines() == [
        "line 2, price: a price is a number such as 4.25; 'two' was given",
        "line 3, price: the price is missing",
    ]
    assert page.top.price_name.text() == PRICES.name


def test_one_width_is_offered_taken_in_one_step_and_undone(qtbot, page):
    (take,) = offered(qtbot, page)
    assert take.text() == "Make 10 marks 5 wide"
    before = page.session.job
    take.click()
    assert page.session.history.undo_name == "make 10 marks 5 wide"
    qtbot.waitUntil(lambda: page.counted is not None)
    assert {line.hinge.width for line in page.counted.order.lines if line.hinge.type == "A8112"} == {5}
    assert page.offers is None
    page.session.undo()
    assert page.session.job == before
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.sums.text() == "Lines 45 = openings 45. 45 hinges = 22-1/2 pair."


def test_where_all_is_one_width_that_is_said(qtbot):
    page = small(qtbot, data("1"), data("2"))
    assert offered(qtbot, page) == []
    assert page.uniform.words.text().startswith("Every hinge height of this job already")


def test_an_answer_about_a_job_that_changed_meanwhile_is_not_shown(qtbot, page):
    with qtbot.waitSignal(page.beside.ended):
        page.uniform.ask.click()
        page.session.edit("quantity", 2)
    assert page.offers is None
    assert "changed meanwhile" in page.panel.heading.text()


def test_an_order_is_frozen_into_the_job_and_undo_takes_it_out(qtbot, page):
    page.revisions.note.setText("first order")
    page.revisions.mark_them.setChecked(True)
    freeze(qtbot, page)
    (revision,) = page.session.job.revisions
    assert (revision.number, revision.note) == (1, "first order")
    assert len(revision.date) == 10
    assert {one.order_state for one in page.session.job.openings} == {"ordered"}
    assert page.session.history.undo_name == "freeze the order as revision 1"
    assert parse(dump(page.session.job)) == page.session.job
    page.session.undo()
    assert page.session.job.revisions == ()
    assert {one.order_state for one in page.session.job.openings} == {"not ordered"}


def test_an_order_that_changed_while_it_was_frozen_is_not_kept(qtbot, page):
    with qtbot.waitSignal(page.beside.ended):
        ask_freeze(page)
        page.session.edit("quantity", 2)
    assert page.session.job.revisions == ()
    assert "freeze it again" in page.panel.heading.text()


def test_an_edit_made_while_it_was_frozen_out_of_sight_is_not_lost(qtbot, page):
    page.session.changed.disconnect(page.show_state)  # as when another page is on show
    with qtbot.waitSignal(page.beside.ended):
        ask_freeze(page)
        page.session.edit("quantity", 7)
    assert page.session.opening.quantity == 7
    assert page.session.job.revisions == ()


def test_what_changed_since_is_shown_line_by_line_and_opening_by_opening(qtbot):
    page = small(qtbot, data("1", quantity=2), data("2"))
    page.tabs.setCurrentWidget(page.revisions)
    freeze(qtbot, page)
    assert page.revisions.words.text() == "Nothing has changed since revision 1."
    page.session.select("1")
    page.session.edit("hinge.width", 5)
    assert column(page.revisions.lines, "Return") == ["6", ""]
    assert column(page.revisions.lines, "Order") == ["", "6"]
    assert column(page.revisions.openings, "Mark") == ["1"]
    assert column(page.revisions.openings, "They differ in") == ["width"]
    assert "6 hinges more to order, 6 no longer wanted" in page.revisions.words.text()
    assert changes_as_data(page.changes)["since_revision"] == 1


def test_of_several_revisions_the_chosen_one_is_compared_with(qtbot):
    page = small(qtbot, data("1"))
    page.tabs.setCurrentWidget(page.revisions)
    freeze(qtbot, page)
    page.session.edit("quantity", 3)
    freeze(qtbot, page)
    assert column(page.revisions.list, "No.") == ["2", "1"]
    assert page.revisions.words.text() == "Nothing has changed since revision 2."
    page.revisions.list.choose(1)
    assert "6 hinges more to order" in page.revisions.words.text()


def test_a_mark_that_is_gone_is_said_so(qtbot):
    page = small(qtbot, data("1"), data("2"))
    page.tabs.setCurrentWidget(page.revisions)
    freeze(qtbot, page)
    page.session.select("2")
    page.session.remove_opening()
    page.revisions.openings.opened.emit("2")
    assert page.panel.heading.text() == "The job has no opening 2 any more."


def test_only_what_changed_is_worked_out_anew(page, monkeypatch):
    studied = []
    of = page.desk.book.of
    known = page.desk.book.known
    monkeypatch.setattr(
        page.desk.book, "of", lambda one: (None if known(one) else studied.append(one.mark), of(one))[1]
    )
    page.session.edit("quantity", 2)
    assert studied == ["112A"]
    assert page.sums.text() == "Lines 48 = openings 48. 48 hinges = 24 pair."


def many(number):
    return [data(str(n), size={"width": 36 + n / 1000, "height": 84}) for n in range(number)]


def test_a_long_count_is_stopped_and_taken_up_again(qtbot, monkeypatch):
    monkeypatch.setattr(runner, "FIRST", 0.0)
    session = Session(job_of(*many(300)))
    page = OrderPage(session)
    qtbot.addWidget(page)
    page.show()
    page.show_state("open")
    assert page.counting.running
    assert page.progress.isVisible()
    assert page.sums.text().startswith("The openings are being worked out")
    qtbot.waitUntil(lambda: len(page.desk.unknown(session.job)) < 300)
    page.progress.cancel.click()
    assert page.counted is None
    assert page.lines.shown.rows == ()
    assert "of 300 openings are not worked out yet" in page.sums.text()
    left = len(page.desk.unknown(session.job))
    assert 0 < left < 300
    page.work_out.click()
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.sums.text() == "Lines 900 = openings 900. 900 hinges = 450 pair."
    assert not page.progress.isVisible()


@pytest.mark.parametrize(
    ("ask", "undone"),
    [
        (lambda page: page.revisions.freeze.click(), "The order was not frozen"),
        (lambda page: page.revisions.note.returnPressed.emit(), "The order was not frozen"),
        (lambda page: page.uniform.ask.click(), "Whether one width would do is not known"),
        (lambda page: page.write("doors", Path("doors.csv")), "doors.csv was not written"),
    ],
)
@pytest.mark.parametrize("stopped", [False, True])
def test_what_is_asked_before_all_is_counted_is_refused_in_words(qtbot, monkeypatch, ask, undone, stopped):
    monkeypatch.setattr(runner, "FIRST", 0.0)
    page = OrderPage(Session(job_of(*many(300))))
    qtbot.addWidget(page)
    page.show_state("open")
    assert page.counting.running
    if stopped:
        page.counting.cancel()
    ask(page)
    assert not page.beside.running
    how = "work out all first" if stopped else "wait for it"
    assert page.panel.heading.text() == (
        f"{undone}: not all openings are worked out yet; {how}, and ask again."
    )


def test_an_order_without_lines_is_not_frozen(qtbot):
    page = small(qtbot)
    page.revisions.note.returnPressed.emit()
    assert page.panel.heading.text() == "The order was not frozen: it has no lines."
    assert not page.beside.running


def test_a_job_without_openings_has_nothing_to_order(qtbot):
    page = small(qtbot)
    assert page.sums.text() == "This job has no openings yet, so there is nothing to order."
    assert not page.revisions.freeze.isEnabled()


def test_the_command_turns_the_window_to_the_order_and_a_mark_back(qtbot, window):
    window.commands.actions_by_name["order"].trigger()
    page = window.pages.made["order"]
    qtbot.waitUntil(lambda: page.counted is not None)
    assert window.pages.work_is_folded
    assert window.openings.isHidden()
    page.lines.choose(1)
    page.open_mark("205A")
    assert not window.pages.on_show
    assert window.session.mark == "205A"
    assert not window.commands.actions_by_name["order"].isChecked()


def test_dark_and_other_units_keep_the_order(page):
    page.session.use_dark(True)
    assert page.cautions.shown.dark
    assert page.lines.shown.rowCount() == 7
    assert load(page.session.path).job == page.session.job.job


def test_tab_goes_through_the_page_as_it_is_read(qtbot, page):
    page.show()
    page.activateWindow()
    page.tabs.setCurrentWidget(page.revisions)
    page.top.spare.setFocus()
    expected = [
        page.top.prices, page.top.write, page.lines, page.marks, page.tabs.tabBar(), page.revisions.note,
        page.revisions.mark_them, page.revisions.freeze,
    ]  # fmt: skip
    for widget in expected:
        qtbot.keyClick(page.focusWidget(), Qt.Key.Key_Tab)
        assert page.focusWidget() is widget


def test_long_words_do_not_make_the_window_wider(page, tmp_path):
    long = tmp_path / f"{'a price list with a long name ' * 6}.csv"
    long.write_text("price\n2\n")
    page.use_prices(long)
    page.set_spare("W" * 60)
    page.say("Written: " + "/a/very/long/folder" * 12)
    page.show()
    assert page.minimumSizeHint().width() <= 1280


# --- What stands over the order, its prices, and the hinge on the shelf


def type_in(qtbot, page, name, text):
    page.show()
    page.tabs.setCurrentIndex(4)
    entry = page.head.fields[name]
    entry.setFocus()
    entry.clear()
    qtbot.keyClicks(entry, text)
    qtbot.keyClick(entry, Qt.Key.Key_Return)


def test_what_stands_over_the_order_is_kept_in_the_job_step_by_step(qtbot):
    page = small(qtbot, data("1"))
    type_in(qtbot, page, "supplier", "Northgate Hardware")
    type_in(qtbot, page, "margin", "25%")
    assert (page.session.job.order.supplier, page.session.job.order.margin) == ("Northgate Hardware", 25)
    assert page.session.history.undo_name == "margin of the order"
    assert parse(dump(page.session.job)) == page.session.job
    page.session.undo()
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.head.fields["margin"].text() == ""
    type_in(qtbot, page, "supplier", " ")
    assert page.session.job.order.supplier is None


@pytest.mark.parametrize("text", ["100", "-1", "some", "nan"])
def test_a_margin_that_cannot_be_is_said_and_not_kept(qtbot, text):
    page = small(qtbot, data("1"))
    page.edit_head("margin", text)
    assert "A margin is from 0 to less than 100 per cent" in page.panel.heading.text()
    assert page.session.job.order.margin is None


def test_the_price_list_is_remembered_with_the_job_and_undo_takes_it_out(qtbot, tmp_path):
    path = tmp_path / "job.json"
    path.write_bytes(dump(job_of(data("1"))))
    (tmp_path / "mine.csv").write_text("part number,price\nKP-4,2\n")
    session = Session()
    session.open(path)
    page = page_of(qtbot, session)
    page.use_prices(tmp_path / "mine.csv")
    assert session.job.order.price_list == "mine.csv"
    assert column(page.lines, "Part no.") == ["KP-4"]
    session.save()
    again = Session()
    again.open(path)
    assert page_of(qtbot, again).cost.text() == "Total 6.00, every line priced."
    session.undo()
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.cost.isHidden()
    assert page.top.price_name.text() == ""


def test_a_remembered_price_list_that_is_gone_is_said(qtbot):
    job = job_of(data("1"))
    order = job.order.model_copy(update={"price_list": "/nowhere/gone.csv"})
    page = page_of(qtbot, Session(job.model_copy(update={"order": order})))
    assert page.panel.heading.text().startswith("The job's price list cannot be used")
    assert page.counted.priced is None


def test_a_hinge_on_the_shelf_is_tried_and_taken_where_it_will_do(qtbot):
    page = small(qtbot, data("1"), data("2"), data("3", hinge={"count": 2}))
    assert page.shelf.wanted.text() == "4-1/2 x 4", "that of the chosen line"
    assert not page.shelf.take.isEnabled()
    page.shelf.has.setText("4-1/2 x 5")
    with qtbot.waitSignal(page.beside.ended):
        page.shelf.ask.click()
    assert column(page.shelf.marks, "Will do") == ["yes", "yes", "no"]
    assert column(page.shelf.marks, "Why not")[2]
    assert page.shelf.take.text() == "Take it at 2 marks"
    page.shelf.take.click()
    assert [one.hinge.width if one.hinge else None for one in page.session.job.openings] == [5, 5, None]
    assert page.session.history.undo_name == "take 4-1/2 x 5 at 2 marks"
    qtbot.waitUntil(lambda: page.counted is not None)
    assert page.shelf.marks.shown.rows == ()


def test_a_size_that_is_none_is_said(qtbot):
    page = small(qtbot, data("1"))
    page.shelf.has.setText("wide")
    page.shelf.ask.click()
    assert "a hinge size is height x width" in page.panel.heading.text()
    assert not page.beside.running


def test_a_quote_says_what_it_still_wants(qtbot, tmp_path):
    page = small(qtbot, data("1"))
    page.write("quote", tmp_path / "quote.pdf")
    assert page.panel.heading.text().endswith("a quote wants a price list, for what the hinges cost.")
    (tmp_path / "mine.csv").write_text("price\n2\n")
    page.use_prices(tmp_path / "mine.csv")
    page.write("quote", tmp_path / "quote.pdf")
    assert "a quote wants a margin" in page.panel.heading.text()
