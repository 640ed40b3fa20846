#!/usr/bin/env python3
"""Writes drawings/*.svg, netlists/*.cir and parts.md from parts.csv and sheets.py.

python3 generator/draw.py [TARGET]   (in hardware/; TARGET defaults to it). Standard library only.
"""

import csv
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

import sheets  # noqa: E402
import views  # noqa: E402

LETTER = {"resistor": "R", "capacitor": "C", "polarised": "C", "inductor": "L", "diode": "D", "schottky": "D", "zener": "D",
          "led": "D", "fuse": "R", "ptc": "R", "make": "R", "jumper": "R", "beeper": "R", "nmos": "M", "npn": "Q"}
SUPPLIES = {"U4": ("5F", "FG")}


class Parts:
    def __init__(self, path):
        with open(path, newline="", encoding="utf-8") as f:
            rows = list(csv.DictReader(f))
        self.rows = {row["ref"]: row for row in rows}
        if len(self.rows) != len(rows):
            raise ValueError("a reference stands twice in parts.csv")

    def kind(self, ref):
        return self.rows[ref]["kind"]

    def value(self, ref):
        return self.rows[ref]["value"]


def spice_value(text):
    number, unit = re.fullmatch(r"([0-9.]+) ([mkMµnp]?)[ΩFH]", text).groups()
    return number + {"M": "Meg", "µ": "u"}.get(unit, unit)


def element(ref, row, node, symbol):
    """One line of the netlist. The first letter is the kind, the rest the reference."""
    kind, model = row["kind"], row["model"]
    pins = [node[f"{ref}.{p}"] for p in symbol.pins]
    letter = LETTER.get(kind, "X")
    if kind in ("resistor", "capacitor", "polarised", "inductor"):
        return f"{letter}_{ref} {' '.join(pins)} {spice_value(row['value'])}"
    if kind == "terminal":
        return f"R_{ref} {ref} {pins[0]} 1m"
    if kind == "plug":
        return f"X_{ref} {' '.join(pins)} PINHEADER"
    if kind in ("make", "jumper"):
        return f"R_{ref} {' '.join(pins)} 1G"
    if kind == "opamp":
        return f"X_{ref} {' '.join(pins)} {' '.join(SUPPLIES.get(ref, ('5V', 'CH')))} {model}"
    if kind == "nmos":
        return f"M_{ref} {node[ref + '.d']} {node[ref + '.g']} {node[ref + '.s']} {model}"
    return f"{letter}_{ref} {' '.join(pins)} {model}"


def netlist(sheet, parts):
    node = sheet.nodes()
    lines = [f"* {sheet.title}. Written by generator/draw.py from the wires of drawings/{sheet.name}.svg."]
    lines += [element(ref, parts.rows[ref], node, symbol) for ref, (symbol, *_) in sheet.placed.items()]
    return "\n".join(lines) + "\n"


def parts_list(parts, drawn):
    out = ["# Parts", "", "Written by `generator/draw.py` from `parts.csv`. Ratings come first: a part with a higher rating fits, a lower one does not.",
           "Any maker. Where a value is empty the rating says it all. Metal film and 50 V where nothing else is said.", ""]
    out += ["Counted: a quad amplifier or a switch of two poles once; the 100 nF at the chips' supply pins not. First box: stage 1, one rail.", "",
            "| block | first box | whole |", "|---|---|---|"]
    total = [0, 0]
    for sheet in drawn:
        rows = [parts.rows[ref] for ref in sheet.placed if not parts.rows[ref]["rating"].startswith(("part of", "pole of"))]
        first, whole = sum(row["stage"] == "1" for row in rows), len(rows)
        total = [total[0] + first, total[1] + whole]
        out.append(f"| {sheet.title} | {first} | {whole} |")
    out += [f"| **all** | **{total[0]}** | **{total[1]}** |", ""]
    for sheet in drawn:
        out += [f"## {sheet.title}", "", "| part | rating | value | tolerance | stage | why |", "|---|---|---|---|---|---|"]
        for ref in sheet.placed:
            row = parts.rows[ref]
            out.append(f"| {ref} | {row['rating'] or '-'} | {row['value'] or '-'} | {row['tolerance'] or '-'} | {row['stage']} | {row['why']} |")
        out.append("")
    return "\n".join(out)


def main():
    root = HERE.parent
    target = Path(sys.argv[1]) if len(sys.argv) > 1 else root
    parts = Parts(root / "parts.csv")
    drawn = [make(parts) for make in sheets.ALL]
    used = [ref for sheet in drawn for ref in sheet.placed]
    if sorted(used) != sorted(parts.rows):
        raise ValueError(f"parts.csv and drawings differ: {sorted(set(used) ^ set(parts.rows))}, twice: {[r for r in used if used.count(r) > 1]}")
    for folder in ("drawings", "netlists"):
        (target / folder).mkdir(parents=True, exist_ok=True)
    for sheet in drawn:
        (target / "drawings" / f"{sheet.name}.svg").write_text(sheet.svg(), encoding="utf-8")
        (target / "netlists" / f"{sheet.name}.cir").write_text(netlist(sheet, parts), encoding="utf-8")
    for name, svg in views.ALL.items():
        (target / "drawings" / f"{name}.svg").write_text(svg(), encoding="utf-8")
    (target / "parts.md").write_text(parts_list(parts, drawn), encoding="utf-8")


main()
