"""Gardens of every kind, made up by chance: their pictures are whole and legible."""

from hypothesis import given

from planner.pictures import bed_year, garden_plan, harvest_weeks
from planner.season import make_season
from tests.pictures.drawing import Drawing, box_of, overlapping_words, words_of
from tests.pictures.gardens import days_of_change
from tests.pictures.test_the_garden_from_above import shown, standing
from tests.test_generated_gardens import FEW, QUICK, Written, garden_from, gardens


@FEW
@given(gardens())
def test_words_lie_on_the_sheet_and_on_no_other_words(written: Written) -> None:
    season = make_season(garden_from(written), written.as_of, None, QUICK)
    years = [bed_year(season, bed.name) for bed in season.garden.beds]
    weeks = [harvest_weeks(season, crop) for crop in season.garden.crops]
    for text in (*years, *weeks):
        drawing = Drawing(text)
        words = drawing.words()
        assert overlapping_words(words) == [], written.text
        outside = [words_of(one) for one in words if not drawing.sheet.holds(box_of(one), 1)]
        assert outside == [], written.text


@FEW
@given(gardens())
def test_the_plan_shows_what_stands_and_no_words_on_others(written: Written) -> None:
    season = make_season(garden_from(written), written.as_of, None, QUICK)
    drawing = Drawing(garden_plan(season))
    for day in days_of_change(season):
        assert shown(drawing, day) == standing(season, day), written.text
        assert overlapping_words(drawing.words(day.isoformat())) == [], written.text
