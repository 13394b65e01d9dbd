"""Large houses written by script, as notes: one with twelve options, one whose quote prints a hundred and fifty lines and more.

Every name, number and place is invented.
"""

from itertools import islice, product
from pathlib import Path

HOUSE = """
[job]
number = "{number}"
date = 2026-11-18
prepared_by = "Ines Calloway"
language = ["en_US", "es_US"]
demo = true

[customer]
name = "Wren Castellane"
site = "{site}"

[house]
built = 1962
floor = "slab"
slab_thickness = "4 in"
slab_above_grade = "6 in"
soil = "firm clay"
jurisdiction = "demo"
sewer = "city"
lived_in = true
bathrooms = 6
water_lines = "overhead"
floor_finish = "tile"
floor_price = 14.00
fixtures = {{ bathroom_groups = 6, kitchen_sink = 1, clothes_washer = 1 }}

[site]
gate = "42 in"
carry = "35 ft"
machine = true
located = true
caving_signs = false
competent_person = "Teo Marlow"
"""
LINE = """
[[line]]
name = "{name}"
size = "4 in"
pipe = "cast iron"
zero = "access"
ends = "city main"
log = "{log}"
"""
LOG = """pass from front cleanout to house, riser 26in, against flow
0.5 slab
0.5 beam 12in wide 20in deep
0.5 loc 2'4 under slab
4.1 hole 2in soil seen at 5-7
{branch} branch left 2in live proven called hall bath
12 offset 20%
14.2 hole 3in soil seen at 6
18-24 channel sharp
26 branch right 3in live proven called bath
31.2 crack open
36 loc 2'9 under slab
40 end
"""
ADDED = """
[[option]]
do = "add"
name = "{name}"
repairs = [{repairs}]
"""
ALLOWANCE = """
[[allowance]]
text = "{text}"
amount = {amount}
"""
WAYS = ("tunnel", "break-through")
ADDED_OPTIONS = 8
ROOMS = ("hall bath", "master bath", "kitchen", "laundry", "den", "entry", "pantry", "garage")
THINGS = (
    "tile to match", "base boards", "paint", "a cabinet off and on", "a door cut and hung", "a shelf", "a mirror",
    "a rug cleaned", "a fan", "a shade", "trim", "a curtain rod", "a light", "a lock", "a closet rod", "a threshold", "a vent cover", "a hook", "a tile edge",
)  # fmt: skip


def twelve_options(folder: Path) -> Path:
    """Four pipes; beside what is found, eight mixes of tunnel and floor by which they can be renewed."""
    names = ("main", "kitchen", "laundry", "wing")
    text = _house(folder, names, "2026-912", "9 Long Row, Fernbrook")
    mixes = (mix for mix in product(WAYS, repeat=len(names)) if len(set(mix)) > 1)
    for number, mix in enumerate(islice(mixes, ADDED_OPTIONS), start=1):
        repairs = ", ".join(
            f'{{ method = "{way}", line = "{name}", where = "2-33" }}' for way, name in zip(mix, names, strict=True)
        )
        text += ADDED.format(name=f"Mix {number}: {', '.join(mix)}", repairs=repairs)
    return _written(folder, text)


def many_lines(folder: Path) -> Path:
    """Six pipes, and an allowance for every thing in every room."""
    names = ("main", *(f"wing {n}" for n in range(2, 7)))
    text = _house(folder, names, "2026-950", "150 Long Row, Fernbrook")
    for number, (room, thing) in enumerate(product(ROOMS, THINGS)):
        text += ALLOWANCE.format(text=f"{thing}, {room}", amount=40 + number)
    return _written(folder, text)


def _house(folder: Path, names: tuple[str, ...], number: str, site: str) -> str:
    folder.mkdir(parents=True, exist_ok=True)
    text = HOUSE.format(number=number, site=site)
    for place, name in enumerate(names):
        log = f"{name.replace(' ', '-')}.txt"
        (folder / log).write_text(LOG.format(branch=f"{9 + place * 0.3:.1f}"), encoding="utf-8")
        text += LINE.format(name=name, log=log)
    return text


def _written(folder: Path, text: str) -> Path:
    path = folder / "job.toml"
    path.write_text(text, encoding="utf-8")
    return path
