// What the machine's own words change in a pack: panels held without bolts, what comes off the material, pressure that is let out,
// and a part to have at hand.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const order = ['isolate', 'prove dead', 'strip all', 'clean all', 'fit all', 'remove isolation', 'run empty'];
const job = (...facts: readonly string[]): string =>
  `job J1 {\n  conveyor DG1\n  outage Spring27\n  reline all\n  crews Alpha\n  ${facts.join('\n  ')}\n  order {\n${order.join('\n')}\n  }\n}`;

function pack(text: string): string {
  const { estate, findings } = analyse([{ uri: 'estate.trough', text }]);
  expect(findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  const [only] = estate.jobs;
  if (!only) throw new Error('no job');
  return workPackMarkdown(workPack(estate, only));
}

const sound = (conveyor: string, ...facts: readonly string[]): string =>
  pack(inSoundEstate('estate', job(...facts), { conveyor }));

describe('a liner that is held without bolts', () => {
  const both = inSoundEstate('estate', job(), { liner: 'fixed by "clamp strips along both top edges"' });
  const held = both.replace(/ *bolt M10[^\n]*\n/, '');

  test('is fitted and stripped by what holds it, and nobody counts bolts or torque', () => {
    const text = pack(held);
    expect(text).toContain('then held by clamp strips along both top edges.');
    expect(text).toContain(
      'Take off what holds them (clamp strips along both top edges) and lift the panels out',
    );
    expect(text).toContain('clamp strips along both top edges');
    for (const word of ['Tighten to', 'countersunk and bolted', 'countersunk bolt'])
      expect(text).not.toContain(word);
  });

  test('bolts beside what holds it stay', () => {
    expect(pack(both)).toContain('countersunk and bolted');
    expect(pack(both)).toMatch(/Held by \| clamp strips along both top edges/);
  });
});

describe('what comes off the material', () => {
  test('is named with what is known of it, in the cautions and for the gas test', () => {
    const text = sound('conveys "rejects"\n  gives off "carbon monoxide", "cyanide"');
    expect(text).toContain('it gives off carbon monoxide, cyanide.');
    expect(text).toContain('Carbon monoxide has no smell');
    expect(text).toContain('Flammable, oxygen, carbon monoxide, cyanide, hydrogen sulphide');
    expect(text).not.toContain('Sludge and digestate give off');
  });

  test('never takes away what a known product gives off', () => {
    expect(sound('conveys "digestate cake"\n  gives off "wood dust"')).toContain(
      'Sludge and digestate give off hydrogen sulphide',
    );
  });

  test('speaks of no sludge where nobody says there is any', () => {
    const text = sound('conveys "rejects of the 10 mm screen"');
    expect(text).toContain('What is wet and rots gives off hydrogen sulphide');
    expect(text).not.toContain('Sludge and digestate give off');
  });
});

describe('lime burns eyes and skin, and gets hot with water', () => {
  const both = 'conveys "sewage sludge with quicklime"\n  gives off "ammonia", "lime dust"';

  test.each([
    [both, 'Quicklime'],
    ['conveys "limed sludge"', 'Lime'],
    ['conveys "quicklime"', 'Quicklime'],
    ['conveys "sewage sludge"\n  gives off "quicklime dust"', 'Quicklime'],
    ['conveys "sludge and burnt lime"', 'Quicklime'],
    ['conveys "lime"', 'Lime'],
  ])('%s', (conveyor, name) => {
    const text = sound(conveyor);
    expect(text).toContain(`${name}: burns eyes and skin`);
    expect(text).toContain('do not wet it down');
    expect(text).toContain('at once rinse with much running water');
    expect(text).toContain(`${name} burns eyes and skin: goggles and gloves. No water on it`);
    expect(text).not.toMatch(/Wet it down|Fine dust burns/);
  });

  test('what is in it besides is still told, and no gas test measures dust', () => {
    const text = sound(both);
    expect(text).toContain('Sludge and digestate give off hydrogen sulphide');
    expect(text).toContain('Mineral dust does not burn');
    expect(text).toContain('carry germs');
    expect(text).toContain('Flammable, oxygen, ammonia, hydrogen sulphide, carbon dioxide');
    expect(sound('conveys "quicklime"')).not.toContain('carry germs');
  });

  test('slaked lime and cement burn too, and do not get hot', () => {
    for (const [conveyor, name] of [
      ['conveys "slaked lime"', 'Slaked lime'],
      ['conveys "cement"', 'Cement'],
    ] as const) {
      expect(sound(conveyor)).toContain(`${name}: burns eyes and skin`);
      expect(sound(conveyor)).not.toContain('do not wet it down');
    }
  });

  test('limestone and what has nothing of it say nothing of it', () => {
    for (const conveyor of [
      'conveys "limestone sand"',
      'conveys "washed grit"',
      'conveys "digestate cake"',
      'conveys "mashed potatoes"',
      'conveys "ash wood chips"',
    ])
      expect(sound(conveyor), conveyor).not.toContain('burns eyes and skin');
  });

  test('dust that burns is still said to: of wood, of grain, of dried sludge, and of what nobody names', () => {
    const dust = (conveys: string, ...all: readonly string[]): string =>
      sound(`conveys "${conveys}"\n  gives off ${all.map((each) => `"${each}"`).join(', ')}`);
    for (const each of ['wood dust', 'grain dust', 'dust of dried sludge', 'coal dust', 'dust'])
      expect(dust('rejects', each), each).toContain('Fine dust burns and explodes');
    for (const each of ['sand dust', 'cement dust', 'dust of wood ash', 'grit dust'])
      expect(dust('rejects', each), each).not.toContain('Fine dust burns and explodes');
    expect(dust('sand', 'dust')).toContain('Mineral dust does not burn');
    expect(dust('rejects', 'lime dust', 'wood dust')).toMatch(/Mineral dust.*Fine dust burns/s);
  });

  test('the inspection sheet says so before a cover is opened', () => {
    const { estate } = analyse([{ uri: 'a.trough', text: inSoundEstate('estate', '', { conveyor: both }) }]);
    const [conveyor] = estate.conveyors;
    const page = conveyor ? inspectionSheetHtml(inspectionSheet(estate, conveyor)) : '';
    expect(page).toContain('No water on what lies there: it gets hot.');
  });
});

test('pressure is let out once the machine is locked', () => {
  const text = sound('isolation V7 "air dump valve" pneumatic at 8 m\n  isolation Q1 electrical');
  expect(text).toContain(
    'A gate that is to stay shut is pinned first. Vent, and see the pressure gone: V7 air dump valve (pneumatic).',
  );
  expect(sound('isolation Q1 electrical')).not.toContain('see the pressure gone');
});

test('a part to have at hand stands among what is brought along', () => {
  const text = sound('', 'spare "gate wiper"', 'spare 2 "cover gaskets"');
  expect(text).toContain('gate wiper (spare)');
  expect(text).toContain('Tools: gate wiper (spare); 2 × cover gaskets (spare).');
});
