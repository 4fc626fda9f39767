import type { PageState } from './state.js';

/** What the server says: load again, or what is wrong with the file. */
type Word =
  | { readonly kind: 'at'; readonly revision: number }
  | { readonly kind: 'again' }
  | { readonly kind: 'working' }
  | { readonly kind: 'fault'; readonly sentences: readonly string[] };

/** Where the reader's own settings wait for the page to come again. */
const KEPT = 'pan-view';
const KEYS = ['forward', 'left', 'grade', 'inPan', 'sectionAt', 'spread', 'weldStep', 'surgeCase'] as const;

/** Camera, controls and units as they stand. */
const keep = (state: PageState): void => {
  // Oil that nobody set follows the file.
  const unset = state.inPan.value === state.data.check.oil.running_in_pan_L;
  const numbers = Object.fromEntries(
    KEYS.filter((key) => key !== 'inPan' || !unset).map((key) => [key, state[key].value]),
  );
  const { units, section, gating, clearance, camera } = state;
  const rest = {
    units: units.value,
    section: section.value,
    gating: gating.value,
    clearance: clearance.value,
    camera: camera.value,
  };
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ ...numbers, ...rest }));
  } catch {
    // A browser that keeps nothing opens the page as new.
  }
};

const oneOf = <T extends string>(value: unknown, all: readonly T[]): T | undefined =>
  all.find((one) => one === value);

/** Puts back what `keep` kept, as far as it still means something. */
export const restoreView = (state: PageState): void => {
  let kept: Readonly<Record<string, unknown>> = {};
  try {
    kept = JSON.parse(sessionStorage.getItem(KEPT) ?? '{}');
    sessionStorage.removeItem(KEPT);
  } catch {
    return;
  }
  for (const key of KEYS) {
    const value = kept[key];
    if (typeof value === 'number' && Number.isFinite(value)) state[key].value = value;
  }
  state.units.value = oneOf(kept.units, ['mm', 'in']) ?? state.units.value;
  state.gating.value = oneOf(kept.gating, ['held', 'settled']) ?? state.gating.value;
  state.section.value = oneOf(kept.section, ['none', 'along', 'across', 'level']) ?? state.section.value;
  if (typeof kept.clearance === 'string') state.clearance.value = kept.clearance;
  const camera = Array.isArray(kept.camera) ? kept.camera.filter(Number.isFinite) : [];
  if (camera.length === 6) state.camera.value = camera;
};

const showFault = (sentences: readonly string[] | null): void => {
  document.getElementById('fault')?.remove();
  if (sentences === null) return;
  const box = document.createElement('div');
  box.id = 'fault';
  box.className = 'fault';
  box.setAttribute('role', 'alert');
  box.textContent = sentences.join('\n');
  document.body.prepend(box);
};

/** Follows the file: comes again when it was saved, says over the page what is wrong with it. */
export const followFile = (state: PageState | null): void => {
  const words = new EventSource('changes');
  words.onmessage = ({ data }) => {
    const word: Word = JSON.parse(String(data));
    const old = word.kind === 'at' && `${word.revision}` !== document.documentElement.dataset.revision;
    if (word.kind === 'again' || old) {
      if (state !== null) keep(state);
      location.reload();
    }
    if (word.kind === 'fault') showFault(word.sentences);
    document.documentElement.dataset.working = word.kind === 'working' ? 'yes' : 'no';
  };
  words.onerror = () => showFault(['pan view has stopped: this is the page as it last was.']);
  words.onopen = () => showFault(null);
};
