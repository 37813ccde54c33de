// What a reline says while the liner is off and new: its thickness as a whole, the steel below it, findings with their part and
// place. Each reads as it would in a look, and each moves what it should.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { troughState } from '../../../src/domain/conditions/trough.js';
import { fittedThickness } from '../../../src/domain/model/fitted-thickness.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { besideLiner } from '../../../src/generators/remaining-life/parts/beside-liner.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const relined = (...facts: readonly string[]): string =>
  `reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  ${facts.join('\n  ')}\n}`;

function read(text: string) {
  const { estate, findings } = analyse([{ uri: 'e.trough', text: inSoundEstate('estate', text, {}) }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  return { estate, conveyor, history: historyOf(estate, conveyor), codes: findings.map(({ code }) => code) };
}

test('the thickness of all that was fitted counts wherever no point and no panel has its own', () => {
  const { history, conveyor, codes } = read(
    relined('thickness 12.3 mm', 'P1 thickness 12.6 mm', 'fitted panel 1 of run 2 thickness 11.9 mm'),
  );
  expect(codes).not.toContain('TL101');
  const sets = history.linerSets.filter(({ reline }) => reline !== undefined);
  const at = (place: number, name = '') => {
    const set = sets.find(({ from, to }) => from <= place && place <= to);
    return set && fittedThickness(set, { name, at: place, declared: name !== '' }).value;
  };
  const [point] = conveyor.points;
  expect(at(point?.at.value ?? NaN, point?.name)).toBe(12.6);
  const ends = history.linerSets.flatMap(({ measured }) => measured);
  expect(ends.map(({ thickness }) => thickness)).toEqual([11.9]);
  expect(at((ends[0]?.from ?? NaN) + 10)).toBe(11.9);
  expect(at(conveyor.length.value - 50)).toBe(12.3);
});

test('a thickness far from the product is told, one said twice too', () => {
  expect(read(relined('thickness 15.2 mm')).codes).toContain('TL336');
  expect(read(relined('thickness 12.3 mm')).codes).not.toContain('TL336');
  expect(read(relined('thickness 12.1 mm', 'thickness 12.2 mm')).codes).toContain('TL112');
});

test('a plate read during a reline is a plate reading of that day, from whichever side it was seen', () => {
  const during = read(relined('plate at 4.2 m clock 5:00 thickness 3.6 mm ± 0.1 mm "below the joint"'));
  const look = read(
    'inspection DG1 2025-03-10 meter 6200 h {\n  view downstream\n  plate at 4.2 m clock 5:00 thickness 3.6 mm ± 0.1 mm "below the joint"\n}',
  );
  const plain = ({ estate, conveyor }: ReturnType<typeof read>) =>
    troughState(estate, conveyor).places.map(({ at, clock, readings }) => [
      at,
      clock,
      readings.map(({ day, thickness, note }) => [day, thickness, note]),
    ]);
  expect(plain(during)).toEqual(plain(look));
  expect(plain(during)).toHaveLength(1);
  const against = read(relined('view upstream', 'plate at 4.2 m clock 7:00 thickness 3.6 mm'));
  expect(plain(against)[0]?.[1]).toBe('5:00');
  expect(read(relined('plate at 99 m thickness 3.6 mm')).codes).toContain('TL326');
});

test('a finding in a record of work keeps its part and its place', () => {
  const { estate, history } = read(
    `${relined('finding trough at 14 m "a dent"', 'finding "all went well"')}
screw change DG1 2025-03-12 meter 6200 h {
  finding flight at 8 m "worn to 94 mm"
}`,
  );
  expect(besideLiner(estate, history).findings.map(({ part, at, text }) => [part, at, text])).toEqual([
    ['flight, screw change', 8000, 'worn to 94 mm'],
    ['trough, reline', 14000, 'a dent'],
    ['reline', undefined, 'all went well'],
  ]);
});
