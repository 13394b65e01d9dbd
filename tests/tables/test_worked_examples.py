"""The demo tables price two jobs worked by hand, to the cent. This file reads the CSV files by itself and does the
arithmetic in its own few lines, so that it does not lean on the program it checks."""

import csv
from collections import defaultdict
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from pathlib import Path

from tests.worked import CAMERA, HOURS

D = Decimal
FOLDER = Path(__file__).parents[2] / "price_tables"

MAPLE = {  # one dig in the yard, 9 ft of 4 in clay; quantities by hand [computed]
    "yard spot": {
        "potholes": "1",
        "dig_bcy": "3.9111111",
        "excavator_days": "1",
        "loads": "1",
        "pipe_trench_ft": "9",
        "end_couplings": "2",
        "sand_tons": "2.0",
        "sand_delivery": "1",
        "backfill_ccy": "3.8659259",
        "sod_sf": "60",
    },
    "job": {"jobs": "1", "permits": "1", "inspections": "1", "films_after": "1", "excavator_deliveries": "1"},
}
PECAN = {  # 29 ft of tunnel under a slab, three branches tied inside it [computed]
    "tunnel": {
        "pit_bcy": "2.0740741",
        "pits": "1",
        "tunnel_ft": "29",
        "tunnel_ft_to_20": "20",
        "tunnel_ft_20_to_40": "9",
        "shoring_sets": "6",
        "loads": "1",
        "pipe_tunnel_ft": "29",
        "hangers": "11",
        "end_couplings_tunnel": "2",
        "eighth_bends": "3",
        "branches_tunnel": "3",
        "cleanouts": "1",
        "tests": "1",
        "slurry_cy": "2.7",
        "engineer_letters": "1",
    },
    "job": {"jobs": "1", "permits": "1", "inspections": "1", "films_after": "1"},
}


def table(name):
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    for row in rows:  # the page's own prices where the demo's have moved
        if name == "production" and row["task"] in HOURS:
            row["crew"], _, row["likely"], _ = map(str, HOURS[row["task"]])
        if name == "equipment" and row["item"] == "camera":
            row["cost"] = str(CAMERA)
    return rows


def by(name, key):
    return {row[key]: row for row in table(name)}


def cents(number):
    return number.quantize(D("0.01"), ROUND_HALF_UP)


def up(number, step):
    return (number / step).to_integral_value(ROUND_CEILING) * step if step else number


def wanted(job, facts):
    """Every recipe row that a job asks for, with how many of its ref."""
    items, asked = by("work_items", "item"), defaultdict(lambda: D(0))
    for recipe in table("recipes"):
        item = items[recipe["work_item"]]
        for method, quantities in job.items():
            own = D(quantities.get(item["quantity"], "0"))
            if (
                (item["methods"] and method not in item["methods"].split(", "))
                or own == 0
                or not holds(item, facts)
                or not holds(recipe, facts)
            ):
                continue
            amount = D(quantities.get(recipe["quantity"] or item["quantity"], "0"))
            key = recipe["part"], recipe["ref"].replace("{size}", "4"), recipe["crew"]
            if amount:
                many = amount * D(recipe["per"])
                asked[key] = max(asked[key], many) if recipe["once"] == "yes" else asked[key] + many
    return asked


def holds(row, facts):
    words = [w.strip() for w in row["when"].split(",") if w.strip()]
    return all((w.removeprefix("not ") in facts) != w.startswith("not ") for w in words)


def rate(crew):
    roles = by("roles", "role")
    members = [m for m in table("crews") if m["crew"] == crew]
    hour = sum(
        D(m["count"]) * D(roles[m["role"]]["wage"]) * (1 + D(roles[m["role"]]["burden_percent"]) / 100) for m in members
    )
    return cents(hour)


def days(hours):
    """The least half day d with 8 d + 0.25 h ≥ work + one hour of set-up on each day."""
    d = D("0.5")
    while 8 * d + D("0.25") < hours + up(d, D(1)):
        d += D("0.5")
    return d


