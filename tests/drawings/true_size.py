#!/usr/bin/python3
"""Drawings are true to scale on paper: outlines measured in the SVG file, and in the PDF as poppler reads it.

true_size.py OVERBEND: the wedge of cases/cable-hook, 12 x 60 mm, drawn 2:1. Allowed: 0.01 mm on paper (both
formats keep coordinates in steps of 1/256 of their unit).
"""

import re
import subprocess
import sys
import tempfile


def path_sizes(svg, mm_per_unit):
    for data in re.findall(r'<path[^>]*?\sd="([^"]*)"', svg):
        numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", data)]
        if len(numbers) < 6:
            continue
        xs, ys = numbers[0::2], numbers[1::2]
        yield (max(xs) - min(xs)) * mm_per_unit, (max(ys) - min(ys)) * mm_per_unit


def nearest(svg, mm_per_unit, wanted):
    return min(max(abs(w - wanted[0]), abs(h - wanted[1])) for w, h in path_sizes(svg, mm_per_unit))


def main():
    with tempfile.TemporaryDirectory() as folder:
        case = "cases/cable-hook/case.toml"
        subprocess.run([sys.argv[1], "drawings", case, "--quiet", "--out", folder], check=True)
        subprocess.run(["pdftocairo", "-svg", f"{folder}/tool-wedge.pdf", f"{folder}/read.svg"], check=True)
        info = subprocess.run(["pdfinfo", f"{folder}/drawings.pdf"], check=True, capture_output=True, text=True).stdout
        svg = open(f"{folder}/tool-wedge.svg").read()
        read = open(f"{folder}/read.svg").read()
    # the curved nose's control points reach no further down than the nose itself
    off_svg = nearest(svg, 1.0, (24.0, 120.0))
    off_pdf = nearest(read, 25.4 / 72.0, (24.0, 120.0))
    print(f"off by {off_svg:.4f} mm in SVG, {off_pdf:.4f} mm in PDF")
    sheets = re.search(r"Pages:\s+9\n", info) and "(A4)" in info
    return 0 if sheets and off_svg < 0.01 and off_pdf < 0.01 else 1


sys.exit(main())
