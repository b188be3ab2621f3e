import csv
import re
from dataclasses import dataclass, fields
from pathlib import Path

import pytest

from configurator import tables
from configurator.drawing.base.style import materials
from configurator.model import DoorStop, Hardware, Obstruction
from configurator.model.paths import vocabulary
from configurator.resource_files import resource_path
from configurator.tables import (
    MARKS,
    ROWS,
    ConstructionRow,
    DoorStopKindRow,
    DoorWeightRow,
    FinishRow,
    FrameKindRow,
    FrameSizeRow,
    GageRow,
    HardwareKindRow,
    KindRow,
    ObstructionKindRow,
    SheetRow,
    StockRow,
    TableError,
    WayRow,
    frame_usual,
    limit,
    practice,
    read_table,
    table,
    words_of,
)
from configurator.wording.glossary import glossary


def test_every_file_is_a_table_and_every_table_a_file():
    files = {path.stem for path in resource_path("tables").glob("*.csv")}
    assert files == set(ROWS)


@pytest.mark.parametrize("name", ROWS)
def test_every_row_names_its_source_and_its_mark(name):
    rows = table(ROWS[name])
    assert rows
    for row in rows:
        assert row.source.strip() == row.source != ""
        assert row.mark in MARKS
        assert row.cited.text == row.source


def test_a_row_marked_read_does_not_say_from_memory():
    for kind in ROWS.values():
        for row in table(kind):
            text = row.source.lower()
            if row.mark == "read":
                assert not re.search(r"memory|no source|secondary text", text), row
            if "as quoted in a secondary text" in text:
                assert row.mark == "common practice", row


def test_the_words_of_the_tables_are_the_words_of_the_project_file():
    sized, weighed = (
        {row.kind for row in table(FrameSizeRow)},
        {row.construction for row in table(DoorWeightRow)},
    )
    for file, words, known in (
        ("frame_sizes", set(vocabulary()["frame.kind"]), sized),
        ("door_weights", set(vocabulary()["door.construction"]), weighed),
    ):
        assert sorted(words - known) == [], f"give these rows in resources/tables/{file}.csv"
        assert sorted(known - words) == [], f"in {file}.csv, but no word of model/words.py"


KINDS = {
    "frame.kind": FrameKindRow,
    "door.construction": ConstructionRow,
    "obstructions.kind": ObstructionKindRow,
    "hardware.kind": HardwareKindRow,
    "door_stop.kind": DoorStopKindRow,
    "compare.hung_on": WayRow,
}


@pytest.mark.parametrize("path", KINDS)
def test_every_kind_is_a_row_and_every_row_a_kind(path):
    rows, words = [row.kind for row in table(KINDS[path])], list(vocabulary()[path])
    file = next(name for name, row in ROWS.items() if row is KINDS[path])
    assert [word for word in words if word not in rows] == [], (
        f"give these a row in resources/tables/{file}.csv"
    )
    assert [kind for kind in rows if kind not in words] == [], "give these a word in model/words.py"
    assert rows == words, f"bring {file}.csv into the order of model/words.py"


def test_no_table_of_kinds_is_forgotten():
    assert set(KINDS.values()) == {row for row in ROWS.values() if issubclass(row, KindRow)}


@pytest.mark.parametrize("row", table(ObstructionKindRow), ids=lambda row: row.kind)
def test_an_obstruction_is_accepted_as_it_starts(row):
    assert Obstruction.model_validate(row.usual).kind == row.kind
    assert row.client is None or all(key in row.usual for key in row.client_measures.split())


@pytest.mark.parametrize("row", table(HardwareKindRow), ids=lambda row: row.kind)
def test_hardware_is_accepted_as_it_starts(row):
    assert Hardware.model_validate(row.usual).kind == row.kind
    assert row.spindle is None or row.spindle < row.width


@pytest.mark.parametrize("row", table(DoorStopKindRow), ids=lambda row: row.kind)
def test_a_door_stop_is_accepted_as_it_starts(row):
    assert DoorStop.model_validate({"kind": row.kind}).projection == row.projection


@pytest.mark.parametrize(
    "row", [*table(ObstructionKindRow), *table(HardwareKindRow)], ids=lambda row: row.kind
)
def test_a_kind_is_called_by_its_own_word_but_for_the_one_that_nothing_is_known_of(row):
    assert row.term in {word.term for word in glossary()}
    if row.kind != "other":
        assert (row.name, row.label) == (row.kind, row.kind[:1].upper() + row.kind[1:])


def test_what_stands_there_is_filled_with_a_material_of_the_style():
    assert {row.material for row in table(ObstructionKindRow)} <= set(materials())


def test_what_cannot_be_known_to_give_way_is_neither_taken_to_nor_taken_not_to():
    cut = {row.kind: row.cut_back for row in table(ObstructionKindRow)}
    assert cut["other"] == "unknown"
    assert {cut[kind] for kind in ("chair rail", "base", "casing", "wainscot")} == {"yes"}
    assert {row.cut_back for row in table(ObstructionKindRow) if row.outline != "box"} == {"no"}


def test_a_door_with_steel_skins_has_their_thickness_and_their_weight():
    weighed = {row.construction for row in table(SheetRow)}
    for row in table(ConstructionRow):
        assert (row.skin is not None) == (row.section == "steel skins")
        if row.skin is not None:
            assert row.kind in weighed, "give it a row in resources/tables/sheet_weights.csv"


