"""Single faults: every part of module, drive, current and volts sense opened and shorted, one after the other, and what becomes of it.

The bench 'fault' lives through off, limiter test, look, on, a short and off; the rules of the program are applied to what it shows. "Short" is
20 mohm across the set at 24 V, 1.1 ms long.
"""

import re

from power import Row, safe_share
from spice import HARDWARE, run

BENCHES = ("fault",)
NETLISTS = ("supply-module", "drive", "current", "meter-and-volts")
REVISION = 5
COUNT = 4e-3
NOMINAL = {}
VALUES = dict(volts=24, cset="10u", rset=100, tpump="3m", trun="14m", tcut="25.1m", tstop="25.1m", pins=2, tlook="9m", tlookend="14m", shortat="24m", shortohm=0.02)

# What nobody sees at once, with the reason why it stands here.
SILENT = {
    ("S1B", "open"): "V reads 6 % low and the bleeder is gone: after OFF a charged set does not fall, which is said; contacts of S1 are tried monthly",
    ("R113", "open"): "V reads 6 % low with the module in the plus lead; monthly test: V against a meter",
    ("R114", "shorted"): "V reads 6 % low with the module in the plus lead; monthly test: V against a meter",
    ("K1", "always in"): "the bleeder stays in: current reads V / 1.8 kohm too much; monthly test (nothing on OUT must read 0)",
    ("R28", "open"): "as K1 always in, while on",
}

# Harmless alone; what each costs. The monthly test tries what is marked *.
SLEEPING = {
    "D21": "the button's own way *; it still acts through the program", "R54": "pull-down; RUN floats in reset, the pump is off then", "R56": "pull-down of the look",
    "R10": "pull-down of Q3 when U1 is dead", "R11": "gate falls slower without pump", "C7": "a supply plugged in hard lifts the gate more", "D1": "clamp: leads ring to the volts of Q1",
    "D2": "catch path", "F2": "catch path", "D6": "gate zener", "Q2": "a reversed supply is stopped by the look only", "K1": "no bleeder: volts stay, which is said",
    "R3": "no bleeder: volts stay, which is said", "C8": "fold-back too fast or none *", "R13": "no fold-back: 12 A at any volts for the time of a trip *", "R14": "as R13 *",
    "Q7": "reversed is not told from no supply", "R19": "as Q7", "R20": "as Q7", "U1": "half the pump: less gate volts, the switch drops more", "C4": "as U1", "C5": "as U1", "D3": "as U1",
    "D5": "as U1",
}


def sheets():
    for sheet in ("supply-module", "drive", "current", "meter-and-volts"):
        for line in (HARDWARE / "netlists" / f"{sheet}.cir").read_text().split("\n"):
            if line and not line.startswith("*"):
                yield line


def sensed(ref):
    """Parts that belong to another job than switch, current and volts."""
    return ref not in ("J16", "R121", "R128", "R122", "R123", "C121", "U10D", "R125", "R126", "C123", "C124", "R127", "R129", "U11C", "R51", "R52", "C17", "U7D",
                       "S2", "D23")


def replaced(old, new):
    def edit(name, line):
        return new if line == old and name.endswith(".cir") else line

    return edit


