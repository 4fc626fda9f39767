import type { CommandSpec, OptionSpec } from './command.js';
import { newOptions } from './new-options.js';

const DESIGN_FILE = 'a design file';

/** Options every command takes. */
export const sharedOptions: Readonly<Record<string, OptionSpec>> = {
  json: { kind: 'flag', what: 'Print JSON for a program instead of text for people' },
  units: { kind: 'text', what: 'Units of the printed text', choices: ['mm', 'in'] },
};

const rpmOption: OptionSpec = {
  kind: 'text',
  what: 'Engine speed, rev/min, where the design gives held-up oil or pump flow by it',
};

export const commands: readonly CommandSpec[] = [
  {
    name: 'new',
    what: 'Write a commented starter design, from an example or from ten measurements',
    file: 'the name of a file to write',
    options: {
      ...newOptions,
      replace: { kind: 'flag', what: 'Replace the file if there is one' },
    },
    examples: [
      ['pan new my-pan.yaml --from demo', 'A starter with every key explained'],
      ['pan new my-pan.yaml', 'Asks ten measurements and writes a first design'],
    ],
    load: async () => (await import('./new.js')).newDesign,
  },
  {
    name: 'check',
    what: 'Say whether the pan works, what stops it first and what to change',
    file: DESIGN_FILE,
    options: {},
    examples: [
      ['pan check my-pan.yaml', 'The verdict, then every check'],
      ['pan check my-pan.yaml --json > check.json', 'The same for a program'],
    ],
    load: async () => (await import('./check.js')).check,
  },
  {
    name: 'level',
    what: 'Show where the oil lies at rest or in a manoeuvre, and whether the mouth is covered',
    file: DESIGN_FILE,
    options: {
      'in-pan': { kind: 'text', what: 'Oil in the pan, as "5 L" or "5 US qt"; else what the design pours' },
      braking: { kind: 'text', what: 'Braking: bare is g, or "35 deg" of oil slope' },
      accelerating: { kind: 'text', what: 'Accelerating: bare is g, or "20 deg"' },
      'left-turn': { kind: 'text', what: 'Turning left: bare is g, or "40 deg"' },
      'right-turn': { kind: 'text', what: 'Turning right: bare is g, or "40 deg"' },
      rpm: rpmOption,
    },
    examples: [
      ['pan level my-pan.yaml --in-pan "5 L"', 'Five litres, standing still'],
      ['pan level my-pan.yaml --braking 0.7 --right-turn 0.8', 'Trail braking into a right-hander'],
    ],
    load: async () => (await import('./level.js')).level,
  },
  {
    name: 'limits',
    what: 'Find how hard it can be driven each way before the mouth bares, and what lifts the worst',
    file: DESIGN_FILE,
    options: {
      directions: { kind: 'text', what: 'Directions round the car, evenly spread; 72 unless told' },
      'in-pan': { kind: 'text', what: 'Oil in the pan, as "5 L" or "5 US qt"; else what runs in it' },
      rpm: rpmOption,
      svg: { kind: 'text', what: 'Also draw the limits to this file' },
      replace: { kind: 'flag', what: 'Replace that file if there is one' },
    },
    examples: [
      ['pan limits my-pan.yaml', 'The worst direction first, then all of them as a picture'],
      ['pan limits my-pan.yaml --in-pan "6 L" --svg limits.svg', 'Another fill, and a drawing'],
    ],
    load: async () => (await import('./limits.js')).limits,
  },
  {
    name: 'surge',
    what: 'Follow the oil through each manoeuvre, or a log, and say for how long the mouth stays covered',
    file: DESIGN_FILE,
    options: {
      case: { kind: 'text', what: 'One manoeuvre of the design, by its name; else all of them' },
      preset: {
        kind: 'text',
        what: 'The manoeuvres of a kind of driving instead',
        choices: ['street', 'autocross', 'track', 'slicks', 'drag', 'rally'],
      },
      log: { kind: 'text', what: 'A logger’s export instead: columns of time and acceleration' },
      time: { kind: 'text', what: 'Name of its column of time, in s' },
      forward: { kind: 'text', what: 'Its column of forward acceleration; --forward=-NAME turns the sign' },
      left: { kind: 'text', what: 'Its column of acceleration to the left; --left=-NAME turns the sign' },
      'log-unit': { kind: 'text', what: 'What those are in; g unless told', choices: ['g', 'm/s2'] },
      fill: { kind: 'text', what: 'Oil poured in, as "7 L"; else what the design pours' },
      'oil-temp': { kind: 'text', what: 'Oil temperature in °C, or "210 F"; 100 unless told' },
      rpm: rpmOption,
      return: {
        kind: 'text',
        what: 'Where oil comes back from the engine: front, rear, throws, a bung by name, or x,y,z in mm; throws unless told',
      },
      delay: {
        kind: 'text',
        what: 'Mean time oil spends in the engine, as "2 s"; else held up over pump flow',
      },
      'door-leak': {
        kind: 'text',
        what: 'Share of a shut door’s area that leaks, as "5 %"; 2 % unless told',
      },
      svg: { kind: 'text', what: 'Also draw the oil over the mouth against time to this file' },
      csv: { kind: 'text', what: 'Also write every column of the runs to this file' },
      replace: { kind: 'flag', what: 'Replace those files if they are there' },
    },
    examples: [
      ['pan surge my-pan.yaml', 'Which manoeuvre bares the mouth first, after how long'],
      [
        'pan surge my-pan.yaml --log lap.csv --time Time --forward Long --left=-Lat --csv oil.csv',
        'A logged lap whose sideways column counts to the right',
      ],
    ],
    load: async () => (await import('./surge.js')).surge,
  },
  {
    name: 'fit',
    what: 'Say how near the pan and engine come to the car, where, and how far the engine can move',
    file: DESIGN_FILE,
    options: {
      'fore-aft': {
        kind: 'text',
        what: 'How far to look fore and aft for room, as "60 mm"; 100 mm unless told',
      },
      height: { kind: 'text', what: 'How far to look up and down for room; 100 mm unless told' },
      'nose-up': { kind: 'text', what: 'Other tilts of the engine to look at, as "1, 2, 4 deg"' },
      svg: { kind: 'text', what: 'Also draw the room to move to this file' },
      replace: { kind: 'flag', what: 'Replace that file if there is one' },
    },
    examples: [
      ['pan fit my-pan.yaml', 'What binds first, every clearance, and the room to move'],
      ['pan fit my-pan.yaml --height "40 mm" --svg room.svg', 'A closer look at the height, and a drawing'],
    ],
    load: async () => (await import('./fit.js')).fit,
  },
  {
    name: 'dipstick',
    what: 'Say where the dipstick’s marks go, what a slope does to it, and print them at full size',
    file: DESIGN_FILE,
    options: {
      svg: { kind: 'text', what: 'Also write the marks at full size to this file, to lay beside the stick' },
      replace: { kind: 'flag', what: 'Replace that file if there is one' },
    },
    examples: [
      ['pan dipstick my-pan.yaml', 'Marks, litres and quarts down the stick'],
      ['pan dipstick my-pan.yaml --svg strip.svg', 'The same as a strip to print at 100 %'],
    ],
    load: async () => (await import('./dipstick.js')).dipstick,
  },
  {
    name: 'size',
    what: 'Choose what is left free so that the pan passes and is best at what matters, or say what contradicts what',
    file: DESIGN_FILE,
    options: {
      free: {
        kind: 'text',
        what: 'Values to choose, with ranges: "sump depth: 140..180, fill: 6 L..8 L, mouth x"; else the usual ones',
      },
      for: {
        kind: 'text',
        what: 'What matters: least depth, most oil, most g, least metal, cheapest; least change unless told',
      },
      hold: { kind: 'text', what: 'Checks that only warn and are to hold as well, by id, with commas' },
      trade: {
        kind: 'flag',
        what: 'Also up to five designs from the shallowest to the one that stands most g',
      },
      baffles: {
        kind: 'flag',
        what: 'Instead: the fewest baffles that hold every case in the pan as it stands',
      },
      out: { kind: 'text', what: 'Write the design to this file, comments kept' },
      svg: { kind: 'text', what: 'Draw the trade to this file' },
      seed: {
        kind: 'text',
        what: 'Start of the search, a whole number; the same seed gives the same answer',
      },
      time: { kind: 'text', what: 'Stop after this long, as "60 s", with the best so far, as Ctrl-C does' },
      replace: { kind: 'flag', what: 'Replace those files if they are there' },
    },
    examples: [
      [
        'pan size my-pan.yaml --for "least depth" --out sized.yaml',
        'The shallowest pan that passes every check',
      ],
      [
        'pan size my-pan.yaml --free "fill, lid rear: 60..120"',
        'The smallest change of two values that cures it',
      ],
    ],
    load: async () => (await import('./size.js')).size,
  },
  {
    name: 'cut',
    what: 'Write the cut set: parts to cut, fold and weld, mock-up, lists and cautions',
    file: DESIGN_FILE,
    options: {
      out: { kind: 'text', what: 'Folder to write the set into' },
      paper: {
        kind: 'text',
        what: 'Paper for templates and drawings; A4 unless told',
        choices: ['A4', 'Letter'],
      },
      'despite-fails': { kind: 'flag', what: 'Write it although a check fails; every part then says so' },
      replace: { kind: 'flag', what: 'Replace a set written before; files edited in it are kept beside it' },
    },
    examples: [
      ['pan cut my-pan.yaml --out my-pan-cut', 'Everything a shop needs, in one folder'],
      ['pan cut my-pan.yaml --out trial --despite-fails', 'A marked set for a first look'],
    ],
    load: async () => (await import('./cut.js')).cut,
  },
  {
    name: 'inspect',
    what: 'Hold any drawing against the shop’s rules before it is paid for',
    file: 'a DXF file',
    options: {
      thickness: {
        kind: 'text',
        what: 'Thickness of the sheet, as "3 mm"; else holes and gaps are only measured',
      },
      layer: { kind: 'text', what: 'Layer that is cut; else "through", or all of them where there is none' },
    },
    examples: [
      ['pan inspect bracket.dxf --thickness "3 mm"', 'Is it closed, clean and wide enough to cut'],
      ['pan inspect bracket.dxf --layer CUT', 'Look at one layer only'],
    ],
    load: async () => (await import('./inspect.js')).inspect,
  },
  {
    name: 'report',
    what: 'Write one page to look at: the pan turned, loaded and taken apart, with every number behind it',
    file: DESIGN_FILE,
    options: {
      out: { kind: 'text', what: 'The HTML file to write; needed' },
      replace: { kind: 'flag', what: 'Replace the file if there is one' },
    },
    examples: [
      ['pan report my-pan.yaml --out my-pan.html', 'One file for the friend who welds; needs no network'],
      ['pan report my-pan.yaml --out my-pan.html --replace', 'The same again after a change'],
    ],
    load: async () => (await import('./report.js')).report,
  },
  {
    name: 'view',
    what: 'Show the same page live on this machine; it comes again when the file is saved',
    file: DESIGN_FILE,
    options: {
      port: { kind: 'text', what: 'Port to serve it on; else any that is free' },
    },
    examples: [
      ['pan view my-pan.yaml', 'Prints an address to open; Ctrl-C ends it'],
      ['pan view my-pan.yaml --port 8080', 'The same on a port of your choice'],
    ],
    load: async () => (await import('./view.js')).view,
  },
  {
    name: 'worksheet',
    what: 'Print pages for the garage: what to measure, from where, how well, with boxes to fill in',
    file: 'a design file, where there is one yet',
    mayStandAlone: true,
    options: {
      out: { kind: 'text', what: 'PDF file to write' },
      paper: { kind: 'text', what: 'Paper; A4 unless told', choices: ['A4', 'Letter'] },
      replace: { kind: 'flag', what: 'Replace that file if there is one' },
    },
    examples: [
      ['pan worksheet --out measure.pdf', 'Every measurement, in the order of the design file'],
      [
        'pan worksheet my-pan.yaml --out measure.pdf',
        'With the distances to take between holes known roughly',
      ],
    ],
    load: async () => (await import('./worksheet.js')).worksheetCommand,
  },
  {
    name: 'completion',
    what: 'Print a script that completes commands and options in your shell',
    file: 'the name of a shell: bash or zsh',
    words: ['bash', 'zsh'],
    options: {},
    examples: [
      ['pan completion bash >> ~/.bashrc', 'Complete with Tab in every new bash'],
      ['pan completion zsh > ~/.zfunc/_pan', 'The same for zsh, in a folder of its fpath'],
    ],
    load: async () => (await import('./completion.js')).completion,
  },
];
