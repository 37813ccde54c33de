// What a fitter needs and the language can hold: each fact is in the pack and on the crew sheet, and what is not written is said
// to be missing.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { escapeHtml } from '../../../src/generators/page/markup.js';
import { crewSheetHtml } from '../../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../../src/validation/example.js';
import { soundOrder } from '../../../src/validation/telling/sound-order.js';
import { liftConveyor, read, theJob, type EstateFacts } from '../estate.js';

function prints(facts: EstateFacts): { readonly pack: string; readonly crew: string } {
  const analysis = read(liftConveyor(facts));
  const made = workPack(analysis.estate, theJob(analysis));
  return { pack: workPackHtml(made), crew: crewSheetHtml(made) };
}

const liner = `bolt length 30 mm
  drill 10.5 mm deep 19 mm
  tightening torque 17 N·m
  sealant "butyl cord under every head"`;
const job = `rescue contact "control room, channel 7"
  rescue means "winch at the tail"
  meeting point "north gate"
  tool "torque wrench" 3 pieces
  spare 4 panels
  spare 33 fixings
  spiral held up by "beam and hoist" rated 450 kg every 2.5 m`;

describe('written facts', () => {
  const { pack, crew } = prints({ liner, job });
  // 25.51 kg/m × 2.5 m × 1.25 (tests/domain/geometry has the mass a metre by hand).
  test.each([
    'M10 × 30 mm',
    '10.5 mm',
    '19 mm deep',
    '17 N·m',
    'butyl cord under every head',
    'control room, channel 7',
    'winch at the tail',
    'north gate',
    '3 × torque wrench',
    'Spiral held up by beam and hoist every 2.50 m, rated 450 kg each; bears about 79.7 kg.',
    'drill bit 10.5 mm for trough holes',
  ])('%s stands in the pack and on the crew sheet', (words) => {
    expect(pack).toContain(escapeHtml(words));
    expect(crew).toContain(escapeHtml(words));
  });

  test('spares are those that the job asks for, in place of the usual share', () => {
    expect(pack).toContain('the job asks for 4 spare panels');
    expect(pack).toContain('the job asks for 33 spare fixings');
    expect(crew).toContain('+ 33 spare × M10 × 30 mm countersunk bolt');
    expect(prints({}).pack).not.toContain('the job asks');
  });

  test('the countersink is bounded by head and first layer, and the arithmetic is shown', () => {
    // (20 − 10.5) / 2 = 4.75 mm; 10.5 + 2 × 4 = 18.5 mm.
    expect(pack).toContain(
      '90°, 4 mm deep, 18.5 mm wide (hole + 2 × depth): at least 4.8 mm for the head to lie flush, less than 6 mm',
    );
  });
});

test('a plant’s rescue holds where the job has none, and a job’s own comes first', () => {
  const text = liftConveyor({ job: 'rescue means "winch"' }).replace(
    '  duty 84 h/week\n',
    '  duty 84 h/week\n  rescue contact "works control"\n  rescue means "ladder"\n',
  );
  const analysis = read(text);
  const html = workPackHtml(workPack(analysis.estate, theJob(analysis)));
  expect(html).toContain('works control');
  expect(html).toContain('winch');
  expect(html).not.toContain('ladder');
});

test('what is not written is said to be missing', () => {
  const { pack, crew } = prints({});
  for (const text of [pack, crew]) {
    expect(text).toContain('not written: arrange it before anybody goes in');
    expect(text).toContain('how it is held up while panels pass under it is not written');
  }
  expect(pack).toContain('not written: ask the maker of the liner');
  expect(pack).toContain('drill not written; usual 11 mm (ISO 273, medium)');
});

test('where the spiral comes out nothing is said of holding it up', () => {
  expect(prints({ job: 'change screw' }).pack).not.toContain('held up while panels');
});

test('Markdown says the same of fixing and rescue', () => {
  const analysis = read(liftConveyor({ liner, job }));
  const text = workPackMarkdown(workPack(analysis.estate, theJob(analysis)));
  for (const words of ['17 N·m', 'winch at the tail', '3 × torque wrench']) expect(text).toContain(words);
});

test('every zone that a step names is used by the job, also where only the air is tested along the whole length', () => {
  const usedBy = (steps: string): readonly string[] => {
    const order = `order {\n    ${steps}\n  }`;
    const analysis = read(liftConveyor({ job: order }));
    const made = workPack(analysis.estate, theJob(analysis));
    const named = made.steps.map((row) => row.access).join(', ');
    for (const zone of made.access) if (named.includes(zone.name)) expect(zone.used).toBe(true);
    return made.access.flatMap(({ name, used }) => (used ? [name] : []));
  };
  expect(usedBy('gas test all\n    fit run 2')).toEqual(['Yard', 'South']);
  expect(usedBy('fit run 2')).toEqual(['South']);
});

test('a crew that no step asks for is said to be in none, in the pack and on the crew sheet', () => {
  const made = (crews: string): ReturnType<typeof workPack> => {
    const two = liftConveyor()
      .replace('  crew Alpha', '  crew Watch 1 person\n  crew Alpha')
      .replace('crews Alpha', crews);
    const analysis = read(two);
    return workPack(analysis.estate, theJob(analysis));
  };
  const written = made(`crews Alpha, Watch
  order {
    isolate by Alpha
    prove dead by Alpha
    remove isolation by Alpha
  }`);
  expect(written.crews.map(({ name, idle: none }) => [name, none])).toEqual([
    ['Alpha', undefined],
    ['Watch', true],
  ]);
  expect(workPackMarkdown(written)).toContain('Watch, 1 person, in no step');
  expect(crewSheetHtml(written)).toContain('Watch, 1 person, in no step');
});

test('hold-downs that come off go by the names of the sheet, and not by those of hatches', () => {
  const { estate } = analyse([
    {
      uri: 'a.trough',
      text: inSoundEstate('job', soundOrder, { conveyor: 'hatch H1 at 4 m to 4.5 m width 450 mm' }),
    },
  ]);
  const [job] = estate.jobs;
  if (!job) throw new Error('no job');
  const made = workPack(estate, job);
  const which = made.takings.find(({ part }) => part === 'hold-down')?.which;
  expect(which).toMatch(/^HD\d/);
  expect(which).not.toMatch(/\bH\d/);
});
