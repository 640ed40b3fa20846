"""Rows about what the chip sees: zeros, J at 1 mA, look, chassis clip, read-back, head, bleeder, leaking switch, another feed, pins at 60 V."""

import random
import re

from power import Row, told
from spice import once

BENCHES = ("ranges", "look", "jaws", "readback", "bleed", "common-mode", "signal", "overvoltage", "safety", "reversed", "wrong-side", "head-step")
NETLISTS = ("box", "current", "drive", "head", "link", "meter-and-volts", "rails", "supply-module")
REVISION = 1
COUNT = 4e-3
J_AMPERES, I_AMPERES, V_VOLTS = 0.4 / 1024, 12.5 / 1024, 61.594 / 1024


def spread(seed):
    """Resistors, offsets, floor of U4 and floating 5 V drawn within parts.csv; the converter's own 2 counts are added by the row."""
    draw = random.Random(seed)
    factor, offset = {}, {}
    tight = {"R_R25", "R_R26", "R_R41", "R_R42", "R_R43", *(f"R_R{n}" for n in range(31, 39)), "R_R51", "R_R52", "R_R111", "R_R112", "R_R113", "R_R114"}

    def edit(name, line):
        words = line.split(" ")
        if name.endswith(".cir") and words[0].startswith("R_R") and re.fullmatch(r"[0-9.]+(Meg|[mkunp]?)", words[-1]):
            part = 0.001 if words[0] in tight else 0.01
            factor.setdefault(words[0], draw.uniform(1 - part, 1 + part))
            words[-1] = f"{{{words[-1]}*{factor[words[0]]:.6f}}}"
            return " ".join(words)
        if name.endswith(".cir") and words[0] in ("X_U4", "X_U5", "X_U6", "X_U7A", "X_U7B", "X_U7C"):
            most = {"X_U4": 10e-6, "X_U5": 0.2e-3, "X_U6": 0.2e-3}.get(words[0], 0.5e-3)
            offset.setdefault(words[0], draw.uniform(-most, most))
            inner = f"off{words[0][2:].lower()}"
            return f"V{inner} {words[1]} {inner} {offset[words[0]]:.6g}\n" + " ".join([words[0], inner, *words[2:]])
        if line.startswith("V5F 5F FG"):
            return f"V5F 5F FG {5 * draw.uniform(0.97, 1.03):.4f}"
        return line

    return edit, draw


def zeros(first, count):
    """New boxes: zeros of I, J, V inside the band; J of 1 mA, 5 mA and 13 mA after the zero is taken off."""
    bad, low, high, worst = [], {}, {}, 0
    for seed in range(first, first + count):
        edit, draw = spread(seed)
        got = once("ranges", {}, [edit])
        for ch, (least, most) in {"i": (12, 29), "j": (10, 31), "v": (7, 13)}.items():
            zero = got[f"{ch}_0"] / COUNT
            low[ch], high[ch] = min(low.get(ch, 99), zero), max(high.get(ch, 0), zero)
            # the converter's own error, 2 counts at most, is left to it
            if not least + 2 <= zero <= most - 2:
                bad.append(f"{ch} {zero:.1f} of box {seed}")
        seen = (got["j_1ma"] - got["j_0"]) / COUNT * J_AMPERES
        worst = max(worst, abs(seen - 1e-3))
    return told({}, {"zeros in band: " + ", ".join(bad[:3]): not bad, "J sees 1 mA within 0.05": worst < 0.05e-3}, boxes=count, **{f"lowest{k.upper()}": v for k, v in low.items()},
                **{f"highest{k.upper()}": v for k, v in high.items()}, worst1mA=worst)


def look(volts, ohm, chassis):
    rest = once("look", dict(volts=volts, ohm=ohm, chassis=chassis))
    got = once("look", dict(volts=volts, ohm=ohm, chassis=chassis, look=1))
    amps = (got["adc_j"] - rest["adc_j"]) / COUNT * J_AMPERES
    v = (got["adc_v"] - rest["adc_v"]) / COUNT * V_VOLTS
    supply = v + 330 * amps + 0.6
    return told(got, {"supply within 3 % + 0.3 V": abs(supply - volts) < 0.03 * volts + 0.3, "ohm within 3 % + 3": abs(v / amps - ohm) < 0.03 * ohm + 3,
                      "supply seen": rest["across"] < 1.5 or volts < 4.5, "not reversed": rest["rev"] > 3.5, "clip on": rest["clip"] < 0.5, "relay open": got["relay"] > 1, "dark": abs(rest["adc_j"] - 0.0872) < 0.004},
                supplyV=supply, ohm=v / amps)


