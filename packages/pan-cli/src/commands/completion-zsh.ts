import type { CommandSpec, OptionSpec } from './command.js';

type Options = Readonly<Record<string, OptionSpec>>;

/** Text as one word of a zsh script. */
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** A description inside a specification, where brackets and colons have a meaning. */
const plain = (text: string): string => text.replace(/[\\[\]:]/g, (sign) => `\\${sign}`);

const optionSpec = ([name, { kind, what, choices }]: readonly [string, OptionSpec]): string => {
  const words = choices === undefined ? '_files' : `(${choices.join(' ')})`;
  return quoted(`--${name}[${plain(what)}]${kind === 'flag' ? '' : `:${plain(name)}:${words}`}`);
};

/** A zsh script that completes commands, options with what they do, the words an option may be, and files. */
export const zshCompletion = (commands: readonly CommandSpec[], shared: Options): string => {
  const branch = (command: CommandSpec): string => {
    const word = command.words === undefined ? '_files' : `(${command.words.join(' ')})`;
    const specs = [
      quoted(`1:${plain(command.file)}:${word}`),
      ...Object.entries({ ...command.options, ...shared }).map(optionSpec),
      quoted('--help[Show help]'),
    ];
    return `    ${command.name})\n      _arguments \\\n        ${specs.join(' \\\n        ')} ;;`;
  };
  return `#compdef pan
# Completion of pan for zsh: keep it as _pan in a folder of fpath, or source it after compinit.
_pan() {
  local -a commands
  commands=(
    ${commands.map(({ name, what }) => quoted(`${name}:${plain(what)}`)).join('\n    ')}
  )
  if (( CURRENT == 2 )); then
    _describe -t commands 'command' commands
    return
  fi
  local command=\${words[2]}
  shift words
  (( CURRENT-- ))
  case $command in
${commands.map(branch).join('\n')}
  esac
}
if [ "\${funcstack[1]}" = _pan ]; then _pan "$@"; else compdef _pan pan; fi
`;
};
