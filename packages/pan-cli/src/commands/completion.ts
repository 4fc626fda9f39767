import type { Run } from './command.js';
import { bashCompletion } from './completion-bash.js';
import { zshCompletion } from './completion-zsh.js';
import { commands, sharedOptions } from './list.js';

/** Prints the completion script of a shell, made from the list of commands. */
export const completion: Run = async ({ file }, screen) => {
  const script =
    file === 'zsh' ? zshCompletion(commands, sharedOptions) : bashCompletion(commands, sharedOptions);
  screen.write(screen.json ? `${JSON.stringify({ shell: file, script }, null, 2)}\n` : script);
  return 0;
};