def jaw(name, values, on):
    got = once("jaws", values)
    good = got["clip_top"] < 1.0 if on else got["clip_low"] > 3.6
    return told(got, {"chassis clip": good}, lowestV=got["clip_low"], highestV=got["clip_top"], chassisV=got["chassis"])


def readback(values, wide=False):
    edits = []
    if wide:
        value = {"R_R102": "15Meg", "R_R202": "15Meg", "R_R302": "15Meg", "R_R104": "1.02Meg", "R_R204": "1.02Meg", "R_R304": "1.02Meg", "R_R105": "1.1Meg", "R_R205": "1.1Meg", "R_R305": "1.1Meg"}
        edits = [lambda n, line: " ".join(line.split(" ")[:-1] + [value[line.split(" ")[0]]]) if line.split(" ")[0] in value else line]
    got = once("readback", values, edits)
    level = 531 if wide else 573
    opened = abs(got["open_low"] / COUNT - level) < 8 and got["open_test"] / COUNT > 1018
    joined = [not (abs(got[f"{k}_low"] / COUNT - level) < 8 and got[f"{k}_test"] / COUNT >= 1018) for k in ("on", "far")]
    meter_moves, head_moves = abs(got["m_test"] - got["m_low"]) / COUNT, max(got["h_top"] - got["h_rest"], got["h_rest"] - got["h_low"]) / COUNT
    meter_open, head_open = float(values.get("meter", 1)) > 1e6, max(float(values.get("headp", 1)), float(values.get("headn", 1))) > 1e6
    return told(got, {"open clip told": opened, "joined clips told": all(joined), "current under 1 uA": abs(got["a_low"]) < 1e-6 and abs(got["a_test"]) < 1e-6,
                      "meter": meter_moves > 40 if meter_open else meter_moves < 8, "head": head_moves > 100 if head_open else head_moves < 60},
                openCounts=got["open_low"] / COUNT, openTest=got["open_test"] / COUNT, onTest=got["on_test"] / COUNT, microAmpere=abs(got["a_low"]) * 1e6, microAmpereInTest=abs(got["a_test"]) * 1e6, meterMoves=meter_moves, headMoves=head_moves)


def bleeder(volts, v5):
    got = once("bleed", dict(volts=volts, v5=v5))
    return told(got, {"a tenth in 2 s": got["at2"] < 0.9 * volts, "24 V to 1 V in 30 s": volts > 24 or got["at30"] < 1, "residual": got["residual"] < max(0.5, volts / 50)}, at2=got["at2"], at30=got["at30"], residual=got["residual"])


def leak(milliampere):
    """Current through the switch while it is off: 12 V over a resistor round Q1, set of 100 ohm."""
    rest = once("look", dict(ohm=100))
    got = once("look", dict(ohm=100), [lambda n, line: f"{line}\nRFAULT IN1 SH {12 / milliampere * 1000:.0f}" if line.startswith("M_Q1 ") else line])
    moved = (got["adc_j"] - rest["adc_j"]) / COUNT
    return told(got, {"refused: zero of J off by more than 3 counts": moved > 3}, counts=moved)


def feed(ohm):
    """An earth path or another feed from the live pole to the set's side, past the switch, while off: V leaves its zero."""
    rest = once("look", dict(volts=24, ohm=2000))
    got = once("look", dict(volts=24, ohm=2000), [lambda n, line: f"{line}\nRFAULT J1 J2 {ohm}" if line.startswith("R_J2 ") else line])
    moved = (got["adc_v"] - rest["adc_v"]) / COUNT
    return told(got, {"refused: zero of V off by more than 3 counts": moved > 3}, counts=moved)


def rejection(way):
    factor = {"R_R81": 1 + .001 * way, "R_R82": 1 - .001 * way, "R_R83": 1 - .001 * way, "R_R84": 1 + .001 * way, "C_C81": 1 + .05 * way, "C_C82": 1 - .05 * way, "C_C83": 1 - .01 * way, "C_C84": 1 + .01 * way}

    def edit(name, line):
        words = line.split(" ")
        return " ".join(words[:-1] + [f"{{{words[-1]}*{factor[words[0]]}}}"]) if words[0] in factor else line

    got = once("common-mode", {}, [edit])
    least = min(46.3 - got[f"c{f}"] for f in (50, 400, 1000))
    return told(got, {"60 dB": least > 60}, rejectionDb=least)


def head():
    got = once("signal", {})
    gap = max(abs((got[f"h{f}"] - got[f"m{f}"]) - (got["h400"] - got["m400"])) for f in (30, 50, 100, 200, 700, 1000))
    return told(got, {"bias 60 dB": got["h400"] - got["h38k"] > 60, "alike 0.1 dB": gap < 0.1, "1.6 kHz within 1 dB": abs(got["h400"] - got["h1600"]) < 1}, gainDb=got["h400"],
                bias38kDb=got["h400"] - got["h38k"], apartDb=gap)


