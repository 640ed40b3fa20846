"""Sheets of the circuit: symbols, wires, and the netlist that follows from the wires.

The wires of the drawing are the netlist: what touches on paper is one node, so drawing and simulation cannot differ.
Values come from parts.csv alone.
"""

from html import escape

INK, FAINT, PAPER = "#1c2b3a", "#8a97a5", "#fdfcf8"


def rotated(point, turn, mirror):
    x, y = point
    if mirror:
        y = -y
    for _ in range(turn // 90):
        x, y = -y, x
    return x, y


class Symbol:
    """Strokes around (0, 0) and the pins that wires may take hold of."""

    def __init__(self, pins, strokes, box):
        self.pins, self.strokes, self.box = pins, strokes, box


def line(*points):
    return ("line", points)


def two(*strokes):
    return Symbol({"1": (-30, 0), "2": (30, 0)}, list(strokes), (-30, -12, 30, 12))


def rect(x1, y1, x2, y2):
    return line((x1, y1), (x2, y1), (x2, y2), (x1, y2), (x1, y1))


def diode(*extra):
    return two(line((-30, 0), (30, 0)), ("fill0", ((-8, -8), (-8, 8), (8, 0))), line((8, -8), (8, 8)), *extra)


ARROWS = [line((-2, -10), (4, -18)), line((4, -18), (0, -16)), line((4, -18), (4, -13)),
          line((6, -10), (12, -18)), line((12, -18), (8, -16)), line((12, -18), (12, -13))]

SYMBOLS = {
    "resistor": two(line((-30, 0), (-16, 0)), rect(-16, -6, 16, 6), line((16, 0), (30, 0))),
    "capacitor": two(line((-30, 0), (-3, 0)), line((-3, -11), (-3, 11)), line((3, -11), (3, 11)), line((3, 0), (30, 0))),
    "polarised": two(line((-30, 0), (-3, 0)), line((-3, -11), (-3, 11)), line((3, -11), (3, 11)), line((3, 0), (30, 0)),
                     line((-14, -8), (-8, -8)), line((-11, -11), (-11, -5))),
    "inductor": two(line((-30, 0), (-24, 0)), ("arcs", (-24, 0)), line((24, 0), (30, 0))),
    "fuse": two(line((-30, 0), (30, 0)), rect(-16, -6, 16, 6)),
    "ptc": two(line((-30, 0), (-16, 0)), rect(-16, -6, 16, 6), line((16, 0), (30, 0)), line((-16, 12), (-10, 12), (10, -12))),
    "diode": diode(),
    "schottky": diode(line((8, -8), (4, -8), (4, -5)), line((8, 8), (12, 8), (12, 5))),
    "zener": diode(line((8, -8), (4, -8))),
    "led": Symbol({"1": (-30, 0), "2": (30, 0)}, diode(*ARROWS).strokes, (-30, -20, 30, 12)),
    "tvs": two(line((-30, 0), (-14, 0)), ("fill0", ((-14, -8), (-14, 8), (0, 0))), ("fill0", ((14, -8), (14, 8), (0, 0))),
               line((0, -8), (0, 8)), line((0, -8), (4, -8)), line((0, 8), (-4, 8)), line((14, 0), (30, 0))),
    "jumper": two(line((-30, 0), (-12, 0)), ("ring", (-9, 0)), ("ring", (9, 0)), line((12, 0), (30, 0)), line((-9, -7), (9, -7))),
    "make": Symbol({"1": (-30, 0), "2": (30, 0)},
                   [line((-30, 0), (-12, 0)), line((-12, 0), (12, -12)), line((12, 0), (30, 0)), line((0, -6), (0, -16)),
                    line((-6, -16), (6, -16))], (-30, -18, 30, 12)),
    "beeper": two(line((-30, 0), (-8, 0), (-8, 8)), line((30, 0), (8, 0), (8, 8)), line((-16, 8), (16, 8)),
                  line((-16, 8), (-15, 1), (-11, -5), (-6, -8), (0, -9), (6, -8), (11, -5), (15, 1), (16, 8))),
    "terminal": Symbol({"1": (0, 0)}, [("ring", (0, 0))], (-4, -4, 4, 4)),
    "nmos": Symbol({"g": (-30, 10), "d": (20, -30), "s": (20, 30)},
                   [line((-30, 10), (-8, 10), (-8, -12)), line((0, -14), (0, -6)), line((0, -4), (0, 4)), line((0, 6), (0, 14)),
                    line((0, -10), (20, -10), (20, -30)), line((0, 10), (20, 10), (20, 30)), line((0, 0), (20, 0), (20, 10)),
                    ("fill1", ((1, 0), (9, -4), (9, 4)))], (-30, -30, 26, 30)),
    "npn": Symbol({"c": (20, -30), "b": (-30, 0), "e": (20, 30)},
                  [line((-30, 0), (-2, 0)), line((-2, -14), (-2, 14)), line((-2, -5), (20, -18), (20, -30)), line((-2, 5), (20, 18), (20, 30)),
                   ("fill1", ((18, 17), (10, 16), (14, 10)))], (-30, -30, 26, 30)),
    "changeover": Symbol({"c": (-30, 0), "a": (30, -10), "b": (30, 10)},
                         [line((-30, 0), (-14, 0)), line((-14, 0), (14, -9)), line((30, -10), (14, -10)), line((30, 10), (14, 10))],
                         (-30, -14, 30, 14)),
    "opto": Symbol({"a": (-40, -10), "k": (-40, 10), "c": (40, -10), "e": (40, 10)},
                   [rect(-28, -20, 28, 20), line((-40, -10), (-16, -10), (-16, -5)), line((-40, 10), (-16, 10), (-16, 5)),
                    ("fill0", ((-21, -5), (-11, -5), (-16, 4))), line((-21, 5), (-11, 5)),
                    line((10, -8), (10, 8)), line((10, -3), (18, -10), (40, -10)), line((10, 3), (18, 10), (40, 10)),
                    ("fill1", ((18, 10), (12, 8), (15, 4))), line((-6, -3), (3, -3)), line((3, -3), (0, -5)), line((3, -3), (0, -1)),
                    line((-6, 3), (3, 3)), line((3, 3), (0, 1)), line((3, 3), (0, 5))], (-40, -20, 40, 20)),
    "relay": Symbol({"a": (-40, -10), "k": (-40, 10), "1": (40, -10), "2": (40, 10)},
                    [rect(-28, -20, 28, 20), line((-40, -10), (-16, -10), (-16, -5)), line((-40, 10), (-16, 10), (-16, 5)),
                     ("fill0", ((-21, -5), (-11, -5), (-16, 4))), line((-21, 5), (-11, 5)),
                     line((40, -10), (14, -10), (14, -6)), line((40, 10), (14, 10), (14, 6), (20, -7)), line((14, -6), (21, -6)),
                     line((-6, 0), (4, 0)), line((4, 0), (1, -2)), line((4, 0), (1, 2))], (-40, -20, 40, 20)),
    "opamp": Symbol({"+": (-40, -10), "-": (-40, 10), "o": (40, 0)},
                    [rect(-26, -24, 26, 24), line((-40, -10), (-26, -10)), line((-40, 10), (-26, 10)), line((26, 0), (40, 0)),
                     line((-7, -17), (-7, -7), (2, -12), (-7, -17)), ("word", (12, -8), "\u221e"), ("word", (-20, -6), "+"),
                     ("word", (-20, 14), "\u2212"), ("word", (20, 4), "+")], (-40, -24, 40, 24)),
    "schmitt": Symbol({"i": (-30, 0), "o": (30, 0)},
                      [rect(-18, -16, 18, 16), line((-30, 0), (-18, 0)), ("ring", (21, 0)), line((24, 0), (30, 0)),
                       line((-8, 5), (2, 5), (2, -4), (8, -4)), line((-3, 5), (-3, -4), (2, -4)), ("word", (-11, -5), "1")],
                      (-30, -16, 30, 16)),
}
TWO_TERMINAL = {k for k, s in SYMBOLS.items() if set(s.pins) == {"1", "2"}}


def block(left, right, width):
    """A rectangle with named pins, for parts whose inside is not drawn."""
    rows = max(len(left), len(right))
    half, top = width // 2, -10 * (rows - 1)
    pins, strokes = {}, [rect(-half, top - 16, half, top + 20 * (rows - 1) + 16)]
    for side, names in ((-1, left), (1, right)):
        for i, name in enumerate(names):
            if name is None:
                continue
            y = top + 20 * i
            pins[name] = (side * (half + 20), y)
            strokes.append(line((side * half, y), (side * (half + 20), y)))
            strokes.append(("end" if side > 0 else "start", (side * (half - 4), y + 4), name))
    return Symbol(pins, strokes, (-half - 20, top - 16, half + 20, top + 20 * (rows - 1) + 16))


class Sheet:
    def __init__(self, name, title, size, parts, numbers=None):
        self.name, self.title, self.size, self.parts, self.numbers = name, title, size, parts, numbers or {}
        self.placed, self.wires, self.tags, self.notes, self.frames = {}, [], [], [], []

    def put(self, ref, x, y, turn=0, mirror=False, symbol=None, text=None):
        """text: where reference and value stand: 'r' right, 'l' left, 'u' above, 'a' all above, 'd' below; default by direction."""
        if ref in self.placed:
            raise ValueError(f"{self.name}: {ref} is placed twice")
        symbol = symbol or SYMBOLS[self.parts.kind(ref)]
        upright = self.parts.kind(ref) in TWO_TERMINAL and turn in (90, 270)
        self.placed[ref] = (symbol, x, y, turn, mirror, text or ("r" if upright else "u"))

    def at(self, point):
        if not isinstance(point, str):
            return point
        ref, pin = point.rsplit(".", 1)
        symbol, x, y, turn, mirror, _ = self.placed[ref]
        dx, dy = rotated(symbol.pins[pin], turn, mirror)
        return x + dx, y + dy

    def wire(self, *points):
        """Points are 'REF.pin', (x, y), or '-' / '|': the next corner lies level with the one before / straight under it."""
        path, bend = [], None
        for point in points:
            if point in ("-", "|"):
                bend = point
                continue
            x, y = self.at(point)
            if path and path[-1][0] != x and path[-1][1] != y:
                if bend is None:
                    raise ValueError(f"{self.name}: slanted wire to {point} at {(x, y)} from {path[-1]}")
                path.append((x, path[-1][1]) if bend == "-" else (path[-1][0], y))
            bend = None
            path.append((x, y))
        self.wires.append(path)

    def tag(self, net, point, way="r", reach=0):
        """A named net ends here; all places with one name are joined, on every sheet."""
        x, y = self.at(point)
        dx, dy = {"r": (1, 0), "l": (-1, 0), "u": (0, -1), "d": (0, 1)}[way]
        end = (x + dx * reach, y + dy * reach)
        if reach:
            self.wires.append([(x, y), end])
        self.tags.append((net, end, way))

    def note(self, x, y, text, size=12):
        self.notes.append((x, y, text, size))

    def frame(self, x1, y1, x2, y2, text):
        self.frames.append((x1, y1, x2, y2, text))

    # -- netlist -------------------------------------------------------------------------------------------------

    def nodes(self):
        """Pin -> node name."""
        parent = {}

        def find(p):
            parent.setdefault(p, p)
            while parent[p] != p:
                p = parent[p]
            return p

        pins = {f"{r}.{p}": self.at(f"{r}.{p}") for r, (s, *_) in self.placed.items() for p in s.pins}
        points = set(pins.values()) | {p for w in self.wires for p in w} | {e for _, e, _ in self.tags}
        for path in self.wires:
            for a, b in zip(path, path[1:]):
                for p in points:
                    if on(p, a, b) and (p in (a, b) or p in self.ends(pins)):
                        parent[find(p)] = find(a)
                parent[find(b)] = find(a)
        names = {}
        for net, end, _ in self.tags:
            root = find(end)
            if names.setdefault(root, net) != net:
                raise ValueError(f"{self.name}: {names[root]} and {net} touch at {end}")
        members = {}
        for pin, p in pins.items():
            members.setdefault(find(p), []).append(pin)
        result = {}
        for root, group in members.items():
            if len(group) == 1 and root not in names:
                raise ValueError(f"{self.name}: {group[0]} at {pins[group[0]]} is joined to nothing")
            name = names.get(root) or "n_" + min(group).replace(".", "_").replace("+", "p").replace("-", "m")
            result.update({pin: name for pin in group})
        tagged = {find(e) for _, e, _ in self.tags}
        for root in tagged - set(members):
            raise ValueError(f"{self.name}: tag {names[root]} is joined to no part")
        return result

    def ends(self, pins):
        if not hasattr(self, "_ends"):
            self._ends = set(pins.values()) | {p for w in self.wires for p in (w[0], w[-1])} | {e for _, e, _ in self.tags}
        return self._ends

    def dots(self):
        pins = [self.at(f"{r}.{p}") for r, (s, *_) in self.placed.items() for p in s.pins]
        count = {}
        ends = set(pins) | {p for w in self.wires for p in (w[0], w[-1])}
        for p in ends:
            arms = set()
            for path in self.wires:
                for a, b in zip(path, path[1:]):
                    if on(p, a, b):
                        for q in (a, b):
                            if q != p:
                                arms.add(((q[0] > p[0]) - (q[0] < p[0]), (q[1] > p[1]) - (q[1] < p[1])))
            count[p] = len(arms) + pins.count(p)
        return [p for p, n in count.items() if n >= 3]

    # -- drawing -------------------------------------------------------------------------------------------------

    def svg(self):
        w, h = self.size
        out = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}" height="{h}" viewBox="0 0 {w} {h}" '
               f'font-family="DejaVu Sans, sans-serif" font-size="12" fill="{INK}">',
               f"<title>{escape(self.title)}</title>",
               f'<rect width="{w}" height="{h}" fill="{PAPER}"/>',
               f'<text x="24" y="34" font-size="19" font-weight="bold">{escape(self.title)}</text>']
        for x1, y1, x2, y2, text in self.frames:
            out.append(f'<rect x="{x1}" y="{y1}" width="{x2 - x1}" height="{y2 - y1}" fill="none" stroke="{FAINT}" '
                       f'stroke-dasharray="7 5" rx="6"/>')
            out.append(f'<text x="{x1 + 8}" y="{y1 + 16}" fill="#52606d" font-style="italic">{escape(text)}</text>')
        for path in self.wires:
            out.append(f'<polyline points="{" ".join(f"{x},{y}" for x, y in path)}" fill="none" stroke="{INK}" stroke-width="1.3"/>')
        for x, y in self.dots():
            out.append(f'<circle cx="{x}" cy="{y}" r="3.2"/>')
        for net, (x, y), way in self.tags:
            out += tag_svg(net, x, y, way)
        for ref, (symbol, x, y, turn, mirror, text) in self.placed.items():
            out += self.part_svg(ref, symbol, x, y, turn, mirror, text)
        for x, y, text, size in self.notes:
            for i, row in enumerate(text.split("\n")):
                out.append(f'<text x="{x}" y="{y + i * (size + 4)}" font-size="{size}">{escape(row)}</text>')
        out.append("</svg>\n")
        return "\n".join(out)

    def part_svg(self, ref, symbol, x, y, turn, mirror, text):
        value = self.parts.value(ref)
        out = [f'<g class="part" data-ref="{escape(ref)}" data-value="{escape(value)}">']
        style = f'stroke="{INK}" stroke-width="1.6" stroke-linejoin="round" fill="none"'
        for stroke in symbol.strokes:
            kind = stroke[0]
            if kind == "line":
                pts = [rotated(p, turn, mirror) for p in stroke[1]]
                out.append(f'<polyline points="{" ".join(f"{x + a},{y + b}" for a, b in pts)}" {style}/>')
            elif kind in ("fill0", "fill1"):
                pts = [rotated(p, turn, mirror) for p in stroke[1]]
                fill = PAPER if kind == "fill0" else INK
                out.append(f'<polygon points="{" ".join(f"{x + a},{y + b}" for a, b in pts)}" {style[:-11]} fill="{fill}"/>')
            elif kind == "ring":
                a, b = rotated(stroke[1], turn, mirror)
                out.append(f'<circle cx="{x + a}" cy="{y + b}" r="3.5" stroke="{INK}" stroke-width="1.5" fill="{PAPER}"/>')
            elif kind == "arcs":
                for i in range(4):
                    (a, b), (c, d) = (rotated((-24 + 12 * k, 0), turn, mirror) for k in (i, i + 1))
                    out.append(f'<path d="M{x + a},{y + b} A6,6 0 0 1 {x + c},{y + d}" {style}/>')
            else:
                if kind == "word":
                    a, b = rotated((stroke[1][0], stroke[1][1] - 4), turn, mirror)
                    out.append(f'<text x="{x + a}" y="{y + b + 4}" font-size="11" text-anchor="middle">{stroke[2]}</text>')
                else:
                    a, b = stroke[1]
                    out.append(f'<text x="{x + a}" y="{y + b}" font-size="11" text-anchor="{kind}">{escape(stroke[2])}</text>')
        for pin, number in self.numbers.get(ref, {}).items():
            if pin in symbol.pins:
                a, b = rotated(symbol.pins[pin], turn, mirror)
                out.append(number_svg(number, x, y, a, b))
        corners = [rotated(c, turn, mirror) for c in (symbol.box[:2], symbol.box[2:])]
        x1, x2 = x + min(c[0] for c in corners), x + max(c[0] for c in corners)
        y1, y2 = y + min(c[1] for c in corners), y + max(c[1] for c in corners)
        name, val = escape(ref), escape(value)
        if text == "u":
            rows = ((x, y1 - (17 if val else 4), "middle", name), (x, y1 - 4, "middle", val))
            if self.parts.kind(ref) in TWO_TERMINAL:
                rows = ((x, y1 - 2, "middle", name), (x, y2 + 11, "middle", val))
        elif text == "a":
            rows = ((x, y1 - 15, "middle", name), (x, y1 - 2, "middle", val))
        elif text == "d":
            rows = ((x, y2 + 13, "middle", name), (x, y2 + 26, "middle", val))
        elif text == "r":
            rows = ((x2 + 3, y - 2 if val else y + 4, "start", name), (x2 + 3, y + 12, "start", val))
        else:
            rows = ((x1 - 3, y - 2, "end", name), (x1 - 3, y + 12, "end", val))
        for i, (a, b, anchor, what) in enumerate(rows):
            if what:
                weight = ' font-weight="bold"' if i == 0 else ""
                out.append(f'<text x="{a}" y="{b}" text-anchor="{anchor}"{weight}>{what}</text>')
        out.append("</g>")
        return out


