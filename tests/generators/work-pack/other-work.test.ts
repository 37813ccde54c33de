// Work that no step of the language names: in the trough it is held to all that holds for cleaning, and its words are the step.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { stepText } from '../../../src/domain/order/words.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../../src/validation/example.js';
import { soundOrder } from '../../../src/validation/telling/sound-order.js';

const lift =
  'other work run above Gate by Alpha attended by Bravo takes 2 h "spiral lifted clear of the liner"';
const clean = '  clean run above Gate by Alpha attended by Bravo\n';

/** The sound order with a line before another one. */
const withLine = (line: string, before: string, confined = true): ReturnType<typeof analyse> =>
  analyse([
    {
      uri: 'estate.trough',
      text: inSoundEstate('job', soundOrder.replace(before, `  ${line}\n${before}`), {
        ...(confined ? { conveyor: '  confined space' } : {}),
      }),
    },
  ]);
const codes = (analysis: ReturnType<typeof analyse>): readonly string[] => [
  ...new Set(analysis.findings.filter(({ severity }) => severity !== 'information').map(({ code }) => code)),
];
const plain = codes(withLine('', clean));

test.each([
  ['under open covers, before or after the liner is stripped', lift, clean, []],
  ['with braces and blocks still on', lift, '  hold-downs off run above Gate\n', []],
  [
    'beside the machine, whatever its state',
    'other work by Bravo takes 1 h "crane rigged"',
    '  isolate\n',
    [],
  ],
  ['before the machine is dead', lift, '  isolate\n', ['TL406']],
  ['under closed covers', lift, '  covers off run above Gate\n', ['TL408']],
  ['with nobody outside', lift.replace(' attended by Bravo', ''), clean, ['TL550']],
])('%s', (_, line, before, told) => {
  const fresh = codes(withLine(line, before)).filter((code) => !plain.includes(code));
  expect(fresh).toEqual(told);
});

test('is planned with its time, and pack and order say its words', () => {
  const { estate } = withLine(lift, clean);
  const job = estate.jobs[0]!;
  const pack = workPack(estate, job);
  const step = pack.steps.find(({ action }) => action === 'other work');
  expect(step).toMatchObject({ hours: 2, who: 'Alpha', note: 'spiral lifted clear of the liner' });
  expect(workPackHtml(pack)).toContain('spiral lifted clear of the liner');
  expect(job.order?.steps.map(stepText)).toContain(lift);
  const outside = withLine('other work by Bravo takes 1 h "crane rigged"', '  isolate\n').estate;
  const [first] = workPack(outside, outside.jobs[0]!).steps;
  expect(first).toMatchObject({ where: 'beside the machine', who: 'Bravo', hours: 1 });
});
