"""The order as a page of the window: what to order, the proof that it is whole, and what goes out of it."""

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog

from configurator.documents.papers import missing_for
from configurator.model import Job
from configurator.order.order_findings import name_marks
from configurator.order.price_list import PriceListError, named_from, read_hinge_size
from configurator.order.revisions import Changes, RevisionError
from configurator.order.studied import with_despite
from configurator.order.substitute import Substitution
from configurator.rules.wording import counted as counted_words
from configurator.rules.wording import size
from configurator.sentences import capitalized
from configurator.ui.order.desk import Counted, Desk, Offer, changes_of, frozen, head_value, with_head
from configurator.ui.order.head_panel import order_title
from configurator.ui.order.revisions_panel import taken_title
from configurator.ui.order.view import OrderView
from configurator.ui.order.writing import ask_file, document_work, field_sheet_work
from configurator.ui.state.session import Session

NO_CHANGE = ("swing", "select", "save", "file")


class OrderPage(OrderView):
    """The order of the job on show; it counts anew after every change while it is on show itself.

    Signals:
        left: the opening on show is to be worked on.
    """

    left = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session, self.desk = session, Desk()
        self.counted: Counted | None = None
        self.offers: tuple[Offer, ...] | None = None
        self._changes: tuple[Counted, int, Changes] | None = None
        self.found: Substitution | None = None
        self._connect()

    # --- What it shows ---

    def show_state(self, by: str) -> None:
        """Bring the order in line with the session; `by` says what happened there."""
        if by in NO_CHANGE:
            return
        if by in ("open", "undo"):
            self.panel.hide()
        self.question.hide()
        self._follow_prices()
        if by in ("theme", "display"):
            self._show_all()
        elif self.counted is None or self.counted.job is not self.session.job:
            self.recount()

    def recount(self) -> None:
        """Count the job as it is now; what must be worked out first is, and that can be stopped."""
        self.counted = self.offers = None
        unknown = self.desk.unknown(self.session.job)
        steps = self.desk.book.work_out(unknown)
        self.counting.start(steps, self._count, "Working out openings", len(unknown))
        if self.counting.running:
            self._show_all()

    @property
    def changes(self) -> Changes | None:
        """What changed since the chosen revision; None without one. Raises RevisionError."""
        revision = self.revisions.revision(self.session.job)
        if revision is None or self.counted is None:
            return None
        known = self._changes
        if known is None or known[0] is not self.counted or known[1] != revision.number:
            known = (self.counted, revision.number, changes_of(revision, self.counted))
            self._changes = known
        return known[2]

    def say(self, sentence: str, wrong: bool = False) -> None:
        """Say under the order what was done, or why not."""
        self.panel.show_text(sentence, "", "what was done", "error" if wrong else "quiet", self.session.dark)

    def _count(self) -> None:
        self.counted = self.desk.count(self.session.job)
        self._show_all()

    def _show_uncounted(self) -> None:
        if self.counted is None:
            self._show_all()

    def _show_all(self) -> None:
        job, dark = self.session.job, self.session.dark
        if self.counted is not None:
            self.show_sums(self.counted, dark)
        else:
            missing = len(self.desk.unknown(job))
            self.show_missing(missing, len(job.openings), not self.counting.running and missing > 0, dark)
        self.show_order(self.counted, dark)
        self.uniform.show_offers(self.offers)
        self.found = None
        self.shelf.show_found(None)
        self.head.show_job(job)
        self.top.show_refusal(self.top.refusal.text(), dark)
        self.revisions.show_job(job)
        self.title_tab(self.revisions, "Revisions", len(job.revisions))
        self.top.entries["changes"].setEnabled(bool(job.revisions))
        self._show_changes()

    def _show_changes(self) -> None:
        """Show what changed since the chosen revision, when that is looked at: it takes a moment."""
        if self.tabs.currentWidget() is not self.revisions:
            return
        dark = self.session.dark
        try:
            changes = self.changes
        except RevisionError as error:
            self.revisions.show_changes(None, f"This revision cannot be read: {error}", dark, wrong=True)
        else:
            self.revisions.show_changes(changes, changes.words() if changes else "", dark)

    def open_mark(self, mark: object) -> None:
        """Show the opening of a mark in the form and the picture, if the job still has it."""
        if any(opening.mark == mark for opening in self.session.job.openings):
            self.session.select(str(mark))
            self.left.emit()
        else:
            self.say(f"The job has no opening {mark} any more.")

    # --- What is done ---

    def set_spare(self, text: str) -> None:
        """Count with another spare allowance; what cannot be one is said beside its field."""
        try:
            self.desk.set_spare(text)
        except ValueError as error:
            sentence = str(error)
            self.top.show_refusal(capitalized(sentence), self.session.dark)
        else:
            self.top.show_refusal("", self.session.dark)
            self._count_again()

    def ask_prices(self) -> None:
        """Ask for a price list and use it."""
        start = self.session.path.parent if self.session.path else Path.home()
        name, _ = QFileDialog.getOpenFileName(
            self, "Choose your price list", str(start), "Price lists (*.csv *.xlsx)"
        )
        if name:
            self.use_prices(Path(name))

    def use_prices(self, path: Path) -> None:
        """Use a price list; every fault of one that cannot be used is named."""
        try:
            self.desk.take_prices(path)
        except PriceListError as error:
            self._show_price_faults(f"{path.name} cannot be used; what was used before stays.", error)
        else:
            self.panel.hide()
            self._remember_prices(named_from(path, self.session.path))

    def drop_prices(self) -> None:
        """Show the order without prices."""
        self.desk.drop_prices()
        self._remember_prices(None)

    def _remember_prices(self, named: str | None) -> None:
        """Keep the price list with the job, and show the order with it."""
        self.desk.remembered = named
        self.top.show_prices(self.desk.price_file)
        if named != self.session.job.order.price_list:
            self._take_head("price_list", named)
        self._count_again()

    def _follow_prices(self) -> None:
        """Use the list that the job on show remembers; one that is not there is said and done without."""
        try:
            self.desk.follow(self.session.job, self.session.path)
        except PriceListError as error:
            self._show_price_faults("The job's price list cannot be used; the order has no prices.", error)
        self.top.show_prices(self.desk.price_file)

    def _show_price_faults(self, heading: str, error: PriceListError) -> None:
        faults = "\n".join(str(fault) for fault in error.faults)
        self.panel.show_text(heading, faults, "faults of the price list", "error", self.session.dark)

    def edit_head(self, name: str, text: str) -> None:
        """Keep another text in the head of the order; one step. What cannot be one is said."""
        try:
            self._take_head(name, head_value(name, text))
        except ValueError as error:
            self.say(str(error), wrong=True)
            self.head.show_job(self.session.job)

    def _take_head(self, name: str, value: Any) -> None:
        title = order_title(name)
        self.session.take_job(with_head(self.session.job, name, value), f"{title} of the order")

    def ask_shelf(self, has: str, wanted: str) -> None:
        """Try a hinge size on the shelf for the one ordered, beside the window."""
        desk, counted, undone = self.desk, self.counted, "The hinge on the shelf was not tried"
        if counted is None:
            self._refuse(undone)
            return
        try:
            sizes = read_hinge_size(has), read_hinge_size(wanted)
        except ValueError as error:
            self.say(f"{undone}: {error}", wrong=True)
            return
        self.beside.start(
            "Trying it at every opening",
            undone,
            lambda progress: desk.substitution(counted, *sizes, progress),
            lambda found: self._show_shelf(counted, found),
        )

    def _show_shelf(self, counted: Counted, found: Substitution) -> None:
        if self.counted is counted:
            self.found = found
            self.shelf.show_found(found)
        else:
            self.say("The order was changed meanwhile; ask again.")

    def take_shelf(self) -> None:
        """Set the size on the shelf on every opening where it will do; one step."""
        found = self.found
        if found is not None and found.doing:
            name = f"take {size(*found.has)} at {counted_words(len(found.doing), 'mark', 'marks')}"
            self.session.take_openings(found.openings, name, self.session.mark)
            self.say(f"Done: {name}. Undo takes it back.")

    def ask_uniform(self) -> None:
        """Ask whether one width would do, beside the window."""
        desk, counted, undone = self.desk, self.counted, "Whether one width would do is not known"
        if counted is None:
            self._refuse(undone)
            return
        self.beside.start(
            "Asking every opening",
            undone,
            lambda progress: desk.offers(counted, progress),
            lambda offers: self._show_offers(counted, offers),
        )

    def take_offer(self, offer: Offer) -> None:
        """Set the offered width on every opening that it is wider than; one step."""
        title = taken_title(offer)
        name = f"{title[:1].lower()}{title[1:]}"
        self.session.take_openings(offer.openings, name, self.session.mark)
        self.say(f"Done: {name}. Undo takes it back.")

    def release_held(self) -> None:
        """Order the chosen opening in spite of the errors that hold it; one step."""
        left = self.left_out.current()
        if left is None or left.why != "held":
            return
        self._take_despite((left.mark,), left.codes, f"order {left.mark} all the same")

    def hold_again(self) -> None:
        """Let the chosen error hold its openings again; one step."""
        one = self.cautions.current()
        if one is not None and one.accepted:
            self._take_despite(one.accepted, (), f"hold {name_marks(one.accepted)} again", {one.finding.code})

    def _take_despite(
        self, marks: Sequence[str], codes: Sequence[str], name: str, without: Collection[str] = ()
    ) -> None:
        openings = with_despite(self.session.job.openings, marks, codes, without)
        self.session.take_openings(openings, name, self.session.mark)
        self.say(f"Done: {name}. Undo takes it back.")

    def ask_freeze(self, note: str, mark_them: bool) -> None:
        """Freeze the order, asked once more where errors stand against it."""
        if self.counted is None or not (stands := self.counted.order.errors()):
            self.freeze(note, mark_them)
            return

        def go_on() -> None:
            self.question.hide()
            self.freeze(note, mark_them)

        self.question.show_sentence(f"{stands} Freeze the order as it is?", [("Freeze it as it is", go_on)])
        self.question.show()

    def freeze(self, note: str, mark_them: bool) -> None:
        """Keep the order in the job as a revision; one step."""
        counted, today, undone = self.counted, date.today().isoformat(), "The order was not frozen"
        if counted is None:
            self._refuse(undone)
            return
        if not counted.order.lines:
            self.say(f"{undone}: it has no lines.", wrong=True)
            return
        self.beside.start(
            "Freezing the order",
            undone,
            lambda _: frozen(counted, today, note, mark_them),
            lambda made: self._take_frozen(counted, *made),
        )

    def _take_frozen(self, counted: Counted, job: Job, number: int) -> None:
        # Out of sight the page counts nothing anew, so the job itself is asked too: edits must not be lost.
        if self.counted is not counted or self.session.job is not counted.job:
            self.say("The order was changed meanwhile; freeze it again.", wrong=True)
            return
        self.revisions.note.clear()
        self.session.take_job(job, f"freeze the order as revision {number}")
        self.revisions.list.choose(number)
        self.say(f"Kept as revision {number}; it goes into the file when the job is saved.")

    def ask_file(self, kind: str) -> None:
        """Ask for a file, and write the document of that kind to it."""
        try:
            path = ask_file(self, kind, self.session.path)
        except FileExistsError as error:
            self.say(str(error), wrong=True)
        else:
            if path is not None:
                self.write(kind, path)

    def write(self, kind: str, path: Path) -> None:
        """Write the document of that kind to a file, beside the window."""
        undone = f"{path.name} was not written"
        if kind == "field":
            work = field_sheet_work(self.session.job, self.session.display, path)
        elif self.counted is None:
            self._refuse(undone)
            return
        elif sentence := missing_for(kind, self.counted):
            self.say(f"{undone}: {sentence}.", wrong=True)
            return
        else:
            revision = self.revisions.revision(self.session.job) if kind == "changes" else None
            counted = self._with_offers(self.counted) if kind == "order" else self.counted
            work = document_work(kind, counted, revision, path)
        self.beside.start(f"Writing {path.name}", undone, work, lambda _: self.say(f"Written: {path}"))

    def _with_offers(self, counted: Counted) -> Counted:
        """Return a count whose order also says what was found when one width was asked for."""
        findings = (*counted.order.findings, *(offer.finding for offer in self.offers or ()))
        return replace(counted, order=replace(counted.order, findings=findings))

    def _refuse(self, undone: str) -> None:
        """Say that nothing can be done before all openings are worked out."""
        how = "wait for it" if self.counting.running else "work out all first"
        self.say(f"{undone}: not all openings are worked out yet; {how}, and ask again.", wrong=True)

    def _count_again(self) -> None:
        if self.counted is not None:
            self.offers = None
            self._count()

    def _show_offers(self, counted: Counted, offers: tuple[Offer, ...]) -> None:
        if self.counted is counted:
            self.offers = offers
            self.uniform.show_offers(offers)
        else:
            self.say("The order was changed meanwhile; ask again.")

    def _connect(self) -> None:
        top, revisions = self.top, self.revisions
        top.spare_typed.connect(self.set_spare)
        top.prices_asked.connect(self.ask_prices)
        top.prices_dropped.connect(self.drop_prices)
        top.written.connect(self.ask_file)
        self._connect_marks()
        self.uniform.asked.connect(self.ask_uniform)
        self.uniform.taken.connect(self.take_offer)
        self.head.edited.connect(self.edit_head)
        self.shelf.asked.connect(self.ask_shelf)
        self.shelf.taken.connect(self.take_shelf)
        self.release.clicked.connect(self.release_held)
        self.hold.clicked.connect(self.hold_again)
        revisions.frozen.connect(self.ask_freeze)
        revisions.chosen.connect(self._show_changes)
        self.tabs.currentChanged.connect(lambda _: self._show_changes())
        self.work_out.clicked.connect(self.recount)
        self.counting.ended.connect(self._show_uncounted)
        self.beside.began.connect(self.panel.hide)
        self.beside.failed.connect(lambda sentence: self.say(sentence, wrong=True))

    def _connect_marks(self) -> None:
        """Connect what shows marks, and what shows the opening of one."""
        self.lines.chosen.connect(lambda number: self.show_marks_of(self.counted, number))
        self.cautions.chosen.connect(self.show_caution)
        self.uniform.marks_asked.connect(self.show_marks_of_finding)
        self.left_out.chosen.connect(self.show_left_out)
        self.shelf.marks.opened.connect(self.open_mark)
        self.marks.clicked.connect(lambda _: self.open_mark(self.marks.current()))
        self.left_out.opened.connect(lambda left: self.open_mark(left.mark))
        for opened in (self.marks.opened, self.revisions.openings.opened):
            opened.connect(self.open_mark)
