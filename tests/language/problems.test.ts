// The slips people make, one by one: each is told for what it is, at the words that are wrong.

import { describe, expect, it } from 'vitest';
import { conveyor, inspect, liner, machine, only, problemsOf, read, screw, specifications } from './read.js';

describe('numbers and units', () => {
  it('stays silent on a sound machine', () =>
    expect(problemsOf(machine, inspect('P1 thickness 8.4 mm'))).toEqual([]));

  it('reports a missing unit', () => {
    const problem = only('missing unit', specifications + conveyor('DG1', '', { length: 'length 22.4' }));
    expect(problem).toMatchObject({ at: '22.4', expected: 'length' });
  });

  it('sees a missing unit before the next word of the language', () => {
    const problem = only(
      'missing unit',
      specifications + conveyor('DG1', 'drive at head power 5.5 speed 18 rpm'),
    );
    expect(problem).toMatchObject({ at: '5.5', expected: 'power' });
  });

  it('reports a unit that does not exist', () => {
    expect(only('unknown unit', machine, inspect('P1 thickness 8.4 mmm'))).toMatchObject({
      at: '8.4 mmm',
      unit: 'mmm',
    });
  });

  it('reports a unit of another dimension', () => {
    expect(only('wrong dimension', machine, inspect('P1 thickness 8.4 kg'))).toMatchObject({
      found: 'mass',
      expected: 'length',
    });
  });

  it('reports a decimal comma with the mended text', () => {
    expect(only('comma decimal', machine, inspect('P1 thickness 8,4 mm'))).toMatchObject({
      at: '8,4 mm',
      corrected: '8.4 mm',
    });
  });

  it('does not guess at 12,000 h', () => {
    expect(
      only('comma decimal', machine, inspect('P1 colour ivory', 'DG1 2026-03-14 meter 12,000 h')).readings,
    ).toEqual(['12.000 h', '12000 h']);
  });

  it('reports a panel that is 0 mm long', () => {
    expect(only('out of range', liner.replace('1200 mm', '0 mm')).fact).toBe('panel length');
  });

  it('reports half a crew', () => {
    expect(only('out of range', 'plant A { crew Alpha 2.5 people }')).toMatchObject({
      at: '2.5',
      range: 'a whole number from 1 up',
    });
  });
});

describe('dates and clock positions', () => {
  const dated = (date: string): string => inspect('P1 colour ivory', `DG1 ${date} meter 8120 h`);

  it('mends 14/03/2026, which can only be March', () => {
    expect(only('date form', machine, dated('14/03/2026'))).toMatchObject({
      at: '14/03/2026',
      corrected: '2026-03-14',
    });
  });
  it('offers both months for 03/04/2026', () => {
    expect(only('date form', machine, dated('03/04/2026')).readings).toEqual(['2026-04-03', '2026-03-04']);
  });
  it('mends 14.3.2026 and 2026-3-14', () => {
    expect(only('date form', machine, dated('14.3.2026')).corrected).toBe('2026-03-14');
    expect(only('date form', machine, dated('2026-3-14')).corrected).toBe('2026-03-14');
  });
  it('does not take 29 February 2026', () =>
    expect(only('no such date', machine, dated('2026-02-29')).at).toBe('2026-02-29'));
  it('leaves an inspection of unknown date out', () =>
    expect(read(machine, dated('2026-02-29')).estate.inspections).toEqual([]));

  it('mends 7.30 and 19:30', () => {
    expect(only('clock form', machine, inspect('at 3 m clock 7.30 thickness 9 mm'))).toMatchObject({
      at: '7.30',
      corrected: '7:30',
    });
    expect(only('clock form', machine, inspect('at 3 m clock 19:30 thickness 9 mm'))).toMatchObject({
      at: '19:30',
      corrected: '7:30',
    });
  });
});

