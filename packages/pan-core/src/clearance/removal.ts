import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { insideLine, type OuterSolid, type PanModel, type Plate } from '../pan/index.js';
import { AT_REST, type JackName } from './engine-jack.js';
import { type JackRoom, jackRoom, leastRaise } from './least-raise.js';
import { BOLTED, type PanPlace, type RemovalScene, removalScene } from './removal-scene.js';
import { type Freedom, type StraightDrop, straightDrop, wayOut } from './removal-search.js';

/** One way of raising the engine that frees the pan, or that does not. */
export interface RaisedWay {
  readonly jack: JackName;
  /** The least that was found to free it, mm at the jack; null: none up to the most. */
  readonly raised: number | null;
  /** How far the engine is turned then, radians, without sign. */
  readonly turned: number | null;
  /** How far the jack can go before the engine or the pan on it meets something, mm. */
  readonly most: JackRoom;
  /** The way out then, bend by bend; empty where none was found. */
  readonly legs: readonly PanPlace[];
}

/** How the pan comes off with the engine in the car. */
export interface Removal {
  /** Straight down from where it is bolted, the engine where it is. */
  readonly straight: StraightDrop;
  /** The pickup stays on the engine, or has to be undone and come along; null: neither way was found. */
  readonly pickup: 'stays' | 'comes along' | null;
  /** What catches a pickup that stays; null where it may. */
  readonly pickupCatches: string | null;
  /** The way out with the engine where it is, bend by bend; null: none was found. */
  readonly still: { readonly freedom: Freedom; readonly legs: readonly PanPlace[] } | null;
  /** Every way of raising the engine, the least first; empty where it may stay where it is. */
  readonly raises: readonly RaisedWay[];
  /** False: a search ran out of looks, so that a smaller raise may do. */
  readonly complete: boolean;
}

/** How much less raise undoing the pickup has to spare to be worth the work, mm. */
const WORTH = 10;

/** null where the chassis's axes are not known. */
export const removalOf = (
  design: Design,
  model: PanModel,
  solids: readonly OuterSolid[],
  plates: readonly Plate[],
  tell: (share: number) => void = () => {},
): Removal | null => {
  const line = insideLine(design, model.profile);
  const stays = removalScene(design, solids, line, plates, model.mouth);
  const along = removalScene(design, solids, line, plates, null);
  if (stays === null || along === null) return null;
  // Only where neither comes out plainly are the longer searches made, each for both.
  const part = shareOf(tell);
  const plain = plainWay(stays, part(0, 0.1));
  const plainAlong = plain.still === null ? plainWay(along, part(0.1, 0.2)) : null;
  const easy = plain.still !== null || plainAlong?.still != null;
  const first = easy ? plain : freed(stays, plain, part(0.2, 0.6));
  const second = plainAlong === null || easy ? plainAlong : freed(along, plainAlong, part(0.6, 1));
  const comesAlong = second !== null && worth(second, first);
  const found = comesAlong ? second : first;
  const scene = comesAlong ? along : stays;
  const out = found.still !== null || found.raises.some(({ raised }) => raised !== null);
  return freeze({
    straight: straightDrop(scene, AT_REST),
    pickup: out ? (comesAlong ? 'comes along' : 'stays') : null,
    pickupCatches: comesAlong ? catchOf(stays) : null,
    still: found.still,
    raises: found.raises,
    complete: found.complete,
  });
};

type Out = Pick<Removal, 'still' | 'raises' | 'complete'>;

/** Whether undoing the pickup spares raise, or a turn of the pan, worth the work. */
const worth = (along: Out, stays: Out): boolean => {
  const need = ({ still, raises }: Out): number =>
    still !== null && still.freedom !== 'pitched' ? 0 : (raises[0]?.raised ?? Number.POSITIVE_INFINITY);
  return need(along) < need(stays) - WORTH || (along.still !== null && stays.still === null);
};

/** The part of the pan that a pickup on the engine first meets on its way down. */
const catchOf = (stays: RemovalScene): string | null => {
  const { down, binds } = straightDrop(stays, AT_REST);
  return binds === null ? null : stays.part({ ...BOLTED, down }, AT_REST, binds);
};

type Tell = (share: number) => void;

/** What tells of a stretch of the work, from one that tells of the whole. */
const shareOf =
  (tell: Tell) =>
  (from: number, to: number): Tell =>
  (share) =>
    tell(from + (to - from) * share);

const plainWay = (scene: RemovalScene, tell: Tell): Out => {
  const { legs, complete } = wayOut(scene, AT_REST, 'side view', tell);
  return { still: legs === null ? null : { freedom: 'side view', legs }, raises: [], complete };
};

/** Sideways with the engine where it is; else pitched, and every way of raising the engine. */
const freed = (scene: RemovalScene, plain: Out, tell: Tell): Out => {
  const part = shareOf(tell);
  let complete = plain.complete;
  const tried = (freedom: Freedom, told: Tell): Removal['still'] => {
    const out = wayOut(scene, AT_REST, freedom, told);
    complete &&= out.complete;
    return out.legs === null ? null : { freedom, legs: out.legs };
  };
  const aside = tried('sideways', part(0, 0.15));
  if (aside !== null) return { still: aside, raises: [], complete };
  const still = tried('pitched', part(0.15, 0.3));
  const [first, each] = [0.3, 0.7 / scene.jacks.length];
  const raises = scene.jacks.map((jack, i): RaisedWay => {
    const most = jackRoom(scene, jack);
    const least = leastRaise(scene, jack, most.by, part(first + i * each, first + (i + 1) * each));
    complete &&= least.complete;
    const { raised, legs } = least;
    return { jack: jack.name, raised, turned: raised === null ? null : jack.turned(raised), most, legs };
  });
  const rank = ({ raised }: RaisedWay): number => raised ?? Number.MAX_VALUE;
  return { still, raises: [...raises].sort((a, b) => rank(a) - rank(b)), complete };
};
