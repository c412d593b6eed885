#!/usr/bin/python3
"""Draws the flattened strain map of a result folder, its sets and junctions, and the strain along the belt.

usage: cases/picture.py RESULT_FOLDER STATE_NUMBER JUNCTION_MM OUT.png     (needs python3-vtk9, python3-matplotlib)
"""

import csv
import json
import sys
from pathlib import Path

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt
import numpy as np
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOXML import vtkXMLMultiBlockDataReader


def blocks(path):
    reader = vtkXMLMultiBlockDataReader()
    reader.SetFileName(str(path))
    reader.Update()
    data = reader.GetOutput()
    return data.GetBlock(0), data.GetBlock(1)


def grid(belt):
    points = vtk_to_numpy(belt.GetPoints().GetData())
    dims = [0, 0, 0]
    belt.GetDimensions(dims)
    across, along = [n for n in dims if n > 1]
    return points.reshape(along, across, 3), along, across


def draw_map(axes, belt, sets, junction, stop):
    points, along, across = grid(belt)
    column = {n: vtk_to_numpy(belt.GetPointData().GetArray(n)).reshape(along, across) for n in ("x_mm", "y_mm", "strain")}
    seen = column["x_mm"][:, 0] <= stop
    strain = 100 * column["strain"][seen]
    top = strain[column["x_mm"][seen][:, 0] > 60].max()  # the held corner is singular
    mesh = axes.pcolormesh(column["x_mm"][seen], column["y_mm"][seen], strain, shading="gouraud", cmap="viridis", vmax=top)
    lines = axes.contour(column["x_mm"][seen], column["y_mm"][seen], strain, 8, colors="white", linewidths=0.6)
    axes.clabel(lines, fontsize=7, fmt="%.2f")
    for x in sets:
        axes.axvline(x, color="black", linewidth=1)
    for y in (junction, -junction):
        axes.axhline(y, color="black", linewidth=0.6, linestyle="--")
    axes.set_ylabel("across, mm")
    axes.set_title("longitudinal strain %, flattened belt (sets: lines; junctions: dashed)", fontsize=10)
    plt.colorbar(mesh, ax=axes, label="strain %")


def draw_lines(axes, folder, state, stop):
    rows = [r for r in csv.DictReader(open(folder / "along.csv")) if r["state"] == state and float(r["x_mm"]) <= stop]
    x = [float(r["x_mm"]) for r in rows]
    for key, style in (("edge", "-"), ("junction", "--"), ("centre", ":")):
        axes.plot(x, [100 * float(r[key + "_strain"]) for r in rows], style, color="black", label=key)
    axes.set_xlabel("distance from the pulley, unstretched belt, mm")
    axes.set_ylabel("longitudinal strain %")
    axes.legend(frameon=False)


def main(folder, number, junction, out):
    folder = Path(folder)
    state = json.loads((folder / "summary.json").read_text())["states"][int(number)]["name"]
    belt, _ = blocks(sorted(folder.glob("vtk/*.vtm"))[int(number)])
    rows = csv.DictReader(open(folder / "across.csv"))
    sets = sorted({float(r["x_mm"]) for r in rows if r["state"] == state and r["section"].startswith(("set", "station"))})
    stop = sets[0] * 1.8
    figure, (above, below) = plt.subplots(2, 1, figsize=(9, 7), constrained_layout=True)
    draw_map(above, belt, [x for x in sets if x <= stop], float(junction), stop)
    draw_lines(below, folder, state, stop)
    figure.suptitle(f"state: {state}")
    figure.savefig(out, dpi=90)


if __name__ == "__main__":
    main(*sys.argv[1:])
