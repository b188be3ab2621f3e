"""The user's own prices: the most particular row wins, every cent is exact, every fault has its line."""

from decimal import Decimal

import pytest

from configurator.documents.order import order_document
from configurator.documents.quote import quote_document
from configurator.order.book import tally_job
from configurator.order.price_list import (
    LARGEST_FILE,
    PriceListError,
    load_prices,
    named_from,
    parse_prices,
    with_prices_from,
)
from configurator.order.prices import price_order
from configurator.order.studied import study_or_fault
from configurator.order.take_off import take_off
from configurator.order.tally import tally
from configurator.project_file import load
from configurator.resource_files import resource_path
from tests.openings import ON_PIVOTS, plain_opening
from tests.order.cases import data, ordered

TWO_LINES = (data("1", quantity=40), data("2", hinge={"width": 5, "count": 7}))


def priced(text, *openings):
    return price_order(ordered(*(openings or TWO_LINES)).lines, parse_prices(text.encode()))


def faults(text):
    with pytest.raises(PriceListError) as refused:
        priced(text)
    return [str(fault) for fault in refused.value.faults]


def test_one_price_for_all():
    found = priced("price\n4.25\n")
    assert [found.by_line[n].amount for n in (1, 2)] == [Decimal("510.00"), Decimal("29.75")]
    assert found.total == Decimal("539.75")
    assert found.words() == "Total 539.75, every line priced."


def test_a_pair_is_two_hinges_and_half_a_pair_is_half_the_price():
    found = priced("price,unit,currency\n10.01,pair,USD\n")
    assert [found.by_line[n].amount for n in (1, 2)] == [Decimal("600.60"), Decimal("35.04")]
    assert found.words().startswith("Total USD 635.64")


def test_the_most_particular_row_wins_wherever_it_stands():
    text = "size,corner,price\n4-1/2 x 4,square,3\n,,1\n4-1/2 x 4,,2\n"
    found = priced(text)
    assert [(found.by_line[n].price, found.by_line[n].row) for n in (1, 2)] == [(3, 2), (1, 3)]


def test_a_line_that_no_row_fits_is_named_and_not_counted():
    found = priced("width,price\n4,2\n")
    assert found.unpriced == (2,)
    assert found.total == 240
    assert found.words() == "Total 240.00 without 1 line that has no price: 2."


def test_rows_that_fit_equally_well_are_refused_by_name():
    assert faults("width,corner,price\n4,,1\n,square,2\n") == [
        "lines 2 and 3: they fit the order's line 1 (4-1/2 x 4) equally well; give one of them a further "
        "column, or take one out"
    ]


@pytest.mark.parametrize(
    ("header", "cell"),
    [
        ("height", "4-1/2"), ("height", "4.5"), ("width", '"4"""'), ("item", "Butt Hinge"),
        ("type", "a8112"),
        ("mounting", "full mortise"), ("weight", "standard"), ("bearing", "ball"),
        ("leaf_thickness", "0.134"),
        ("knuckles", "5"), ("base metal", "steel"), ("finish_bhma", "652"), ("Finish US", "US26D"),
        ("pin", "removable"), ("security_stud", "no"), ("tip", "flat button"), ("corner", "square"),
    ],
)  # fmt: skip
def test_every_column_tells_hinges_apart(header, cell):
    plain = data("1")
    assert priced(f"{header},price\n{cell},2\n", plain).unpriced == ()
    odd = {
        "height": "5", "width": "5", "item": "electric butt hinge", "type": "A1", "mounting": "half mortise",
        "weight": "heavy", "bearing": "plain", "leaf_thickness": ".18", "knuckles": "3",
        "base metal": "brass",
        "finish_bhma": "600", "Finish US": "USP", "pin": "non-removable", "security_stud": "yes",
        "tip": "hospital", "corner": "1/4 radius",
    }  # fmt: skip
    assert priced(f"{header},price\n{odd[header]},2\n", plain).unpriced == (1,)


