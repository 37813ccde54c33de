// Faults in src/domain/order that no test can see (see survivors.mjs).

const forTheCompiler = 'the value exists whenever it is asked for: the rest is for the compiler';
const quickerOnly = 'a short cut: without it the same comes out, later';
const border = 'lengths and hours that differ by exactly the rounding that is let pass do not come about';

const on = (name) => `src/domain/order/${name}`;

/** @type {readonly import('../survivors.mjs').Survivor[]} */
export const inOrder = [
  ...[
    [
      'ground.ts',
      'const endsOf = (run: Run): readonly number[] => laid.find((each) => each.run === run)?.layout.joints ?? [];',
    ],
    ['ground.ts', 'areas.flatMap((list) => list ?? []),'],
    ['ground.ts', 'return `panel ${piece.panel} of run ${piece.run?.run.number}`;'],
    [
      'ground.ts',
      "return /^gate\\b/i.test(piece.name ?? '') ? (piece.name ?? '') : `gate ${piece.name ?? ''}`;",
    ],
    ['front.ts', 'if (!first) return false;'],
    ['front.ts', 'other.pieces[0]?.run === slip.pieces[0]?.run,'],
    ['people.ts', 'const known = sizes.flatMap((size) => size ?? []);'],
    ['people.ts', 'if (people === undefined) return [];'],
    ['judge.ts', 'if (!touch) continue;'],
    [
      'judge.ts',
      'const touched = [...new Set(touches.flatMap((each) => w.ground.pieces[each.piece] ?? []))];',
    ],
    ['judge.ts', 'const pieces = touched.filter((piece) => piece.kind === touched[0]?.kind);'],
    ['judge.ts', 'if (!first) return [];'],
    [
      'judge.ts',
      'return step ? { step, origin: step.actionOrigin } : { origin: job.order?.origin ?? job.origin };',
    ],
    ['judge.ts', 'const steps = job.order?.steps ?? [];'],
    ['sequence.ts', 'for (const j of waits[i] ?? []) {'],
    ['sequence.ts', 'for (const j of followers[i] ?? []) {'],
    ['sequence.ts', 'for (const j of new Set(list)) followers[j]?.push(i);'],
    ['sequence.ts', 'const j = waits[i]?.[k];'],
    ['sequence.ts', 'if (top === undefined) break;'],
    [
      'sequence.ts',
      'if (group.length > 1 || waits[i]?.includes(i)) found.push(group.sort((a, b) => a - b));',
    ],
    ['side-by-side.ts', 'return cuts.slice(1).map((to, i) => ({ from: cuts[i] ?? -Infinity, to }));'],
  ].map(([name, line]) => ({ file: on(name), line, why: forTheCompiler })),
  ...[
    [
      'judge.ts',
      'if (steps.every((step) => step.after.length === 0)) return []; // one line of steps: no two are open towards each other',
    ],
    ['sequence.ts', 'if (after.every((list) => list.length === 0))'],
    ['sequence.ts', 'for (let i = 0; i < waits.length; i++) if (index[i] === -1) visit(i);'],
    ['side-by-side.ts', 'if (known) return known;'],
    ['side-by-side.ts', 'movesOf.set(sequence, found);'],
    ['judge.ts', 'const all = unsettledPairs(w).slice(0, mostPairs);'],
  ].map(([name, line]) => ({ file: on(name), line, why: quickerOnly })),
  ...[
    ['front.ts', 'if (closing.worst <= place.allowance.value + 1e-9) return;'],
    ['telling/liner.ts', 'other.allowance.value >= closing.worst'],
  ].map(([name, line]) => ({ file: on(name), line, why: border })),
  {
    file: on('front.ts'),
    line: 'return panel.run.panels[panel.panel - 1 + places * stepFrom(start)];',
    why: 'both numbers are 1 or −1: their product and their quotient are one',
  },
  {
    file: on('heat.ts'),
    line: 'const up = conveyor.incline.value > 0;',
    why: 'a level conveyor is answered above',
  },
  {
    file: on('side-by-side.ts'),
    line: 'const up = conveyor.incline.value > 0;',
    why: 'nobody asks on a level conveyor',
  },
];
