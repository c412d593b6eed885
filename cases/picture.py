#!/usr/bin/env python3
"""Draws the belt of a result folder on its rolls, coloured by longitudinal strain, and the strain along the belt.

usage: cases/picture.py RESULT_FOLDER STATE_NUMBER OUT.png     (needs python3-vtk9, python3-matplotlib)
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


def draw_belt(axes, belt, name, stop):
    points, along, across = grid(belt)
    strain = 100 * vtk_to_numpy(belt.GetPointData().GetArray(name)).reshape(along, across)
    last = np.searchsorted(points[:, across // 2, 0], stop)
    x, y, z = (points[:last, :, k] for k in range(3))
    colours = plt.cm.viridis((strain[:last] - strain[:last].min()) / np.ptp(strain[:last]))
    axes.plot_surface(x, y, z, facecolors=colours, rstride=1, cstride=1, shade=False, linewidth=0)
    axes.set_box_aspect((stop, 1200, 600))
    axes.view_init(elev=28, azim=-120)
    axes.set_xlabel("x mm"), axes.set_ylabel("y mm"), axes.set_zlabel("z mm")
    mappable = plt.cm.ScalarMappable(plt.Normalize(strain[:last].min(), strain[:last].max()), "viridis")
    plt.colorbar(mappable, ax=axes, label="longitudinal strain %", shrink=0.6)


def draw_lines(axes, folder, state, stop):
    rows = [r for r in csv.DictReader(open(folder / "along.csv")) if r["state"] == state and float(r["x_mm"]) <= stop]
    x = [float(r["x_mm"]) for r in rows]
    for key, style in (("edge", "-"), ("junction", "--"), ("centre", ":")):
        axes.plot(x, [100 * float(r[key + "_strain"]) for r in rows], style, color="black", label=key)
    axes.set_xlabel("distance from the pulley, unstretched belt, mm")
    axes.set_ylabel("longitudinal strain %")
    axes.legend(frameon=False)


def main(folder, number, out):
    folder = Path(folder)
    state = json.loads((folder / "summary.json").read_text())["states"][int(number)]["name"]
    belt, _ = blocks(sorted(folder.glob("vtk/*.vtm"))[int(number)])
    names = [belt.GetPointData().GetArrayName(k) for k in range(belt.GetPointData().GetNumberOfArrays())]
    name = next(n for n in names if n.startswith("longitudinal_strain") or n == "strain")
    stop = 4200
    figure = plt.figure(figsize=(9, 7.5))
    draw_belt(figure.add_subplot(2, 1, 1, projection="3d"), belt, name, stop)
    draw_lines(figure.add_subplot(2, 1, 2), folder, state, stop)
    figure.suptitle(f"state: {state}")
    figure.tight_layout()
    figure.savefig(out, dpi=90)


if __name__ == "__main__":
    main(*sys.argv[1:])
