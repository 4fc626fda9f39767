"""Reads drawings with an independent library, audits them and prints what it found as JSON."""

import json
import sys

import ezdxf
from ezdxf import recover
from ezdxf.lldxf.encoding import decode_dxf_unicode


def entity(e):
    kind = e.dxftype()
    row = {"type": kind, "layer": e.dxf.layer}
    if kind == "LWPOLYLINE":
        row["closed"] = bool(e.closed)
        row["points"] = [[x, y, b] for x, y, _, _, b in e.get_points()]
    elif kind == "LINE":
        row["points"] = [[e.dxf.start.x, e.dxf.start.y, 0], [e.dxf.end.x, e.dxf.end.y, 0]]
    elif kind == "CIRCLE":
        row["centre"] = [e.dxf.center.x, e.dxf.center.y]
        row["radius"] = e.dxf.radius
    elif kind == "TEXT":
        row["text"] = decode_dxf_unicode(e.plain_text())
        row["at"] = [e.dxf.insert.x, e.dxf.insert.y]
        row["height"] = e.dxf.height
        row["turned"] = e.dxf.rotation
        row["centred"] = e.dxf.halign == 1
    return row


def read(path):
    strict = ezdxf.readfile(path)
    audit = strict.audit()
    _, lenient = recover.readfile(path)
    return {
        "version": strict.dxfversion,
        "units": strict.units,
        "errors": [e.message for e in audit.errors] + [e.message for e in lenient.errors],
        "fixes": [e.message for e in audit.fixes] + [e.message for e in lenient.fixes],
        # The library adds the layer Defpoints to every drawing it reads.
        "layers": sorted(layer.dxf.name for layer in strict.layers if layer.dxf.name != "Defpoints"),
        "paper": len(list(strict.layout("Layout1"))),
        "entities": [entity(e) for e in strict.modelspace()],
    }


print(json.dumps([read(path) for path in sys.argv[1:]]))