def cases():
    """(id, part, what, edit)"""
    for line in sheets():
        words = line.split(" ")
        ref = words[0][2:]
        if not sensed(ref):
            continue
        kind = words[0][0]
        if kind in "RCD":
            a, b = words[1:3]
            if not (kind == "R" and words[-1] == "1G"):
                yield ref, "open", replaced(line, f"R_{ref} {a} {b} {'10' if ref == 'R1' else '1G'}")
            if words[-1] not in ("1m", "10m"):
                yield ref, "shorted", replaced(line, f"{line}\nRFAULT {a} {b} 50m")
        elif kind in "MQ":
            names = {"M": "dgs", "Q": "cbe"}[kind]
            for i, pin in enumerate(names):
                broken = words[:]
                broken[1 + i] = "brokenwire"
                yield ref, f"{pin} open", replaced(line, " ".join(broken) + f"\nRFAULT brokenwire {words[1 + i]} 1G")
            for i, k in ((0, 1), (0, 2), (1, 2)):
                yield ref, f"{names[i]} to {names[k]} shorted", replaced(line, f"{line}\nRFAULT {words[1 + i]} {words[1 + k]} 50m")
        elif words[-1] == "OPAMP" or words[-1] == "OPAMPZ":
            p, m, o, vp, vn = words[1:6]
            yield ref, "output open", replaced(line, line.replace(f" {o} {vp} ", f" brokenwire {vp} ") + f"\nRFAULT brokenwire {o} 1G" if o != m else line)
            yield ref, "output low", replaced(line, line + f"\nRFAULT {o} {vn} 50m")
            yield ref, "output high", replaced(line, line + f"\nRFAULT {o} {vp} 50m")
        elif words[-1] == "ISOAMP":
            for pin, name in ((1, "INP"), (2, "INN"), (3, "VDD1"), (4, "GND1"), (5, "OUTP"), (6, "OUTN"), (7, "VDD2"), (8, "GND2")):
                broken = words[:]
                broken[pin] = "brokenwire"
                yield ref, f"{name} open", replaced(line, " ".join(broken) + f"\nRFAULT brokenwire {words[pin]} 1G")
        elif words[-1] == "ISOLATOR42":
            outs = {"pump A": (10, 9, 16), "pump B": (11, 9, 16), "run": (12, 9, 16), "look": (13, 9, 16), "across": (6, 1, 8), "reversed": (7, 1, 8)}
            for name, (pin, up, down) in outs.items():
                yield ref, f"{name} stuck low", replaced(line, line + f"\nRFAULT {words[pin]} {words[down]} 1")
                yield ref, f"{name} stuck high", replaced(line, line + f"\nRFAULT {words[pin]} {words[up]} 1")
                broken = words[:]
                broken[pin] = "brokenwire"
                yield ref, f"{name} open", replaced(line, " ".join(broken) + f"\nRFAULT brokenwire {words[pin]} 1G")
            for name, pin in (("pump A in", 2), ("pump B in", 3), ("run in", 4), ("look in", 5), ("5V", 1), ("5F", 9), ("chassis", 8), ("FG", 16)):
                broken = words[:]
                broken[pin] = "brokenwire"
                yield ref, f"{name} open", replaced(line, " ".join(broken) + f"\nRFAULT brokenwire {words[pin]} 1G")
        elif words[-1] == "CONVERTER5":
            yield ref, "dead", replaced(line, f"RFAULT {words[3]} {words[4]} 1k")
        elif words[-1] == "NCRELAY":
            yield ref, "always in", replaced(line, line + f"\nRFAULT {words[3]} {words[4]} 30")
            yield ref, "never in", replaced(line, f"RFAULT {words[3]} {words[4]} 1G\nRFAULT2 {words[1]} {words[2]} 1k")
        elif words[-1] == "CHANGEOVER":
            yield ref, "open", replaced(line, f"RFAULT {words[1]} {words[2]} 1G\nRFAULT2 {words[1]} {words[3]} 1G")


def counts(got, name):
    return got[name] / COUNT


def refusal(got, normal):
    """Why the program would not close the switch, or None: its rules on zeros, limiter test and look."""
    def moved(name, by):
        return abs(counts(got, name) - counts(normal, name)) > by

    for ch in "ijv":
        if moved(f"{ch}_off", 3):
            return f"zero of {ch.upper()} at {counts(got, f'{ch}_off'):.0f} counts"
    if got["rev_off"] < 2.5:
        return "supply said to be reversed"
    if counts(got, "i_test") > counts(got, "i_off") + 8 or counts(got, "j_test") > counts(got, "j_off") + 4 or counts(got, "v_test") > counts(got, "v_off") + 3:
        return f"limiter test: the set does not stay dark ({got['e_test']:.2g} J)"
    j_look, v_look = (got["j_look"] - got["j_off"]) / 10.24, (got["v_look"] - got["v_off"]) / 4.096 * 61.594
    supply = v_look + 330 * j_look
    if supply < 0.3 * 24:
        return f"look: no supply ({supply:.1f} V)"
    if got["across_off"] > 2.5:
        return "across says no supply, the look sees one"
    if supply > 1.15 * 24:
        return f"look: {supply:.1f} V instead of 24 (shunt, look path)"
    if v_look < max(2 * 61.594 / 1024, 3 * j_look):
        return f"look: short ({v_look:.2f} V at {j_look * 1000:.0f} mA)"
    if counts(got, "j_look") < counts(got, "j_off") + 1 and supply < 0.8 * 24:
        return f"look: {supply:.1f} V without current (shunt)"
    return None


