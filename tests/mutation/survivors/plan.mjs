// Faults in src/domain/plan that no test can see (see survivors.mjs).

const forTheCompiler = 'the place exists whenever it is asked for: the rest is for the compiler';
const rounding = 'numbers that differ by exactly the rounding that is let pass do not come about';
const sameSide = 'whatever is not `start` is the other side';
const notFromPanels = 'whatever is not `panels` is the length of the stretch';
const onlySooner = 'leaves out what cannot be better, or asks again for what is known: only time';

/** @type {readonly import('../survivors.mjs').Survivor[]} */
export const inPlan = [
  ...[
    'const shortest = steps.map((_, i) => Math.min(...(ways[i] ?? []).map((way) => way.minutes)));',
    'const begun = Math.max(0, ...(waits[i] ?? []).map(finish));',
    'const stated = tests.flatMap((i) => steps[i]?.every?.value ?? []).filter((hours) => hours > 0);',
  ].map((line) => ({ file: 'src/domain/plan/air-tests.ts', line, why: forTheCompiler })),
  {
    file: 'src/domain/plan/work-axis.ts',
    line: 'const span = spans.findLast(({ from: at }) => at <= work) ?? spans[0];',
    becomes: 'at < work',
    why: 'where one span ends and the next begins both give the same moment',
  },
  {
    file: 'src/domain/plan/work-axis.ts',
    line: 'const out = made.spans.at(-1)?.to ?? 0;',
    why: 'a shift always has a span: the rest is for the compiler',
  },
  ...['if (start ? left < length - 1e-9 : left <= length + 1e-9)', 'if (left <= 1e-9) break;'].map(
    (line) => ({
      file: 'src/domain/plan/work-calendar.ts',
      line,
      why: 'hours that differ by exactly the rounding that is let pass do not come about',
    }),
  ),
  {
    file: 'src/domain/plan/work-calendar.ts',
    line: 'for (let d = 0; d < mostDays; d++) {',
    becomes: 'd <= mostDays',
    why: 'the horizon of some two years is judgement: a day more is as good',
  },
  ...[
    'run: piece.run?.run.number ?? 0,',
    'if (!kind) continue;',
    'return piece ? [inAll.get(piece) ?? 0] : [];',
    'const last = piece.run?.panels.length ?? 1;',
    'pieces: pieces.map((piece) => ({ ...piece, stick: stickOf.get(position.get(piece) ?? -1) })),',
  ].map((line) => ({ file: 'src/domain/plan/cut-list.ts', line, why: forTheCompiler })),
  {
    file: 'src/domain/plan/cut-list.ts',
    line: 'const tooLong = pieces.filter((piece) => kinds.every((kind) => kind.length < piece.length - 1e-6));',
    becomes: 'kind.length <= piece.length - 1e-6',
    why: 'lengths that differ by exactly the rounding that is let pass do not come about',
  },
  ...[': [],', ': [];', 'if (!screwChange) return [];'].map((line) => ({
    file: 'src/domain/plan/materials.ts',
    line,
    becomes: '["Stryker was here"]',
    why: 'what needs nothing is on no list, and the text that is put in there needs nothing',
  })),
  ...[
    "axis.toWork(net, goesOnDuring(steps[i], net, rules) ? 'finish' : 'start'),",
    "const finish = arranged.finish.map((net) => axis.toWork(net, 'finish'));",
    "axis.toWork(arranged.lowerBound, 'finish'),",
  ].map((line) => ({ file: 'src/domain/plan/lay-over.ts', line, becomes: '""', why: sameSide })),
  ...[
    "return work('clear up', 1, metres('area'));",
    "return work('cover', count(ground.covers), metres('area'));",
    "return work('brace', count(ground.braces), metres('area'));",
    "return work('hold-down', count(ground.holdDowns), metres('area'));",
    "return work('screw section', pieces, metres('area'));",
    "if (ground.joins) return work('screw section', pieces, metres('area'));",
    "const lift = work('screw section', pieces, metres('area'));",
    "const weld = work('weld', Math.max(0, pieces - 1), metres('area'));",
  ].map((line) => ({ file: 'src/domain/plan/unit-times.ts', line, becomes: '""', why: notFromPanels })),
  ...[
    ['known.set(middle, found);', ';'],
    ['if (over > 0 && best[0] < over) break;', 'false'],
    ['if (over > 0 && best[0] < over) break;', 'over >= 0'],
    ['for (let j = 1; j < places.length; j++) {', 'j <= places.length'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/spiral-cuts.ts', line, becomes, why: onlySooner })),
  {
    file: 'src/domain/plan/lifts.ts',
    line: 'if (lift.teamLift !== undefined && lift.mass > lift.teamLift)',
    becomes: 'true',
    why: 'nothing is more than a limit that is not there',
  },
  {
    file: 'src/domain/plan/lifts.ts',
    line: 'return limit !== undefined && mass > limit + 1e-9',
    becomes: 'true',
    why: 'nothing is more than a limit that is not there',
  },
  {
    file: 'src/domain/plan/lifts.ts',
    line: 'if (mass > known.mass) Object.assign(known, { mass, length: panel.to - panel.from });',
    becomes: 'mass >= known.mass',
    why: 'panels of one mass have one length',
  },
  ...[
    ['const begun = Math.max(0, ...(waits[i] ?? []).map(finish));', '["Stryker was here"]'],
    [
      'const shortest = steps.map((_, i) => Math.min(...(ways[i] ?? []).map((way) => way.minutes)));',
      '["Stryker was here"]',
    ],
    [
      'const stated = tests.flatMap((i) => steps[i]?.every?.value ?? []).filter((hours) => hours > 0);',
      '["Stryker was here"]',
    ],
    [
      'const stated = tests.flatMap((i) => steps[i]?.every?.value ?? []).filter((hours) => hours > 0);',
      'steps[i].every',
    ],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/air-tests.ts', line, becomes, why: forTheCompiler })),
  ...[
    ['before?.unit !== undefined &&', 'before.unit'],
    ['for (const { on, clock } of step.rests ?? [])', '["Stryker was here"]'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/floats.ts', line, becomes, why: forTheCompiler })),
  ...[
    [
      "? [{ name: gate.name ?? '', is: is(gate, gateShut) ? ('shut' as const) : ('stripped' as const) }]",
      '"Stryker was here!"',
    ],
    ['const areas = ground.areas[i] ?? [];', '["Stryker was here"]'],
    [
      'return ground.runs.flatMap((run) => within(run.panels, ground.areas[i] ?? []));',
      '["Stryker was here"]',
    ],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/hour-by-hour.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    [
      '(time, i) => soonest(ways[i] ?? [], rules.whole[i] ?? false, time, rules).end,',
      '["Stryker was here"]',
    ],
    [
      'const { way, begun, end } = soonest(ways[i] ?? [], rules.whole[i] ?? false, at, rules);',
      '["Stryker was here"]',
    ],
    ["return step?.action === 'fire watch' && !axis.breaks.includes(net);", 'step.action'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/lay-over.ts', line, becomes, why: forTheCompiler })),
  ...[
    [
      ": (nearest[p] ?? []).map((q) => ({ name: names.get(q) ?? '', origin: step.origin }));",
      '"Stryker was here!"',
    ],
    [
      ": (nearest[p] ?? []).map((q) => ({ name: names.get(q) ?? '', origin: step.origin }));",
      '["Stryker was here"]',
    ],
    ['const direct = waits[p] ?? [];', '["Stryker was here"]'],
    ['const found = new Set<number>(waits[i] ?? []);', '["Stryker was here"]'],
    ['const inLine = steps.map((_, p) => (all[p]?.size ?? 0) === p);', 'all[p].size'],
    ['for (const r of all[q] ?? []) closed.add(r);', '["Stryker was here"]'],
    ['nearest.push(direct.filter((q) => !direct.some((other) => all[other]?.has(q))));', 'all[other].has'],
    ['partners.set(a, [...(partners.get(a) ?? []), b]);', '["Stryker was here"]'],
    ['partners.set(b, [...(partners.get(b) ?? []), a]);', '["Stryker was here"]'],
    [
      'return [...found].flatMap((j) => position.get(j) ?? []).sort((a, b) => a - b);',
      '["Stryker was here"]',
    ],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/named-steps.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['(lifts.spiral?.written', 'lifts.spiral.written'],
    [
      'const panels = plan.ground.runs.find((each) => each.run === run)?.panels.length ?? 0;',
      'plan.ground.runs.find(each => each.run === run).panels',
    ],
    ['const piece = lifts.spiral?.pieces[number - 1];', 'lifts.spiral.pieces'],
    [
      'job.crews.find(({ use }) => use.name === team.name)?.use.origin,',
      'job.crews.find(({\n  use\n}) => use.name === team.name).use',
    ],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/plan-problems.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['const first = k === 0 ? 0 : (pieces[k]?.centre ?? 0);', 'pieces[k].centre'],
    ['from: run.panels[each.first - 1]?.from ?? run.run.from,', 'run.panels[each.first - 1].from'],
    ['to: run.panels[each.last - 1]?.to ?? run.run.to,', 'run.panels[each.last - 1].to'],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/proposed-steps.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['const position: number[] = [];', '["Stryker was here"]'],
    [
      'const size = job.crews.find(({ use }) => use.name === name)?.crew?.size.count ?? Infinity;',
      'job.crews.find(({\n  use\n}) => use.name === name)?.crew.size',
    ],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/repeated-tests.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['const from: number[] = [];', '["Stryker was here"]'],
    [
      'const steps = (job.order?.steps ?? []).filter((step) => step.action === action);',
      '["Stryker was here"]',
    ],
    [
      'if (pieces.length < 2 || !tiles || Math.abs((pieces.at(-1)?.to ?? 0) - length) > 1) return undefined;',
      'pieces.at(-1).to',
    ],
  ].map(([line, becomes]) => ({
    file: 'src/domain/plan/spiral-cuts.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['const said = job.crews.some((each) => (each.crew?.skills.length ?? 0) > 0);', 'each.crew.skills'],
    [
      'crews.reduce((sum, name) => sum + (teams[position(name)]?.people ?? 0), 0),',
      'teams[position(name)].people',
    ],
    ['return job.accessUnits.some(({ use }) => use.name === step.unit?.use.name)', 'step.unit.use'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/teams.ts', line, becomes, why: forTheCompiler })),
  ...[['const here = (spiral?.pieces ?? []).filter(({ centre }) =>', '["Stryker was here"]']].map(
    ([line, becomes]) => ({ file: 'src/domain/plan/unit-times.ts', line, becomes, why: forTheCompiler }),
  ),
  ...[['const out = made.spans.at(-1)?.to ?? 0;', 'made.spans.at(-1).to']].map(([line, becomes]) => ({
    file: 'src/domain/plan/work-axis.ts',
    line,
    becomes,
    why: forTheCompiler,
  })),
  ...[
    ['.filter((end) => end.at >= step.finish - 1e-6 && end.at < at - 1e-6)', 'at + 1e-6'],
    ['.filter((end) => end.at >= step.finish - 1e-6 && end.at < at - 1e-6)', 'end.at <= at - 1e-6'],
    ['.filter((end) => end.at >= step.finish - 1e-6 && end.at < at - 1e-6)', 'end.at > step.finish - 1e-6'],
    ['const night = ends.find((at) => at > from + 1e-6) ?? Infinity;', 'at >= from + 1e-6'],
    [
      'const share = step.finish <= at + 1e-9 ? 1 : whole > 0 ? worked(plan, step, 0, at) / whole : 0;',
      'at - 1e-9',
    ],
    [
      'const share = step.finish <= at + 1e-9 ? 1 : whole > 0 ? worked(plan, step, 0, at) / whole : 0;',
      'step.finish < at + 1e-9',
    ],
    [
      'everybodyOut: plan.everybodyOut.some((out) => out.from < to - 1e-6 && out.to > from + 1e-6),',
      'out.from <= to - 1e-6',
    ],
    [
      'everybodyOut: plan.everybodyOut.some((out) => out.from < to - 1e-6 && out.to > from + 1e-6),',
      'out.to >= from + 1e-6',
    ],
    ['for (let from = 0; from < plan.duration - 1e-6;) {', 'from <= plan.duration - 1e-6'],
    ['if (share < 1e-6) return [];', 'share <= 1e-6'],
    ['if (step.start >= at - 1e-9) continue;', 'at + 1e-9'],
    ['if (step.start >= at - 1e-9) continue;', 'step.start > at - 1e-9'],
    ['return at - step.finish + slept < rest.hours - 1e-6;', 'at - step.finish + slept <= rest.hours - 1e-6'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/hour-by-hour.ts', line, becomes, why: rounding })),
  ...[
    [
      'const from = stated.filter((test) => test.finish <= start + 1e-6).at(-1);',
      'test.finish < start + 1e-6',
    ],
    [
      'const last = tests.filter((test) => test.finish <= start + 1e-6).at(-1);',
      'test.finish < start + 1e-6',
    ],
    [
      'const within = tests.filter((test) => test.finish > start + 1e-6 && test.finish < finish);',
      'start - 1e-6',
    ],
    [
      'const within = tests.filter((test) => test.finish > start + 1e-6 && test.finish < finish);',
      'test.finish >= start + 1e-6',
    ],
    [
      'if (!job.window || available === undefined || duration <= available + 1e-6) return;',
      'duration < available + 1e-6',
    ],
    ['if (oldest <= interval.value + 1e-6) continue;', 'oldest < interval.value + 1e-6'],
    ['plan.lowerBound > available + 1e-6', 'plan.lowerBound >= available + 1e-6'],
    [
      'step.every !== undefined && step.every.value <= interval.value + 1e-9;',
      'step.every.value < interval.value + 1e-9',
    ],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/plan-problems.ts', line, becomes, why: rounding })),
  ...[
    ['const waiting = planned.filter((each) => each.finish > to + 1e-9);', 'each.finish >= to + 1e-9'],
    ['const waiting = planned.filter((each) => each.finish > to + 1e-9);', 'to - 1e-9'],
    [
      "each.step.action === 'gas test' && each.finish <= from + 1e-9 ? [p] : [],",
      'each.finish < from + 1e-9',
    ],
    [
      "step.action === 'fire watch' && crews.includes(name) && start < to - 1e-9 && finish > from + 1e-9,",
      'finish >= from + 1e-9',
    ],
    [
      "step.action === 'fire watch' && crews.includes(name) && start < to - 1e-9 && finish > from + 1e-9,",
      'start <= to - 1e-9',
    ],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/repeated-tests.ts', line, becomes, why: rounding })),
  ...[
    ['if (Math.abs(a[0] - b[0]) > 1e-6) return a[0] < b[0];', 'Math.abs(a[0] - b[0]) >= 1e-6'],
    ['if (Math.abs(a[1] - b[1]) > 1e-6) return a[1] < b[1];', 'Math.abs(a[1] - b[1]) >= 1e-6'],
    ['return a[3] < b[3] - 1e-9;', 'a[3] <= b[3] - 1e-9'],
    ['return a[3] < b[3] - 1e-9;', 'b[3] + 1e-9'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/spiral-cuts.ts', line, becomes, why: rounding })),
  ...[
    ['if (left <= 1e-9) break;', 'left < 1e-9'],
    ['if (start ? left < length - 1e-9 : left <= length + 1e-9)', 'left < length + 1e-9'],
    ['if (start ? left < length - 1e-9 : left <= length + 1e-9)', 'left <= length - 1e-9'],
  ].map(([line, becomes]) => ({ file: 'src/domain/plan/work-calendar.ts', line, becomes, why: rounding })),
  {
    file: 'src/domain/plan/scheduled-before.ts',
    line: 'const key = JSON.stringify([problem, effort, effort.cost !== undefined]);',
    becomes: 'effort.cost === undefined',
    why: 'with a preference and without are apart either way',
  },
  {
    file: 'src/domain/plan/scheduled-before.ts',
    line: 'for (const oldest of known.size > most ? known.keys() : []) {',
    becomes: '["Stryker was here"]',
    why: 'nothing is known by that text',
  },
];
