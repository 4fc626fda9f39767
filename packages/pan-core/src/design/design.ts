import type { Vec2, Vec3 } from '../numeric/index.js';
import type { Baffle } from './baffle.js';
import type { Chassis } from './chassis.js';
import type { Engine } from './engine.js';
import type { Flange } from './flange.js';
import type { Notch } from './notch.js';
import type { RailSurvey } from './rail-survey.js';
import type { Prices, Shop } from './shop.js';

export type * from './baffle.js';
export type * from './chassis.js';
export type * from './engine.js';
export type * from './flange.js';
export type * from './notch.js';
export type * from './solid-shape.js';

/**
 * A design after reading: every length in mm, volume in mm³, angle in radians, flow in mm³/s, time in s,
 * acceleration in g. Points are in pan axes: x forward from the rear face of the block, y left, z up
 * from the rail. `down` is positive below the rail. `null` means not known.
 */
export type Point2 = Vec2;
/** A place in pan axes, in mm. */
export type Point3 = Vec3;
/** A side of the car. */
export type Side = 'left' | 'right';

/** A design as read: mm, mm³, radians, g and seconds; null is unknown. */
export interface Design {
  readonly format: 1;
  readonly title: string;
  readonly engine: Engine;
  readonly oil: OilPlan;
  readonly pan: PanShape;
  readonly pickup: Pickup;
  readonly baffles: readonly Baffle[];
  readonly drain: Drain | null;
  readonly bungs: readonly Bung[];
  readonly dipstick: Dipstick | null;
  readonly chassis: Chassis;
  readonly manoeuvres: readonly Manoeuvre[];
  readonly shop: Shop;
  readonly prices: Prices;
  /** Overrides by check id, in the check's own unit (mm, L, deg, g, s). */
  readonly limits: Readonly<Record<string, number>>;
}

/** What is poured in and where it stays, in mm³. */
export interface OilPlan {
  readonly fill: number;
  readonly filter: number;
  /** Oil in the engine while it runs, galleries included. */
  readonly heldUp: number;
  readonly galleries: number;
  readonly grade: string;
  readonly sheet: OilSheet;
  /** mm³/s at the speed of the cases; null when not known. */
  readonly pump: number | null;
  /** mm³/s at cranking speed; null when `pump` is. */
  readonly cranking: number | null;
  /** Where the file gives them by engine speed; `heldUp` and `pump` are then those at the highest speed given. */
  readonly bySpeed?: {
    readonly heldUp: SpeedCurve | null;
    readonly pump: SpeedCurve | null;
  };
}

/** Values at engine speeds, [rev/min, value], speed rising: straight between, constant beyond. */
export type SpeedCurve = readonly Point2[];

/** What the oil's data sheet says; null where it is not given. */
export interface OilSheet {
  /** Kinematic viscosity at 40 and 100 °C, mm²/s. */
  readonly at40: number | null;
  readonly at100: number | null;
  readonly index: number | null;
  /** kg/m³ at 15 °C. */
  readonly density: number | null;
}

/** The pan itself: floor line, widths, wings, cut-outs and sheet. */
export interface PanShape {
  readonly sheet: Sheet;
  /** Front to rear, x never increasing: [x, down]. */
  readonly floor: readonly Point2[];
  /** Half-widths [x, distance from y = 0] along x, x increasing; straight between, constant beyond. */
  readonly left: readonly Point2[];
  readonly right: readonly Point2[];
  readonly wings: readonly Wing[];
  readonly notches: readonly Notch[];
  readonly flange: Flange;
  readonly structural: boolean;
  readonly joints: Joints;
  /** x that parts shallow from sump; null: at the top of the steepest floor piece. */
  readonly sumpFrom: number | null;
}

/** What the pan is made of; sizes in mm. */
export interface Sheet {
  /** Key of a row of the materials table. */
  readonly material: string;
  readonly thickness: number;
  readonly bendRadius: number;
}

/** A widening of the sump beyond its wall, in mm. */
export interface Wing {
  readonly name: string;
  readonly side: Side;
  readonly rear: number;
  readonly front: number;
  /** Depth of the top plane at the pan's wall, at the rear and at the front end. */
  readonly topDown: { readonly rear: number; readonly front: number };
  /** Angle by which the top falls outward; positive means lower at the outer edge. */
  readonly topFall: number;
  /** Distance of the outer plane beyond the half-width, at the rear and at the front end. */
  readonly beyondWall: { readonly rear: number; readonly front: number };
}

