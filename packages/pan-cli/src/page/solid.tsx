import { effect, useSignal } from '@preact/signals';
import { type OpenSurface, openSurfaces, roomsOfAnswer, type Vec3 } from 'pan-core';
import { useEffect, useRef } from 'preact/hooks';
import { plain } from '../terminal/plain.js';
import { Choice } from './choice.js';
import { OutlineViews } from './outline-views.js';
import { type SolidStage, solidStage } from './solid-scene.js';
import { type PageState, type SectionWay, usePage } from './state.js';

const WAYS: Readonly<Record<SectionWay, string>> = {
  none: 'whole',
  along: 'cut along',
  across: 'cut across',
  level: 'cut level',
};
const TURN = Math.PI / 12;
const MOVES: readonly (readonly [string, string, number, number, number])[] = [
  ['←', 'Turn left', -TURN, 0, 1],
  ['→', 'Turn right', TURN, 0, 1],
  ['↑', 'Tip away', 0, TURN, 1],
  ['↓', 'Tip nearer', 0, -TURN, 1],
  ['+', 'Nearer', 0, 0, 1.2],
  ['−', 'Farther', 0, 0, 1 / 1.2],
];

/** Names of the parts that the welding step now marked joins. */
export const markedParts = ({ data, weldStep }: PageState): readonly string[] => {
  const seams = data.weld[weldStep.value - 1]?.seams ?? [];
  const joined = new Set(seams.flatMap(({ between }) => between));
  return data.pan.map(({ name }) => name).filter((name) => joined.has(name));
};

/** Where the torch runs in the welding step now marked. */
export const markedSeams = ({ data, weldStep }: PageState): readonly (readonly Vec3[])[] =>
  (data.weld[weldStep.value - 1]?.seams ?? []).flatMap(({ lines }) => lines.map(({ face }) => face));

/** The oil's tops at the load that the controls stand at. */
const shownOil = ({ system, oil, gating }: PageState): readonly OpenSurface[] => {
  const found = oil.value;
  return found.ok ? openSurfaces(system.model, roomsOfAnswer(found.oil[gating.value])) : [];
};

const Share = ({ id, label, value }: { id: string; label: string; value: PageState['spread'] }) => (
  <div class="slider">
    <label for={id}>{label}</label>
    <input
      id={id}
      type="range"
      min={0}
      max={1}
      step={0.01}
      value={value.value}
      aria-valuetext={`${Math.round(100 * value.value)} percent`}
      onInput={(event) => {
        value.value = Number(event.currentTarget.value);
      }}
    />
  </div>
);

/** The pan to turn, cut and spread among its obstacles; plain views where solids are not drawn, and on paper. */
export const Solid = () => {
  const state = usePage();
  const canvas = useRef<HTMLCanvasElement>(null);
  const stage = useRef<SolidStage | null>(null);
  const drawn = useSignal(false);
  const obstacles = useSignal(true);
  useEffect(() => {
    if (canvas.current === null) return;
    // Without WebGL the plain views stay; asking first keeps the library from complaining.
    if (document.createElement('canvas').getContext('webgl2') === null) return;
    const { camera } = state;
    stage.current = solidStage(canvas.current, state.data, (now) => {
      camera.value = now;
    });
    if (camera.value !== null) stage.current.lookFrom(camera.value);
    drawn.value = true;
    const stop = effect(() =>
      stage.current?.show({
        section: state.section.value,
        sectionAt: state.sectionAt.value,
        spread: state.spread.value,
        clearance: state.clearance.value,
        marked: markedParts(state),
        seams: markedSeams(state),
        obstacles: obstacles.value,
        oil: shownOil(state),
      }),
    );
    return () => {
      stop();
      stage.current?.close();
    };
  }, [state]);
  const chosen = state.clearance.value;
  const words = `The pan among its obstacles${chosen === null ? '' : `, ${plain(chosen)} pointed at`}.`;
  return (
    <>
      <div class={drawn.value ? 'screen-only' : 'not-drawn'}>
        <div class="controls">
          <Choice
            legend="Section"
            name="section"
            options={(Object.keys(WAYS) as SectionWay[]).map((way) => [way, WAYS[way]] as const)}
            chosen={state.section.value}
            choose={(way) => {
              state.section.value = way;
            }}
          >
            <label>
              <input
                type="checkbox"
                checked={obstacles.value}
                onChange={(event) => {
                  obstacles.value = event.currentTarget.checked;
                }}
              />
              obstacles
            </label>
          </Choice>
          <Share id="section-at" label="Where it is cut" value={state.sectionAt} />
          <Share id="spread" label="Parts apart" value={state.spread} />
        </div>
        <div class="stage">
          <canvas ref={canvas} role="img" aria-label={words} />
        </div>
        <p class="moves">
          {MOVES.map(([sign, name, round, over, nearer]) => (
            <button
              key={name}
              type="button"
              aria-label={name}
              title={name}
              onClick={() => stage.current?.turn(round, over, nearer)}
            >
              {sign}
            </button>
          ))}{' '}
          <span class="fine">
            Drag to turn. The oil is as loaded below; a clearance chosen there is drawn here, and so are the
            seams and parts of a welding step.
          </span>
        </p>
      </div>
      <div class={drawn.value ? 'paper-only' : ''}>
        <OutlineViews chosen={[]} at={null} words={words} />
      </div>
    </>
  );
};
