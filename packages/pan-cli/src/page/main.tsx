import { hydrate } from 'preact';
import type { PageData } from './data.js';
import { Page } from './page.js';
import { pageState } from './state.js';

const root = document.getElementById('page');
const text = document.getElementById('data')?.textContent;
if (root !== null && text != null) {
  const data: PageData = JSON.parse(text);
  hydrate(<Page state={pageState(data)} />, root);
  document.documentElement.dataset.live = 'yes';
}
