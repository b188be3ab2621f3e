"""Twelve schedules as different as architects write them: each file, what is asked, what comes of it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from openpyxl import Workbook
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.styles import Font

Rows = Sequence[Sequence[Any]]


@dataclass(frozen=True)
class Case:
    """A schedule, the answers given, and what must come of it.

    `asked` has how many rows each question holds while it is not answered, `openings` some values of each
    opening by mark, `fates` what becomes of all its cells, and `said` what the report must have.
    """

    name: str
    write: Callable[[Path], Path]
    openings: Mapping[str, Mapping[str, Any]]
    fates: Mapping[str, int]
    asked: Mapping[str, int] = field(default_factory=dict)
    answers: Mapping[str, str] = field(default_factory=dict)
    faults: Sequence[str] = ()
    said: Sequence[str] = ()
    job: Sequence[Mapping[str, Any]] = ()
    keep: bool = False


def text(content: str, name: str = "doors.csv", encoding: str = "utf-8") -> Callable[[Path], Path]:
    """A file of text."""

    def write(folder: Path) -> Path:
        path = folder / name
        path.write_bytes(content.encode(encoding))
        return path

    return write


def book(
    sheets: Mapping[str, Rows], finish: Callable[[Workbook], None] = lambda _: None
) -> Callable[[Path], Path]:
    """A workbook of those sheets; `finish` does to it what values cannot."""

    def write(folder: Path) -> Path:
        made = Workbook()
        made.remove(made.active)
        for name, rows in sheets.items():
            sheet = made.create_sheet(name)
            for row in rows:
                sheet.append(list(row))
        finish(made)
        path = folder / "doors.xlsx"
        made.save(path)
        return path

    return write


def _strike_and_hide(made: Workbook) -> None:
    sheet = made["Doors"]
    sheet.row_dimensions[3].hidden = True
    for cell in sheet[4]:
        cell.font = Font(strike=True)
    sheet["E5"].font = Font(strike=True)
    sheet["F6"] = CellRichText("paint ", TextBlock(InlineFont(strike=True), "blue"), " grey")
    sheet.column_dimensions["F"].hidden = True


PLAIN = Case(
    "every column that is known, and one that is not",
    text(
        "Door No.,Level,Room Name,Width,Height,Thk,Hand,Door Type,Door Mat'l,Glass,Frame,Head,Jamb,Sill,"
        "Fire Rating,Hdwr Set,Keynote,Remarks\n"
        "101A,1,Ticket hall,3'-0\",7'-0\",1-3/4,LHR,F,HM,G-1,HM,4/A8.1,5/A8.1,,90 MIN,07,8.14,Card reader\n"
        "101B,1,Baggage,3'-4\",7'-0\",1-3/4,RH,N,WD,-,HM,4/A8.1,,9/A8.2,NR,12,,\n"
    ),
    {
        "101A": {
            "level": "1", "location": "Ticket hall", "size.width": 36, "size.height": 84,
            "door.thickness": 1.75, "hand": "LHR", "glass": "G-1",
            "door.construction": "hollow metal, 18 gage",
            "details.head": "4/A8.1", "details.jamb": "5/A8.1", "details.sill": None, "fire_minutes": 90,
            "use.fire_rated": True, "hardware_set": "07", "remarks": "Card reader",
            "other_columns": {"Door Type": "F", "Keynote": "8.14"},
        },
        "101B": {
            "size.width": 40, "hand": "RH", "door.construction": "wood, solid core", "use.fire_rated": False,
            "hardware_set": "12", "details.sill": "9/A8.2", "remarks": None,
            "other_columns": {"Door Type": "N"},
        },
    },
    # 18 headings; 17 cells and 15: the types F and N say nothing of what the door is made of.
    {"heading": 18, "read": 28, "kept": 3, "says nothing": 1},
    keep=True,
    said=("the door type “F” says nothing",),
)  # fmt: skip

SHEETS = Case(
    "one sheet of three, the job's name above, notes under the table",
    book(
        {
            "Cover": [["Kestrel Point Ferry Terminal"], ["Issued for bid"]],
            "Door Schedule": [
                ["Project:", "Kestrel Point Ferry Terminal"],
                ["DOOR SCHEDULE"],
                ["Mark", "Size", "Hand", "Frame", "Notes"],
                ["201", "3070", "LH", "HM", "1"],
                ["202", "3070", "RH", "HM", "2, 3"],
                ["203", "3070", "LHR", "HM", None],
                ["NOTES"],
                ["1.", "UNDERCUT FOR CARPET, VERIFY IN FIELD."],
                ["2.", "DOORS 201 AND 203: OWNER TO CONFIRM THE HAND."],
                ["3. Allow 2 hours for delivery."],
            ],
            "Hardware": [["Set", "Item"], ["07", "Hinges"]],
        }
    ),
    {
        "201": {
            "size.width": 36, "notes": "1",
            "questions": "Note 2 under the schedule: DOORS 201 AND 203: OWNER TO CONFIRM THE HAND.\n"
            "Note 1 under the schedule: UNDERCUT FOR CARPET, VERIFY IN FIELD.",
        },
        "202": {
            "questions": "Note 2 under the schedule: DOORS 201 AND 203: OWNER TO CONFIRM THE HAND.\n"
            "Note 3 under the schedule: Allow 2 hours for delivery.",
        },
        "203": {"questions": "Note 2 under the schedule: DOORS 201 AND 203: OWNER TO CONFIRM THE HAND."},
    },
    {"above the table": 3, "heading": 5, "read": 14, "note": 6},
    said=(
        "the sheet “Door Schedule” is read", "the others are Cover, Hardware",
        "perhaps the job's name: Kestrel Point Ferry Terminal",
        "under the table: 3. Allow 2 hours for delivery.",
        "OWNER TO CONFIRM THE HAND.; it names 201, 203",
    ),
)  # fmt: skip

WIDE_LETTERS = Case(
    "UTF-16 with tabs, as a spreadsheet saves it",
    text(
        "Mark\tRoom\tWidth\tHeight\tHand\r\n1\tCafé\t3-0\t7-0\tRH REV\r\n2\tKüche\t2-10\t6-8\tL.H.\r\n",
        "doors.txt",
        "utf-16",
    ),
    {
        "1": {"location": "Café", "size.width": 36, "size.height": 84, "hand": "RHR"},
        "2": {"location": "Küche", "size.width": 34, "size.height": 80, "hand": "LH"},
    },
    {"heading": 5, "read": 10},
)

DECIMAL_COMMA = Case(
    "millimetres with decimal commas, semicolons between",
    text("Mark;Width;Height;Thickness;Fire\n1;914,4;2133,6;44,45;FD30\n2;1.010,0;2 110;44,45;FD60\n"),
    {
        "1": {"size.width": 36, "size.height": 84, "door.thickness": 1.75, "fire_minutes": 30},
        "2": {"size.width": 1010 / 25.4, "size.height": 2110 / 25.4, "fire_minutes": 60},
    },
    {"heading": 5, "read": 10},
    said=(
        "Width: commas are read as decimal commas",
        "Width: numbers without a unit are taken as millimetres",
    ),
)

THOUSANDS = Case(
    "millimetres with marks between thousands, a pair that is narrow",
    text('Mark,Width (mm),Height (mm),Leaves\n1,"1,010","2,110",\n2,900,2 110,pair\n'),
    {
        "1": {"size.width": 1010 / 25.4, "size.height": 2110 / 25.4},
        "2": {"size.width": 1800 / 25.4, "leaves": "pair"},
    },
    {"heading": 4, "read": 7},
    asked={"pair width": 1},
    answers={"pair width": "leaf"},
    said=(
        "blanks between thousands are passed over",
        "commas are read as marks between thousands",
        "two leaves of 900 mm make an opening 1800 mm wide",
    ),
)

HIDDEN = Case(
    "a workbook with a hidden row, struck-out rows and cells, a hidden column",
    book(
        {
            "Doors": [
                ["Mark", "Size", "Hand", "Frame", "Hdwr", "Remarks"],
                ["101", "3070", "LH", "HM", "01", None],
                ["102", "3070", "LH", "HM", "01", "alternate 2"],
                ["103", "3070", "LH", "HM", "01", "deleted"],
                ["104", "3070", "RH", "HM", "05", None],
                ["105", "3070", "RH", "HM", "02", "x"],
            ]
        },
        _strike_and_hide,
    ),
    {
        "101": {"hardware_set": "01"},
        "104": {"hardware_set": None, "hand": "RH"},
        "105": {"remarks": "paint grey"},
    },
    {"heading": 6, "read": 15, "left out": 13},
    asked={"hidden row": 1, "struck out": 3, "no hinged door": 1},  # one remarks that it is deleted
    answers={"hidden row": "leave out", "struck out": "leave out"},
    said=(
        "left out: line 3, 102: it is hidden in the workbook", "left out: line 4, 103: it is struck out",
        "“05” is struck out: left out", "column F",
    ),
)  # fmt: skip

PAIRS = Case(
    "pairs by size, by hand, by remark and by their column",
    text(
        "Mark,Size,Hand,Leaves,Remarks\n"
        "1,PR 3070,,,\n"
        "2,6070,RHRA,,\n"
        "3,3070,LHA,,\n"
        '4,3\'-0" x 7\'-0",LH,,"Pair, equal leaves"\n'
        "5,3070,LH,,Pair of kick plates\n"
        "6,(2) 3070,RHR,pair,\n"
        "7,6070,RHRA,single,\n"
    ),
    {
        "1": {"size.width": 72, "leaves": "pair"},
        "2": {"size.width": 72, "leaves": "pair", "hand": "RHR"},
        "3": {"size.width": 72, "leaves": "pair", "hand": "LH"},
        "4": {"size.width": 72, "leaves": "pair", "remarks": "Pair, equal leaves"},
        "5": {"size.width": 36, "leaves": "single", "remarks": "Pair of kick plates"},
        "6": {"size.width": 72, "leaves": "pair"},
    },
    {"heading": 5, "read": 23, "asked": 1},
    asked={"pair width": 3},
    answers={"pair width": "leaf"},
    faults=("line 8, Hand: the hand is that of a pair's active leaf, and the leaves are single",),
)

NO_HINGES = Case(
    "cased openings, sliding, pocket, bifold and overhead doors, a Dutch door",
    text(
        "Mark,Size,Door Type,Operation,Remarks\n"
        "1,3070,F,Swing,\n"
        "2,3070,CO,,\n"
        "3,3070,F,SLD,\n"
        "4,3070,,,Pocket door\n"
        "5,4070,BF,,\n"
        "6,10-0 x 10-0,,OHD,\n"
        "7,3070,DUTCH,,\n"
        "8,3070,F,,Overhead stop\n"
        "9,3070,F,Swing,Dutch door\n"
    ),
    {
        "1": {"leaves": "single"},
        "7": {"leaves": "dutch"},
        "8": {"leaves": "single", "remarks": "Overhead stop"},
        "9": {"leaves": "dutch", "remarks": "Dutch door"},
    },
    {"heading": 5, "read": 11, "not understood": 3, "not read": 2, "left out": 16},
    asked={"no hinged door": 5, "dutch door": 2},
    answers={"no hinged door": "leave out", "dutch door": "dutch"},
    said=(
        "2: it is a cased opening", "3: it is a sliding door", "4: it is a pocket door",
        "5: it is a bifold door",
        "6: it is an overhead or coiling door", "not read: Operation (4 cells)",
    ),
)  # fmt: skip

TYPICAL = Case(
    "rows that stand for several openings",
    text(
        "Mark,Qty,Size,Remarks\n1,Typ. of 5,3070,\n2 (TYP OF 3),,3070,\n3,,3070,typical of 4\n4,2,3070,typ.\n"
    ),
    {"1": {"quantity": 5}, "2": {"quantity": 3}, "3": {"quantity": 4}, "4": {"quantity": 2}},
    {"heading": 4, "read": 12},
    asked={"typical": 3},
    answers={"typical": "quantity"},
    said=("“Typ. of 5” is taken as a quantity of 5",),
)

TRADE = Case(
    "as the trade writes it: ditto marks, blanks for x, laminates, existing doors",
    text(
        "Mark,Room,Size,Hand,Door Mat'l,Frame,Rating,Closer\n"
        "1,Hall,30 70,RH REV,PLAM,HM,FD30,Y\n"
        '2,"""",3-10 x 6-8,LH,WD HC,"""",NR,do\n'
        "3,Store,2868,LH,FRP,EXIST,-,N\n"
        "4,Lab,3070,RHR,LL,SS,3/4 HR,N\n"
        "5,Plant,3070,RHR,SS,KD,C,Y\n"
    ),
    {
        "1": {
            "size.width": 36, "size.height": 84, "hand": "RHR", "door.construction": "wood, solid core",
            "fire_minutes": 30, "use.closer": True,
        },
        "2": {
            "location": "Hall", "size.width": 46, "size.height": 80, "door.construction": "wood, hollow core",
            "frame.kind": "knocked-down drywall", "use.closer": True, "use.fire_rated": False,
        },
        "3": {
            "size.width": 32, "door.construction": None,
            "questions": "Door Mat'l is “FRP”: what is it made of, and is it to be hung anew?\n"
            "Frame is “EXIST”: what is it made of, and is it to be hung anew?",
        },
        "4": {"door.construction": "lead-lined", "frame.kind": "welded steel, wrapped", "fire_minutes": 45},
        "5": {"door.construction": "hollow metal, 18 gage", "use.fire_rated": True, "fire_minutes": None},
    },
    {"heading": 8, "read": 37, "not understood": 2, "says nothing": 1},
    said=("is taken as what stands above it", "no construction of fiberglass is known here"),
)  # fmt: skip

ADDENDUM = Case(
    "an addendum against a job: a blanked hand, another set, a new mark for an old opening",
    text("Mark,Room,Size,Hand,Hdwr Set\n247,Hall,3070,,08\n248A,Store,3070,LH,02\n249,Lab,3070,LH,02\n"),
    {
        "247": {"hand": None, "hardware_set": "08", "location": "Hall"},
        "248A": {"hand": "LH", "hardware_set": "02", "location": "Store", "notes": "ours"},
        "249": {"hand": "LH"},
    },
    {"heading": 5, "read": 14},
    asked={"blank cell": 1, "new mark": 1},
    answers={"blank cell": "clear", "new mark": "same"},
    said=("changed: 247: hardware set 07 → 08; hand RH → not said", "248 of the job has the mark 248A now"),
    job=(
        {"mark": "247", "location": "Hall", "size": "3070", "hand": "RH", "hardware_set": "07"},
        {
            "mark": "248",
            "location": "Store",
            "size": "3070",
            "hand": "LH",
            "hardware_set": "02",
            "notes": "ours",
        },
        {"mark": "249", "location": "Lab", "size": "3070", "hand": "LH", "hardware_set": "02"},
    ),
)

FLOORS = Case(
    "a header in two lines, titles of floors, totals, the header once more, 30 like faults",
    text(
        "Kestrel Point Ferry Terminal\n"
        ",,DOOR,,FRAME,\n"
        "Mark,Qty,Width,Height,Material,Remarks\n"
        "FIRST FLOOR\n"
        "101,1,3-0,7-0,HM,\n"
        "SECOND FLOOR\n"
        "201,2,3-0,7-0,HM,x\n"
        "Mark,Qty,Width,Height,Material,Remarks\n"
        + "".join(f"3{n:02},1,3-0,7-0,POTMETAL,\n" for n in range(30))
        + "Total,33\n"
        "General note: see sheet A8.1\n"
    ),
    {
        "101": {"level": "FIRST FLOOR", "frame.kind": "knocked-down drywall"},
        "201": {"level": "SECOND FLOOR", "quantity": 2, "remarks": "x"},
    },
    {"above the table": 1, "heading": 8, "passed over": 10, "read": 131, "asked": 30, "note": 1},
    faults=("30 rows, FRAME Material: “POTMETAL” is not known here",),
    said=("a total: “Total 33”", "under the table: General note: see sheet A8.1"),
)

TWELVE = (
    PLAIN, SHEETS, WIDE_LETTERS, DECIMAL_COMMA, THOUSANDS, HIDDEN, PAIRS, NO_HINGES, TYPICAL, TRADE, ADDENDUM,
    FLOORS,
)  # fmt: skip