def judge(got, normal):
    """(class, why) after the rules of pins, look and trips."""
    refused = refusal(got, normal)
    if refused:
        return "refused", refused
    if got["across_on"] < 2.5:
        return "trips", "limiting for over 1 ms"
    if got["rev_on"] > 2.5:
        return "trips", f"the gate lacks volts ({got['set_on']:.1f} V on the set)"
    if got["set_on"] < 0.9 * 24:
        return "off", f"does not switch on ({got['set_on']:.1f} V)"
    off_us = (got.get("tgone", 25.1e-3) - 25.1e-3) * 1e6
    share = safe_share(got["ppk"], got["e_end"] - got["e_on"])
    if abs(got["i_end"]) > 5e-3:
        return "silent", f"{got['i_end']:.3g} A left after off"
    if share > 1 or got["vdspk"] > 200 or got["ipk"] > 200:
        return "silent", f"a short then: {got['ipk']:.0f} A, safe area {share:.2f}, {got['vdspk']:.0f} V"
    if off_us > 2000:
        return "silent", f"off after {off_us / 1000:.1f} ms"
    amps, volts = got["set_on"] / 100, got["set_on"]
    j, i, v = (got["j_on"] - got["j_off"]) / 10.24, (got["i_on"] - got["i_off"]) / 0.3277, (got["v_on"] - got["v_off"]) / 4.096 * 61.594
    if abs(i - amps) > 0.05 * amps + 0.03 and counts(got, "j_short") > 1000 and counts(got, "i_short") < counts(got, "i_off") + 20:
        return "trips", f"J far up with I at rest, in the short (before it, I {i:.3g} A for {amps:.3g}; what is shown comes from J)"
    look_j, look_v = max((got["j_look"] - got["j_off"]) / 10.24, 0), (got["v_look"] - got["v_off"]) / 4.096 * 61.594
    foretold = look_v + 330 * look_j
    if v > foretold + max(foretold / 16, 10 * 61.594 / 1024) + 330 * look_j * 3 / 8:
        return "trips", f"6 ms after closing: the set has {v:.1f} V, by the look the supply stood at {foretold:.1f} V (shunt)"
    wrong = [f"{n} {a:.3g} for {b:.3g}" for n, a, b, tol in (("J", j, amps, 0.05 * amps + 1e-3), ("I", i, amps, 0.05 * amps + 0.03), ("V", v, volts, 0.05 * volts)) if abs(a - b) > tol]
    if wrong:
        return "shows", "figures: " + "; ".join(wrong)
    if abs(j - 24 / 100) > 0.05 * 0.24:
        return "shows", f"figures: {j:.3g} A for 0.24"
    slow = f", off by the pump after {off_us / 1000:.2f} ms" if off_us > 5 else ""
    return "harmless", f"a short: {got['ipk']:.0f} A, safe area {share:.2f}{slow}"


def normal():
    if not NOMINAL:
        NOMINAL.update(run("fault", VALUES))
    return NOMINAL


def fault(ref, what, edit):
    got = run("fault", VALUES, [edit])
    kind, why = judge(got, normal())
    reason = SILENT.get((ref, what), "")
    if kind in ("silent", "shows") and reason:
        kind = "listed"
    lost = SLEEPING.get(ref, "") if kind == "harmless" else ""
    return {"failed": ["silent"] if kind in ("silent", "shows") else [], "class": kind, "why": why, "reason": reason or lost}



def rows():
    drawn = {("Q5", "c open"), ("R12", "open"), ("Q4", "d to s shorted"), ("Q1", "d to s shorted"), ("R41", "open"), ("U5", "OUTP open"), ("R15", "open")}
    return [Row(f"fault-{ref}-{what.replace(' ', '-')}", "single faults", f"{ref} {what}", lambda a=(ref, what, edit): fault(*a), (ref, what) in drawn) for ref, what, edit in cases()]
