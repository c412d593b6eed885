#!/usr/bin/python3
"""The page of `.ci/verify`: every value that the verification tests compared, and their curves.

    benchmarks/published/verification_page.py COLLECTED OUT     COLLECTED holds rows.tsv, curves.tsv and notes.tsv

Writes OUT/README.md and a picture a title. Exit code 1 if a value is farther off than its tolerance. Needs python3-matplotlib."""

import csv
import re
import sys
from collections import defaultdict
from pathlib import Path

import matplotlib

matplotlib.use("svg")
import matplotlib.pyplot as plt

matplotlib.rcParams["svg.hashsalt"] = "swale"  # the same curves give the same file
matplotlib.rcParams["font.size"] = 9

ROW = ["problem", "quantity", "reference", "unit", "kind", "source", "conditions", "measured", "tolerance", "why"]
NOTE = ["problem", "sentence"]
CURVE = ["picture", "name", "x_label", "y_label", "published", "logarithmic", "x", "y"]


def read(path, names):
    if not path.exists():
        return []
    with path.open(newline="") as file:
        return [dict(zip(names, row)) for row in csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)]


def off(row):
    return float(row["measured"]) / float(row["reference"]) - 1


def within(row):
    return abs(off(row)) <= float(row["tolerance"])


def plain(text):
    return text.replace("|", "\\|")


def share(value):
    return f"{100 * value:.2g} %"


def table(rows):
    lines = ["| quantity | conditions | reference | ours | off by | allowed | kind | source; why this tolerance |", "|---|---|---|---|---|---|---|---|"]
    for r in rows:
        mark = "" if within(r) else " **missed**"
        lines.append(f"| {plain(r['quantity'])} | {plain(r['conditions'])} | {float(r['reference']):.6g} {r['unit']} | {float(r['measured']):.6g} "
                     f"| {share(off(r))}{mark} | {share(float(r['tolerance']))} | {r['kind']} | {plain(r['source'])}; {plain(r['why'])} |")
    return lines


def summary(problems):
    lines = ["| problem | values | largest share of its tolerance | missed |", "|---|---|---|---|"]
    for name, rows in problems.items():
        worst = max(abs(off(r)) / float(r["tolerance"]) for r in rows)
        lines.append(f"| [{plain(name)}](#{anchor(name)}) | {len(rows)} | {100 * worst:.0f} % | {sum(not within(r) for r in rows)} |")
    return lines


def anchor(name):
    return re.sub(r"[^a-z0-9 -]", "", name.lower()).replace(" ", "-")


def draw(title, curves, path):
    figure, axes = plt.subplots(figsize=(6.4, 4.2), layout="constrained")
    for name, points in curves.items():
        xs, ys = [float(p["x"]) for p in points], [float(p["y"]) for p in points]
        published = points[0]["published"] == "1"
        axes.plot(xs, ys, "o" if published else "-", markersize=4, fillstyle="none", linewidth=1.2, label=name)
    first = next(iter(curves.values()))[0]
    if first["logarithmic"] == "1":
        axes.set_xscale("log")
        axes.set_yscale("log")
    axes.set(xlabel=first["x_label"], ylabel=first["y_label"], title=title)
    axes.grid(alpha=0.3)
    axes.legend(fontsize=7)
    figure.savefig(path, metadata={"Date": None})
    plt.close(figure)


def main():
    collected, out = Path(sys.argv[1]), Path(sys.argv[2])
    rows = read(collected / "rows.tsv", ROW)
    problems, pictures = defaultdict(list), defaultdict(lambda: defaultdict(list))
    for row in rows:
        problems[row["problem"]].append(row)
    notes = defaultdict(list)
    for note in read(collected / "notes.tsv", NOTE):
        notes[note["problem"]].append(note["sentence"])
    for point in read(collected / "curves.tsv", CURVE):
        pictures[point["picture"]][point["name"]].append(point)
    out.mkdir(parents=True, exist_ok=True)
    for old in out.glob("*.svg"):
        old.unlink()

    missed = [r for r in rows if not within(r)]
    kinds = ", ".join(f"{sum(r['kind'] == kind for r in rows)} {kind}" for kind in sorted({r["kind"] for r in rows}))
    lines = ["# Verification", "", "Written by `.ci/verify`; not to be edited. Every value that the verification tests compare, with its reference. None is an",
             "earlier output of this program.", "",
             f"{len(rows)} values of {len(problems)} problems ({kinds}); {len(missed)} farther off than allowed.", ""]
    lines += summary(problems)
    for title, curves in pictures.items():
        name = anchor(title) + ".svg"
        draw(title, curves, out / name)
        lines += ["", f"![{title}]({name})"]
    for name, of in problems.items():
        lines += ["", f"## {name}", ""] + table(of)
        lines += [line for sentence in notes.pop(name, []) for line in ("", sentence)]
    for name, sentences in notes.items():
        lines += ["", f"## {name}"] + [line for sentence in sentences for line in ("", sentence)]
    (out / "README.md").write_text("\n".join(lines) + "\n")
    print(f"{len(rows)} values of {len(problems)} problems, {len(missed)} missed: {out / 'README.md'}")
    return 1 if missed else 0


sys.exit(main())
