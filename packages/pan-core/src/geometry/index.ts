export {
  type Affine,
  mapArea,
  mapGrowth,
  mapPoint,
  NO_MAP,
  scaleMap,
  shiftMap,
  thenMap,
  turnMap,
} from './affine.js';
export { type BestFirst, bestFirst } from './best-first.js';
export {
  areaVector,
  type CellFace,
  type ConvexCell,
  cellFromLoops,
  cellVolume,
  clipCell,
  NO_VOLUME,
  subtractConvex,
} from './convex.js';
export {
  type Deepest,
  type DepthBody,
  deepestPoint,
  depthBody,
  type RoundHull,
  within,
} from './convex-depth.js';
export { farthest, type HullGap, hullGap } from './convex-distance.js';
export { convexHull, sliceCell } from './convex-slice.js';
export {
  type Bounds,
  boundsGap,
  boundsOf,
  type ConvexSolid,
  type HalfSpace,
  halfSpacesOf,
} from './convex-solid.js';
export {
  bulgeCurve,
  type Curve,
  circleCurve,
  curveChords,
  type EllipseCurve,
  moveCurve,
  type NurbsCurve,
} from './curve.js';
export { type CuttingPlane, flatOn, placeIn } from './cutting-plane.js';
export { deepestMiddle } from './deepest-middle.js';
export { earTriangles } from './ear-clipping.js';
export { distanceToFacet, type Facet, facetOf, leastToFacet, nearestFacet } from './facet.js';
export { type Frame, framePoint } from './frame.js';
export { type DistanceSlip, fitHoles, type HoleFit, type HoleFitFailure } from './hole-fit.js';
export type { HoleDatum, HoleDistance } from './hole-network.js';
export { type DistanceProposal, proposeDistances } from './hole-proposal.js';
export { type FlatSegment, sliceLoops } from './loop-slice.js';
export { mergePieces } from './merge.js';
export { nurbsFault, nurbsPoint } from './nurbs.js';
export { insetPolygon, isSimple, type Trapezoid, trapezoids } from './outline.js';
export type { Arc, Line, Path, Segment } from './path.js';
export { pathArea } from './path-area.js';
export { type PathBox, pathBox } from './path-box.js';
export {
  arcSegment,
  arcThrough,
  circlePath,
  lineSegment,
  polylinePath,
  type RoundedCorner,
  roundedPath,
  tangentArc,
} from './path-build.js';
export {
  type Crossing,
  type Meeting,
  pathCrossings,
  SAME_POINT,
  segmentMeetings,
  selfCrossings,
} from './path-crossing.js';
export { insideRegion, mergeRuns, type Region, regionPieces, subtractPath } from './path-difference.js';
export { nearestOnSegment, pathDistance, pathGap, segmentDistance } from './path-distance.js';
export { pathLength, segmentLength } from './path-length.js';
export { insetEdges, polygonOffset } from './path-offset.js';
export { arcShare, directionAt, pathPoints, pointAt, trimSegment } from './path-point.js';
export { clockwise, counterClockwise, isClosed, largestGap, pointInPath } from './path-shape.js';
export { type Move, movePath, movePoint, reversePath } from './path-transform.js';
export {
  add2,
  cross2,
  distance2,
  dot2,
  left2,
  length2,
  mix2,
  offChord2,
  scale2,
  subtract2,
  unit2,
} from './path-vector.js';
export {
  createPlaneTable,
  flatAxes,
  liftPoint,
  opposite,
  type PlaneEquation,
  type PlaneTable,
  planeThrough,
  type SidedPlane,
} from './plane.js';
export {
  circlePolygon,
  clipPolygon,
  connectedPieces,
  holdsPoint,
  intersectConvexPolygons,
  type Polygon,
  polygonArea,
  rectangle,
  shareEdge,
  subtractAll,
  subtractConvexPolygon,
} from './polygon.js';
export { type JoinedLines, joinLines } from './polyline-join.js';
export { type PointPair, type RigidFit, rigidFit } from './rigid-fit.js';
export {
  afterRotation,
  inverseRotation,
  largestSwing,
  NO_ROTATION,
  type Rotation,
  rotate3,
  type Swing,
  swingBy,
  tiltedToLevel,
  turnAboutX,
  turnsAboutAxes,
  unrotate3,
} from './rotation.js';
export { circleThrough } from './round-loop.js';
export { simplifyLoop } from './simplify.js';
export { BRANCHES, type SoupLevel, type SoupTree } from './soup-tree.js';
export { type StlReader, stlReader } from './stl-reader.js';
export { type EndTangents, splineThrough } from './through-points.js';
export { type TriangleSoup, triangleSoup } from './triangle-soup.js';
