"""Plain views for the builder: where things sit, how clips are made, where the module goes. No parts with values here."""

from html import escape

INK, FAINT, PAPER, FILL = "#1c2b3a", "#8a97a5", "#fdfcf8", "#eef1f4"


class View:
    def __init__(self, title, width, height):
        self.out = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}" '
                    f'font-family="DejaVu Sans, sans-serif" font-size="13" fill="{INK}">', f"<title>{escape(title)}</title>",
                    f'<rect width="{width}" height="{height}" fill="{PAPER}"/>',
                    f'<text x="24" y="34" font-size="19" font-weight="bold">{escape(title)}</text>']

    def box(self, x, y, w, h, text="", fill=FILL, bold=False, r=5):
        self.out.append(f'<rect x="{x}" y="{y}" width="{w}" height="{h}" rx="{r}" fill="{fill}" stroke="{INK}" stroke-width="1.5"/>')
        rows = text.split("\n") if text else []
        for i, row in enumerate(rows):
            self.text(x + w / 2, y + h / 2 + 5 + 16 * (i - (len(rows) - 1) / 2), row, "middle", bold)
        return self

    def text(self, x, y, text, anchor="start", bold=False, size=13):
        weight = ' font-weight="bold"' if bold else ""
        for i, row in enumerate(text.split("\n")):
            self.out.append(f'<text x="{x}" y="{y + i * (size + 4)}" text-anchor="{anchor}" font-size="{size}"{weight}>{escape(row)}</text>')
        return self

    def wire(self, *points, thick=False, dash=False):
        style = ' stroke-dasharray="6 4"' if dash else ""
        self.out.append(f'<polyline points="{" ".join(f"{x},{y}" for x, y in points)}" fill="none" stroke="{INK}" '
                        f'stroke-width="{3.2 if thick else 1.4}" stroke-linejoin="round"{style}/>')
        return self

    def shape(self, points, fill=FILL):
        self.out.append(f'<polygon points="{" ".join(f"{x},{y}" for x, y in points)}" fill="{fill}" stroke="{INK}" stroke-width="1.5"/>')
        return self

    def ring(self, x, y, r=7, fill=PAPER):
        self.out.append(f'<circle cx="{x}" cy="{y}" r="{r}" fill="{fill}" stroke="{INK}" stroke-width="1.5"/>')
        return self

    def chassis(self, x, y):
        self.out.append(f'<path d="M{x},{y} v8 M{x - 10},{y + 8} h20 M{x - 10},{y + 8} l-5,7 M{x},{y + 8} l-5,7 M{x + 10},{y + 8} l-5,7" '
                        f'stroke="{INK}" stroke-width="1.5" fill="none"/>')
        return self

    def done(self):
        return "\n".join(self.out + ["</svg>\n"])


def lid():
    v = View("Box seen from above: lid and ends", 900, 580)
    v.box(150, 90, 560, 380, fill=PAPER, r=14)
    v.ring(600, 200, 42, FILL).text(600, 205, "OFF", "middle", True).text(600, 262, "push button SB1", "middle")
    for i, name in enumerate(("power", "supply (while on: limiting)", "set on", "tripped")):
        v.ring(200, 140 + 34 * i).text(218, 145 + 34 * i, name)
    v.box(430, 130, 70, 100).wire((465, 180), (465, 145), thick=True).ring(465, 180, 9)
    v.text(465, 120, "chassis \u2212", "middle").text(465, 250, "chassis +", "middle").text(465, 272, "S1, under a guard", "middle")
    v.text(430, 330, "circuits to 60 V dc, 30 V rms only", "middle", True).text(430, 352, "no mains, no live chassis, no valve rails", "middle")
    v.text(430, 374, "the supply feeding it: current limit or fuse", "middle")
    v.text(430, 404, "fuse F1: 10 A, 80 V dc or more", "middle")
    for i, name in enumerate(("IN", "OUT", "COM", "COM")):
        v.ring(150, 150 + 64 * i, 13).text(126, 155 + 64 * i, name, "end", True)
    v.text(126, 172, "current in", "end", size=12).text(126, 236, "current out", "end", size=12)
    v.text(126, 300, "supply's other", "end", size=12).text(126, 364, "set's other", "end", size=12)
    v.ring(150, 420, 10).text(126, 417, "chassis clip:", "end").text(126, 433, "two thin leads", "end")
    for i, name in enumerate(("rail 1", "rail 2", "rail 3", "head", "meter")):
        x = 230 + 90 * i
        v.ring(x, 470, 11).text(x, 504, name, "middle").text(x, 521, f"tag {i + 1}", "middle", size=12)
    v.box(700, 110, 24, 40).text(734, 127, "USB to the\ncomputer")
    v.ring(712, 330, 9).text(734, 335, "pedal")
    v.text(150, 560, "Terminals for current on one end, leads of the clips on another, computer away from both.")
    return v.done()


