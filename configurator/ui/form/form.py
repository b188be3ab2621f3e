"""What the user says about an opening, in short sections; only what matters for this opening is open."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFormLayout, QLabel, QPushButton, QScrollArea, QWidget

from configurator.tables import FrameKindRow, frame_usual, row_of
from configurator.ui.form.frame_notes import FrameNotes, FramePlace
from configurator.ui.form.layers import LayersEditor
from configurator.ui.form.presets import usual_casing
from configurator.ui.form.rows import RowsEditor, hardware_editor, obstructions_editor
from configurator.ui.form.special import DoorStopField, HandField, OpeningSizeField
from configurator.ui.kit.fields import Assumptions, Field, field_for
from configurator.ui.kit.layout import GROW, add, down, fill, put_in_order, reading_order
from configurator.ui.kit.look import FORM_WIDTH, GRID
from configurator.ui.kit.sections import NameLabel, Section, add_row, new_form
from configurator.ui.kit.typed_line import finish_typing
from configurator.ui.state.session import Session

NOTHING: Assumptions = MappingProxyType({})
SECTIONS: Mapping[str, tuple[str, ...]] = {
    "Opening": (
        "mark", "location", "size", "hand", "leaves", "active_width", "split_height", "quantity", "hung_on",
        "hinge.mounting",
    ),
    "Wall": ("wall.frame_proud", "wall.thickness"),
    "What stands along the wall": (),
    "Door": (
        "door.construction", "door.thickness", "door.latch_bevel", "door.hinge_backset", "door.hinge_gap",
        "door.latch_gap", "door.head_gap", "door.meeting_gap", "door.split_gap", "door.undercut",
        "door.mortise_depth", "door.lead_thickness", "glass", "door.lite_width", "door.lite_height",
        "door.lite_above_floor", "door.lite_from_latch", "door.lock_height",
        "door.lock_backset", "door.kick_plate",
        "door.glass_thickness", "door.weight",
    ),
    "Frame": (
        "frame.kind", "frame.profile", "frame.sizes_from",
        "frame.face", "frame.rabbet", "frame.stop_height", "frame.stop_gap", "frame.jamb_depth",
        "frame.return_depth", "frame.stop_width", "frame.metal_thickness", "frame.hinge_backset",
        "frame.mortise_depth", "frame.outline", "details.head", "details.jamb", "details.sill",
    ),
    "Threshold and floor": ("sill.threshold_height", "sill.threshold_width", "sill.floor_finish"),
    "Hardware": (),
    "Door stop": (
        "door_stop.kind", "door_stop.projection", "door_stop.from_frame", "door_stop.height",
        "use.stop_angle",
    ),
    "Hinge": (
        "hinge.barrel", "hinge.leaf_thickness", "hinge.leaf_gap", "hinge_locations.rule",
        "hinge_locations.tops", "prepared_height", "existing_hinge.height",
        "existing_hinge.width", "existing_hinge.leaf_thickness", "existing_hinge.corner",
        "existing_hinge.count", "existing_hinge.mounting",
    ),
    "Use": (
        "use.wanted_angle", "use.accessible", "use.clear_width_margin",
        "use.alteration", "use.beds_moved", "use.closer",
        "use.locked", "use.lock_both_sides", "use.lock_finish_bhma", "use.fire_rated", "fire_minutes",
        "use.traffic", "use.exposure", "use.coastal", "use.humid", "use.corridor_width", "use.required_width",
    ),
    "Floor on the pull side": (
        "pull_side.approach", "pull_side.depth", "pull_side.latch_side", "pull_side.hinge_side",
    ),
    "Floor on the push side": (
        "push_side.approach", "push_side.depth", "push_side.latch_side", "push_side.hinge_side",
    ),
    "Schedule and notes": (
        "status", "order_state", "level", "hardware_set", "notes", "questions", "remarks", "other_columns",
    ),
    "Job": (
        "job.name", "job.number", "job.client", "job.prepared_by", "job.date", "job.revision",
        "job.width_policy", "job.notes",
    ),
}  # fmt: skip
"""Title of a section to the plain fields it holds; lists are added to theirs."""
OPEN_AT_START = ("Opening",)
_SPECIAL: Mapping[str, Callable[[Session], Field]] = MappingProxyType(
    {"size": OpeningSizeField, "hand": HandField, "door_stop.kind": DoorStopField}
)


def matters(path: str, session: Session) -> bool:
    """Say whether a field has a meaning for the opening on show: no meeting gap without a second leaf."""
    leaves = session.value("leaves")
    if path in ("active_width", "door.meeting_gap"):
        return bool(leaves == "pair")
    if path in ("split_height", "door.split_gap"):
        return bool(leaves == "dutch")
    if path.startswith("door_stop.") and path != "door_stop.kind":
        return session.value("door_stop") is not None
    if path == "frame.sizes_from":
        return session.value("frame.profile") is not None
    if path in ("use.clear_width_margin", "use.alteration"):
        return bool(session.value("use.accessible")) or session.value(path) is not None
    kind = session.value("frame.kind")
    if kind is not None and session.value(path) is None:
        if path == "frame.return_depth":
            return row_of(FrameKindRow, kind).returns
        if path == "frame.metal_thickness":
            return "metal_thickness" in frame_usual(kind)
    return True


class Form(QScrollArea):
    """The form; every section shows the state of the session and hands typed values to it."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.sections: dict[str, Section] = {}
        self._fields: dict[str, Field] = {}
        self._labels: dict[str, NameLabel] = {}
        self._rows: list[RowsEditor | LayersEditor | FrameNotes | FramePlace] = []
        self._casing: QPushButton | None = None
        self._stops: list[QWidget] = []
        self._assumed: Assumptions = NOTHING
        self._known_mark: str | None = None
        self._content = QWidget()
        self._empty = QLabel("This job has no openings yet. Add one with the + button of the openings list.")
        self._empty.setWordWrap(True)
        self._build()
        session.leaving.connect(finish_typing)

    def show_state(self, assumed: Assumptions) -> None:
        """Show what the session holds, and what is assumed where it holds nothing."""
        self._assumed = assumed
        there = self.session.opening is not None
        self._empty.setVisible(not there)
        for title, section in self.sections.items():
            section.setVisible(there or title == "Job")
        if there and self.session.mark != self._known_mark:
            self._known_mark = self.session.mark
            self._open_what_matters()
        self._show_fields()

    def field(self, path: str) -> Field:
        """Return the field at a path, opening its section. Raises KeyError where there is none."""
        self.reveal(path)
        found = {**self._fields}
        for rows in self._rows:
            found.update(rows.fields)
        return found[path]

    def reveal(self, path: str) -> None:
        """Open the section that holds a field, so that what stands beside it is seen."""
        of_lists = {"obstructions": "What stands along the wall", "hardware": "Hardware", "wall": "Wall"}
        for title, own in SECTIONS.items():
            if path in own or of_lists.get(path.split(".")[0]) == title:
                self.sections[title].open()

    def go_to(self, path: str) -> None:
        """Open the section that holds a field and put the keyboard into it, to be typed at once."""
        field = self.field(path)
        field.setFocus()
        # Only once the opened section has its place is it known where to scroll to.
        QTimer.singleShot(0, field, lambda: self.ensureWidgetVisible(field))

    def fields(self) -> Mapping[str, Field]:
        """Return the plain fields made so far, by path."""
        return self._fields

    def _build(self) -> None:
        self.sections = {title: Section(title, self._body_maker(title)) for title in SECTIONS}
        for section in self.sections.values():
            section.opened.connect(self._show_fields)
        parts = (self._empty, *self.sections.values(), GROW)
        fill(self._content, down(*parts, spacing=GRID, margins=(2 * GRID, 2 * GRID, 2 * GRID, 2 * GRID)))
        self.setWidget(self._content)
        self.setWidgetResizable(True)
        self.setMinimumWidth(FORM_WIDTH)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.setAccessibleName("what is known about the opening")
        for title in OPEN_AT_START:
            self.sections[title].open()

    def _body_maker(self, title: str) -> Callable[[], QWidget]:
        return lambda: self._body(title)

    def _body(self, title: str) -> QWidget:
        body, form = QWidget(), new_form()
        layout = fill(body, down(form, spacing=GRID, margins=(GRID, 0, 0, 2 * GRID)))
        for path in SECTIONS[title]:
            self._add_field(form, path)
        add(layout, *self._extras(title))
        return body

    def _add_field(self, form: QFormLayout, path: str) -> None:
        special = _SPECIAL.get(path)
        field = field_for(self.session, path) if special is None else special(self.session)
        self._fields[path] = field
        self._labels[path] = add_row(form, field, self.session)

    def _extras(self, title: str) -> list[QWidget]:
        if title == "Frame":
            self._casing = QPushButton("Add usual casing")
            self._casing.setToolTip("11/16 x 2-1/4 in at a 1/4 in reveal on the jamb, from memory")
            self._casing.clicked.connect(self._add_casing)
            return [self._casing, self._frame_notes()]
        makers: dict[str, Callable[[Session], Any]] = {
            "Wall": LayersEditor,
            "What stands along the wall": obstructions_editor,
            "Hardware": hardware_editor,
        }
        if title not in makers:
            return []
        rows = makers[title](self.session)
        self._rows.append(rows)
        return [self._frame_place(), rows, self._frame_notes()] if title == "Wall" else [rows]

    def _frame_notes(self) -> FrameNotes:
        notes = FrameNotes(self.session)
        self._rows.append(notes)
        return notes

    def _frame_place(self) -> FramePlace:
        place = FramePlace(self.session)
        self._rows.append(place)
        return place

    def _show_fields(self) -> None:
        for path, field in self._fields.items():
            shown = matters(path, self.session)
            field.setVisible(shown)
            self._labels[path].setVisible(shown)
            if shown:
                self._labels[path].use_words(self.session.plain_words)
                field.show_state(self._assumed)
        for rows in self._rows:
            rows.show_state(self._assumed)
        for label in self._content.findChildren(NameLabel):
            label.use_words(self.session.plain_words)
        if self._casing is not None:
            self._casing.setVisible(self._wants_casing())
        self._order_keys()

    def _order_keys(self) -> None:
        """Put Tab in reading order again where sections, cards or layers were made."""
        stops = list(reading_order(self._content))
        if stops != self._stops:
            self._stops = stops
            put_in_order(self._content)

    def _wants_casing(self) -> bool:
        things = self.session.value("obstructions") or ()
        kind = self.session.value("frame.kind")
        cased = kind is not None and row_of(FrameKindRow, kind).cased
        return cased and not any(thing.kind == "casing" for thing in things)

    def _add_casing(self) -> None:
        things = [row.model_dump(exclude_unset=True) for row in self.session.value("obstructions") or ()]
        self.session.edit("obstructions", [*things, usual_casing()])

    def _open_what_matters(self) -> None:
        """Open the lists that this opening has something in; leave the rest as the user has it."""
        for title, path in (("What stands along the wall", "obstructions"), ("Frame", "frame")):
            if path == "obstructions" and self.session.value(path):
                self.sections[title].open()
