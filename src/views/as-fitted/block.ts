// The text for the records: a reline block over what was said to be fitted and nothing else. What is left of the job, and what
// has no place in the records, stands in comments, so that a half-done job comes back as a half-done job.

import type {
  AsFittedData,
  AsFittedPanel,
  AsFittedReline,
  AsFittedRun,
} from '../../protocol/offline-forms.js';
import { oneLine, quoted } from '../forms/kit.js';
import { typedNumber } from '../forms/typed-number.js';
import { hours, lengthField, offcutsTyped, temperatureTyped, tonnes } from './fields.js';
import {
  firstOf,
  fittedPanels,
  isAnswered,
  isFitted,
  lengthRead,
  thicknessOf,
  unwritten,
  type FittedEntries,
} from './entries.js';

export function blocks(data: AsFittedData, entries: FittedEntries): string {
  const found = data.relines.map((reline, index) => relineBlock(data, entries, reline, index));
  if (data.screw !== null) found.push(screwBlock(data, data.screw, entries));
  const lost = unwritten(data, entries);
  if (lost.length > 0)
    found.push(
      [
        '// Typed on the form and not read as a value, so not counted; what is meant is for a person to say:',
        ...lost.map((each) => `//   ${oneLine(each)}`),
      ].join('\n'),
    );
  return `${found.join('\n\n')}\n`;
}

/** What the job still needs, as its own lines: `reline run 2`. */
export function leftOf(
  data: AsFittedData,
  entries: FittedEntries,
  runs: readonly AsFittedRun[],
): readonly string[] {
  return runs.flatMap((run) => {
    const fitted = fittedPanels(entries, run);
    const left = run.panels.filter((panel) => !fitted.includes(panel));
    return stretches(run, left).map((stretch) =>
      run.numbered || left.length === run.panels.length
        ? `reline ${stretchWords(run, stretch)}`
        : `reline from ${leftChainages(data, entries, run, stretch, fitted).join(' to ')}`,
    );
  });
}

/** From where the panels fitted end to where the plan ends. */
function leftChainages(
  data: AsFittedData,
  entries: FittedEntries,
  run: AsFittedRun,
  left: readonly AsFittedPanel[],
  fitted: readonly AsFittedPanel[],
): readonly [string, string] {
  const [first, last] = [left[0], left.at(-1)];
  const parts = stretches(run, fitted);
  const below = parts.find((part) => part.at(-1)?.panel === (first?.panel ?? 0) - 1);
  const above = parts.find((part) => part[0]?.panel === (last?.panel ?? 0) + 1);
  return [
    below ? chainages(data, entries, run, below)[1] : metres(first?.from ?? 0),
    above ? chainages(data, entries, run, above)[0] : metres(last?.to ?? 0),
  ];
}

function metres(mm: number): string {
  return `${Number((mm / 1000).toFixed(3))} m`;
}

/** A run that is all to be fitted by its number, a part of it panel by panel. */
function stretchWords(run: AsFittedRun, panels: readonly AsFittedPanel[]): string {
  const [first, last] = [panels[0]?.panel ?? 0, panels.at(-1)?.panel ?? 0];
  if (run.whole && panels.length === run.panels.length) return `run ${run.run}`;
  return first === last ? `panel ${first} of run ${run.run}` : `panels ${first} to ${last} of run ${run.run}`;
}

/** Panels that lie side by side, each stretch from the tail. */
function stretches(
  run: AsFittedRun,
  panels: readonly AsFittedPanel[],
): readonly (readonly AsFittedPanel[])[] {
  const found: AsFittedPanel[][] = [];
  for (const panel of [...panels].sort((a, b) => a.panel - b.panel)) {
    const last = found.at(-1);
    if (last?.at(-1)?.panel === panel.panel - 1) last.push(panel);
    else found.push([panel]);
  }
  return found;
}

