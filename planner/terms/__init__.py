"""Terms: ground words that every other room speaks.

Takes nothing. Gives quantities with units, weeks, month-days, figures with a source,
places in a file, and problems (the grower's mistakes, as values).
"""

from planner.terms.day import FIRST_YEAR, LAST_YEAR, MONTHS, date_words, day_words
from planner.terms.figure import Fact, Figure
from planner.terms.flow import Flow, read_flow
from planner.terms.guarded_cell import guarded, unguarded
from planner.terms.harvest_unit import conversion
from planner.terms.measure import (
    M2_PER_SQ_FT,
    amount_words,
    length_words,
    volume_words,
    weight_words,
)
from planner.terms.month_day import MonthDay, read_month_day
from planner.terms.problem import Problem
from planner.terms.problem_kinds import PROBLEM_KINDS, ProblemKind
from planner.terms.quantity import Quantity, QuantityRange, read_quantity, read_range
from planner.terms.sentence import count_words, listed_words
from planner.terms.source import Place, Source
from planner.terms.unit import MASS_UNITS, ONE_OF, UNITS, Dimension, Unit
from planner.terms.week import Week, days_between, week_of

__all__ = [
    "FIRST_YEAR",
    "LAST_YEAR",
    "M2_PER_SQ_FT",
    "MASS_UNITS",
    "MONTHS",
    "ONE_OF",
    "PROBLEM_KINDS",
    "UNITS",
    "Dimension",
    "Fact",
    "Figure",
    "Flow",
    "MonthDay",
    "Place",
    "Problem",
    "ProblemKind",
    "Quantity",
    "QuantityRange",
    "Source",
    "Unit",
    "Week",
    "amount_words",
    "conversion",
    "count_words",
    "date_words",
    "day_words",
    "days_between",
    "guarded",
    "length_words",
    "listed_words",
    "read_flow",
    "read_month_day",
    "read_quantity",
    "read_range",
    "unguarded",
    "volume_words",
    "week_of",
    "weight_words",
]
