#!/usr/bin/python3
"""Holds the distances that the hand methods ask for against those that the shell needs, from the charts of the study.

usage: finding.py charts.csv OUT.png     (needs python3-matplotlib); tables in Markdown on standard output
"""

import csv
import re
import statistics
import sys

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt

SHORT = 0.98  # what the study's own errors come to
WASTE = 1.25  # a quarter longer than needed


def kind(row):
    return "steel cord" if row["belt.designation"].startswith("ST") else "fabric"


def needed(row):
    """What the shell needs, mm, and whether that is known or only no longer than this: it passes at the study's shortest."""
    if row["required_mm"]:
        return float(row["required_mm"]), True
    passes = re.match(r"passes at ([0-9.]+) widths", row["remark"])
    return (float(passes[1]) * float(row["belt_width_mm"]), False) if passes else (None, False)


def ratios(rows, method):
    """Asked for over needed; of a belt that may need less than the study's shortest only where it is too long all the same."""
    found = []
    for row in rows:
        length, known = needed(row)
        if length and row[method] and (known or float(row[method]) > WASTE * length):
            found.append(float(row[method]) / length)
    return found


def share(part, whole):
    return f"{100 * len(part) / len(whole):.0f} %" if whole else "-"


def line(name, values):
    short = [value for value in values if value < SHORT]
    long = [value for value in values if value > WASTE]
    lack = f"{100 * (1 - statistics.median(short)):.0f} / {100 * (1 - min(short)):.0f} %" if short else "-"
    waste = f"{100 * (statistics.median(long) - 1):.0f} / {100 * (max(long) - 1):.0f} %" if long else "-"
    return f"| {name} | {len(values)} | {share(short, values)} | {lack} | {share(long, values)} | {waste} |"


def table(title, rows, methods):
    print(f"\n**{title}**\n")
    print("| method | points | too short | by (median / most) | over a quarter too long | by (median / most) |")
    print("|---|---|---|---|---|---|")
    for method in methods:
        values = ratios(rows, method)
        if values:
            print(line(method.removesuffix("_mm"), values))


def by(rows, methods, axis):
    """Share that is too short / over a quarter too long for each value of an axis."""
    values = list(dict.fromkeys(row[axis] for row in rows))
    print(f"\n**Too short / over a quarter too long, by {axis}**\n")
    print("| method | " + " | ".join(values) + " |")
    print("|---" * (len(values) + 1) + "|")
    for method in methods:
        cells = []
        for value in values:
            found = ratios([row for row in rows if row[axis] == value], method)
            cells.append(f"{share([r for r in found if r < SHORT], found)} / {share([r for r in found if r > WASTE], found)}")
        print(f"| {method.removesuffix('_mm')} | " + " | ".join(cells) + " |")


def picture(rows, methods, out):
    figure, axis = plt.subplots(figsize=(9, 0.62 * len(methods) + 1.4), layout="constrained")
    for place, method in enumerate(methods):
        for offset, name, colour in ((0.17, "fabric", "0.45"), (-0.17, "steel cord", "black")):
            values = ratios([row for row in rows if kind(row) == name], method)
            if len(values) < 2:
                continue
            low, *_, high = statistics.quantiles(values, n=20)
            quarters = statistics.quantiles(values, n=4)
            y = len(methods) - place + offset
            axis.plot([low, high], [y, y], "-", color=colour, linewidth=1)
            axis.plot([quarters[0], quarters[2]], [y, y], "-", color=colour, linewidth=6, solid_capstyle="butt")
            axis.plot([quarters[1]], [y], "o", color="white", markeredgecolor=colour, markersize=6,
                      label=name if place == 0 else None)
    axis.axvline(1, color="0.3", linestyle="--", linewidth=1)
    axis.set_yticks([len(methods) - place for place in range(len(methods))], [m.removesuffix("_mm") for m in methods])
    axis.set_xscale("log")
    ticks = [0.4, 0.5, 0.7, 1, 1.25, 1.5, 2, 3, 4]
    axis.set_xticks(ticks, [str(tick) for tick in ticks])
    axis.minorticks_off()
    axis.set_xlabel("distance asked for / distance that the shell needs: median, middle half, 5 to 95 %")
    top = len(methods) + 0.45
    axis.set_ylim(0.5, top + 0.3)
    axis.text(0.98, top, "too short ", ha="right", fontsize=8)
    axis.text(1.02, top, " longer than needed", fontsize=8)
    axis.legend(fontsize=8, loc="center right")
    figure.savefig(out, dpi=110)


def main():
    charts, out = sys.argv[1:]
    with open(charts, newline="") as file:
        rows = list(csv.DictReader(file))
    names = list(rows[0])
    methods = [name for name in names[names.index("remark") + 1:] if any(row[name] for row in rows)]
    known = [row for row in rows if row["required_mm"]]
    print(f"{len(rows)} points; needed distance found between two rows in {len(known)} of them;",
          f"passing at the shortest already in {sum(row['remark'].startswith('passes') for row in rows)};",
          f"failing again farther on in {sum(bool(row['until_mm']) for row in rows)}")
    table("All belts", rows, methods)
    for name in ("fabric", "steel cord"):
        table(name.capitalize(), [row for row in rows if kind(row) == name], methods)
    for axis in ("belt.designation", "trough.angle", "tension[1].total", "pulley.lift"):
        by(rows, methods, axis)
    picture(rows, methods, out)


main()