function head(data: AsFittedData, entries: FittedEntries, kind: string): string {
  const [meter, weighed] = [typedNumber(entries.meter, hours), typedNumber(entries.tonnes, tonnes)];
  const counted = data.tonnes && weighed.kind === 'read' ? ` tonnes ${weighed.text} t` : '';
  return `${kind} ${data.qualified} ${entries.date || '?'} meter ${meter.kind === 'read' ? meter.text : '?'} h${counted} {`;
}

function relineBlock(
  data: AsFittedData,
  entries: FittedEntries,
  reline: AsFittedReline,
  index: number,
): string {
  const { runs } = reline;
  const remark = ((entries.remarks as Partial<Record<number, string>>)[index] ?? '').trim();
  const left = leftComments(data, entries, runs);
  if (runs.every((run) => fittedPanels(entries, run).length === 0))
    return [
      `// ${reline.liner}: nothing was said to be fitted in ${data.qualified}, so there is no reline to record.`,
      ...left,
      ...(remark ? [`// Remark: ${quoted(remark)}`] : []),
    ].join('\n');
  const temperature = temperatureTyped(entries.temperature, data.unit);
  const small = lengthField(data.unit);
  const offcuts = offcutsTyped((entries.offcuts as Partial<Record<number, string>>)[index] ?? '', small);
  return [
    head(data, entries, 'reline'),
    `  liner ${reline.liner}`,
    ...runs.flatMap((run) => scopeLines(data, entries, run)),
    ...(temperature.kind === 'read' ? [`  fitting temperature ${temperature.text} ${temperature.unit}`] : []),
    ...byLine(entries),
    ...reline.points.flatMap((point) => {
      const read = typedNumber((entries.points as Partial<Record<string, string>>)[point.name] ?? '', small);
      return read.kind === 'read' && isFitted(entries, runs, point)
        ? [`  ${point.name} thickness ${read.text} ${data.unit}`]
        : [];
    }),
    ...runs.flatMap((run) => [...lengthLines(data, entries, run), ...thicknessLines(data, entries, run)]),
    ...offcuts.flatMap((read) => (read.kind === 'read' ? [`  offcut ${read.text} ${data.unit}`] : [])),
    ...(remark ? [`  finding liner ${quoted(remark)}`] : []),
    ...left.map((line) => `  ${line}`),
    '}',
  ].join('\n');
}

function leftComments(
  data: AsFittedData,
  entries: FittedEntries,
  runs: readonly AsFittedRun[],
): readonly string[] {
  const open = runs.filter((run) => !isAnswered(entries, run)).map((run) => `run ${run.run}`);
  const left = leftOf(data, entries, runs);
  return [
    ...(open.length > 0 ? [`// Not said whether it was fitted, so not counted: ${open.join(', ')}.`] : []),
    ...(left.length > 0 ? ['// Left of the job:', ...left.map((line) => `//   ${line}`)] : []),
  ];
}

function screwBlock(data: AsFittedData, screw: string, entries: FittedEntries): string {
  switch (entries.screw) {
    case 'done':
      return [head(data, entries, 'screw change'), `  screw ${screw}`, ...byLine(entries), '}'].join('\n');
    case '':
      return '// Not said whether the screw was changed, so not counted.\n// Left of the job:\n//   change screw';
    case 'part':
    case 'not done':
      return '// Left of the job:\n//   change screw';
  }
}

function byLine({ by }: FittedEntries): readonly string[] {
  return by.trim() ? [`  by ${quoted(by)}`] : [];
}

/** By panels where their numbers mean the same to the reader of the records, else by where they lie. */
function scopeLines(data: AsFittedData, entries: FittedEntries, run: AsFittedRun): readonly string[] {
  const fitted = fittedPanels(entries, run);
  const all = run.whole && fitted.length === run.panels.length;
  return stretches(run, fitted).map((stretch) =>
    all || run.numbered
      ? `  scope ${stretchWords(run, stretch)}`
      : `  scope from ${chainages(data, entries, run, stretch).join(' to ')}`,
  );
}

