import { usePage } from './state.js';

/** What can hurt someone or ruin the engine, in the words that every file carries. */
export const Cautions = () => (
  <ul class="cautions">
    {usePage().data.cautions.map((text) => (
      <li key={text}>{text}</li>
    ))}
  </ul>
);
