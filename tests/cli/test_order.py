"""The order desk's commands as a person and as another program use them."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from configurator.cli import main
from configurator.order.book import tally_job
from configurator.order.lines import Spare
from configurator.order.revisions import freeze
from configurator.order.revisions import with_revision as with_next
from configurator.order.take_off import take_off
from configurator.project_file import load, save
from configurator.project_file.held import open_held
from tests.openings import ON_PIVOTS, plain_data
from tests.order.cases import table_of

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
PRICES = ROOT / "demo_openings" / "kestrel_point_prices.csv"
LINE = """
    quantity unit item height width size type mounting weight bearing leaf_thickness knuckles base_metal
    finish_bhma finish_us pin security_stud tip corner hand fire screws marks
"""


def printed(capsys, *words):
    assert main([str(word) for word in words]) == 0
    return capsys.readouterr().out


def write(path, *openings):
    path.write_text(json.dumps({"format": "opening-project", "version": 1, "openings": openings}))
    return path


def test_order_prints_the_contract(capsys):
    data = json.loads(printed(capsys, "order", DEMO, "--json"))
    assert all(set(LINE.split()) <= set(line) for line in data["lines"])
    assert sum(line["quantity"] for line in data["lines"]) == data["totals"]["hinges"]
    assert data["reconciliation"]["agrees"]
    held = {mark for one in data["findings"] if one["severity"] == "error" for mark in one["marks"]}
    assert {one["mark"] for one in data["not_ordered"] if one["why"] == "held"} == held
    assert held.isdisjoint(mark for line in data["lines"] for mark in line["marks"])
    for finding in data["findings"]:
        assert {"code", "severity", "message", "numbers", "source", "mark_of_source", "marks"} <= set(finding)
    assert "one width would do" in {finding["code"] for finding in data["findings"]}


def test_spare_and_packs_are_counted(capsys):
    data = json.loads(printed(capsys, "order", DEMO, "--json", "--spare", "10%", "--screw-pack", "100"))
    assert data["totals"]["spare"] == sum(-(-line["needed"] // 10) for line in data["lines"])
    assert data["totals"]["spare_rule"] == "10% of each line, rounded up"
    assert all(one["packs"] == -(-one["count"] // 100) for one in data["totals"]["screws"])


def test_prices_go_with_the_lines_and_the_totals(capsys):
    data = json.loads(printed(capsys, "order", DEMO, "--json", "--prices", PRICES))
    assert {"price", "price_unit", "amount"} <= set(data["lines"][0])
    assert data["totals"]["lines_without_a_price"] == []
    text = printed(capsys, "order", DEMO, "--prices", PRICES)
    assert f"Total invented units {data['totals']['amount']}, every line priced." in text


def test_order_as_text_has_the_sums(capsys):
    text = printed(capsys, "order", DEMO)
    assert "they agree" in text
    assert "non-removable" in text
    assert max(map(len, text.splitlines())) <= 110


@pytest.mark.parametrize(("suffix", "start"), [("csv", b'"Document"'), ("xlsx", b"PK"), ("pdf", b"%PDF")])
@pytest.mark.parametrize("command", ["order", "schedule"])
def test_documents_are_written(tmp_path, capsys, command, suffix, start):
    path = tmp_path / f"x.{suffix}"
    assert str(path) in printed(capsys, command, DEMO, "--out", path)
    assert path.read_bytes().startswith(start)


def test_one_schedule_by_itself(tmp_path, capsys):
    path = tmp_path / "groups.csv"
    printed(capsys, "schedule", DEMO, "--only", "groups", "--out", path)
    assert table_of(path)[0]["Group"] == "hang"
    text = printed(capsys, "schedule", DEMO, "--only", "doors")
    assert "Hardware by" not in text
    assert "171.8" not in text
    assert "112A" in text
    assert "Hardware by opening" in printed(capsys, "schedule", DEMO)


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        (["order", DEMO, "--out", "x.doc"], "--out: must end in .csv, .xlsx, .pdf; x.doc was given"),
        (["schedule", DEMO, "--out", "x"], "--out: must end in .csv, .xlsx, .pdf; x was given"),
        (["order", DEMO, "--spare", "lots"], "--spare: a spare allowance is written as 5%"),
        (["order", DEMO, "--screw-pack", "0"], "--screw-pack: a pack holds at least 1 screw"),
        (["order", DEMO, "--prices", "none.csv"], "none.csv could not be read: no such file"),
        (["order", "none.json"], "none.json is not there"),
    ],
)
def test_what_is_refused_is_said_and_nothing_is_printed(capsys, words, fault):
    assert main([str(word) for word in words]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith(fault)


def test_a_bad_price_list_names_every_line(tmp_path, capsys):
    path = tmp_path / "p.csv"
    path.write_text("width,price\nwide,1\n4,x\n")
    assert main(["order", str(DEMO), "--prices", str(path)]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert [line.split(":")[0] for line in lines] == ["p.csv line 2, width", "p.csv line 3, price"]


def test_strict_exits_with_1_on_an_error(tmp_path, capsys):
    good = write(tmp_path / "good.json", plain_data(use={"wanted_angle": 90}))
    low = write(
        tmp_path / "low.json", plain_data(size={"width": 36, "height": 5}, door={"undercut": 12}, compare=[])
    )
    assert main(["order", str(good), "--strict"]) == 0
    assert main(["order", str(low)]) == 0
    assert main(["order", str(low), "--json", "--strict"]) == 1
    data = json.loads(capsys.readouterr().out.splitlines()[-1])
    assert data["not_ordered"][0]["why"] == "not studied"


def with_revision(tmp_path, change):
    """A file whose order of six hinges went out with two spare a line, and an opening changed since."""
    opening = plain_data(use={"wanted_angle": 90}, quantity=2)
    path = write(tmp_path / "job.json", opening)
    job = load(path)
    order = take_off(tally_job(job), job.job, Spare(each=2))
    save(with_next(job, freeze(job, order, "2026-11-25")), path)
    document = json.loads(path.read_text())
    document["openings"][0] |= change
    path.write_text(json.dumps(document))
    return path


def test_what_changed_since_a_revision_is_told(tmp_path, capsys):
    path = with_revision(tmp_path, {"hinge": {"width": 5}})
    data = json.loads(printed(capsys, "order", path, "--since", "1", "--json"))
    assert [(one["size"], one["order"], one["return"]) for one in data["lines"]] == [
        ("4-1/2 x 4", 0, 8),
        ("4-1/2 x 5", 8, 0),
    ]
    assert [(one["mark"], one["change"], one["differs"]) for one in data["openings"]] == [
        ("1", "other hinges", ["width"])
    ]
    text = printed(capsys, "order", path, "--since", "1")
    assert "1 opening is not as it was: 8 hinges more to order, 8 no longer wanted." in text
    assert "6 x 4-1/2 x 5 652" in text
    out = tmp_path / "changes.xlsx"
    assert "changes since revision 1" in printed(capsys, "order", path, "--since", "1", "--out", out)
    assert out.read_bytes().startswith(b"PK")


def test_nothing_changed_is_said_too(tmp_path, capsys):
    path = with_revision(tmp_path, {"notes": "seen"})
    assert "Nothing has changed since revision 1." in printed(capsys, "order", path, "--since", "1")
    more = printed(capsys, "order", path, "--since", "1", "--spare", "3")
    assert "Since revision 1, no opening has changed: 1 hinge more to order, 0 no longer wanted." in more


def test_a_revision_that_is_not_there_is_refused(tmp_path, capsys):
    path = with_revision(tmp_path, {})
    assert main(["order", str(path), "--since", "2"]) == 2
    assert "no revision 2 in this job; it has 1" in capsys.readouterr().err
    assert main(["order", str(path), "--since", "1", "--prices", str(PRICES)]) == 2
    assert capsys.readouterr().err.startswith("--since: ")


def test_what_cannot_be_written_exits_with_3(tmp_path, capsys):
    assert main(["order", str(DEMO), "--out", str(tmp_path / "nowhere" / "x.csv")]) == 3
    assert "could not be written" in capsys.readouterr().err


def test_a_mark_that_looks_like_a_formula_goes_out_as_text(tmp_path, capsys):
    job = write(tmp_path / "job.json", plain_data(mark="=1+1", use={"wanted_angle": 90}))
    printed(capsys, "schedule", job, "--out", tmp_path / "x.csv")
    assert b'"\'=1+1"' in (tmp_path / "x.csv").read_bytes()


def test_the_other_commands_load_none_of_it():
    script = (
        "import sys\nfrom configurator.cli import main\nmain(['kinds'])\n"
        "assert not {'openpyxl', 'reportlab', 'configurator.order'} & set(sys.modules)\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr.decode()


def test_the_submittal_has_cover_schedule_order_and_cautions(capsys, tmp_path):
    text = printed(capsys, "order", DEMO, "--submittal")
    parts = ("\nOpenings: ", "\nHardware by opening\n", "\nOrder\n", "\nCautions\n")
    places = [text.index(part) for part in parts]
    assert places == sorted(places)
    assert "a licensed professional decide" in " ".join(text.split())
    path = tmp_path / "submittal.csv"
    printed(capsys, "order", DEMO, "--submittal", "--out", path)
    rows = table_of(path)
    named = {"job", "heading", "hardware", "order", "left out", "caution", "note"}
    assert named == {row["Part"] for row in rows}
    assert sum(int(row["Quantity"]) for row in rows if row["Part"] in ("order", "left out")) == 45


def test_a_field_sheet_is_a_pdf_with_a_page_for_every_few_openings(capsys, tmp_path):
    path = tmp_path / "field.pdf"
    said = printed(capsys, "schedule", DEMO, "--field", "--out", path)
    assert said == f"{path}: field sheet\n"
    inches = path.read_bytes()
    assert inches.startswith(b"%PDF")
    printed(capsys, "schedule", DEMO, "--field", "--metric", "--out", path)
    assert path.read_bytes() != inches


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("schedule", DEMO, "--field"), "--out: a field sheet is printed"),
        (("schedule", DEMO, "--field", "--out", "x.csv"), "must end in .pdf; x.csv was given"),
        (("schedule", DEMO, "--field", "--only", "doors", "--out", "x.pdf"), "--field: is a sheet"),
        (("schedule", DEMO, "--metric"), "--metric: goes with --field"),
        (("order", DEMO, "--submittal", "--since", "1"), "leave out --submittal"),
        (("order", DEMO, "--submittal", "--prices", PRICES), "--submittal: has no prices"),
        (("order", DEMO, "--mark-ordered"), "--mark-ordered: goes with --freeze"),
    ],
)
def test_what_does_not_go_together_is_refused(capsys, words, said):
    assert main([str(word) for word in words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert said in captured.err


def test_an_order_is_frozen_into_its_file_and_compared_with_later(capsys, tmp_path):
    pivots, others = plain_data(mark="2", **ON_PIVOTS), plain_data(mark="3", hung_on="by others")
    path = write(tmp_path / "job.json", plain_data(mark="1", quantity=2), pivots, others)
    said = printed(capsys, "order", path, "--freeze", "first order", "--mark-ordered", "--spare", "1")
    assert said.endswith(f"kept as revision 1: {path}\n")
    assert "as kept in revision 1" in said.splitlines()[0]
    assert "not as kept in revision 1" in printed(capsys, "order", path).splitlines()[0], "without spare"
    job = load(path)
    assert [(one.number, one.note, one.spare) for one in job.revisions] == [(1, "first order", "1")]
    assert [opening.order_state for opening in job.openings] == ["ordered", "ordered", "not ordered"]
    assert json.loads(printed(capsys, "order", path, "--freeze", " ", "--json"))["revision"] == 2
    assert load(path).revisions[1].note is None
    assert "Nothing has changed since revision 1." in printed(capsys, "order", path, "--since", "1")
    assert list(tmp_path.iterdir()) == [path], "the lock is gone again"


def test_a_file_that_somebody_works_on_takes_no_revision(capsys, tmp_path):
    path = write(tmp_path / "job.json", plain_data(mark="1"))
    before = path.read_bytes()
    file, _ = open_held(path)
    try:
        assert main(["order", str(path), "--freeze", "", "--out", str(tmp_path / "order.csv")]) == 2
    finally:
        file.release()
    assert "--freeze: the order cannot be kept in the file" in capsys.readouterr().err
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path], "nothing went out either"


def test_work_that_is_stopped_writes_nothing_and_says_so(capsys, tmp_path, monkeypatch):
    def stopped(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("configurator.order.book.tally_of", stopped)
    assert main(["order", str(DEMO), "--out", str(tmp_path / "order.csv")]) == 3
    captured = capsys.readouterr()
    assert (captured.out, captured.err) == ("", "stopped before the end\n")
    assert list(tmp_path.iterdir()) == []


def test_freezing_with_errors_asks_first(capsys, tmp_path):
    path = write(tmp_path / "job.json", plain_data(mark="1"), plain_data(mark="2", hinge={"count": 2}))
    before = path.read_bytes()
    assert main(["order", str(path), "--freeze", "first"]) == 2
    assert "not in this order: 2. To freeze it as it is, add --with-errors" in capsys.readouterr().err
    assert path.read_bytes() == before
    printed(capsys, "order", path, "--freeze", "first", "--with-errors")
    assert [list(line.marks) for line in load(path).revisions[0].lines] == [["1"]]


TWO = (plain_data(mark="1", quantity=2, level="Level 2"), plain_data(mark="2"))
LIST = "part number,description,pack,price,currency,source,colour\nKP-4,Butt hinge,3,3.00,coins,May,grey\n"


def priced_job(tmp_path, **order):
    """A job of nine hinges whose price list lies beside it."""
    (tmp_path / "prices.csv").write_text(LIST)
    document = {"format": "opening-project", "version": 1, "openings": TWO, "order": order}
    path = tmp_path / "job.json"
    path.write_text(json.dumps(document))
    return path


def test_the_job_remembers_its_price_list_and_an_order_is_priced_by_it(capsys, tmp_path):
    path = priced_job(tmp_path, price_list="prices.csv")
    data = json.loads(printed(capsys, "order", path, "--json"))
    assert [line["part_number"] for line in data["lines"]] == ["KP-4"]
    assert (data["totals"]["amount"], data["lines"][0]["packs"]) == ("27.00", 3)
    assert data["totals"]["price_list"] == "Passed over in the price list: colour."
    assert "amount" not in json.loads(printed(capsys, "order", path, "--json", "--no-prices"))["totals"]


def test_a_price_list_that_is_gone_is_said_and_the_order_goes_on(capsys, tmp_path):
    path = priced_job(tmp_path, price_list="gone.csv")
    assert main(["order", str(path), "--json"]) == 0
    out, err = capsys.readouterr()
    assert "the job's price list is not there" in err
    assert "amount" not in json.loads(out)["totals"]


def test_freezing_keeps_the_price_list_and_the_margin_with_the_job(capsys, tmp_path):
    path = priced_job(tmp_path)
    printed(capsys, "order", path, "--freeze", "", "--prices", tmp_path / "prices.csv", "--margin", "25")
    order = load(path).order
    assert (order.price_list, order.margin) == ("prices.csv", 25)


def test_a_quote_has_price_and_in_the_data_cost_and_margin(capsys, tmp_path):
    path = priced_job(tmp_path, price_list="prices.csv", supplier="Northgate", ship_to="Dock 3")
    text = printed(capsys, "order", path, "--as", "quote", "--margin", "25")
    assert "36.00" in text
    assert "27.00" not in text
    assert "Ship to: Dock 3" in text
    assert "27.00" in printed(capsys, "order", path, "--as", "cost", "--margin", "25")
    data = json.loads(printed(capsys, "order", path, "--as", "cost", "--margin", "25", "--json"))
    assert data["quote"] == [
        {"line": 1, "quantity": 9, "cost": "27.00", "price": "4.00", "price_unit": "each", "amount": "36.00",
         "margin": "9.00"}
    ]  # fmt: skip


def test_the_head_of_an_order_stands_over_the_table_of_a_csv(capsys, tmp_path):
    path = priced_job(tmp_path, supplier="Northgate", number="PO-114")
    printed(capsys, "order", path, "--out", tmp_path / "order.csv")
    lines = (tmp_path / "order.csv").read_text("utf-8").splitlines()
    assert [line.split(",")[:2] for line in lines[:4]] == [
        ['"Document"', '"Hinge order"'], ['"Supplier"', '"Northgate"'], ['"Order number"', '"PO-114"'],
        ['"Hinge widths"', '"narrowest that works"'],
    ]  # fmt: skip
    assert table_of(tmp_path / "order.csv")[0]["Size, height x width"] == "4-1/2 x 4"


@pytest.mark.parametrize("kind", ["labels", "floor labels"])
def test_labels_are_written_as_a_pdf_and_as_nothing_else(capsys, tmp_path, kind):
    path = priced_job(tmp_path)
    out = tmp_path / "labels.pdf"
    assert printed(capsys, "order", path, "--as", kind, "--out", out) == f"{out}: {kind}\n"
    assert out.read_bytes().startswith(b"%PDF")
    assert main(["order", str(path), "--as", kind]) == 2
    assert "labels are a PDF" in capsys.readouterr().err


def test_a_size_on_the_shelf_is_tried_at_every_opening(capsys, tmp_path):
    path = priced_job(tmp_path)
    words = ("order", path, "--substitute", "4-1/2 x 5 for 4-1/2 x 4")
    data = json.loads(printed(capsys, *words, "--json"))
    assert [(one["mark"], one["will_do"]) for one in data["substitution"]["openings"]] == [
        ("1", True), ("2", True),
    ]  # fmt: skip
    assert [line["size"] for line in data["lines"]] == ["4-1/2 x 5"]
    assert "will do for 9 of 9 hinges" in printed(capsys, *words)


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        (("--as", "quote"), "--as: a quote wants a price list"),
        (("--margin", "100"), "--margin: a margin is from 0 to less than 100"),
        (("--submittal", "--as", "quote"), "--submittal: is a paper of its own"),
        (("--substitute", "4 x 5"), "--substitute: is written as"),
        (("--substitute", "wide for 4 x 4"), "--substitute: is written as"),
    ],
)
def test_what_cannot_be_written_is_refused(capsys, tmp_path, words, fault):
    assert main(["order", str(priced_job(tmp_path)), *words]) == 2
    assert fault in capsys.readouterr().err


def test_an_opening_is_ordered_all_the_same_and_the_file_keeps_that(capsys, tmp_path):
    held = plain_data(mark="2", hinge={"count": 2})
    path = write(tmp_path / "job.json", plain_data(mark="1"), held)
    assert "2" not in json.loads(printed(capsys, "order", path, "--json"))["lines"][0]["marks"]
    data = json.loads(printed(capsys, "order", path, "--all-the-same", "2", "--json"))
    assert data["lines"][0]["ordered_despite"] == {"2": ["too few hinges"]}
    assert load(path).openings[1].order_despite == ("too few hinges",)
    text = printed(capsys, "order", path)
    assert "2, ordered all the same: " in " ".join(text.split())
    assert main(["order", str(path), "--all-the-same", "1"]) == 2
    assert "--all-the-same: no error holds the order of '1'" in capsys.readouterr().err


def test_nothing_is_written_over_the_price_list_that_the_job_remembers(capsys, tmp_path):
    path = priced_job(tmp_path, price_list="prices.csv")
    assert main(["order", str(path), "--out", str(tmp_path / "prices.csv")]) == 2
    assert "--out: prices.csv is the job's price list" in capsys.readouterr().err
    assert (tmp_path / "prices.csv").read_text() == LIST