def boards():
    v = View("Inside, seen from above: two boards and the gap between them", 960, 560)
    v.box(40, 70, 400, 420, fill=PAPER).text(60, 94, "power board", bold=True)
    v.box(520, 70, 400, 420, fill=PAPER).text(540, 94, "signal board", bold=True)
    for x, y, w, h, t in ((60, 110, 60, 40, "IN"), (130, 110, 60, 40, "F1"), (200, 110, 70, 60, "Q1\nheat sink"), (280, 110, 50, 40, "R1"),
                          (340, 110, 40, 40, "Q2"), (386, 110, 50, 40, "OUT"), (60, 160, 130, 36, "COM, COM"), (280, 160, 156, 30, "D1, Q3"),
                          (60, 215, 170, 36, "R2 (hot: 10 mm off)"), (240, 215, 190, 36, "S1 leads, D2, F2, R3, K1"),
                          (60, 262, 370, 40, "pump, Q4 to Q7, R7 to R23, C4 to C8, D3 to D8"),
                          (60, 308, 80, 30, "U4"), (60, 350, 110, 44, "U1 isolator"), (180, 350, 80, 44, "U2 5 V"), (270, 350, 75, 44, "U6 (J)"), (355, 350, 75, 44, "U5 (I)"),
                          (310, 404, 120, 26, "R111, R113"), (60, 440, 370, 34, "W1, 14 ways")):
        v.box(x, y, w, h, t)
    v.wire((50, 400), (300, 400), dash=True)
    for x, y, w, h, t in ((540, 120, 170, 70, "U20 chip, resonator"), (720, 120, 90, 40, "U21"), (820, 120, 80, 40, "J8"),
                          (540, 210, 170, 40, "U7 (I, J, V, 2.048 V)"), (720, 210, 180, 40, "U10 (rails, M)"),
                          (540, 270, 170, 50, "U11 (head, M)\nfar from U24, U25"), (720, 270, 180, 50, "lamps, beeper, SB1"),
                          (540, 345, 60, 40, "U24\n"), (610, 345, 60, 40, "U25\n"),
                          (540, 395, 130, 36, "U23, F3, USB"), (540, 446, 360, 34, "W1, 14 ways")):
        v.box(x, y, w, h, t)
    v.wire((534, 365), (676, 365), dash=True)
    v.wire((430, 457), (485, 457), (485, 463), (540, 463), thick=True)
    v.text(40, 520, "Dashed: no copper for 5 mm under U1, U2, U5, U6, K1 (floating side above, chassis side below) and under U24, U25 (chassis side above).")
    v.text(40, 540, "Lead of the current IN .. OUT: 6 mm wide at 70 um copper, or 1.5 mm2 wire laid on the track.")
    return v.done()


PINS = ("PD3 pump B", "PD4 button", "GND", "VCC 5V", "GND", "VCC 5V", "XTAL1", "XTAL2", "PD5 pedal", "PD6 clip", "PD7 across", "PB0 run",
        "PB1 reversed", "PB2 look", "PB3 beeper", "PB4 tripped", "PB5 foot", "AVCC 5V", "ADC6 H", "AREF 4.096 V", "GND", "ADC7 M",
        "ADC0 I", "ADC1 J", "ADC2 V", "ADC3 R1", "ADC4 R2", "ADC5 R3", "RESET", "PD0 RXD", "PD1 TXD", "PD2 pump A")


