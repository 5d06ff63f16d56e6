"""Lengths, areas and amounts in the grower's unit, as one reads them off a tape or a scale."""

from fractions import Fraction

from planner.terms.unit import ONE_OF, UNITS, Unit

M2_PER_SQ_FT = 0.09290304
_UM_PER_INCH = 25_400
_BUCKET_CU_FT = 0.25


def length_words(length_um: float, unit: Unit) -> str:
    """A length like "1 ft 6 in" or "45 cm", in the system of the unit a bed was written in."""
    if unit.is_imperial:
        return _imperial(length_um)
    centimetres = length_um / 10_000
    if centimetres >= 100:
        return f"{centimetres / 100:.2f} m"
    return f"{centimetres:.1f} cm".replace(".0 cm", " cm")


def _imperial(length_um: float) -> str:
    eighths = round(length_um / _UM_PER_INCH * 8)
    feet, rest = divmod(eighths, 96)
    inches = Fraction(rest, 8)
    whole, part = divmod(inches, 1)
    words = []
    if feet:
        words.append(f"{feet} ft")
    if inches or not feet:
        number = f"{whole} {part}" if whole and part else f"{part or whole}"
        words.append(f"{number} in")
    return " ".join(words)


def amount_words(amount: float, unit: Unit) -> str:
    """An amount of harvest like "1.5 lb", "25 roots", "1 head" or plain "12".

    A part of a single piece is "less than 1".
    """
    number = _measured(amount)
    if unit.name == "each":
        return "less than 1" if 0 < float(number) < 1 else number
    word = ONE_OF.get(unit.name, unit.name) if number == "1" else unit.name
    return f"{number} {word}"


def volume_words(volume_l: float, unit: Unit) -> str:
    """A volume like "15.6 cu ft", "0.9 gal", "440 L" or "1.2 m3", in the system of a bed's unit.

    Small ones are told as one measures them with a bucket.
    """
    if unit.is_imperial:
        name = "cu ft" if volume_l >= _BUCKET_CU_FT * UNITS["cu ft"].factor else "gal"
        return f"{_measured(volume_l / UNITS[name].factor)} {name}"
    if volume_l < 1000:
        return f"{_measured(volume_l)} L"
    return f"{_measured(volume_l / 1000)} m3"


def weight_words(weight_kg: float, unit: Unit) -> str:
    """A weight like "1,110 lb" or "500 kg", in the system of a bed's unit, to whole units."""
    name = "lb" if unit.is_imperial else "kg"
    return f"{weight_kg / UNITS[name].factor:,.0f} {name}"


def _measured(number: float) -> str:
    """A measured number as one would say it: 0.67, 15.6, 221."""
    if number >= 100:
        return f"{number:.0f}"
    return f"{float(f'{number:.2g}' if number < 1 else f'{number:.1f}'):g}"
