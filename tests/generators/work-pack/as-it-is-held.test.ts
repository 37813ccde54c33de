// What the machine's own words change in a pack: panels held without bolts, what comes off the material, pressure that is let out,
// and a part to have at hand.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
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
