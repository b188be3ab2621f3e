"""What counts as high, average and low traffic: common practice, no source."""

from configurator.rules.traffic import traffic_help


def test_the_help_lists_every_kind_with_its_mark():
    lines = traffic_help().splitlines()
    assert "high: school entrance, 1,250 openings a day" in lines
    assert "average: office corridor, 75 to 80 openings a day" in lines
    assert "low: residential interior, 10 to 25 openings a day" in lines
    assert [line for line in lines if "no source" in line] == lines[-1:]
