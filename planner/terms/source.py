"""Where a statement stands: a place in the grower's file or a key in the bibliography."""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A line of one of the grower's files; line 0 is the file as a whole."""

    file: str
    line: int = 0
    text: str = ""

    def __str__(self) -> str:
        return f"{self.file}, line {self.line}" if self.line else self.file


@dataclass(frozen=True, slots=True)
class Source:
    """What stands behind a figure: a bibliography key, or the grower's own words."""

    key: str
    place: Place | None = field(default=None, repr=False)

    @property
    def words(self) -> str:
        """The source as a grower reads it."""
        if self.place is not None:
            return f"your plan, {self.place}"
        if self.key == "memory":
            return "from memory, change it if you know better"
        return self.key

    def __str__(self) -> str:
        return self.words
