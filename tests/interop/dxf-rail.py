# Writes, with ezdxf, one invented rail in several ways of drawing it: argument 1 is the folder to write into.
import math
import sys

import ezdxf

FOLDER = sys.argv[1]
L, W, R = 600.0, 220.0, 30.0
Q = math.tan(math.pi / 8)
CORNERS = [(R, 0, 0), (L - R, 0, Q), (L, R, 0), (L, W - R, Q), (L - R, W, 0), (R, W, Q), (0, W - R, 0), (0, R, Q)]


def save(name, version, draw, unit=4):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = unit
    draw(doc, doc.modelspace())
    doc.saveas(f"{FOLDER}/{name}.dxf")


def straights(space, move=lambda p: p):
    for (a, b, bulge), (c, d, _) in zip(CORNERS, CORNERS[1:] + CORNERS[:1]):
        if bulge == 0:
            space.add_line(move((a, b)), move((c, d)))


def arcs(space, mirrored=False):
    for x, y, start in ((L - R, R, 270), (L - R, W - R, 0), (R, W - R, 90), (R, R, 180)):
        if mirrored:
            # The same arc in a frame seen from behind: its own X runs to the left.
            space.add_arc((-x, y), R, 180 - start - 90, 180 - start, dxfattribs={"extrusion": (0, 0, -1)})
        else:
            space.add_arc((x, y), R, start, start + 90)


def polyline(doc, space):
    space.add_lwpolyline(CORNERS, format="xyb", close=True)
    space.add_circle((20, 20), 4.5)


def old_polyline(doc, space):
    space.add_polyline2d([(x, y, b) for x, y, b in CORNERS], format="xyb", close=True)
    space.add_circle((20, 20), 4.5)


def pieces(doc, space):
    straights(space)
    arcs(space)
    space.add_circle((20, 20), 4.5)


def mirrored(doc, space):
    straights(space)
    arcs(space, mirrored=True)
    space.add_circle((-20, 20), 4.5, dxfattribs={"extrusion": (0, 0, -1)})


def mirrored_polyline(doc, space):
    points = [(-x, y, -b) for x, y, b in CORNERS]
    space.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"extrusion": (0, 0, -1)})
    space.add_circle((20, 20), 4.5)


def blocks(doc, space):
    # A quarter within a corner within a rail, turned, scaled and mirrored on the way.
    inner = doc.blocks.new("QUARTER", base_point=(5, 5))
    inner.add_arc((5, 5), R / 2, 0, 90)
    corner = doc.blocks.new("CORNER")
    corner.add_blockref("QUARTER", (0, 0), dxfattribs={"xscale": 2, "yscale": 2})
    rail = doc.blocks.new("RAIL")
    straights(rail)
    rail.add_blockref("CORNER", (L - R, R), dxfattribs={"rotation": -90})
    rail.add_blockref("CORNER", (L - R, W - R))
    rail.add_blockref("CORNER", (R, W - R), dxfattribs={"xscale": -1})
    rail.add_blockref("CORNER", (R, R), dxfattribs={"xscale": -1, "yscale": -1})
    hole = doc.blocks.new("HOLE")
    hole.add_circle((0, 0), 4.5)
    rail.add_blockref("HOLE", (20, 20))
    space.add_blockref("RAIL", (0, 0))


def splines(doc, space):
    straights(space)
    h = math.sqrt(0.5)
    for x, y, sx, sy in ((L - R, R, 1, -1), (L - R, W - R, 1, 1), (R, W - R, -1, 1), (R, R, -1, -1)):
        points = [(x + sx * R, y), (x + sx * R, y + sy * R), (x, y + sy * R)]
        space.add_rational_spline(points, [1, h, 1], degree=2, knots=[0, 0, 0, 1, 1, 1])
    space.add_circle((20, 20), 4.5)


def fit_points(doc, space):
    # Corners drawn through points alone, the ends' directions given; a construction spline lies elsewhere.
    straights(space)
    for x, y, start in ((L - R, R, 270), (L - R, W - R, 0), (R, W - R, 90), (R, R, 180)):
        angles = [math.radians(start + 90 * k / 6) for k in range(7)]
        one = space.add_spline([(x + R * math.cos(a), y + R * math.sin(a)) for a in angles])
        one.dxf.start_tangent = (-math.sin(angles[0]), math.cos(angles[0]), 0)
        one.dxf.end_tangent = (-math.sin(angles[-1]), math.cos(angles[-1]), 0)
    space.add_circle((20, 20), 4.5)
    space.add_spline([(200, 400), (300, 440), (410, 390)], dxfattribs={"layer": "construction"})


def ellipses(doc, space):
    straights(space)
    for x, y, start in ((L - R, R, 270), (L - R, W - R, 0), (R, W - R, 90), (R, R, 180)):
        a = math.radians(start)
        space.add_ellipse((x, y), major_axis=(R, 0), ratio=1, start_param=a, end_param=a + math.pi / 2)
    space.add_circle((20, 20), 4.5)


def inches(doc, space):
    points = [(x / 25.4, y / 25.4, b) for x, y, b in CORNERS]
    space.add_lwpolyline(points, format="xyb", close=True)
    space.add_circle((20 / 25.4, 20 / 25.4), 4.5 / 25.4)


save("polyline", "R2010", polyline)
save("old polyline", "R12", old_polyline)
save("pieces", "R2000", pieces)
save("mirrored", "R2018", mirrored)
save("mirrored polyline", "R2004", mirrored_polyline)
save("blocks", "R2007", blocks)
save("splines", "R2013", splines)
save("fit points", "R2010", fit_points)
save("no unit", "R2000", pieces, unit=0)
save("ellipses", "R2000", ellipses)
save("inches", "R2010", inches, unit=1)