def parts_of(job, facts):
    asked, tasks = wanted(job, facts), by("production", "task")
    hours = defaultdict(lambda: D(0))
    for (part, ref, crew), amount in asked.items():
        if part == "labor":
            hours[crew or tasks[ref]["crew"]] += amount * D(tasks[ref]["likely"])
    crews = {crew: days(h) for crew, h in hours.items()}
    labor = sum(cents(8 * d * rate(crew)) for crew, d in crews.items())
    machines = sum(machine(ref, amount, crews) for (part, ref, _), amount in asked.items() if part == "equipment")
    materials = by("materials", "item")
    bought = sum(bill(materials[ref], amount) for (part, ref, _), amount in asked.items() if part == "material")
    small = cents(bought * D("0.05"))
    stuff = bought + small + cents((bought + small) * D("0.0825"))
    subs = defaultdict(lambda: D(0))
    for (part, ref, _), amount in asked.items():
        if part in ("sub", "fee"):
            row = by("subs_and_fees", "item")[ref]
            subs[row["class"]] += amount * D(row["cost"])
    return hours, crews, labor, machines, bought, stuff, subs


def machine(ref, amount, crews):
    row = by("equipment", "item")[ref]
    number = amount if row["unit"] == "each" or not row["crew"] else up(crews[row["crew"]], D(1))
    return cents(number * D(row["cost"]))


def bill(row, amount):
    return cents(up(amount * (1 + D(row["waste_percent"]) / 100), D(row["pack"] or 0)) * D(row["cost"]))


def test_maple_is_4200_dollars():
    hours, crews, labor, machines, bought, stuff, subs = parts_of(MAPLE, {"lawn"})
    assert round(hours["plumbing"], 2) == D("5.28") and round(hours["excavation"], 2) == D("3.34")
    assert crews == {"plumbing": 1, "excavation": 1}
    assert labor == D("1182.72")  # 8 × 79.20 + 8 × 68.64
    assert machines == D("635.00")  # excavator 320, its delivery 150, rammer 75, camera 90
    assert bought == D("293.00")  # pipe 42, couplings 48, sand 56, its delivery 90, sod 57
    assert stuff == D("333.03")  # with 5 % small parts and 8.25 % tax
    direct = labor + machines + stuff + subs["own"]
    assert direct == D("2310.75")
    own = cents(direct * D("1.05") / D("0.60"))
    assert own == D("4043.81")
    assert up(own + subs["pass-through"], D(25)) == 4200


def test_pecan_is_16525_dollars():
    hours, crews, labor, machines, bought, stuff, subs = parts_of(PECAN, {"tunnel", "slurry_backfill", "under_slab"})
    assert round(hours["tunnel"], 2) == D("52.10") and round(hours["plumbing"], 2) == D("19.55")
    assert crews == {"plumbing": 3, "tunnel": D("7.5")}
    assert labor == D("6652.80")  # 84 h × 79.20
    assert machines == D("720.00")  # kit 60 × 8, slurry pump 150, camera 90
    assert bought == D("940.50")
    assert stuff == D("1069.00")
    direct = labor + machines + stuff + subs["own"]
    assert direct == D("8601.80")
    own = cents(direct * D("1.10") / D("0.60"))
    assert own == D("15769.97")
    total = own + cents(subs["sub"] / D("0.75")) + subs["pass-through"]
    assert total == D("16519.97")
    assert up(total, D(25)) == 16525


def test_the_crews_cost_what_their_wages_and_burden_make():
    assert {crew: rate(crew) for crew in ("plumbing", "tunnel", "labor", "excavation", "lining")} == {
        "plumbing": D("79.20"),
        "tunnel": D("79.20"),
        "labor": D("52.80"),
        "excavation": D("68.64"),
        "lining": D("124.08"),
    }
