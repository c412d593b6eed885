#!/usr/bin/python3
"""Draws the flattened strain map of a result folder, its sets and junctions, and the strain along the belt; or, as a fifth
argument `modes`, how far the belt's lowest modes move up and down.

usage: cases/picture.py RESULT_FOLDER STATE_NUMBER JUNCTION_MM OUT.png [modes]     (needs python3-vtk9, python3-matplotlib)
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


def draw_mode(axes, belt, name, value, sets, junction, stop):
    _, along, across = grid(belt)
    column = {n: vtk_to_numpy(belt.GetPointData().GetArray(n)).reshape(along, across) for n in ("x_mm", "y_mm")}
    seen = column["x_mm"][:, 0] <= stop
    height = vtk_to_numpy(belt.GetPointData().GetArray("mode_" + name)).reshape(along, across, 3)[seen, :, 2]
    mesh = axes.contourf(column["x_mm"][seen], column["y_mm"][seen], height, np.linspace(-1, 1, 21), cmap="RdBu_r")
    for x in sets:
        axes.axvline(x, color="black", linewidth=1)
    for y in (junction, -junction):
        axes.axhline(y, color="black", linewidth=0.6, linestyle="--")
    axes.set_ylabel("across, mm")
    axes.set_title(f"lowest {name} mode, {1e6 * value:.3g} kN/m$^3$: motion up, largest 1 (sets: lines; junctions: dashed)", fontsize=10)
    plt.colorbar(mesh, ax=axes)


def main(folder, number, junction, out, what="strain"):
    folder = Path(folder)
    state = json.loads((folder / "summary.json").read_text())["states"][int(number)]
    belt, _ = blocks(sorted(folder.glob("vtk/*.vtm"))[int(number)])
    rows = csv.DictReader(open(folder / "across.csv"))
    sets = sorted({float(r["x_mm"]) for r in rows if r["state"] == state["name"] and r["section"].startswith(("set", "station"))})
    stop = sets[-1] * 1.2 if what == "modes" else sets[0] * 1.8
    figure, axes = plt.subplots(2, 1, figsize=(9, 7), constrained_layout=True)
    shown = [x for x in sets if x <= stop]
    if what == "modes":
        for panel, (name, value) in zip(axes, state["smallest_tangent_eigenvalue_N_per_mm3"].items()):
            draw_mode(panel, belt, name, value, shown, float(junction), stop)
        axes[1].set_xlabel("distance from the pulley, unstretched belt, mm")
    else:
        draw_map(axes[0], belt, shown, float(junction), stop)
        draw_lines(axes[1], folder, state["name"], stop)
    figure.suptitle(f"state: {state['name']}")
    figure.savefig(out, dpi=90)


if __name__ == "__main__":
    main(*sys.argv[1:])
