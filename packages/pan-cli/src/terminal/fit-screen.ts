import type { FitReport, FitRow, Status } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { assumptionLines, unknownLines } from './assumptions.js';
import { clearanceRows, placeWords } from './clearance-rows.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { plain, started } from './plain.js';
import { pair, sentence } from './quantity.js';
import { removalLines } from './removal-lines.js';
import { roomLines, shiftWords } from './room-lines.js';
import { throwRows } from './throw-rows.js';
import { wrap } from './wrap.js';

const VERDICT: Readonly<Record<Status, string>> = {
  fail: 'DOES NOT FIT YET',
  unknown: 'MEASURE FIRST',
  warn: 'FITS ON PAPER, WITH WARNINGS',
  pass: 'FITS ON PAPER',
};

/** The binding constraint in one line: what, by how much, and what to do. */
const headline = (report: FitReport, screen: Screen): string => {
  const verdict = VERDICT[report.verdict];
  const { first, tightest } = report;
  if (first === null) {
    return tightest === null ? verdict : `${verdict}: ${tightestWords(tightest, screen)}`;
  }
  if (first.worst_mm === null) return `${verdict}: ${plain(first.name, 60)} is not known`;
  const [is, wants] = pair(first.worst_mm, first.allowed_mm, 'mm', screen.units);
  return `${verdict}: ${plain(first.name, 60)} ${is} at its worst, wants ${wants}`;
};

const tightestWords = (tightest: FitRow, { units }: Screen): string => {
  const [is, wants] = pair(tightest.worst_mm ?? 0, tightest.allowed_mm, 'mm', units);
  return `tightest is ${plain(tightest.name, 60)}, ${is} at its worst where ${wants} is wanted`;
};

/** Where the engine would have to go, when that cures everything at once. */
const moveWords = ({ room }: FitReport, { units }: Screen): string => {
  if (room === null || room.clear || room.nearest === null) return '';
  const mm = (value: number): string => sentence(`${value.toFixed(1)} mm`, units);
  return `Or the engine ${shiftWords(room.nearest, mm)}: there everything clears.`;
};

const firstLines = (report: FitReport, first: FitRow, screen: Screen): string[] => {
  const place = first.worst_at === null ? '' : ` Put a finger on ${placeWords(first.worst_at, screen)}.`;
  const move = moveWords(report, screen);
  return [
    ...blockText('', started(sentence(plain(first.because), screen.units)) + place, screen.width),
    ...(first.try === ''
      ? []
      : blockText('> ', started(sentence(plain(first.try), screen.units)), screen.width).map(
          ink(screen.colour).strong,
        )),
    ...(move === '' ? [] : blockText('> ', move, screen.width).map(ink(screen.colour).strong)),
  ];
};

/** What binds first with what to do, every clearance, what decides, and what the figures rest on. */
export const fitScreen = (report: FitReport, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (text: string): string[] => blockText('', sentence(plain(text), screen.units), screen.width);
  const item = (text: string): string[] => blockText('- ', sentence(plain(text), screen.units), screen.width);
  const { first, engine_moves } = report;
  const lines = [
    ...wrap(headline(report, screen), screen.width).map((text) =>
      report.verdict === 'pass' ? paint.strong(text) : paint.status(report.verdict, text),
    ),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...(first === null ? [] : block('FIRST', firstLines(report, first, screen), paint.heading)),
    ...block('CLEARANCE', clearanceRows(report.clearances, screen), paint.heading),
    ...block('RODS', throwRows(report, screen), paint.heading),
    ...block(
      'MOVING',
      [
        ...say(
          engine_moves === ''
            ? 'The engine stands still in this design.'
            : `The engine moves: ${engine_moves}.`,
        ),
        ...say(report.guarantee),
      ],
      paint.heading,
    ),
    ...(report.room === null ? [] : block('ROOM', roomLines(report.room, screen), paint.heading)),
    ...(report.removal === null ? [] : block('OUT', removalLines(report.removal, screen), paint.heading)),
    ...block(
      'MEASURE',
      report.measure_first.flatMap(({ says }) => item(says)),
      paint.heading,
    ),
    ...block('UNCHECKED', report.not_checked.flatMap(item), paint.heading),
    ...block('NOT KNOWN', unknownLines(report.unknown).flatMap(item), paint.heading),
    ...block('ASSUMED', assumptionLines(report.assumed).flatMap(item), paint.heading),
    ...block(
      'REMEMBER',
      report.sayings.flatMap((saying) => say(`${saying}.`)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