def test_hand_and_alloy_tell_apart_too():
    handed = data("1", hinge={"mounting": "swing clear", "base_metal": "stainless", "alloy": "304"})
    assert priced("hand,alloy,price\nlh,304,2\n", handed).unpriced == ()
    assert priced("hand,price\nRH,2\n", handed).unpriced == (1,)
    assert priced("alloy,price\n316,2\n", handed).unpriced == (1,)


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("", "the price list is empty; its first line names the columns"),
        ("size\n4 x 4\n", "line 1: there is no column named price"),
        ("price,price\n1,2\n", "line 1: the column 'price' stands twice"),
        ("price\nten\n", "line 2, price: a price is a number such as 4.25; 'ten' was given"),
        ("price\n1e3\n", "line 2, price: a price is a number such as 4.25; '1e3' was given"),
        ("price\nNaN\n", "line 2, price: a price is a number such as 4.25; 'NaN' was given"),
        ("price\n-1\n", "line 2, price: a price is from 0 to 1,000,000; -1 was given"),
        ("price\n0.00001\n", "line 2, price: a price has up to 4 decimals; 0.00001 was given"),
        ("width,price\n4,\n", "line 2, price: the price is missing"),
        ("width,price\nwide,1\n", "line 2, width: "),
        ("size,price\n4,1\n", "line 2, size: a hinge size is height x width, as 4-1/2 x 4; '4' was given"),
        ("size,width,price\n4 x 4,5,1\n", "line 2, size: it and the column width do not say the same"),
        ("security_stud,price\nmaybe,1\n", "line 2, security stud: yes or no is wanted; 'maybe' was given"),
        ("pack,price\n0,1\n", "line 2, pack: a pack holds from 1 to 10,000 hinges; 0 was given"),
        ("knuckles,price\nfive,1\n", "line 2, knuckles: a whole number is wanted; 'five' was given"),
        ("tip,price\nround,1\n", "line 2, tip: it is one of flat button, hospital, ball, flush; 'round' was"),
        ("price,unit\n1,dozen\n", "line 2, unit: it is one of each, pair, set, foot; 'dozen' was given"),
        ("price\n1,2\n", "line 2: it has 2 cells and the first line has 1"),
        ("price\n1\n\n2\n", "line 4: it asks for the same hinges as line 2; keep one of them"),
        ("width,price,currency\n4,1,USD\n5,1,\n", "line 3, currency: it is blank here and USD above"),
        ('price\n"1\n', "line 2: this is not a CSV file: "),
    ],
)
def test_a_bad_row_is_a_sentence_with_its_line_and_column(text, fault):
    assert faults(text)[0].startswith(fault)


@pytest.mark.parametrize("price", ["0", "1000000", "0.0001"])
def test_the_least_and_the_largest_price_and_the_last_decimal_are_taken(price):
    assert parse_prices(f"price\n{price}\n".encode()).rows[0].price == Decimal(price)


@pytest.mark.parametrize("price", ["1000000.01", "-0.01"])
def test_what_lies_beyond_the_least_and_the_largest_price_is_refused(price):
    assert faults(f"price\n{price}\n") == [
        f"line 2, price: a price is from 0 to 1,000,000; {price} was given"
    ]


@pytest.mark.parametrize("between", [",", ";", "\t"])
def test_cells_may_stand_between_commas_semicolons_or_tabs(between):
    text = "\nsize,price,unit,currency\r\n4-1/2 x 4,3.10,pair,units\r\n".replace(",", between)
    prices = parse_prices(text.encode())
    assert (prices.currency, prices.rows[0].unit, str(prices.rows[0].price)) == ("units", "pair", "3.10")
    assert prices.rows[0].asks == {"height": 4.5, "width": 4.0}


def test_a_price_with_a_comma_is_refused_rather_than_guessed():
    with pytest.raises(PriceListError, match=r"a price is a number such as 4\.25; '9,50' was given"):
        parse_prices(b"size;price\n4-1/2 x 4;9,50\n")


def test_every_row_is_looked_at():
    assert len(faults("price\nx\ny\nz\n")) == 3


