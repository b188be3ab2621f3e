"""Hardware under headings for openings alike, in the order hang, secure, operate, and so on."""

from configurator.documents.hardware_schedule import hardware_groups, hardware_headings, schedule_document
from configurator.model.paths import vocabulary
from configurator.order.book import tally_job
from configurator.tables import HardwareGroupRow, table
from tests.openings import LEVER
from tests.order.cases import data, job_of


def headings(*openings):
    return hardware_headings(tally_job(job_of(*openings)))


FULL = data(
    "1",
    quantity=2,
    hardware=[LEVER, LEVER | {"face": "push"}, LEVER | {"kind": "closer"}],
    use={"locked": True, "stop_angle": 90, "closer": True},
)


def test_items_stand_in_the_order_of_the_groups():
    (one,) = headings(FULL)
    assert [(item.group, item.item, count) for item, count in one.items] == [
        ("hang", "butt hinge", 3),
        ("secure", "lock", 1),
        ("operate", "lever", 1),
        ("operate", "lever", 1),
        ("close", "closer", 1),
        ("stop and hold", "door stop", 1),
    ]
    assert one.openings == 2


def test_what_was_not_described_is_not_listed_and_a_closer_is_not_told_twice():
    (one,) = headings(data("1"))
    assert [item.item for item, _ in one.items] == ["butt hinge"]


def test_what_the_use_asks_for_is_listed_unless_it_was_described():
    def asked(*described, **use):
        (one,) = headings(data("1", hardware=[LEVER | {"kind": kind} for kind in described], use=use))
        return [(item.item, item.finish, item.remark) for item, _ in one.items[1:]]

    assert asked(closer=True) == [("closer", "", "asked for, not chosen here")]
    assert asked("closer", closer=True) == [("closer", "", "pull face, not chosen here")]
    assert asked(closer=False) == []
    assert asked(locked=True, lock_finish_bhma="626") == [("lock", "626", "asked for, not chosen here")]
    assert [item for item, *_ in asked("panic device", locked=True)] == ["panic device"]
    assert asked(stop_angle=95) == [("door stop", "", "holds at 95°, not chosen here")]
    stop = {"door_stop": {"kind": "wall bumper", "projection": 3}}
    (one,) = headings(data("1", use={"stop_angle": 95}, **stop))
    assert [item.item for item, _ in one.items[1:]] == ["wall bumper"]


def test_only_the_hinge_is_chosen():
    (one,) = headings(FULL)
    hinge = one.items[0][0]
    assert (hinge.size, hinge.type, hinge.finish) == ("4-1/2 x 4", "A8112", "steel 652")
    assert hinge.remark.endswith("machine screws")
    assert all("not chosen here" in item.remark for item, _ in one.items[1:])


def test_openings_alike_share_a_heading_and_others_have_their_own():
    alike, other = headings(data("1"), data("2", quantity=3), data("3", hand="RH"))
    assert (alike.marks, alike.openings) == (("1", "2"), 4)
    assert other.marks == ("3",)
    assert alike.words == "single, LH, 3'-0\" x 7'-0\" x 1-3/4 in, door not described in knocked-down drywall"


def test_by_group_every_item_is_added_up_over_the_job():
    wide = data("3", hinge={"width": 5})
    lines = hardware_groups(headings(FULL, wide, data("2", hand="RH")))
    assert [(line.item.group, line.item.size, line.quantity, line.marks) for line in lines][:3] == [
        ("hang", "4-1/2 x 4", 9, ("1", "2")),
        ("hang", "4-1/2 x 5", 3, ("3",)),
        ("secure", "", 2, ("1",)),
    ]


def test_an_opening_without_hinges_says_why():
    (one,) = headings(data("1", hung_on="spring hinges"))
    ((item, count),) = one.items
    assert (item.group, item.item, count) == ("hang", "spring hinges", 0)
    assert "only butt hinges are chosen here" in item.remark
    (low,) = headings(data("1", size={"width": 36, "height": 5}, door={"undercut": 12}))
    assert low.items[0][0].item == "hinges not worked out"


def test_what_is_no_butt_is_listed_as_it_is_ordered():
    (one,) = headings(data("1", hung_on="pivots", hinge={"transfer": "door loop"}))
    assert [(item.group, item.item, count) for item, count in one.items] == [
        ("hang", "offset pivot, top and bottom", 1),
        ("miscellaneous on the door", "door loop", 1),
    ]


def test_every_kind_of_hardware_and_stop_has_its_group():
    known = {kind for row in table(HardwareGroupRow) for kind in row.kinds.split("; ")}
    kinds = set(vocabulary()["hardware.kind"]) | set(vocabulary()["door_stop.kind"])
    assert sorted(kinds - known) == [], "give these a group in resources/tables/hardware_groups.csv"


def test_paper_says_a_heading_once_and_data_on_every_row():
    document = schedule_document(tally_job(job_of(FULL)))
    assert [row[1] for row in document.data[1].rows] == ["1"] * 6
    assert [row[1] for row in document.sheets[1].rows] == ["1"] + [None] * 5
    assert [one.title for one in document.data] == ["Schedule", "Hardware by opening", "Hardware by group"]
