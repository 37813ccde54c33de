// A new inspection to fill in: the points that were read last time, in order along the conveyor, each as a row whose value
// is still to be written. The date and meter are what the person said; nothing here reads a clock.

import { URI, Utils } from 'vscode-uri';
import type { DraftInspection, DraftInspectionAnswer } from '../../protocol/messages.js';
import { split } from '../expected.js';
import type { Session } from '../session.js';
import { conveyorOf } from '../model-at.js';
import { newestRecord, type NewestRecord } from '../newest-record.js';
import { pointNames } from '../point-names.js';
import { seenWords } from '../hover/records.js';

export function draft(
  session: Session,
  { conveyor: name, date, meter }: DraftInspection,
): DraftInspectionAnswer {
  const wanted = split(name);
  const [declared] = session.symbols().conveyorOf(wanted);
  const last = newestRecord(session, wanted, 'inspection');
  const home = last?.uri ?? declared?.document.uri ?? session.documents()[0]?.uri ?? '';
  const rows = previousRows(session, name);
  const width = Math.max(0, ...rows.map((row) => row.spot.length));
  const lines = [
    `inspection ${name} ${date} meter ${meter} {`,
    '  by ""',
    '  view downstream',
    '',
    ...(rows.length > 0
      ? [
          '  // Write what was seen after each point: thickness 8.4 mm, colour ivory, trough showing, or not seen "why".',
          '  // Take the // away from the rows that you fill in; a row left as it is says nothing about its point.',
        ]
      : []),
    ...rows.map(({ spot, seen }) =>
      `  // ${spot.padEnd(width)}  ${seen === '' ? '' : `(last time: ${seen})`}`.trimEnd(),
    ),
    '}',
    '',
  ];
  return {
    fileName: nameLike(last, date) ?? `${name}-${date}.trough`,
    folder: home === '' ? '' : Utils.dirname(URI.parse(home)).toString(),
    text: lines.join('\n'),
  };
}

/** Named like its neighbour: where the file of the last inspection has its day in its name, the new one has the new day there. */
function nameLike(last: NewestRecord | undefined, date: string): string | undefined {
  const neighbour = last && Utils.basename(URI.parse(last.uri));
  return neighbour?.includes(last?.date ?? '') ? neighbour.replace(last?.date ?? '', date) : undefined;
}

interface Row {
  readonly spot: string;
  readonly seen: string;
}

function previousRows(session: Session, name: string): Row[] {
  const [declaration] = session.symbols().conveyorOf(split(name));
  const estate = session.estate();
  const conveyor = conveyorOf(session, declaration);
  if (!declaration) return [];
  if (!conveyor) {
    return session
      .symbols()
      .declared('point')
      .filter(({ owner }) => owner === declaration)
      .flatMap(pointNames)
      .map((spot) => ({ spot, seen: '' }));
  }
  const last = estate.inspections
    .filter((each) => each.conveyor === conveyor)
    .sort((a, b) => a.date.day - b.date.day)
    .at(-1);
  const newest = new Map<number, number>(); // by place, the row of its newest reading; rows are in order of date
  const lastTime = new Set<number>();
  for (let row = 0; row < estate.readings.count; row += 1) {
    const place = estate.readings.place[row] ?? -1;
    if (estate.places[place]?.conveyor !== conveyor || estate.readings.bench.has(row)) continue;
    newest.set(place, row);
    if (estate.inspections[estate.readings.inspection[row] ?? -1] === last) lastTime.add(place);
  }
  const places = estate.places.flatMap((place, index) => {
    if (place.conveyor !== conveyor) return [];
    const row = newest.get(index);
    const inspection =
      row === undefined ? undefined : estate.inspections[estate.readings.inspection[row] ?? -1];
    return [
      {
        place,
        seen: row === undefined || !inspection ? '' : seenWords(estate, row, inspection),
        lastTime: lastTime.has(index),
      },
    ];
  });
  return places
    .filter((each) => each.place.declared || each.lastTime)
    .sort((a, b) => a.place.at - b.place.at)
    .map(({ place, seen }) => ({
      spot: place.declared ? place.name : `at ${place.name.replace(/ (\S+)$/, ' clock $1')}`,
      seen,
    }));
}
