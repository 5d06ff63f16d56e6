"""The catalogue of problems: each kind's title and its explanation.

Each kind has siblings under the same name: a folder in tests/problems that provokes it, with
the text expected there, and its part of docs/problems.md. A test fails when one is missing.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ProblemKind:
    """A kind of mistake: its title in a message, and why it cannot stand."""

    title: str
    explanation: str


PROBLEM_KINDS: dict[str, ProblemKind] = {
    "file-missing": ProblemKind(
        "file not found",
        "A plan folder holds at least a garden.toml, and any file that it names lies beside it.",
    ),
    "file-unreadable": ProblemKind(
        "file cannot be read",
        "Plan files are plain text in UTF-8. A file in another encoding, or one the computer "
        "may not open, is left untouched.",
    ),
    "file-too-large": ProblemKind(
        "file is too large",
        "A plan is a few hundred lines. A file beyond 1 MB is most likely another file under "
        "the wrong name, so it is not read at all. A weather file may have 50 MB, a journal 5 MB.",
    ),
    "folder-unwritable": ProblemKind(
        "folder cannot be written",
        "The season is written in one step, and so is a line of the journal. When that step "
        "fails, what stood there before stays as it was.",
    ),
    "file-unwritable": ProblemKind(
        "file cannot be written",
        "A sheet is written whole or not at all. What stood under that name stays as it was.",
    ),
    "folder-taken": ProblemKind(
        "a plan is there already",
        "A new plan never overwrites one that exists.",
    ),
    "toml-syntax": ProblemKind(
        "not valid TOML",
        "The file must follow TOML 1.0 before anything in it can be understood. Only the first "
        "slip of this kind can be shown, because what follows it cannot be told apart.",
    ),
    "plan-version": ProblemKind(
        "unknown plan version",
        "`plan = 1` says which shape the file has. A file from a later version may mean "
        "something else by the same words.",
    ),
    "unknown-key": ProblemKind(
        "unknown word",
        "A word the plan does not know is most often a misspelling, and a misspelt wish would "
        "otherwise be ignored in silence.",
    ),
    "missing-key": ProblemKind(
        "something is missing",
        "Some statements cannot be guessed: the size of a bed, the days of a season.",
    ),
    "wrong-type": ProblemKind(
        "wrong kind of value",
        "Quantities and names stand in quotes, dates and plain numbers do not, lists stand in "
        "square brackets.",
    ),
    "bad-quantity": ProblemKind(
        "not a quantity",
        'A quantity is a number and a unit, such as "4 ft" or "25 roots". Without the unit '
        "nobody can know what the number means.",
    ),
    "wrong-unit": ProblemKind(
        "unit does not fit",
        "A bed is measured in lengths, a harvest in weights or counts. Weights are converted "
        "into each other; heads cannot be turned into pounds.",
    ),
    "bad-month-day": ProblemKind(
        "not a day of the year",
        'A day that comes back each year is written month-day: "03-28" is 28 March.',
    ),
    "out-of-range": ProblemKind(
        "number out of range",
        "The number is outside what the world allows, such as a latitude beyond the pole.",
    ),
    "not-a-choice": ProblemKind(
        "not one of the choices",
        "Some statements have a short list of possible answers.",
    ),
    "date-order": ProblemKind(
        "dates in the wrong order",
        "What ends must end after it begins, and the last freeze of spring comes before the "
        "first freeze of fall.",
    ),
    "name-taken": ProblemKind(
        "name used twice",
        "Each bed has a name of its own, or no sheet could say which one is meant, and a crop is "
        "told of in one place only. Capitals and spaces do not make two names different.",
    ),
    "targets-overlap": ProblemKind(
        "two targets overlap",
        "Two weekly targets for one crop in the same week leave open whether they add up.",
    ),
    "unknown-bed": ProblemKind(
        "unknown bed",
        "Kept ground and manure lie in one of the beds the plan has, under the name that bed has.",
    ),
    "kept-twice": ProblemKind(
        "ground is kept twice",
        "Two things cannot stand in one place at one time. Where one follows the other, one ends "
        "on the day the other begins.",
    ),
    "unknown-crop": ProblemKind(
        "unknown crop",
        "The almanac holds the crops with published figures. Others can be told in crops.toml. A "
        "packet of seed is of a crop that a target wants.",
    ),
    "crop-incomplete": ProblemKind(
        "crop lacks figures",
        "A crop of your own needs every figure a date or an area depends on. Nothing is made "
        "up in their place.",
    ),
    "unknown-station": ProblemKind(
        "unknown weather station",
        "Stations are named by their 11-character id, as `planner stations` lists them.",
    ),
    "freeze-dates-missing": ProblemKind(
        "no freeze dates",
        "Almost every date in the plan hangs on the last freeze of spring and the first of "
        "fall. They can be stated by hand or taken from a station.",
    ),
    "freeze-dates-twice": ProblemKind(
        "freeze dates stated twice",
        "Dates by hand and a station may disagree; only one of them can count.",
    ),
    "zone-is-no-date": ProblemKind(
        "a hardiness zone gives no freeze dates",
        "A hardiness zone tells how cold the coldest night of a winter is, not when the last "
        "freeze comes. Within one half-zone the median last freeze of US stations differs by "
        "five weeks and more, so a date read off a zone would be a guess.",
    ),
    "no-bed-fits": ProblemKind(
        "no bed can hold this crop",
        "A crop needs a depth of soil, an amount of sun and at least the space of one plant.",
    ),
    "target-outside-season": ProblemKind(
        "target lies outside the season",
        "Only weeks between the first and the last day of the season are planned.",
    ),
    "empty-season": ProblemKind(
        "nothing to plan",
        "A plan needs a bed, a target, a season of at least one week, and a garden day.",
    ),
    "season-unreadable": ProblemKind(
        "the earlier season cannot be read",
        "The season folder is written by the program. When its season.json is damaged or from "
        "a later version, names given earlier would be lost by writing over it.",
    ),
    "season-gone": ProblemKind(
        "no season yet",
        "The week's tasks and the names of sowings come from a season, and there is none in this "
        "folder.",
    ),
    "season-no-longer-fits": ProblemKind(
        "what grows does not fit the plan any more",
        "A sowing that has begun stands in a bed that the plan no longer has in that size, or "
        "is a crop it no longer knows.",
    ),
    "journal-shape": ProblemKind(
        "columns of the journal are not known",
        "The first line names the columns. Where it names others, or none, nobody can know what "
        "the cells below it mean.",
    ),
    "journal-line": ProblemKind(
        "line of the journal cannot be read",
        "A line tells one event of one sowing on one day. What cannot be read is told and not "
        "guessed, and the line stays as it is.",
    ),
    "journal-sowing": ProblemKind(
        "unknown sowing",
        "A sowing is named by its crop and running number, as sheets and calendar show it. Names "
        "given in an earlier season stay known.",
    ),
    "journal-amount": ProblemKind(
        "amount does not fit the event",
        "What is picked has an amount in a unit of its crop, what is lost may have a number of "
        "plants, what is late has a time. Other events have no amount.",
    ),
    "journal-event": ProblemKind(
        "event does not fit the sowing",
        "What is sown in place is never set out, and where nothing is told nothing can be undone.",
    ),
    "journal-day": ProblemKind(
        "this cannot be on that day",
        "Nothing comes up, is set out, picked, cleared or lost before it was sown, nor picked "
        "before it came up or was set out. A day more than 60 days before what was planned is "
        "most likely a slip.",
    ),
    "weather-shape": ProblemKind(
        "weather file cannot be recognised",
        "A weather file holds the daily lows and highs of one station: as GHCN-Daily gives them "
        "(fixed columns or commas), as an export of daily summaries, or as a table whose first "
        "line is date,low,high.",
    ),
    "weather-unit": ProblemKind(
        "unit of the temperatures is not clear",
        "Many weather files do not say whether they count in degF or degC. Taken for the wrong "
        "one, every freeze date would be weeks off, so nothing is guessed, and values no place "
        "has are a sign that the unit or the columns are not what they were taken for.",
    ),
    "weather-line": ProblemKind(
        "line of the weather file cannot be used",
        "A line that can be misread is not read: the day it stands for might be the last freeze "
        "of its year. Days may be missing, and stand in any order.",
    ),
    "weather-too-little": ProblemKind(
        "weather record is too short",
        "Freeze dates differ by weeks from year to year. A record must hold at least one spring "
        "and one fall with few days missing, and no part of the year may lack in all its years.",
    ),
    "bad-date": ProblemKind(
        "not a date",
        "Dates on the command line are written year-month-day: 2027-05-01.",
    ),
    "not-a-place": ProblemKind(
        "not a place",
        "A place is a latitude and a longitude in degrees; south and west are negative.",
    ),
    "nothing-found": ProblemKind(
        "nothing found",
        "No crop or station bears that name, nor one close to it.",
    ),
    "library-missing": ProblemKind(
        "a library is missing",
        "What only some growers need is not installed with the rest.",
    ),
    "calendar-address": ProblemKind(
        "address of the calendar cannot be used",
        "Publishing needs the CalDAV address of one calendar, over https, or the password could "
        "be read on the way; only to this computer itself may it go over http.",
    ),
    "calendar-login": ProblemKind(
        "calendar server does not let you in",
        "User and password come from the environment or the computer's keyring, never from the "
        "plan. Many servers want a password of its own for each app.",
    ),
    "calendar-server": ProblemKind(
        "calendar server cannot be used",
        "Events are sent one by one, and each is noted once the server has it. Whatever breaks "
        "off is finished by the next run.",
    ),
    "feed-address": ProblemKind(
        "calendar cannot be shared there",
        "A feed needs an address of this computer, and a port that no other program has.",
    ),
}