def test_columns_that_are_not_known_are_named_and_passed_over():
    found = priced("colour,fire,screws,,price\nred,yes,wood,,4.25\n", data("1"))
    assert found.by_line[1].price == Decimal("4.25")
    assert found.passed_over == (
        "Passed over in the price list: colour, fire (a label: the same product), "
        "screws (other screws: the same product)."
    )
    assert priced("price\n1\n", data("1")).passed_over == ""


def test_a_row_carries_what_the_supplier_calls_it_and_how_it_comes():
    """120 hinges in boxes of 50 are three boxes."""
    text = "Part No,Description,Per box,Price source,width,price\nKP-45-4,Butt hinge,50,list of May,4,3.10\n"
    line = priced(text, data("1", quantity=40)).by_line[1]
    assert line.as_data() == {
        "price": "3.10", "price_unit": "each", "amount": "372.00", "part_number": "KP-45-4",
        "description": "Butt hinge", "pack": 50, "packs": 3, "price_source": "list of May",
    }  # fmt: skip


def test_cost_is_the_price_unless_there_is_a_column_of_that_name():
    assert priced("cost\n3\n", data("1")).by_line[1].price == 3
    assert priced("cost,price\n3,4\n", data("1")).by_line[1].price == 4


def test_many_faults_are_cut_short():
    found = faults("price\n" + "x\n" * 60)
    assert len(found) == 51
    assert found[-1] == "and 10 more faults"


def test_what_is_no_text_or_not_there_is_refused(tmp_path):
    with pytest.raises(PriceListError, match="not text"):
        parse_prices(b"\xff\xfe\x00")
    with pytest.raises(PriceListError, match=r"none\.csv could not be read: no such file"):
        load_prices(tmp_path / "none.csv")


def test_the_demo_list_prices_the_demo_job():
    job = load(resource_path("demo_openings", "kestrel_point.json"))
    prices = load_prices(resource_path("demo_openings", "kestrel_point_prices.csv"))
    found = price_order(take_off(tally_job(job), job.job).lines, prices)
    assert found.unpriced == ()
    assert found.total > 0
    assert prices.currency == "invented units"


def test_a_workbook_is_a_price_list_too(tmp_path):
    from openpyxl import Workbook

    book = Workbook()
    for row in (
        ["Part number", "Size", "Price", "Currency", "Shelf"],
        ["KP-4", "4-1/2 x 4", 3.1, "coins", "B2"],
    ):
        book.active.append(row)
    book.save(tmp_path / "prices.xlsx")
    found = load_prices(tmp_path / "prices.xlsx")
    (row,) = found.rows
    assert (row.part_number, row.asks, str(row.price)) == ("KP-4", {"height": 4.5, "width": 4.0}, "3.1")
    assert (found.currency, found.passed_over) == ("coins", ("shelf",))
    (tmp_path / "no.xlsx").write_bytes(b"PK no workbook")
    with pytest.raises(PriceListError):
        load_prices(tmp_path / "no.xlsx")


def test_a_price_list_that_cannot_be_read_is_refused_in_words(tmp_path):
    (tmp_path / "folder.csv").mkdir()
    with (tmp_path / "large.csv").open("wb") as file:
        file.truncate(LARGEST_FILE + 1)
    for name, words in (
        ("none.csv", "none.csv could not be read: no such file or directory"),
        ("folder.csv", "folder.csv could not be read: is a directory"),
        ("large.csv", f"large.csv is larger than {LARGEST_FILE // 2**20} MB; no price list is"),
    ):
        with pytest.raises(PriceListError) as refused:
            load_prices(tmp_path / name)
        assert [str(fault) for fault in refused.value.faults] == [words]


