#!/usr/bin/env python3
"""Keeps what the tests with the program in the loop showed, for the page that prove.py writes.

python3 proof/program.py KEPT [REPORTS]      (in hardware/; after mvn verify -Pfull -pl firmware-protocol)
REPORTS: folder of the tests' XML reports, ../target/surefire-reports where it is left out. Exit 1: a test failed, or
one that belongs here was not run.
"""

import json
import re
import sys
import xml.etree.ElementTree as xml
from pathlib import Path

CLASSES = (
    ("CosimulationTest", "program and circuit: light set, short, new box, reservoir, stopped clock, chassis clip"),
    ("CosimulatedFaultsTest", "program and circuit: faults of box, set and supply; shunt bridged and halved"),
    ("CosimulatedStartTest", "program and circuit: start allowance, host silent"),
    ("ConversionPlanTest", "program in the chip: conversions kept, budgets"),
    ("ReactionTimeTest", "program in the chip: time from crossing to the pin, each cause"),
    ("ResetTest", "program in the chip: reset at any moment opens the switch"),
    ("FuseTest", "program in the chip: wrong fuse bits are refused"),
)
BUDGET = re.compile(r"^.*(busy [\d.]+, busiest 200 ms [\d.]+, interrupts off \d+ cycles, stack gap \d+).*$")


def kept(folder, name):
    file = next(folder.glob(f"TEST-*.{name}.xml"), None)
    if not file:
        return None
    suite = xml.parse(file).getroot()
    cases = [case.get("name").split("(")[0] for case in suite.iter("testcase")]
    bad = [case.get("name") for case in suite.iter("testcase") if case.find("failure") is not None or case.find("error") is not None or case.find("skipped") is not None]
    said = "\n".join(part.text or "" for part in suite.iter("system-out"))
    figures = sorted({line.strip() for line in said.split("\n") if BUDGET.match(line)})
    return {"cases": len(cases), "bad": bad, "names": sorted(set(cases)), "figures": figures}


def main():
    folder = Path(sys.argv[2]) if len(sys.argv) > 2 else Path("../target/surefire-reports")
    told, wrong = [], 0
    for name, what in CLASSES:
        got = kept(folder, name)
        wrong += got is None or bool(got["bad"])
        print(f"{name}: {'not run' if got is None else str(got['cases']) + ' run, not green: ' + (', '.join(got['bad']) or 'none')}")
        if got:
            told.append([name, what, got["cases"], got["bad"], got["names"], got["figures"]])
    (Path(sys.argv[1]) / "program.txt").write_text(json.dumps(told))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
