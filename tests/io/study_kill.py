"""Kills a study again and again and holds what comes of it against one that was left alone.

usage: study_kill.py PROGRAM FOLDER KILLS
"""

import pathlib
import random
import signal
import subprocess
import sys
import time

import h5py
import numpy

BASE = """title = "Short strip"
[belt]
width = "800 mm"
rated_tension = "80 N/mm"
[belt.section]
kind = "textile"
thickness = "10 mm"
mass = "0 kg/m^2"
A11 = "8000 N/mm"
A22 = "2500 N/mm"
A12 = "500 N/mm"
A66 = "500 N/mm"
D11 = "70 N m"
D22 = "25 N m"
D12 = "5 N m"
D66 = "8 N m"
[[tension]]
name = "drawn"
elongation = "6 mm"
[pulley]
end = "tail"
diameter = "630 mm"
support = "held"
[trough]
angle = "20 deg"
support = "held"
junction_radius = "150 mm"
[transition]
distance = "1500 mm"
[solve]
grid = 4
accuracy = "50 %"
"""

STUDY = """title = "Killed"
case = "base.toml"
[[vary]]
key = "transition.distance"
from = "1200 mm"
to = "2400 mm"
steps = 100
[[vary]]
key = "tension[1].elongation"
values = ["4 mm", "6 mm", "8 mm", "10 mm"]
"""

MAY_DIFFER = {"seconds", "peak_memory_MB"}


def command(program, folder, out, *more):
    return [program, "study", folder / "study.toml", "--out", out, *more]


def differences(one, other):
    """Names of the data sets that differ in two databases."""
    names = []

    def visit(name, item):
        if not isinstance(item, h5py.Dataset) or name.split("/")[-1] in MAY_DIFFER:
            return
        a, b = item[...], other[name][...]
        same = numpy.array_equal(a, b, equal_nan=True) if a.dtype.kind == "f" else numpy.array_equal(a, b)
        if not same:
            names.append(name)

    one.visititems(visit)
    return names


def refuses(program, folder, what, words, name):
    """Exit code 2 and the file as it was."""
    before = (folder / name).read_bytes()
    run = subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    assert run.returncode == 2 and name in run.stderr, f"{what}: {run.returncode}, {run.stderr}"
    assert (folder / name).read_bytes() == before, f"{what} was written over"
    assert not (folder / f"{name}.journal").exists(), f"{what} got a journal"


def main():
    program, folder, kills = sys.argv[1], pathlib.Path(sys.argv[2]), int(sys.argv[3])
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.iterdir():
        old.unlink()
    (folder / "base.toml").write_text(BASE)
    (folder / "study.toml").write_text(STUDY)

    begin = time.monotonic()
    subprocess.run(command(program, folder, folder / "alone.h5"), check=True, stdout=subprocess.DEVNULL)
    alone = time.monotonic() - begin

    random.seed(1)
    killed = folder / "killed.h5"
    cut_short = 0
    for _ in range(kills):
        run = subprocess.Popen(command(program, folder, killed), stdout=subprocess.DEVNULL)
        time.sleep(random.uniform(0, alone / 25))
        run.send_signal(signal.SIGKILL)
        cut_short += run.wait() != 0
        if killed.exists():
            h5py.File(killed).close()  # whole at any moment
    solved = (folder / "killed.h5.journal").read_bytes().count(b"\n") - 1
    subprocess.run(command(program, folder, killed), check=True, stdout=subprocess.DEVNULL)
    subprocess.run(command(program, folder, folder / "2.h5", "--shard", "2/2"), check=True, stdout=subprocess.DEVNULL)
    subprocess.run(command(program, folder, folder / "1.h5", "--shard", "1/2", "--jobs", "1"), check=True, stdout=subprocess.DEVNULL)
    subprocess.run([program, "merge", folder / "study.toml", folder / "2.h5", folder / "1.h5", "--out", folder / "merged.h5"],
                   check=True, stdout=subprocess.DEVNULL)

    refuses(program, folder, "a database whose journal is gone", command(program, folder, folder / "merged.h5"), "merged.h5")
    (folder / "result.h5").write_bytes(b"\x89HDF\r\n\x1a\n and no study")
    refuses(program, folder, "a file of another kind", command(program, folder, folder / "result.h5"), "result.h5")

    with h5py.File(folder / "alone.h5") as one:
        for other in ("killed.h5", "merged.h5"):
            with h5py.File(folder / other) as two:
                assert two["cases/case"].shape == (400,), f"{other}: {two['cases/case'].shape} rows"
                assert not differences(one, two), f"{other} differs in {differences(one, two)}"
    print(f"{cut_short} of {kills} runs were killed before their end, with {solved} of 400 cases solved; nothing lost, nothing different")
    assert cut_short >= 50, "too few runs were killed while they worked"
    assert solved >= 20, "the kills came before any work was done"


main()