describe('facts', () => {
  for (const fact of ['plant', 'length', 'incline', 'trough', 'screw', 'liner']) {
    it(`reports a conveyor without ${fact}, and leaves it out`, () => {
      const text = specifications + conveyor('DG1', '', { [fact]: '' });
      const problem = only('missing fact', text);
      expect(problem).toMatchObject({ block: 'conveyor', name: 'DG1', fact, at: 'DG1' });
      expect(text.slice(problem.insertAt.start - 1, problem.insertAt.start)).toBe('{');
      expect(read(text).estate.conveyors).toEqual([]);
    });
  }
  it('reports a liner without layers, panel length or condemn limit', () => {
    expect(problemsOf('liner L { }').map((problem) => 'fact' in problem && problem.fact)).toEqual([
      'layer',
      'panel length',
      'condemn limit',
    ]);
  });
  it('reports a screw without diameter or pitch', () => {
    expect(problemsOf('screw S { }').map((problem) => 'fact' in problem && problem.fact)).toEqual([
      'outside diameter',
      'pitch',
    ]);
  });
  it('reports a fact stated twice, and keeps the first', () => {
    const text = screw.replace('pitch 350 mm', 'pitch 350 mm\n  pitch 300 mm');
    expect(only('repeated fact', text)).toMatchObject({ at: 'pitch 300 mm', fact: 'pitch' });
    expect(read(text).estate.screws[0]?.pitch.value).toBe(350);
  });
  it('does not call a fact missing that could not be read', () => {
    expect(
      problemsOf(specifications + conveyor('DG1', '', { length: 'length 22,4 m' })).map(
        (problem) => problem.kind,
      ),
    ).toEqual(['comma decimal']);
  });
  it('does not call a fact missing in a block that could not be followed', () => {
    expect(
      problemsOf(specifications + conveyor('DG1', '', { length: 'lenght 22.4 m' })).map(
        (problem) => problem.kind,
      ),
    ).toEqual(['syntax']);
  });
});

