"""Freeze dates at any risk agree with published tables, in both hemispheres."""

from datetime import date, timedelta
from statistics import fmean, stdev

import pytest

from planner.climate import Climate, FreezeYear
from planner.garden import (
    FreezeDates,
    FreezesAllYear,
    MonthDay,
    NeverFreezes,
    Site,
)
from planner.scheduling import UnmetKind
from planner.terms import Source
from tests.plan_text import garden_of, problem_kinds_of, season_of
from tests.published import published_rows

_NCEI = list(published_rows("freeze_dates_ncei.csv"))
_DELAWARE = list(published_rows("freeze_dates_delaware.csv"))
