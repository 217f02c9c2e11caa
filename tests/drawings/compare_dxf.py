#!/usr/bin/python3
"""Reads DXF files with ezdxf and compares their contours, entity by entity, with what made them.

compare_dxf.py DUMP_DRAWINGS: runs that program into a folder of its own. Allowed: 1e-6 mm.
"""

import json
import math
import pathlib
import subprocess
import sys
import tempfile

import ezdxf


def away(a, b):
    return math.hypot(a[0] - b[0], a[1] - b[1])


def on_circle(entity, degrees):
    c, r = entity.dxf.center, entity.dxf.radius
    return c[0] + r * math.cos(math.radians(degrees)), c[1] + r * math.sin(math.radians(degrees))


def difference(entity, piece):
    if piece["radius"] == 0.0:
        assert entity.dxftype() == "LINE", entity.dxftype()
        return max(away(entity.dxf.start, piece["start"]), away(entity.dxf.end, piece["end"]))
    assert entity.dxftype() == "ARC", entity.dxftype()
    ends = [piece["start"], piece["end"]]
    if piece["sweep"] < 0.0:
        ends.reverse()
    return max(
        away(on_circle(entity, entity.dxf.start_angle), ends[0]),
        away(on_circle(entity, entity.dxf.end_angle), ends[1]),
        away(entity.dxf.center, piece["centre"]),
        abs(entity.dxf.radius - piece["radius"]),
    )


def main():
    greatest, compared = 0.0, 0
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([sys.argv[1], folder], check=True)
        for file in sorted(pathlib.Path(folder).glob("*.dxf")):
            document = ezdxf.readfile(file)
            assert not document.audit().errors, (file.name, document.audit().errors)
            assert document.header["$INSUNITS"] == 4, file.name
            contour = list(document.modelspace().query('*[layer=="CONTOUR"]'))
            pieces = json.loads(file.with_suffix(".json").read_text())
            assert len(contour) == len(pieces), (file.name, len(contour), len(pieces))
            for entity, piece in zip(contour, pieces):
                greatest = max(greatest, difference(entity, piece))
                compared += 1
            if file.name == "blank.dxf":
                layers = {layer.dxf.name for layer in document.layers}
                assert {"BEND_UP", "BEND_DOWN", "CUT_OUT"} <= layers, layers
                ups = len(document.modelspace().query('LINE[layer=="BEND_UP"]'))
                downs = len(document.modelspace().query('LINE[layer=="BEND_DOWN"]'))
                assert (ups, downs) == (5, 3), (ups, downs)
                assert len(document.modelspace().query('CIRCLE[layer=="CUT_OUT"]')) == 1
    print(f"{compared} lines and arcs, greatest difference {greatest:.3g} mm")
    return 0 if compared > 500 and greatest < 1e-6 else 1


sys.exit(main())
