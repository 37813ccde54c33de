// A machine driven at both ends declares one drive: a motor, a gearbox or a coupling that is said to be at the other end is another one,
// and neither answers, takes over or closes what stands open of its fellow.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { followUp } from '../../../src/domain/conditions/follow-up.js';
import { conditionWords } from '../../../src/domain/conditions/kinds.js';
import { driveReadings } from '../../../src/domain/conditions/drive-readings.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${rows.join('\n  ')}\n}`;

// The drive is declared at the head.
function read(...blocks: readonly string[]) {
  const { estate } = analyse([{ uri: 'a.trough', text: inSoundEstate('estate', blocks.join('\n')) }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  return { estate, conveyor };
}

function states(...blocks: readonly string[]): readonly string[] {
  const { estate, conveyor } = read(...blocks);
  return followUp(estate, conveyor).conditions.map(
    ({ last, closed, unanswered }) =>
      `${conditionWords(last.line)}: ${closed ? 'closed' : unanswered ? 'unanswered' : 'open'}`,
  );
}

const hot = look(
  '2024-09-09',
  3600,
  'motor temperature 95 degC at head serious',
  'gearbox oil leak slight at head',
);

test.each([
  [
    'measured there',
    'motor temperature 58 degC at tail',
    ['motor at 95 °C at head: unanswered', 'gearbox oil leak at head: unanswered'],
  ],
  [
    'measured here',
    'motor temperature 58 degC',
    ['motor at 95 °C at head: open', 'gearbox oil leak at head: unanswered'],
  ],
  [
    'measured at the drive',
    'motor temperature 58 degC at drive',
    ['motor at 95 °C at head: open', 'gearbox oil leak at head: unanswered'],
  ],
  [
    'closed there',
    'closed motor temperature at tail',
    ['motor at 95 °C at head: unanswered', 'gearbox oil leak at head: unanswered'],
  ],
  [
    'closed',
    'closed motor temperature',
    ['motor at 95 °C at head: closed', 'gearbox oil leak at head: unanswered'],
  ],
  [
    'the same wrong there',
    'gearbox oil leak serious at tail',
    [
      'motor at 95 °C at head: unanswered',
      'gearbox oil leak at head: unanswered',
      'gearbox oil leak at tail: open',
    ],
  ],
])('%s', (_, row, expected) => {
  expect(states(hot, look('2025-01-13', 5000, row))).toEqual(expected);
});

test('two of one look are two, and work at one leaves the other', () => {
  const both = look('2024-09-09', 3600, 'motor noise slight at head', 'motor noise serious at tail');
  expect(states(both)).toEqual(['motor noise at head: open', 'motor noise at tail: open']);
  expect(states(both, 'serviced DG1 2024-10-07 motor renewed at tail')).toEqual([
    'motor noise at head: open',
    'motor noise at tail: closed',
  ]);
  expect(states(both, look('2025-01-13', 5000, 'closed motor noise at head'))).toEqual([
    'motor noise at head: closed',
    'motor noise at tail: unanswered',
  ]);
});

test('an answer that says no end is of the only one that stands open', () => {
  const far = look('2024-09-09', 3600, 'motor noise serious at tail');
  expect(states(far, look('2025-01-13', 5000, 'closed motor noise'))).toEqual([
    'motor noise at tail: closed',
  ]);
  expect(states(far, 'serviced DG1 2024-10-07 closed motor noise')).toEqual(['motor noise at tail: closed']);
});

test('each has a row of its own among the bearings and gearboxes', () => {
  const { estate, conveyor } = read(hot, look('2025-01-13', 5000, 'motor temperature 58 degC at tail'));
  const rows = driveReadings(historyOf(estate, conveyor), estate.services);
  expect(rows.map(({ part, of, read: all }) => [part, of, all.length])).toEqual([
    ['gearbox', 'oil leak', 1],
    ['motor', 'temperature', 1],
    ['motor at tail', 'temperature', 1],
  ]);
});