def chip():
    v = View("Chip U20 from above, 32-pin flat case, and the programming plug", 980, 620)
    v.box(290, 180, 280, 280).ring(312, 202, 6)
    for i, name in enumerate(PINS):
        side, k = divmod(i, 8)
        step = 180 + 16 + k * 35
        if side == 0:
            v.wire((270, step), (290, step)).text(264, step + 4, f"{name}  {i + 1}", "end", size=12)
        elif side == 1:
            x = 306 + k * 35
            v.wire((x, 460), (x, 480))
            v.out.append(f'<text transform="translate({x - 4},486) rotate(90)" font-size="12">{i + 1}  {escape(name)}</text>')
        elif side == 2:
            y = 460 - 16 - k * 35
            v.wire((570, y), (590, y)).text(596, y + 4, f"{i + 1}  {name}", size=12)
        else:
            x = 570 - 17 - k * 35
            v.wire((x, 160), (x, 180))
            v.out.append(f'<text transform="translate({x + 4},154) rotate(-90)" font-size="12">{i + 1}  {escape(name)}</text>')
    v.box(740, 200, 120, 90, fill=PAPER)
    for k, name in enumerate(("1 MISO PB4", "2 5V", "3 SCK PB5", "4 MOSI PB3", "5 RESET", "6 GND")):
        x, y = 775 + 50 * (k % 2), 222 + 23 * (k // 2)
        v.ring(x, y, 5)
        v.text(x - 10 if k % 2 == 0 else x + 10, y + 4, str(k + 1), "end" if k % 2 == 0 else "start", size=12)
    v.text(740, 186, "programming plug, from above", size=12)
    v.text(740, 312, "1 MISO, PB4; 2 5V\n3 SCK, PB5; 4 MOSI, PB3\n5 RESET; 6 GND", size=12)
    v.text(740, 390, "Supply and clips off while\nprogramming: these pins also\nserve lamp, beeper and clips.", size=12)
    return v.done()


def clips():
    v = View("Clips", 960, 620)
    v.text(30, 70, "Chassis clip: two jaws that do not touch", bold=True)
    v.shape([(60, 120), (300, 100), (330, 118), (300, 124), (60, 140)]).shape([(60, 170), (300, 190), (330, 172), (300, 166), (60, 150)])
    v.ring(130, 145, 9, INK)
    v.box(250, 126, 14, 20, fill=INK, r=2)
    v.wire((60, 130), (20, 130)).wire((60, 160), (20, 160))
    v.text(345, 110, "upper jaw: thin lead to J6\n(ground of the chip)").text(345, 176, "lower jaw: thin lead to J7 (sense)")
    v.text(60, 222, "Sleeve on the pin and washers of plastic keep the jaws apart; a plastic stop (black) keeps 1 mm between the teeth when shut.\n"
                    "Only metal of 1 mm or more between the teeth joins them: then the probe knows that the clip is on.")
    v.text(30, 290, "Rail clip: its resistor sits in the handle", bold=True)
    v.box(60, 310, 230, 60, fill=PAPER, r=16).wire((60, 340), (34, 340), (24, 352), thick=True)
    v.box(100, 330, 70, 20, "R.02").wire((60, 340), (100, 340))
    v.wire((170, 340), (420, 340)).box(290, 324, 130, 32, fill="none", r=12)
    v.text(430, 345, "core to R.04, R.05, C.01").text(430, 373, "screen: to chassis in the box only, cut back here")
    v.text(60, 410, "Shrink two layers of sleeve over it: nothing bare may be felt. Number on a tag: 1, 2, 3.")
    v.text(30, 450, "Slip for battery compartments", bold=True)
    v.box(60, 490, 90, 50, "battery").box(150, 484, 6, 62, fill=INK, r=0).box(160, 480, 10, 70, fill=PAPER, r=0).box(174, 484, 6, 62, fill=INK, r=0)
    v.box(190, 484, 10, 62, r=2).text(206, 520, "spring or plate of the set")
    v.wire((153, 484), (153, 468), (420, 468), thick=True).wire((177, 546), (177, 574), (420, 574), thick=True)
    v.text(430, 473, "to IN, if the slip is at the battery's + (chassis \u2212 set)").text(430, 579, "to OUT")
    v.text(430, 502, "Thin board with copper on both sides (0.8 mm), copper 2 mm back from\nall edges, one wire on each side; or copper foil glued on stiff card.\n"
                     "Chassis + set: slip at the battery's \u2212, set side to IN, battery side to OUT.", size=12)
    v.text(60, 604, "Black: copper. White: insulation. Before the battery goes in: over 1 Mohm from copper to copper.", size=12)
    return v.done()


def places():
    v = View("Where the module sits (probeSits), chassis \u2212 unless said", 860, 850)

    def row(y, title, blocks, module, note, tail=True):
        v.text(30, y, title, bold=True)
        x = 40
        for i, text in enumerate(blocks):
            w = 150
            v.box(x, y + 16, w, 50, text, fill="#dfe8ee" if i == module else PAPER, bold=i == module)
            if i + 1 < len(blocks):
                v.wire((x + w, y + 32), (x + w + 40, y + 32), thick=True)
            x += w + 40
        v.wire((40, y + 82), (x - 40, y + 82), thick=True)
        for i in range(len(blocks)):
            if i != module:
                v.wire((40 + 190 * i + 75, y + 66), (40 + 190 * i + 75, y + 82))
        v.chassis(x - 60, y + 82)
        v.text(40, y + 116, note, size=12)

    row(70, "supply-lead, chassis \u2212", ("supply + / \u2212", "IN  module  OUT", "set"), 1, "Supply + to IN, set + to OUT, both minus leads to COM. Bench supply, adaptor or battery (slip).")
    row(215, "supply-lead, chassis +", ("supply \u2212 / +", "OUT  module  IN", "set"), 1, "S1 down. Set \u2212 to IN, supply \u2212 to OUT, both plus leads to COM. The supply must float: link from black to earth taken off.")
    row(360, "reservoir-fed", ("bench supply", "IN  module  OUT", "reservoir", "set"), 1,
        "Mains plug out and lying in sight. The bench supply stands in for transformer and rectifier, across the reservoir.")
    row(505, "before-reservoir", ("transformer,\nrectifier", "IN  module  OUT", "reservoir", "set"), 1,
        "Rectifier lead taken off the reservoir. Current comes in pulses. Plug in the wall: an off does not make the mains side dead.")
    row(650, "after-reservoir", ("transformer,\nrectifier", "reservoir", "IN  module  OUT", "set"), 2,
        "Lead from the reservoir to the set opened. The reservoir stays charged behind the open switch: measure it.")
    v.text(30, 806, "not-connected", bold=True).text(160, 806, "the module is in no lead; chassis clip and clips only (watch --observe). Nothing can be switched off.")
    v.text(30, 830, "Thick: lead of the current, 1.5 mm\u00b2, under 1 m each. The chassis clip goes to the set's chassis in every case.")
    return v.done()


ALL = {"view-lid": lid, "view-boards": boards, "view-chip": chip, "view-clips": clips, "view-places": places}
