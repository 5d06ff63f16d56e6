"""What `planner check` and `planner crops` say of kept and shared ground."""

from pathlib import Path

from tests.plans import garden_toml, planner, write_plan

_RHUBARB = """
[[kept]]
bed = "Gate bed"
what = "rhubarb"
from = "0 ft"
to = "18 in"

[[kept]]
bed = "Wall bed"
what = "garlic"
since = 2027-02-10
until = 2027-07-10
"""
_TOMATO = """
[[target]]
crop = "tomato"
each_week = "2 lb"
"""
_DEEP = ("12 in", "24 in")


def _check(folder: Path, garden: str) -> list[str]:
    done = planner("check", write_plan(folder / "plan", garden))
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def test_check_tells_what_ground_is_kept_and_until_when(tmp_path: Path) -> None:
    lines = _check(tmp_path, garden_toml() + _RHUBARB)
    assert "Kept in Gate bed for rhubarb: 0 in to 1 ft 6 in." in lines
    assert "Kept in Wall bed for garlic: all of it from 2027-02-10 until 2027-07-10." in lines


def test_check_tells_which_crops_can_share_ground(tmp_path: Path) -> None:
    lines = _check(tmp_path, garden_toml(_DEEP) + _TOMATO)
    assert lines[-2:] == [
        "Guests that may share the ground of another crop: radish, leaf lettuce.",
        "Hosts: tomato.",
    ]


def test_check_tells_that_no_ground_is_shared_where_that_is_the_wish(tmp_path: Path) -> None:
    garden = garden_toml(_DEEP, ("[[bed]]", "share_ground = false\n\n[[bed]]")) + _TOMATO
    assert _check(tmp_path, garden)[-1] == "No ground is shared, as you wish."


def test_crops_tells_with_whom_a_crop_shares_ground_and_on_whose_word() -> None:
    """What is intercropping?, eXtension (TRADE-S30), and its entry in the bibliography."""
    told = planner("crops", "carrot").stdout
    assert "\n  radish between young carrot [TRADE-S30]\n" in told
    assert "\n  canopy closed at: 50% of its time in the ground [TRADE-S10]\n" in told
    assert "\n  TRADE-S30: What is intercropping?" in told