/** Which edges fold, which weld, and what a test bend gave. */
export interface Joints {
  /** Floor corners (index into `floor`) that are welded instead of folded. */
  readonly welded: readonly number[];
  readonly bendTest: { readonly flat: number; readonly legs: readonly [number, number] } | null;
  readonly allowance: 'k' | 'din' | 'handbook';
  /** Faces of the pan that fold along the edge they share, by name, besides those that usually do. */
  readonly fold: readonly (readonly [string, string])[];
  /** Faces that are welded along the edge they share, though they usually fold. */
  readonly weld: readonly (readonly [string, string])[];
  /** Where parts are cut apart and welded together again. */
  readonly split: PartSplit;
}

/** Parts cut into pieces: those too large for sheet or brake by themselves, others at places that are asked for. */
export interface PartSplit {
  /** False: none is cut apart unless it is asked for. */
  readonly usual: boolean;
  /** Parts that stay whole, by name. */
  readonly whole: readonly string[];
  readonly seams: readonly SplitSeam[];
}

/** A seam that is asked for, straight across a part's blank as drawn. */
export interface SplitSeam {
  readonly part: string;
  /** Across the blank at a distance from its left edge, or lengthwise at a distance from its lower edge, mm. */
  readonly way: 'across' | 'lengthwise';
  readonly at: number;
  /** What drawings and weld plan call it; null for the usual name. */
  readonly name: string | null;
}

/** The mouth and its tube, in mm. */
export interface Pickup {
  readonly at: Point2;
  readonly gap: number;
  /** Diameter of the mouth's rim. */
  readonly mouth: number;
  readonly bore: number;
  readonly wall: number;
  /** Centre line of the tube from the mouth to the port; empty when not given. */
  readonly route: readonly Point3[];
  /** Left out where the tube is held at the port alone. */
  readonly stay?: Stay;
}

/** A folded strip that holds the tube to a bolt of the engine, in mm. */
export interface Stay {
  /** Middle of the engine's seat for its bolt; the seat faces down. */
  readonly at: Point3;
  /** Threads of that bolt and of the tube's clip. */
  readonly size: number;
  readonly clip: number;
  readonly width: number;
  readonly thickness: number;
}

/** The drain plug and its bung. */
export interface Drain {
  readonly at: Point2;
  readonly thread: { readonly diameter: number; readonly pitch: number };
  readonly bung: number;
  /** How far the plug's head stands below the pan's outside. */
  readonly plugBelow: number;
}

/** A threaded boss on the pan. */
export interface Bung {
  readonly name: string;
  readonly purpose: 'return' | 'breather' | 'temperature' | 'level' | 'magnet' | 'other';
  readonly at: Point3;
  readonly toward: Point3;
  readonly diameter: number;
  /** Left out where the fitting brings its own. */
  readonly thread?: { readonly diameter: number; readonly pitch: number };
}

/** The line the stick runs along, in mm. */
export interface Dipstick {
  readonly enters: Point3;
  readonly toward: Point3;
}

/** A car's acceleration along the road in g; a left turn is +y, braking is −x. */
export interface Load {
  readonly forward: number;
  readonly left: number;
  /** Road grade as an angle, uphill positive. */
  readonly grade: number;
}

export interface Manoeuvre extends Load {
  readonly name: string;
  /** Engine speed, rev/min; not given: the highest that the oil is given at. */
  readonly rpm?: number;
  readonly seconds: number;
  /** Loads passed through, in order, before the manoeuvre's own. */
  readonly via: readonly Load[];
}

/** A value the file did not give and that was taken from common practice. */
export interface Assumption {
  readonly path: readonly (string | number)[];
  readonly value: string;
  readonly why: string;
}

/** A value the file must give and does not. */
export interface Unknown {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly needed: string;
}

/** A design with what was assumed and what is unknown. */
export interface ReadDesign {
  readonly design: Design;
  /** What the rail's measurements say of themselves; null or left out where there is nothing to say. */
  readonly rail?: RailSurvey | null;
  readonly assumed: readonly Assumption[];
  readonly unknown: readonly Unknown[];
}
