import type { CommandSpec, OptionSpec } from './command.js';

type Options = Readonly<Record<string, OptionSpec>>;

/** One branch of a bash `case`. */
const branch = (pattern: string, words: readonly string[]): string =>
  `    ${pattern}) words='${words.join(' ')}' ;;`;

/**
 * A bash script that completes commands, options and the words an option may be; where anything may stand, names
 * of files. An option that is there already is not offered again.
 */
export const bashCompletion = (commands: readonly CommandSpec[], shared: Options): string => {
  const optionsOf = (command: CommandSpec): Options => ({ ...command.options, ...shared });
  const values = commands.flatMap((command) =>
    Object.entries(optionsOf(command)).flatMap(([name, { choices }]) =>
      choices === undefined ? [] : branch(`${command.name}:--${name}`, choices),
    ),
  );
  const texts = commands.flatMap((command) =>
    Object.entries(optionsOf(command))
      .filter(([, { kind, choices }]) => kind === 'text' && choices === undefined)
      .map(([name]) => `${command.name}:--${name}`),
  );
  const options = commands.map((command) =>
    branch(
      `${command.name}:-*`,
      [...Object.keys(optionsOf(command)), 'help'].map((name) => `--${name}`),
    ),
  );
  const words = commands.flatMap((command) =>
    command.words === undefined ? [] : branch(`${command.name}:*`, command.words),
  );
  return `# Completion of pan for bash: source it, or put it where bash-completion looks.
_pan() {
  local current="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD - 1]}" command="\${COMP_WORDS[1]}"
  local words='' word given offered=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W '${commands.map(({ name }) => name).join(' ')} --help --version' -- "$current"))
    return
  fi
  if [ "$current" = '=' ]; then current=''; fi
  if [ "$before" = '=' ]; then before="\${COMP_WORDS[COMP_CWORD - 2]}"; fi
  case "$command:$before" in
${values.join('\n')}
    ${texts.join('|')}) return ;;
  esac
  if [ -z "$words" ]; then
    case "$command:$current" in
${[...options, ...words].join('\n')}
    esac
  fi
  for word in $words; do
    for given in "\${COMP_WORDS[@]:2}"; do
      if [ "$given" = "$word" ] && [ "$given" != "$current" ]; then continue 2; fi
    done
    offered="$offered $word"
  done
  COMPREPLY=($(compgen -W "$offered" -- "$current"))
}
complete -o default -F _pan pan
`;
};
