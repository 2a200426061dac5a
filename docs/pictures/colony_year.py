#!/usr/bin/env python3
"""Draws colony-year.svg: a year of an invented colony, with and without treatments, by `calc season`.

    docs/pictures/colony_year.py build/release/beegarth > docs/pictures/colony-year.svg
"""
import json
import subprocess
import sys

PROGRAM = sys.argv[1]
WIDTH, HEIGHT, LEFT, TOP, GAP = 760, 150, 70, 30, 44
PANELS = [("bees", "adult bees"), ("brood_cells", "worker brood, cells"), ("stores_kg", "stores, kg"),
          ("mites_per_100_bees", "mites on 100 bees")]


def year(treated):
    actions = [("2026-05-01", "room", {"super_combs": 10}), ("2026-06-10", "room", {"super_combs": 10}),
               ("2026-08-05", "harvest", {"kg": 20}), ("2026-08-25", "feed", {"kg": 12, "form": "syrup"})]
    if treated:
        actions += [("2026-08-08", "treatment", {"kind": "thymol", "days": 28}),
                    ("2026-12-18", "treatment", {"kind": "oxalic_trickle"})]
    asked = {"start": "2026-04-01", "days": 420, "members": 200, "seed": 4, "latitude_deg": 52,
             "begin": {"bees": 9000, "brood_cells": 6000, "stores_kg": 9, "mites": 60, "winter_share": 0.7},
             "dwelling": {"brood_combs": 22},
             "actions": [{"date": d, "kind": k, "fields": f} for d, k, f in actions]}
    answer = subprocess.run([PROGRAM, "calc", "season"], input=json.dumps(asked), text=True, check=True,
                            capture_output=True).stdout
    return {fan["quantity"]: fan for fan in json.loads(answer)["fans"]}


def ticks(most):
    """Round figures from 0, three to six of them."""
    step = next(m * 10 ** e for e in range(0, 6) for m in (1, 2, 5) if most / (m * 10 ** e) <= 5)
    return [k * step for k in range(int(most // step) + 1)]


def path(xs, ys):
    return " ".join(f"{'M' if i == 0 else 'L'}{x:.1f},{y:.1f}" for i, (x, y) in enumerate(zip(xs, ys)))


def main():
    kept, left = year(True), year(False)
    dates = kept["bees"]["dates"]
    total = TOP + len(PANELS) * (HEIGHT + GAP)
    out = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {LEFT + WIDTH + 20} {total}" '
           'font-family="sans-serif" font-size="12">',
           f'<rect width="{LEFT + WIDTH + 20}" height="{total}" fill="#ffffff"/>']
    xs = [LEFT + WIDTH * i / (len(dates) - 1) for i in range(len(dates))]
    for n, (quantity, words) in enumerate(PANELS):
        top = TOP + n * (HEIGHT + GAP)
        levels = kept[quantity]["levels"]
        most = max(max(levels["90"]), max(left[quantity]["levels"]["50"])) * 1.05
        y = lambda v: top + HEIGHT * (1 - v / most)
        out.append(f'<text x="{LEFT}" y="{top - 8}" font-weight="bold">{words}</text>')
        for value in ticks(most):
            label = f"{value:,.0f}"
            out.append(f'<line x1="{LEFT}" x2="{LEFT + WIDTH}" y1="{y(value):.1f}" y2="{y(value):.1f}" stroke="#dddddd"/>'
                       f'<text x="{LEFT - 6}" y="{y(value) + 4:.1f}" text-anchor="end">{label}</text>')
        for i, date in enumerate(dates):
            if date.endswith("-01"):
                out.append(f'<line x1="{xs[i]:.1f}" x2="{xs[i]:.1f}" y1="{top + HEIGHT}" y2="{top + HEIGHT + 4}" stroke="#888888"/>')
                if date[5:7] in ("04", "07", "10", "01"):
                    out.append(f'<text x="{xs[i]:.1f}" y="{top + HEIGHT + 16}" text-anchor="middle">{date[:7]}</text>')
        band = path(xs, [y(v) for v in levels["90"]]) + " L" + path(xs[::-1], [y(v) for v in levels["10"][::-1]])[1:] + "Z"
        out.append(f'<path d="{band}" fill="#b9d3ea"/>')
        out.append(f'<path d="{path(xs, [y(v) for v in levels["50"]])}" fill="none" stroke="#1d4f7a" stroke-width="2"/>')
        out.append(f'<path d="{path(xs, [y(v) for v in left[quantity]["levels"]["50"]])}" fill="none" stroke="#a33b1f" '
                   'stroke-width="1.5" stroke-dasharray="5 4"/>')
    out.append("</svg>")
    print("\n".join(out))


main()