def test_a_job_finds_its_price_list_from_wherever_it_is_saved(tmp_path):
    prices, job_file = tmp_path / "lists" / "prices.csv", tmp_path / "job.json"
    prices.parent.mkdir()
    assert named_from(prices, None) == str(prices)
    assert named_from(prices, job_file) == "lists/prices.csv"
    assert named_from(prices, tmp_path / "jobs" / "job.json") == str(prices)  # not under the job's own folder
    job = load(resource_path("demo_openings", "kestrel_point.json"))
    named = job.model_copy(update={"order": job.order.model_copy(update={"price_list": "lists/prices.csv"})})
    moved = tmp_path / "lists" / "job.json"
    assert with_prices_from(named, job_file, moved) is named  # it is not there: left as it is
    prices.write_text("price\n1\n", "utf-8")
    assert with_prices_from(named, job_file, moved).order.price_list == "prices.csv"
    assert with_prices_from(named, None, moved) is named
    assert with_prices_from(named, job_file, job_file) is named


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ("no length", "is not a length"),
        ("0", "a length is more than 0; 0 was given"),
        ("-1", "a length is more than 0"),
    ],
)
def test_a_height_that_is_none_is_refused(cell, words):
    (told,) = faults(f"height,price\n{cell},1\n")
    assert told.startswith("line 2, height: ")
    assert words in told


def test_texts_of_a_price_list_are_as_long_as_they_may_be():
    assert len(priced(f"part number,price\n{'x' * 100},1\n").by_line) == 2
    assert faults(f"part number,price\n{'x' * 101},1\n") == [
        "line 2, part number: it is longer than 100 characters"
    ]


def test_a_description_too_long_is_refused_and_not_cut_short():
    assert faults(f"description,price\n{'x' * 301},1\n") == [
        "line 2, description: it is longer than 300 characters"
    ]


# --- What is no butt ---

PIVOTS = plain_opening(mark="1", **ON_PIVOTS, quantity=2)
CONTINUOUS = plain_opening(mark="2", hung_on="continuous hinge", hinge={"finish_bhma": "628"})
LOOP = plain_opening(mark="3", hinge={"transfer": "door loop", "wires": 4})


def other_ways(text, *openings):
    order = take_off([tally(study_or_fault(one)) for one in openings])
    return order, price_order(order.lines, parse_prices(text.encode()), order.other_ways)


def test_pivots_by_the_set_and_a_continuous_hinge_by_the_foot():
    """83-1/8 in are 6.927083 ft; at 12.00 that is 83.125, rounded half up 83.13."""
    text = "item,price,unit,currency\noffset pivot,150,set,USD\ncontinuous hinge,12,foot,USD\n"
    _, found = other_ways(text, PIVOTS, CONTINUOUS)
    assert [found.by_way[place].amount for place in (1, 2)] == [Decimal("300.00"), Decimal("83.13")]
    assert (found.ways_total, found.total, found.ways_unpriced) == (Decimal("383.13"), 0, ())
    assert found.words().endswith("Of what is no butt, besides: USD 383.13.")


def test_a_row_for_any_hinge_prices_no_other_thing():
    _, found = other_ways("price\n4\n", LOOP, PIVOTS)
    assert found.by_way == {}
    assert found.ways_unpriced == ("door loop", "offset pivot, top and bottom")
    assert "without door loop, offset pivot, top and bottom" in found.words()
    assert found.as_data()["other_ways_without_a_price"] == list(found.ways_unpriced)


def test_the_finish_tells_them_apart_and_what_is_asked_besides_fits_none():
    rows = ("item,finish_bhma,corner,price", "continuous hinge,,,200", "continuous hinge,628,,250")
    text = "\n".join((*rows, "continuous hinge,,square,1"))
    _, found = other_ways(text, CONTINUOUS)
    assert found.by_way[1].amount == 250


def test_a_set_or_a_foot_is_no_unit_of_butts():
    assert faults("price,unit\n4,set\n") == [
        "line 2, unit: by the set is sold what is no butt: name it in the column item"
    ]


def test_order_and_quote_have_their_price():
    order, found = other_ways("item,price\ndoor loop,30\n,5\n", LOOP)
    tables = {table.title: table for table in order_document(order, found).data}
    assert tables["Hung another way"].rows[0][-3:] == (Decimal(30), "each", Decimal("30.00"))
    assert tables["Hung another way"].totals[0][-1] == Decimal("30.00")
    quote = {table.title: table for table in quote_document(order, found, Decimal(25)).data}
    assert quote["Hung another way"].rows[0][-3:] == (Decimal("40.00"), "each", Decimal("40.00"))