def test_every_hinge_height_has_stock_and_a_gage():
    for row in table(tables.HeightRow):
        assert any(stock.height == row.height for stock in table(StockRow))
        assert any(gage.height == row.height for gage in table(GageRow))


def test_no_size_stands_twice():
    sizes = [(row.height, row.width) for row in table(StockRow)]
    assert len(sizes) == len(set(sizes))
    codes = [(row.us, row.metal) for row in table(FinishRow)]
    assert len(codes) == len(set(codes))


def test_usual_values_by_frame_kind():
    steel = frame_usual("knocked-down drywall")
    assert steel["rabbet"].for_door(1.75) == 1.9375
    assert steel["rabbet"].for_door(1.375) == 1.5625
    assert steel["stop_height"].for_door(1.75) == 0.625
    assert frame_usual("welded steel, wrapped")["return_depth"].for_door(1.75) == 0.4375
    assert frame_usual("welded steel, butted")["frame_proud"].for_door(1.75) is None
    wood = frame_usual("wood with casing")
    assert (wood["face"].value, wood["rabbet"].for_door(1.375), wood["hinge_gap"].value) == (
        0.75,
        1.4375,
        0.09375,
    )


def test_a_wrapped_frame_keeps_the_throat():
    """5-7/8 with 1/2 returns and 5-3/4 with 7/16 returns both take a 4-7/8 wall (arithmetic)."""
    for kind in ("knocked-down drywall", "welded steel, wrapped"):
        usual = frame_usual(kind)
        assert usual["jamb_depth"].value - 2 * usual["return_depth"].value == 4.875


def test_limits_and_practices_by_key():
    assert limit("clear_width").value == 32
    assert limit("clear_width").mark == "read"
    assert "closer" in words_of("bearing_closer")
    assert practice("bearing_closer").mark == "read"
    with pytest.raises(KeyError):
        limit("nothing")
    with pytest.raises(KeyError):
        frame_usual("tent")


def test_rows_are_read_once():
    assert table(StockRow) is table(StockRow)


PACKAGE = Path(tables.__file__).parent.parent
HEAD = "height,width,stock,source,mark\n"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("height,width\n1,2\n", "columns must be"),
        (HEAD, "no rows"),
        (HEAD + "4,4,common,somewhere\n", "line 2: it has too many or too few cells"),
        (HEAD + "4,4,common,somewhere,read,more\n", "line 2: it has too many or too few cells"),
        (HEAD + "4,four,common,somewhere,read\n", "line 2, width: “four” is not a number"),
        (HEAD + "4,4,often,somewhere,read\n", "stock: “often” is none of common, uncommon, ask first"),
        (HEAD + "4,4,common,,read\n", "source: the cell is empty"),
        (HEAD + "4,4,common,somewhere,heard\n", "mark: “heard” is none of read"),
    ],
)
def test_a_broken_table_is_refused_in_words(text, words):
    with pytest.raises(TableError, match=re.escape(words)):
        read_table(text, "stock_sizes", StockRow)


@dataclass(frozen=True)
class Sample:
    name: str
    widths: tuple[float, ...]
    words: tuple[str, ...]
    mend: bool
    note: str | None


def test_a_row_has_the_types_of_its_fields():
    text = "# what it is\nname,widths,words,mend,note\na,1 2.5,,yes,\n#,,b c,no,said\n"
    assert read_table(text, "sample", Sample) == (
        Sample("a", (1.0, 2.5), (), True, None),
        Sample("#", (), ("b", "c"), False, "said"),
    )


def test_a_list_is_refused_by_its_part():
    with pytest.raises(TableError, match=r"sample.csv line 2, widths: “wide” is not a number"):
        read_table("name,widths,words,mend,note\na,1 wide,,yes,\n", "sample", Sample)


def test_every_file_of_the_program_is_read_by_one_reader():
    for folder in ("style", "words", "intake"):
        for path in resource_path(folder).glob("*.csv"):
            assert re.search(rf'resource_rows\(\s*"{folder}", "{path.stem}"', source_text()), path
    readers = [
        path.name for path in PACKAGE.rglob("*.py") if re.search(r"csv\.DictReader", path.read_text("utf-8"))
    ]
    assert readers == ["reading.py"]


def source_text() -> str:
    return "".join(path.read_text("utf-8") for path in PACKAGE.rglob("*.py"))


def test_no_row_is_there_for_nobody():
    """Every limit and every rule in words is looked up by its key somewhere, every kind of row read."""
    text = source_text()
    keys = [row.key for kind in (tables.LimitRow, tables.PracticeRow) for row in table(kind)]
    assert [key for key in keys if not re.search(rf"""["']{key}["']""", text)] == []
    read = set(re.findall(r"\b(?:table|row_of)\((\w+)", text))
    assert [kind.__name__ for kind in ROWS.values() if kind.__name__ not in read] == []


def test_no_column_is_there_for_nobody():
    text = source_text()
    columns = {(kind.__name__, one.name) for kind in ROWS.values() for one in fields(kind)}
    unread = {(kind, name) for kind, name in columns if f".{name}" not in text}
    assert unread == set()


def test_tables_are_plain_csv():
    for name in ROWS:
        with resource_path("tables", f"{name}.csv").open(encoding="utf-8", newline="") as file:
            widths = {len(cells) for cells in csv.reader(file)}
        assert len(widths) == 1, name
