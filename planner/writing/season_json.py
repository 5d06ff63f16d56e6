"""season.json: the record of a season."""

import json

from planner.season import Season, record_of


def write_season_json(season: Season) -> bytes:
    """The season's record as UTF-8 JSON with a line a value, so that two can be compared."""
    text = json.dumps(record_of(season), indent=1, ensure_ascii=False)
    return f"{text}\n".encode()
