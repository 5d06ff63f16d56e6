"""How two colours stand out against each other, for eyes of four kinds.

Relative luminance and contrast ratio by WCAG 2.2, from memory; what colour-blind eyes see by the
matrices of MACHADO2009 for a severity of 1, in linear RGB.
"""

from tests.published import published_rows

# WCAG 2.2, 1.4.3 for text and 1.4.11 for graphics, from memory.
LEAST_OF_TEXT, LEAST_OF_GRAPHICS = 4.5, 3.0
SEEN_AS = {"usual": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))} | {
    sight: tuple(
        tuple(float(row[light]) for light in ("red", "green", "blue"))
        for row in published_rows("colour_sight.csv")
        if row["sight"] == sight
    )
    for sight in ("protan", "deutan", "tritan")
}


def _linear(colour: str) -> tuple[float, ...]:
    """Red, green and blue light of #rrggbb, 0 to 1 (sRGB)."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    return tuple(
        one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in shares
    )


def luminance(colour: str, sight: str = "usual") -> float:
    light = _linear(colour)
    seen = [
        min(1.0, max(0.0, sum(share * one for share, one in zip(row, light, strict=True))))
        for row in SEEN_AS[sight]
    ]
    return 0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]


def contrast(first: str, second: str, sight: str = "usual") -> float:
    light, dark = sorted((luminance(one, sight) for one in (first, second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)
