import type { OpenSurface, Vec3 } from 'pan-core';
import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  type ColorRepresentation,
  DirectionalLight,
  DoubleSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  PerspectiveCamera,
  Plane,
  Scene,
  SphereGeometry,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { creaseLines } from './crease-lines.js';
import type { PageData, PageMesh } from './data.js';
import { nearestLine } from './nearest-line.js';
import { oilTops } from './oil-tops.js';
import { seamBeads } from './seam-beads.js';
import type { SectionWay } from './state.js';

/** What of the page's state the solid shows. */
export interface SolidShown {
  readonly section: SectionWay;
  readonly sectionAt: number;
  readonly spread: number;
  readonly clearance: string | null;
  /** Parts of the welding step. */
  readonly marked: readonly string[];
  /** Seams of the welding step: lines in pan axes, mm. */
  readonly seams: readonly (readonly Vec3[])[];
  readonly obstacles: boolean;
  /** The oil's tops where it stands now. */
  readonly oil: readonly OpenSurface[];
}

export interface SolidStage {
  readonly show: (shown: SolidShown) => void;
  /** Turns the view by angles, radians, and brings it nearer by a factor. */
  readonly turn: (round: number, over: number, nearer: number) => void;
  /** Sees from the first three numbers to the last three, mm. */
  readonly lookFrom: (camera: readonly number[]) => void;
  readonly close: () => void;
}

const INK = 0x22262b;
const METAL = 0xb9c0c6;
const MARKED = 0xd9905c;
const NEIGHBOUR = 0xcfc6b0;

interface Standing {
  readonly name: string;
  readonly group: Group;
  readonly material: MeshLambertMaterial;
  readonly centre: Vector3;
}

