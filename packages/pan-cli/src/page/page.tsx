import type { ComponentType } from 'preact';
import { plain } from '../terminal/plain.js';
import { Assumed } from './assumed.js';
import { Cautions } from './cautions.js';
import { Checks } from './checks.js';
import { Choice } from './choice.js';
import { Clearances } from './clearances.js';
import { Hatches } from './hatches.js';
import { Limits } from './limits.js';
import { OutlineLines } from './outline-views.js';
import { Pools } from './pools.js';
import { Sheets } from './sheets.js';
import { Solid } from './solid.js';
import { type PageState, StateProvider } from './state.js';
import { Surge } from './surge.js';
import { Verdict } from './verdict.js';
import { Weld } from './weld.js';

interface SectionEntry {
  readonly id: string;
  readonly title: string;
  readonly View: ComponentType;
}

/** The sections in the order a reader meets them; the first screen stands before them. */
const sections: readonly SectionEntry[] = [
  { id: 'solid', title: 'The pan', View: Solid },
  { id: 'pools', title: 'Oil under load', View: Pools },
  { id: 'limits', title: 'What bares the mouth', View: Limits },
  { id: 'surge', title: 'Surge', View: Surge },
  { id: 'clearances', title: 'Clearances', View: Clearances },
  { id: 'sheets', title: 'Parts laid flat', View: Sheets },
  { id: 'weld', title: 'Weld order', View: Weld },
  { id: 'checks', title: 'Every number', View: Checks },
  { id: 'cautions', title: 'Cautions', View: Cautions },
  { id: 'assumed', title: 'Assumed', View: Assumed },
];

const UnitsSwitch = ({ state }: { state: PageState }) => (
  <Choice
    class="units"
    legend="Units"
    name="units"
    options={[
      ['mm', 'mm'],
      ['in', 'in'],
    ]}
    chosen={state.units.value}
    choose={(unit) => {
      state.units.value = unit;
    }}
  />
);

/** The whole page, the same in Node and in the browser. */
export const Page = ({ state }: { state: PageState }) => (
  <StateProvider value={state}>
    <Hatches />
    <OutlineLines />
    <a class="skip" href="#verdict">
      To the verdict
    </a>
    <header>
      <h1>{plain(state.data.title, 200)}</h1>
      <UnitsSwitch state={state} />
    </header>
    <nav aria-label="Sections">
      <ul>
        {sections.map(({ id, title }) => (
          <li key={id}>
            <a href={`#${id}`}>{title}</a>
          </li>
        ))}
      </ul>
    </nav>
    <main>
      <Verdict />
      {sections.map(({ id, title, View }) => (
        <section key={id} id={id} aria-labelledby={`${id}-h`}>
          <h2 id={`${id}-h`}>{title}</h2>
          <View />
        </section>
      ))}
    </main>
    <footer>
      <p>Pan {state.data.version}. This page sends and fetches nothing.</p>
    </footer>
  </StateProvider>
);