def on(p, a, b):
    return (a[0] == b[0] == p[0] and min(a[1], b[1]) <= p[1] <= max(a[1], b[1])) or (
        a[1] == b[1] == p[1] and min(a[0], b[0]) <= p[0] <= max(a[0], b[0]))


def number_svg(number, x, y, a, b):
    """The number of a chip's pin, above the stub that leads to it."""
    at, anchor = (x + a - 3, "end") if a > 0 else (x + a + 3, "start")
    return f'<text x="{at}" y="{y + b - 3}" text-anchor="{anchor}" font-size="9" fill="#52606d">{number}</text>'


def tag_svg(net, x, y, way):
    if net == "CH":
        s = 1 if way != "u" else -1
        return [f'<path d="M{x},{y} v{8 * s} M{x - 10},{y + 8 * s} h20 M{x - 10},{y + 8 * s} l-5,{7 * s} M{x},{y + 8 * s} l-5,{7 * s} '
                f'M{x + 10},{y + 8 * s} l-5,{7 * s}" stroke="{INK}" stroke-width="1.5" fill="none"/>']
    if net == "FG":
        return [f'<path d="M{x},{y} v8 M{x - 9},{y + 8} h18 l-9,10 z" stroke="{INK}" stroke-width="1.4" fill="none"/>']
    n = 8 * len(net) + 8
    if way == "r":
        shape, tx, anchor = f"M{x},{y} l6,-8 h{n} v16 h-{n} z", x + 9, "start"
        ty = y + 4
    elif way == "l":
        shape, tx, anchor = f"M{x},{y} l-6,-8 h-{n} v16 h{n} z", x - 9, "end"
        ty = y + 4
    elif way == "u":
        shape, tx, anchor = f"M{x},{y} v-5 M{x - n / 2},{y - 5} h{n} v-16 h-{n} z", x, "middle"
        ty = y - 9
    else:
        shape, tx, anchor = f"M{x},{y} v5 M{x - n / 2},{y + 5} h{n} v16 h-{n} z", x, "middle"
        ty = y + 17
    return [f'<path d="{shape}" stroke="{INK}" stroke-width="1" fill="#eef1f4"/>',
            f'<text x="{tx}" y="{ty}" text-anchor="{anchor}" font-size="11">{escape(net)}</text>']