const standing = (mesh: PageMesh, color: ColorRepresentation, clip: Plane[], opacity: number): Standing => {
  const solid = new BufferGeometry();
  solid.setAttribute('position', new BufferAttribute(new Float32Array(mesh.points), 3));
  solid.setIndex([...mesh.triangles]);
  const lines = new BufferGeometry();
  lines.setAttribute(
    'position',
    new BufferAttribute(new Float32Array(creaseLines(mesh).flatMap(([a, b]) => [...a, ...b])), 3),
  );
  const material = new MeshLambertMaterial({
    color,
    side: DoubleSide,
    flatShading: true,
    clippingPlanes: clip,
    transparent: opacity < 1,
    opacity,
    depthWrite: opacity === 1,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
  const group = new Group();
  group.add(
    new Mesh(solid, material),
    new LineSegments(
      lines,
      new LineBasicMaterial({
        color: INK,
        clippingPlanes: clip,
        transparent: true,
        opacity: opacity < 1 ? 0.35 : 0.9,
      }),
    ),
  );
  solid.computeBoundingBox();
  return {
    name: mesh.name,
    group,
    material,
    centre: solid.boundingBox?.getCenter(new Vector3()) ?? new Vector3(),
  };
};

/** Which half is taken away, and between which stations the cut runs. */
const CUTS = {
  along: { normal: new Vector3(0, 1, 0), axis: 'y' },
  across: { normal: new Vector3(-1, 0, 0), axis: 'x' },
  level: { normal: new Vector3(0, 0, -1), axis: 'z' },
} as const;

/** The bounds of all parts. */
const boundsOf = (meshes: readonly PageMesh[]): readonly [Vector3, Vector3] => {
  const [low, high] = [
    new Vector3(Infinity, Infinity, Infinity),
    new Vector3(-Infinity, -Infinity, -Infinity),
  ];
  for (const { points } of meshes)
    for (let i = 0; i < points.length; i += 3) {
      const p = new Vector3(points[i], points[i + 1], points[i + 2]);
      low.min(p);
      high.max(p);
    }
  return [low, high];
};

/**
 * The pan as a solid on a canvas.
 *
 * @throws Error where the browser draws no solids
 */
export const solidStage = (
  canvas: HTMLCanvasElement,
  data: PageData,
  turned: (camera: readonly number[]) => void,
): SolidStage => {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  renderer.localClippingEnabled = true;
  const [low, high] = boundsOf(data.pan);
  const middle = low.clone().add(high).multiplyScalar(0.5);
  const size = high.distanceTo(low);
  const cut = new Plane(new Vector3(0, 0, -1), Infinity);
  const scene = new Scene();
  const parts = data.pan.map((mesh) => standing(mesh, METAL, [cut], 1));
  const beside = new Group();
  beside.add(...data.obstacles.map((mesh) => standing(mesh, NEIGHBOUR, [], 0.3).group));
  const pointer = new Group();
  const pools = oilTops(cut);
  const beads = seamBeads(cut, size / 420);
  const sun = new DirectionalLight(0xffffff, 2);
  scene.add(
    ...parts.map(({ group }) => group),
    beside,
    pointer,
    pools.group,
    beads.group,
    new AmbientLight(0xffffff, 1.5),
    sun,
  );

  const camera = new PerspectiveCamera(32, 1, 1, 20 * size);
  camera.up.set(0, 0, 1);
  // A narrow stage needs more room for the pan's length.
  const away = size * Math.min(2.2, Math.max(1, (1.5 * canvas.clientHeight) / (canvas.clientWidth || 1)));
  camera.position.copy(middle).add(new Vector3(0.62 * away, -1.12 * away, 0.7 * away));
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(middle);
  controls.enableDamping = false;
  controls.update();

  const draw = (): void => {
    const { clientWidth: wide, clientHeight: tall } = canvas;
    if (wide === 0 || tall === 0) return;
    renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    renderer.setSize(wide, tall, false);
    camera.aspect = wide / tall;
    camera.updateProjectionMatrix();
    sun.position.copy(camera.position);
    renderer.render(scene, camera);
  };
  controls.addEventListener('change', () => {
    turned([...camera.position.toArray(), ...controls.target.toArray()]);
    draw();
  });
  const watch = new ResizeObserver(draw);
  watch.observe(canvas);

  const point = (name: string | null): void => {
    pointer.clear();
    const line = name === null ? null : nearestLine(data, name);
    if (line === null) return;
    const ends = new BufferGeometry().setFromPoints(line.map((p) => new Vector3(...p)));
    const material = new LineBasicMaterial({ color: 0x9b1c1c, depthTest: false });
    const ball = new MeshBasicMaterial({ color: 0x9b1c1c, depthTest: false });
    pointer.add(new LineSegments(ends, material));
    for (const p of line) {
      const spot = new Mesh(new SphereGeometry(size / 120, 12, 8), ball);
      spot.position.set(...p);
      pointer.add(spot);
    }
    pointer.renderOrder = 2;
  };

  return {
    show: ({ section, sectionAt, spread, clearance, marked, seams, obstacles, oil }) => {
      if (section === 'none') cut.set(new Vector3(0, 0, -1), 1e6);
      else {
        const { normal, axis } = CUTS[section];
        const at = low[axis] + sectionAt * (high[axis] - low[axis]);
        cut.set(normal, -at * normal[axis]);
      }
      for (const { name, group, material, centre } of parts) {
        group.position
          .copy(centre)
          .sub(middle)
          .multiplyScalar(1.3 * spread);
        material.color.set(marked.includes(name) ? MARKED : METAL);
      }
      beside.visible = obstacles;
      pools.show(spread > 0 ? [] : oil);
      beads.show(spread > 0 ? [] : seams);
      point(spread > 0 ? null : clearance);
      draw();
    },
    turn: (round, over, nearer) => {
      const arm = camera.position.clone().sub(controls.target);
      arm.applyAxisAngle(camera.up, round);
      const side = new Vector3().crossVectors(camera.up, arm).normalize();
      const tipped = arm.clone().applyAxisAngle(side, over);
      if (Math.abs(tipped.clone().normalize().z) < 0.98) arm.copy(tipped);
      camera.position.copy(controls.target).add(arm.divideScalar(nearer));
      controls.update();
      draw();
    },
    lookFrom: (from) => {
      camera.position.fromArray(from as number[]);
      controls.target.fromArray(from as number[], 3);
      controls.update();
      draw();
    },
    close: () => {
      watch.disconnect();
      controls.dispose();
      renderer.dispose();
    },
  };
};
