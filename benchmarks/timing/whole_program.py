#!/usr/bin/python3
"""Time and memory of the whole program, as a user meets them: medians of five runs of `swale` a case.

    benchmarks/timing/whole_program.py [PROGRAM] [RUNS]

PROGRAM defaults to .build/release/swale. The environment has no OPENBLAS_*, OMP_* or GOTO_* variable."""

import os
import re
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]
FABRIC = TOP / "cases/reclaim-r3-tail/reclaim-r3-tail.toml"
STEEL_CORD = TOP / "cases/shiploader-s1-tail/shiploader-s1-tail.toml"
HELD = TOP / "tests/io/data/held.example.toml"
ROLL = TOP / "benchmarks/timing/roll-between-held-ends.toml"


def one_state(text):
    """The case with its first state alone."""
    tables = re.split(r"(?m)^(?=\[)", text)
    later = [t for t in tables if t.startswith("[[tension]]")][1:]
    return "".join(t for t in tables if t not in later)


def cases(folder):
    """Name and arguments of each row."""
    single = folder / "one-state.toml"
    single.write_text(one_state(FABRIC.read_text()))
    solve = [("fabric, three states", FABRIC), ("fabric, one state", single), ("steel cord, three states", STEEL_CORD),
             ("held strip", HELD), ("roll between held ends", ROLL)]
    rows = [("--version", ["--version"])]
    return rows + [(name, ["solve", str(file), "--out", str(folder / "result")]) for name, file in solve]


def environment():
    return {k: v for k, v in os.environ.items() if not k.startswith(("OPENBLAS", "OMP_", "GOTO_"))}


def run(program, arguments):
    """Wall s, processor s, largest resident memory MiB, exit code of one run."""
    begin = time.monotonic()
    child = subprocess.Popen([program, *arguments], env=environment(), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    wall = time.monotonic() - begin
    child.returncode = os.waitstatus_to_exitcode(status)
    return wall, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024, child.returncode


def machine():
    facts = dict(line.split(":", 1) for line in subprocess.run(["lscpu"], capture_output=True, text=True).stdout.splitlines() if ":" in line)
    wanted = ["Model name", "CPU(s)", "Thread(s) per core", "CPU MHz", "L2 cache", "L3 cache"]
    return ", ".join(f"{key} {facts[key].strip()}" for key in wanted if key in facts)


def main():
    program = sys.argv[1] if len(sys.argv) > 1 else str(TOP / ".build/release/swale")
    runs = int(sys.argv[2]) if len(sys.argv) > 2 else 5
    print(f"{machine()}; load before {os.getloadavg()[0]:.1f}; medians of {runs} runs\n")
    print("| case | wall s | least | most | processor s | peak memory MiB | exit code |\n|---|---|---|---|---|---|---|")
    with tempfile.TemporaryDirectory() as folder:
        for name, arguments in cases(Path(folder)):
            samples = []
            for k in range(runs):
                print(f"{name}: run {k + 1} of {runs}", file=sys.stderr)
                samples.append(run(program, arguments))
            wall, processor, memory, codes = zip(*samples)
            print(f"| {name} | {statistics.median(wall):.3f} | {min(wall):.3f} | {max(wall):.3f} | "
                  f"{statistics.median(processor):.3f} | {statistics.median(memory):.1f} | {' '.join(map(str, sorted(set(codes))))} |",
                  flush=True)


if __name__ == "__main__":
    main()
