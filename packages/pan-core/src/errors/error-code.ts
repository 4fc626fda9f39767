/**
 * Everything that can be wrong, by code, with what it means. `input-*`: the design file or an option; `shape-*`: a
 * pan that cannot exist; `oil-*` and `sheet-*`: what that pan cannot hold or be cut from; `file-*`: reading or
 * writing; `internal`: a fault of this program.
 */
export const errorCodes = Object.freeze({
  'input-syntax': 'The file is no YAML, or uses something a design has no need of, such as aliases.',
  'input-key': 'A key that is not known in this place, or that may not stand beside another.',
  'input-missing': 'A value that must be given is missing or empty.',
  'input-type': 'A value of another kind than the key takes.',
  'input-unit': 'A unit that is not known, does not fit, or could mean two things.',
  'input-range': 'A value outside the range that can be meant.',
  'input-size': 'Too much or too little: entries, characters, keys or bytes.',
  'input-option':
    'A word or option of the command line that is unknown, missing, repeated or has no meaning.',
  'shape-floor': 'A floor line that no pan can have.',
  'shape-width': 'Widths of the pan that do not close round its floor.',
  'shape-rail': 'A rail that crosses itself, doubles back or cannot take its holes.',
  'shape-wing': 'A wing that stands nowhere on the sump, or is warped.',
  'shape-notch': 'A clearance cut-out that leaves no pan, or is open where it must be closed.',
  'shape-baffle': 'A lid, wall or door that does not lie in the pan.',
  'shape-mouth': 'A pickup mouth that is outside the oil or cut by a baffle.',
  'shape-fold': 'A fold that cannot be made in this sheet.',
  'shape-closed-room': 'A room that oil can neither enter nor leave.',
  'shape-dipstick': 'A dipstick that does not reach the oil.',
  'oil-quantity': 'More or less oil than the pan or the engine can hold.',
  'sheet-cut': 'A part whose outline cannot be cut.',
  'file-read': 'A file that is not there, cannot be read or is too large.',
  'file-write': 'A file or folder that could not be written; what stood there before still stands.',
  'file-edited': 'A file that was edited since it was written, and is kept.',
  internal: 'A fault in the program itself. Nothing was decided; please report it with the design file.',
} as const);

/** What can be wrong with an input or a shape. */
export type ErrorCode = keyof typeof errorCodes;
