"""How thirsty each crop is: coefficients and stages of FAO-56, tables 12 and 11.

A crop without a row there has its nearest relative's, marked as from memory.
"""

from functools import cache

from planner.almanac.table import table_rows
from planner.garden import CropWater
from planner.terms import Source

ANY_OTHER = "any other"


@cache
def crop_waters() -> dict[str, CropWater]:
    """The figures of every crop by its name, and those for any other one."""
    return {
        row["crop"]: CropWater(
            initial=float(row["kc_initial"]),
            mid=float(row["kc_mid"]),
            end=float(row["kc_end"]),
            stages=(
                float(row["initial_days"]),
                float(row["development_days"]),
                float(row["mid_days"]),
                float(row["late_days"]),
            ),
            source=Source(row["source"]),
            note=row["note"],
        )
        for row in table_rows("crop_water.csv")
    }
