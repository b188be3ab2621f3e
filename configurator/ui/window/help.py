"""A small window of help beside the work: how lengths are typed, the keys, and the words."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from configurator.ui.kit.look import GRID

TEXT = """
<h3>Lengths</h3>
<p>4 1/2 &nbsp; 4-1/2 &nbsp; 4.5 &nbsp; 4-1/2" &nbsp; are inches;
3'-0" &nbsp; 3-0 &nbsp; are feet and inches;
114 mm &nbsp; is millimetres. An opening is width first: &nbsp; 3070 &nbsp; 3-0 x 7-0 &nbsp; 36 x 84.
A hinge is height first: &nbsp; 4-1/2 x 4.</p>
<h3>What you did not say</h3>
<p>Grey slanted values marked <i>assumed</i> are usual ones. Click the word, or press F1 in the field, to read
why. Empty a field to go back to its usual value. Esc brings back what held before.</p>
<h3>Keys</h3>
<p>F1 tells what a word means, Shift+F1 shows this help.
Alt+Left and Alt+Right turn the door by 1°, Alt+Page Up and Alt+Page Down by 15°.
F8 turns it to the next thing that happens (lock edge closest, square open, first contact), Shift+F8 back; F7
shows what it sweeps. F9 folds the openings away, F6 shows all of them as a schedule. Ctrl+Z takes back,
Ctrl+S saves, Ctrl+Shift+E exports the picture.</p>
<p>F10 or Alt opens the menus, where every command has its key beside it. Ctrl+K finds a command, an opening
or a field by its words. On a page Esc goes back to the work, Alt+Left to what was on show before.</p>
<h3>The picture</h3>
<p>The wheel, or Ctrl and + or -, shows it larger, dragging moves it, Ctrl+0 frames it again; all panels go
alike. Ctrl+M measures: click two places, corners, centres and edges hold. Ctrl+Shift+C copies it.</p>
<h3>Where a number comes from</h3>
<p>Enter or a double click on a number of the comparison, or a double click on a dimension of the picture,
shows its formula, in letters and in numbers. Point at a letter, or go through the list of letters with the
arrow keys, and the picture marks what it stands for.</p>
<h3>What if</h3>
<p>Under the picture, What if varies one thing and holds the rest. Point into the chart or move the slider,
and the picture shows the value on trial; nothing is changed until you take it, and one undo takes that
back.</p>
<h3>Sheets</h3>
<p>Ctrl+P shows plan, elevation, preparation, before and after and the client's page as they are printed, at a
true scale, of any opening. Ctrl and the wheel show them larger. They are written to a file or printed, one or
those of all openings. Print at actual size: a printer that fits pages to its paper spoils the scale.</p>
<h3>In front of a client</h3>
<p>F5 puts everything technical away: three questions, a large picture, plain words. Space plays the swing,
F11 takes the whole screen, Esc goes back.</p>
<h3>Practice</h3>
<p>F4 poses problems, from easy to hard; the picture marks what is asked. Type the answer and press Enter;
Enter again goes on. F1 explains the words of a question. A problem's number brings it back,
here or at another desk. At the end of each level stands a small job; sets for a class are printed.</p>
<h3>Your file</h3>
<p>While you work on a file it is locked: a second program opens it read-only and is told who has it. What
another program changed on disk is never written over unless you say so. Unsaved work is kept every few
seconds, and offered at the next start should the program end without being closed.</p>
<h3>The schedule</h3>
<p>F6 shows every opening in one table and goes back. Enter or a double-click goes to the work on a row, F2
or typing edits a cell, Ctrl+F finds, a click on a head sorts, once more the other way and then not at all;
Columns says which are shown. Choose several rows to set a field on all of them, to copy them (Ctrl+C), or
to remove them (Delete). Paste (Ctrl+V) takes rows of a spreadsheet: with heads and marks they change and
add openings; without, they go on from the current cell. All of it is taken or nothing.</p>
<h3>A door schedule</h3>
<p>Ctrl+I takes an architect's schedule (CSV, XLSX) into the job. Correct over each column what it gives,
and a cell by a double-click; look at what becomes of each row. A double-click on a fault puts right all cells
that read so; what is asked above the rows is answered once for all of them. Nothing is taken until you say
so, one undo takes it back, and the schedule's own file stays as it is. Save a report keeps what was asked,
what was taken for what, and what was not read.</p>
<h3>An order</h3>
<p>Ctrl+Shift+O shows the hinges of the whole job as order lines. Freeze an order when it goes out: afterwards
you see what changed since, and what must be ordered or returned. Under Write is all that goes out of the
house, and a field sheet to fill in on site.</p>
<h3>Millimetres</h3>
<p>Lengths in the picture, the table and the form follow the choice of units; findings stay in inches.</p>
<h3>Words</h3>
<p>F1 in a field, or a click on its label, shows what it means, with a drawing. The button below shows all
words; typing finds one.</p>
<h3>Before you order</h3>
<p>Fire, egress and access rules are the local authority's to apply. The program states what it was told
and what it assumed; listings, local codes and licensed practice decide.</p>
"""


class HelpWindow(QDialog):
    """Not modal: the work goes on behind it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Help")
        self.setModal(False)
        words = QLabel(TEXT)
        words.setWordWrap(True)
        words.setTextFormat(Qt.TextFormat.RichText)
        words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column = QVBoxLayout(self)
        column.setContentsMargins(4 * GRID, 2 * GRID, 4 * GRID, 4 * GRID)
        words.setContentsMargins(0, 0, 2 * GRID, 0)
        page = QScrollArea()
        page.setWidgetResizable(True)
        page.setFrameShape(QScrollArea.Shape.NoFrame)
        page.setWidget(words)
        column.addWidget(page)
        self.words = QPushButton("All words…")
        self.words.setAutoDefault(False)
        column.addWidget(self.words, 0, Qt.AlignmentFlag.AlignLeft)
        self.resize(150 * GRID, 150 * GRID)
