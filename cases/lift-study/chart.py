#!/usr/bin/python3
"""Draws edge strain, lowest tension, junction strain and lift-off over the pulley's lift from the study's database.

usage: chart.py STUDY.h5 OUT.png     (needs python3-h5py, python3-matplotlib)
"""

import sys

import h5py
import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt

STATE = b"running empty", b"running full"
CURVES = (
    ("states", "edge_strain_max", 100, "edge strain, most [%]"),
    ("states", "tension_min_N_per_mm", 1, "lowest tension [N/mm]"),
    ("states", "junction_bending_strain_max", 100, "junction bending strain [%]"),
    ("criteria", b"lift-off at set 1", 1, "lift-off at set 1 [mm]"),
)


def values(study, table, what, state):
    """Of each case, in the order of the cases."""
    rows = study[table]["state"][:] == state
    if table == "criteria":
        rows &= study["criteria/name"][:] == what
        what = "value"
    return study[table][what][:][rows]


def main():
    database, out = sys.argv[1:]
    figure, panels = plt.subplots(2, 2, figsize=(9, 6.5), sharex=True, layout="constrained")
    with h5py.File(database) as study:
        lift = study["inputs/pulley.lift_number"][:]
        distance = study["inputs/transition.distance"].asstr()[:]
        for panel, (table, what, factor, label) in zip(panels.flat, CURVES):
            for state, colour in zip(STATE, ("0.55", "black")):
                for length, style in zip(sorted(set(distance)), (":", "--", "-")):
                    of = distance == length
                    panel.plot(lift[of], factor * values(study, table, what, state)[of], style, color=colour,
                               label=f"{state.decode()}, {length}")
            panel.set_ylabel(label)
        panels[0, 0].legend(fontsize=7)
    for panel in panels[1]:
        panel.set_xlabel("pulley lift / trough depth")
    figure.savefig(out, dpi=110)


main()