describe('names', () => {
  it('reports a name that nothing has, nearest first', () => {
    expect(
      only('unknown name', specifications + conveyor('DG1', '', { liner: 'liner TwoLayr12' })),
    ).toMatchObject({ what: 'liner', at: 'TwoLayr12', known: ['TwoLayer12'] });
  });
  it('reports a conveyor that nothing is', () => {
    expect(
      only('unknown name', machine, inspect('P1 colour ivory', 'DG2 2026-03-14 meter 8120 h')),
    ).toMatchObject({ what: 'conveyor', at: 'DG2', known: ['DG1'] });
  });
  it('says where a conveyor is after all', () => {
    expect(
      only('unknown name', machine, inspect('P1 colour ivory', 'Other.DG1 2026-03-14 meter 8120 h'))
        .elsewhere,
    ).toBe('DG1 is a conveyor of Tarnholt');
  });
  it('reports a name used twice, and keeps the first', () => {
    expect(only('repeated name', machine, liner)).toMatchObject({
      what: 'liner',
      name: 'TwoLayer12',
      at: 'TwoLayer12',
      first: { source: 0 },
    });
  });
  it('reports a conveyor, a point, a break, a layer and a section named twice', () => {
    expect(only('repeated name', machine, conveyor('DG1')).what).toBe('conveyor');
    expect(
      only(
        'repeated name',
        specifications + conveyor('DG1', 'point P1 at 1 m clock 6:00 point P1 at 2 m clock 6:00'),
      ).what,
    ).toBe('point');
    expect(
      only(
        'repeated name',
        specifications + conveyor('DG1', 'break B at 1 m joint ring break B at 2 m joint ring'),
      ).what,
    ).toBe('break');
    expect(
      only('repeated name', specifications + conveyor('DG1', 'section S 10 m section S 12.4 m')).what,
    ).toBe('section');
    expect(only('repeated name', liner.replace('teal', 'ivory')).what).toBe('layer');
  });
  it('wants the plant where two plants have a conveyor of that name', () => {
    const other =
      'plant Other { }\n' + conveyor('DG1', 'point P1 at 6 m clock 6:00', { plant: 'plant Other' });
    expect(only('ambiguous name', machine, other, inspect('P1 colour ivory'))).toMatchObject({
      at: 'DG1',
      candidates: ['Other.DG1', 'Tarnholt.DG1'],
    });
    expect(problemsOf(machine, other, inspect('P1 colour ivory', 'Other.DG1 2026-03-14 meter 1 h'))).toEqual(
      [],
    );
  });
  it('reports a point that the conveyor does not have, and who has it', () => {
    const other = conveyor('FW2', 'point Q7 at 6 m clock 6:00');
    expect(only('unknown point', machine, other, inspect('Q7 thickness 8 mm'))).toMatchObject({
      at: 'Q7',
      point: 'Q7',
      conveyor: 'DG1',
      elsewhere: ['FW2'],
    });
  });
  it('reports a colour that the liner does not have', () => {
    expect(only('unknown colour', machine, inspect('P1 colour blue'))).toMatchObject({
      at: 'blue',
      liner: 'TwoLayer12',
      known: ['teal', 'ivory'],
    });
  });
  it('finds outages, crews and access units in the plant of the conveyor', () => {
    const job = (facts: string): string => `job J { conveyor DG1 ${facts} }`;
    expect(problemsOf(machine, job('outage Spring27 crews Alpha access units MP1'))).toEqual([]);
    expect(only('unknown name', machine, job('outage Spring28'))).toMatchObject({
      what: 'outage of Tarnholt',
      known: ['Spring27'],
    });
    expect(only('unknown name', machine, job('crews Alfa')).known).toEqual(['Alpha']);
    expect(only('unknown name', machine, job('access units MP2')).known).toEqual(['MP1']);
    expect(only('unknown name', machine, job('reline run above Gat')).known[0]).toBe('Gate');
    expect(only('unknown name', machine, job('order { a: isolate strip all after b }'))).toMatchObject({
      what: 'step',
      known: ['a'],
    });
  });
});

describe('one slip, one message', () => {
  it('does not call unknown what is only broken', () => {
    const broken =
      specifications + conveyor('DG1', 'point P1 at 6.2 m clock 7:30', { length: 'length 22,4 m' });
    expect(
      problemsOf(broken, inspect('P1 colour ivory'), 'job J { conveyor DG1 }').map((problem) => problem.kind),
    ).toEqual(['comma decimal']);
  });
  it('does not call a point unknown whose place is wrong', () => {
    const text =
      specifications +
      conveyor('DG1', 'point P1 at 6.2 m clock 7.30\n point Q every 2 from 2 m to 8 m clock 7:30');
    expect(
      problemsOf(text, inspect('P1 colour ivory\n Q2 colour ivory')).map((problem) => problem.kind),
    ).toEqual(['clock form', 'missing unit']);
  });
  it('does not call a crew unknown whose size is wrong', () => {
    expect(
      problemsOf(machine.replace('crew Alpha 4', 'crew Alpha 0'), 'job J { conveyor DG1 crews Alpha }').map(
        (problem) => problem.kind,
      ),
    ).toEqual(['out of range']);
  });
  it('drops a conveyor whose break cannot be placed: its runs would be wrong', () => {
    expect(read(specifications + conveyor('DG1', 'break Gate at 12.4 slide gate')).estate.conveyors).toEqual(
      [],
    );
  });
  it('drops an order with a hole in it', () => {
    expect(
      read(machine, 'job J { conveyor DG1 order { isolate strip run 0 fit all } }').estate.jobs[0]?.order,
    ).toBeUndefined();
  });
  it('never widens a reline whose stretch cannot be read', () => {
    expect(read(machine, 'reline DG1 2025-01-01 meter 5 h { scope from 2 to 4 }').estate.relines).toEqual([]);
  });
});
