import { csv, type SurgeReport } from 'pan-core';

/** Every case's series as columns with their units, one case after the other. */
export const surgeCsv = ({ cases }: SurgeReport): string => {
  const rooms = cases[0]?.series.rooms.map((room) => room.name) ?? [];
  const head = [
    'case',
    'time_s',
    'forward_g',
    'left_g',
    'submergence_mm',
    'still_submergence_mm',
    'mouth_bay_L',
    'front_deg',
    'left_deg',
    'in_engine_L',
    ...rooms.map((name) => `${name} L`),
  ];
  const rows = cases.flatMap(({ name, series }) =>
    series.time_s.map((t, i): (string | number)[] => [
      name,
      t,
      ...[
        series.forward_g,
        series.left_g,
        series.submergence_mm,
        series.still_submergence_mm,
        series.mouth_bay_L,
        series.front_deg,
        series.left_deg,
        series.in_engine_L,
        ...series.rooms.map((room) => room.volume_L),
      ].map((column) => column[i] ?? ''),
    ]),
  );
  return csv([head, ...rows]);
};
