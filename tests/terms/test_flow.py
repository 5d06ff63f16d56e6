"""A flow of water is read as it is stamped on an emitter, or as it was caught in a jug.

The US gallon is 3.785411784 L (NIST Special Publication 811, appendix B.8).
"""

import pytest

from planner.terms import Flow, read_flow

_GALLON_L = 3.785411784


@pytest.mark.parametrize(
    ("written", "l_per_h"),
    [
        ("2 L/h", 2),
        ("2 L/hour", 2),
        ("2 L / h", 2),
        ("  2 L per hour ", 2),
        ("2 L an hour", 2),
        ("2 liters an hour", 2),
        ("2.5 l/h", 2.5),
        (".5 gal/h", 0.5 * _GALLON_L),
        ("0.5 gallons per hour", 0.5 * _GALLON_L),
        ("1 gal a minute", 60 * _GALLON_L),
        ("1 L/min", 60),
        ("1 L/minute", 60),
        ("1 L/s", 3600),
        ("1 L a second", 3600),
        ("1 gph", _GALLON_L),
        ("0.6 GPH", 0.6 * _GALLON_L),
        ("1 gpm", 60 * _GALLON_L),
        ("4 lph", 4),
        ("4 lpm", 240),
        ("1 cu ft/h", None),
        ("0 L/h", 0),
    ],
)
def test_an_emitter_tells_how_much_it_gives_in_an_hour(written: str, l_per_h: float | None) -> None:
    flow = read_flow(written)
    if l_per_h is None:
        assert flow is None
        return
    assert flow is not None
    assert flow.l_per_h == pytest.approx(l_per_h, rel=1e-9)
    assert not flow.measured


@pytest.mark.parametrize(
    ("written", "l_per_h"),
    [
        ("3 gal in 15 min", 12 * _GALLON_L),
        ("3 gal in 15 minutes", 12 * _GALLON_L),
        ("6 L in 0.5 h", 12),
        ("6 L in .5 hours", 12),
        ("1 L in 30 s", 120),
        ("1 L in 30 seconds", 120),
        ("1 L in 1 hour", 1),
    ],
)
def test_what_is_caught_in_a_jug_is_counted_for_an_hour(written: str, l_per_h: float) -> None:
    flow = read_flow(written)
    assert flow is not None
    assert flow.l_per_h == pytest.approx(l_per_h, rel=1e-9)
    assert flow.measured


def test_a_flow_read_is_kept_as_it_is() -> None:
    assert read_flow("2 L/h") == Flow(2.0, measured=False)
    assert read_flow("2 L in 1 h") == Flow(2.0, measured=True)


@pytest.mark.parametrize(
    "garbage",
    [
        "",
        "2",
        "2 L",
        "L/h",
        "2 L/day",
        "2 ft/h",
        "2 lb an hour",
        "2 hours/L",
        "-2 L/h",
        "2 L//h",
        "2 Lanh",
        "two L/h",
        "2 L in 0 min",
        "2 L in min",
        "2 lb in 15 min",
        "2 L in 15 ft",
        "gph",
        "2 gphs",
        "2 L/h and more",
        "more than 2 L/h",
        "more than 2 L in 1 h",
        "2 L in 1 h or so",
        "about 2 gph",
    ],
)
def test_what_is_no_flow_is_refused(garbage: str) -> None:
    assert read_flow(garbage) is None