PINS = ("adc_i adc_j adc_v adc_r1 adc_r2 adc_r3 adc_h adc_m aref clip across rev btns peds run look foot pumpa pumpb rxd").split()


def pins(volts, usb):
    got = once("overvoltage", dict(volts=volts, usb=usb))
    top, low = max(got[f"top_{p}"] for p in PINS), min(got[f"low_{p}"] for p in PINS)
    return told(got, {"over VCC": top < 0.5, "under ground": low > -0.5, "5 V": got["v5_max"] < 5.5, "dead chip stays in brown-out": usb > 0 or got["v5_max"] < 4.1,
                      "head under 10 mA": max(abs(got["head_ma"]), abs(got["head_ma_low"])) < 10}, over=top, under=low, v5=got["v5_max"])


def off_by(values, s2=False):
    edits = [lambda n, line: line.replace(" 1G", " 10m") if line.startswith("R_S2 ") else line] if s2 else []
    got = once("safety", values, edits)
    return told(got, {"off": abs(got["amps_end"]) < 2e-3}, before=-got["amps_start"], after=-got["amps_end"])


def port_falls(volts, slope):
    """The computer's plug is pulled, or its volts sag, at 12 ms: the pins fall with the 5 V; under 4.3 V the chip is in reset and they float."""
    def edit(name, line):
        line = line.replace("pump*V(ph)", "pump*(V(5V,CH)>4.3?1:0)*V(ph)").replace("pump*(1-", "pump*(V(5V,CH)>4.3?1:0)*(1-").replace("run > 0.75 ?", "run > 0.75 && V(5V,CH) > 4.3 ?")
        return line.replace("V=usb", f"V=time < 12m ? usb : max({volts},usb-(time-12m)/{slope}*(usb-{volts}))") if name == "models.lib" else line

    got = once("safety", dict(pump=1, run=1), [edit])
    ms = (got.get("opens", 16e-3) - 12e-3) * 1e3
    return told(got, {"off": abs(got["amps_end"]) < 2e-3, "within 3 ms": ms < 3}, before=-got["amps_start"], offMs=ms)


def floor_of_u4():
    """U4 of a type that cannot go under 20 mV: J still sees every milliampere, by its pedestal before the amplifier."""
    inside = []

    def edit(name, line):
        if line.startswith(".subckt"):
            inside[:] = [line.split(" ")[1]]
        return "B2 y vn V=max(20m,V(x,vn))" if inside == ["OPAMPZ"] and line == "E1 y vn x vn 1" else line

    got = once("ranges", {}, [edit])
    seen = (got["j_1ma"] - got["j_0"]) / COUNT * J_AMPERES
    return told(got, {"1 mA within 0.05": abs(seen - 1e-3) < 0.05e-3, "200 mA within 1 %": abs((got["j_200ma"] - got["j_0"]) / COUNT * J_AMPERES - 0.2) < 2e-3}, milliampere=seen * 1e3)


def reversed_supply(volts):
    got = once("reversed", dict(volts=volts))
    if volts < 0:
        return told(got, {"blocked": abs(got["set_v"]) < 0.05, "reversed seen": got["rev"] < 1.5, "no supply seen": got["across"] > 3.5}, setV=got["set_v"], amperes=got["supply_a"])
    return told(got, {"seen": got["across"] < 1.5, "not reversed": got["rev"] > 3.5, "set dark": abs(got["set_v"]) < 0.05}, setV=got["set_v"])


def wrong_side():
    got = once("wrong-side", dict(chassis=1, look=1))
    return told(got, {"V reads nothing": got["adc_v"] / COUNT < 12, "set dark": got["set_v"] < 1, "the catch path holds the supply down": got["in_v"] < 2}, setV=got["set_v"], supplyV=got["in_v"])


def head_step(volts):
    got = once("head-step", dict(volts=volts))
    most = max(abs(got["clip_a_max"]), abs(got["clip_a_min"]))
    return told(got, {"under 10 mA": most < 10e-3, "back": abs(got["h_end"] - 2.049) < 0.01}, milliampere=most * 1e3, backS=max(got.get("back", 0), got.get("back_up", 0)))


