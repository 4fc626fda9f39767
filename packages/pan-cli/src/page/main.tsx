import { hydrate } from 'preact';
import type { PageData } from './data.js';
import { followFile, restoreView } from './live.js';
import { Page } from './page.js';
import { type PageState, pageState } from './state.js';

const open = (): PageState | null => {
  const root = document.getElementById('page');
  const text = document.getElementById('data')?.textContent;
  if (root === null || text == null) return null;
  const data: PageData = JSON.parse(text);
  const state = pageState(data);
  hydrate(<Page state={state} />, root);
  document.documentElement.dataset.live = 'yes';
  return state;
};

const watched = document.documentElement.dataset.revision !== undefined;
const state = open();
if (watched && state !== null) restoreView(state);
if (watched) followFile(state);
