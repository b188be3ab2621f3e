from threading import Event

import pytest

from configurator.ui.sheets.writing import SheetWriting


@pytest.fixture
def writing(qapp):
    found = SheetWriting(qapp)
    yield found
    found.finish()


def test_pages_are_written_and_counted(qtbot, writing, sheet, tmp_path):
    counted = []
    writing.progressed.connect(counted.append)
    with qtbot.waitSignal(writing.ended, timeout=20_000) as ended:
        writing.start(iter([sheet, sheet]), tmp_path / "two.pdf")
    assert ended.args == [f"Written: {tmp_path / 'two.pdf'}"]
    assert (tmp_path / "two.pdf").read_bytes().startswith(b"%PDF")
    assert counted == [1, 2]


def test_cancelled_in_the_middle_nothing_is_written(qtbot, writing, sheet, tmp_path):
    (tmp_path / "two.pdf").write_bytes(b"as it was")
    asked, go_on = Event(), Event()

    def pages():
        yield sheet
        asked.set()
        go_on.wait(10)
        yield sheet

    with qtbot.waitSignal(writing.ended, timeout=20_000) as ended:
        writing.start(pages(), tmp_path / "two.pdf")
        assert asked.wait(10)
        writing.cancel()
        go_on.set()
    assert ended.args == ["Stopped: two.pdf was not written."]
    assert (tmp_path / "two.pdf").read_bytes() == b"as it was"
    assert [each.name for each in tmp_path.iterdir()] == ["two.pdf"]


@pytest.mark.parametrize(
    ("count", "name", "why"),
    [(2, "x.svg", "one sheet, not 2"), (0, "x.pdf", "no sheet"), (1, "gone/x.pdf", "could not be written")],
)
def test_what_cannot_be_written_is_said(qtbot, writing, sheet, tmp_path, count, name, why):
    with qtbot.waitSignal(writing.ended, timeout=20_000) as ended:
        writing.start([sheet] * count, tmp_path / name)
    assert why in ended.args[0]
    assert list(tmp_path.iterdir()) == []


def test_finishing_waits_until_nothing_is_at_work(writing, sheet, tmp_path):
    writing.start((sheet for _ in range(1000)), tmp_path / "x.pdf")
    writing.finish()
    assert not writing.running
    assert list(tmp_path.iterdir()) == []