def rows():
    made = []

    def add(group, name, title, work, drawn=True):
        made.append(Row(re.sub(r"[^A-Za-z0-9.-]+", "-", name), group, title, work, drawn))

    for first in range(0, 200, 20):
        add("zeros", f"zeros-{first}", f"20 new boxes from {first} on", lambda f=first: zeros(f, 20), first == 0)
    for volts, ohm in ((5, 100), (12, 3), (12, 30), (12, 210), (24, 2000), (60, 2000), (60, 30)):
        for chassis in (0, 1):
            add("look", f"look-{volts}V-{ohm}ohm-{chassis}", f"{volts} V, {ohm} ohm, module in the {'plus' if chassis == 0 else 'minus'} lead", lambda a=(volts, ohm, chassis): look(*a), chassis == 0 and volts == 12)
    for name, values, on in (("both on", {}, True), ("jaw off, off", dict(jaw=1e9), False), ("sense off, off", dict(sense=1e9), False), ("jaw off, look", dict(jaw=1e9, look=1), False),
                             ("jaw off, on", dict(jaw=1e9, pump=1, run=1), False), ("jaw off, on, 60 V", dict(jaw=1e9, pump=1, run=1, volts=60), False),
                             ("jaw off, on, computer 100 kohm to earth", dict(jaw=1e9, pump=1, run=1, earth=1e5), False), ("jaw of 200 ohm", dict(jaw=200), True),
                             ("jaw off, 12 V, 210 ohm, look", dict(jaw=1e9, look=1, volts=12, rset=210), False), ("jaw off, 12 V, 2 kohm, off", dict(jaw=1e9, volts=12, rset=2000), False),
                             ("jaw off, 12 V, 210 ohm, on", dict(jaw=1e9, pump=1, run=1, volts=12, rset=210), False), ("jaw off, 30 V, 210 ohm, on", dict(jaw=1e9, pump=1, run=1, volts=30, rset=210), False)):
        add("chassis clip", f"jaw-{name}", name, lambda a=(name, values, on): jaw(*a), name in ("both on", "jaw off, on"))
    for name, values, wide in (("narrow", {}, False), ("on 2.3 V", dict(on2=2.2917), False), ("behind 1 Mohm", dict(ohm3="1Meg"), False), ("wide", {}, True), ("wide on 2.1 V", dict(on2=2.1253), True),
                               ("head + off", dict(headp=1e12), False), ("head - off", dict(headn=1e12), False), ("head both off", dict(headp=1e12, headn=1e12), False), ("meter off", dict(meter=1e12), False)):
        add("read-back", f"readback-{name}", name, lambda a=(values, wide): readback(*a), name == "on 2.3 V")
    for volts, v5 in ((24, 5), (24, 0), (60, 5)):
        add("bleeder", f"bleed-{volts}-{v5}", f"4700 uF from {volts} V, box {'on' if v5 else 'without power'}", lambda a=(volts, v5): bleeder(*a))
    for ma in (5, 20, 200):
        add("arming", f"leak-{ma}mA", f"switch leaks {ma} mA", lambda m=ma: leak(m), ma == 5)
    for ohm in (0.2, 100, "10k", "100k"):
        add("arming", f"feed-{ohm}ohm", f"path of {ohm} ohm past the switch", lambda o=ohm: feed(o), ohm == "100k")
    for way in (1, -1):
        add("head", f"rejection{way}", "common mode, parts at their worst", lambda w=way: rejection(w), way == 1)
    add("head", "head-band", "gain, bias, likeness with M", head)
    for volts in (60, -60):
        for usb in (5, 0):
            add("pins", f"pins{volts}V-{usb}", f"{volts} V on every clip, box {'on' if usb else 'without power'}", lambda a=(volts, usb): pins(*a), False)
    for name, values, s2 in (("button", dict(pump=1, run=1, button=1), False), ("pedal, S2 closed", dict(pump=1, run=1, pedal=1), True), ("pin floats", dict(pump=1, run=0.5), False),
                             ("pump without RUN", dict(pump=1, run=0), False), ("RUN without pump", dict(pump=0, run=1), False), ("without power", dict(pump=1, run=1, usb=0), False)):
        add("off without the chip", f"off-{name}", name, lambda a=(values, s2): off_by(*a), name in ("button", "RUN without pump"))
    add("off without the chip", "off-USB pulled", "USB pulled while on", lambda: port_falls(0, "1u"), False)
    add("off without the chip", "off-USB sags", "USB sags to 2 V within 2 ms while on", lambda: port_falls(2, "2m"), False)
    add("zeros", "floor-of-U4", "U4 cannot go under 20 mV", floor_of_u4, False)
    for volts in (-60, -3, 5, 60):
        add("polarity", f"polarity{volts}V", f"supply of {volts} V", lambda v=volts: reversed_supply(v), volts == -60)
    add("polarity", "wrong-side", "S1 on the wrong side", wrong_side, False)
    for volts in (60, -60, 1):
        add("head", f"head-step{volts}V", f"{volts} V onto a head clip", lambda v=volts: head_step(v), volts == 60)
    return made