/** As long as the lengths say, from the end that was fitted first; as planned where not all lengths are there. */
function chainages(
  data: AsFittedData,
  entries: FittedEntries,
  run: AsFittedRun,
  stretch: readonly AsFittedPanel[],
): readonly [string, string] {
  const [first, last] = [stretch[0], stretch.at(-1)];
  const longer = longerThanPlanned(data, entries, run, stretch).reduce((a, b) => a + b, 0);
  const up = isFromTheTail(entries, run, stretch);
  return [metres((first?.from ?? 0) - (up ? 0 : longer)), metres((last?.to ?? 0) + (up ? longer : 0))];
}

function isFromTheTail(entries: FittedEntries, run: AsFittedRun, stretch: readonly AsFittedPanel[]): boolean {
  return Number(firstOf(entries, run)) === stretch[0]?.panel;
}

/** mm a panel; nothing while not all lengths are there. */
function longerThanPlanned(
  data: AsFittedData,
  entries: FittedEntries,
  run: AsFittedRun,
  stretch: readonly AsFittedPanel[],
): readonly number[] {
  const off = stretch.map((panel) => (lengthRead(data, entries, run, panel)?.mm ?? NaN) - panel.length);
  return off.some(Number.isNaN) ? off.map(() => 0) : off;
}

/**
 * A line for each panel that was measured: by its number where the records know it by that, as the lengths above it say, else by
 * where it lies.
 */
function thicknessLines(data: AsFittedData, entries: FittedEntries, run: AsFittedRun): readonly string[] {
  const parts = stretches(run, fittedPanels(entries, run));
  return parts.flatMap((stretch) => {
    const off = longerThanPlanned(data, entries, run, stretch);
    const up = isFromTheTail(entries, run, stretch);
    return stretch.flatMap((panel, k) => {
      const read = typedNumber(thicknessOf(entries, run, panel), lengthField(data.unit));
      if (read.kind !== 'read') return [];
      const before = (up ? off.slice(0, k) : off.slice(k + 1)).reduce((a, b) => a + b, 0);
      const own = off[k] ?? 0;
      const [from, to] = up
        ? [panel.from + before, panel.to + before + own]
        : [panel.from - before - own, panel.to - before];
      const where = isNumbered(data, entries, run)
        ? `panel ${panel.panel} of run ${run.run}`
        : `from ${metres(from)} to ${metres(to)}`;
      return [`  fitted ${where} thickness ${read.text} ${data.unit}`];
    });
  });
}

/** Panels keep their numbers where their lengths are written down and no panel beside them is cut. */
function isNumbered(data: AsFittedData, entries: FittedEntries, run: AsFittedRun): boolean {
  const fitted = fittedPanels(entries, run);
  const all = run.whole && fitted.length === run.panels.length;
  return (all || run.numbered) && isMeasured(data, entries, run);
}

/** All lengths of what was fitted are there, in one stretch. */
function isMeasured(data: AsFittedData, entries: FittedEntries, run: AsFittedRun): boolean {
  const fitted = fittedPanels(entries, run);
  const all = run.whole && fitted.length === run.panels.length;
  return (
    fitted.every((panel) => lengthRead(data, entries, run, panel) !== undefined) &&
    (all || stretches(run, fitted).length === 1)
  );
}

/** One `fitted` line where all lengths are there and the records can place them; else a comment, so that none is lost. */
function lengthLines(data: AsFittedData, entries: FittedEntries, run: AsFittedRun): readonly string[] {
  const fitted = fittedPanels(entries, run);
  const ranges = stretches(run, fitted);
  const inOrder = ranges.flat();
  const known = inOrder.flatMap(({ panel, ...rest }) => {
    const read = lengthRead(data, entries, run, { panel, ...rest });
    return read ? [{ panel, text: read.text }] : [];
  });
  if (known.length === 0) return [];
  if (isMeasured(data, entries, run))
    return [`  fitted run ${run.run} panels ${known.map(({ text }) => text).join(', ')}`];
  return [
    `  // Lengths as fitted in run ${run.run}: ${known.map(({ panel, text }) => `panel ${panel} ${text}`).join(', ')}`,
  ];
}
