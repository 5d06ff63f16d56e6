"""The pictures of the season folder: by name, and their bytes."""

from planner.cli.folder.file_names import file_names
from planner.season import Season

FOLDER = "pictures"


def season_pictures(season: Season) -> dict[str, bytes]:
    """The garden on the as-of day, every bed through the year, every crop's harvest by week."""
    from planner.pictures import (  # noqa: PLC0415 - heavy, and only who writes a season needs it
        bed_year,
        garden_day,
        harvest_weeks,
    )

    beds = [bed.name for bed in season.garden.beds]
    crops = list(season.garden.crops)
    drawn = {"garden": garden_day(season, season.as_of)}
    for bed, name in zip(beds, file_names(beds, "bed"), strict=True):
        drawn[f"year-{name}"] = bed_year(season, bed)
    for crop, name in zip(crops, file_names(crops, "crop"), strict=True):
        drawn[f"harvest-{name}"] = harvest_weeks(season, crop)
    return {f"{FOLDER}/{name}.svg": text.encode() for name, text in drawn.items()}
