// One line above each conveyor: what is wrong, when it was last looked at, how much life is left by the plain arithmetic,
// and the pages that can be shown. The commands belong to the VS Code extension; other editors show the titles.

import type { CodeLens } from 'vscode-languageserver';
import { formatDay } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { remainingLife, type ConveyorLife } from '../../generators/remaining-life/remaining-life.js';
import type { Desk } from '../desk.js';
import { conveyorOf } from '../model-at.js';
import type { Declaration } from '../names.js';
import type { Text } from '../texts.js';
import { shortestName } from './completion.js';

export function codeLenses(desk: Desk, text: Text): CodeLens[] {
  if (!desk.settings.codeLens.conveyors) return [];
  const names = desk.names();
  const conveyors = names.declared('conveyor').filter((conveyor) => conveyor.text === text);
  const jobs = names.declared('job').filter((job) => job.text === text);
  return [
    ...conveyors.flatMap((conveyor) => conveyorLenses(desk, text, conveyor)),
    ...jobs.map((job) => ({ range: text.range(job.start, job.end), command: { title: 'Show work pack', command: 'troughline.showWorkPack', arguments: [job.name] } })),
  ];
}

function conveyorLenses(desk: Desk, text: Text, declaration: Declaration): CodeLens[] {
  const range = text.range(declaration.start, declaration.end);
  const name = shortestName(desk, declaration);
  const life = lifeOf(desk, declaration);
  return [
    { range, command: { title: life ? lifeWords(life) : 'not complete enough for a report', command: 'troughline.showReport', arguments: [name] } },
    ...(findingWords(desk, declaration) ? [{ range, command: { title: findingWords(desk, declaration), command: 'workbench.actions.view.problems' } }] : []),
    { range, command: { title: 'Show drawing', command: 'troughline.showDrawing', arguments: [name] } },
    { range, command: { title: 'New inspection', command: 'troughline.newInspection', arguments: [name] } },
  ];
}

function findingWords(desk: Desk, { node, text }: Declaration): string {
  const start = node.$cstNode?.offset ?? 0;
  const end = node.$cstNode?.end ?? 0;
  const count = desk.findingsIn(text.uri).filter(({ origin }) => origin.start >= start && origin.end <= end).length;
  return count === 0 ? '' : `${count} finding${count === 1 ? '' : 's'}`;
}

const lives = new WeakMap<object, readonly ConveyorLife[]>();

/** By hand arithmetic, as the report prints it; once an analysis. */
function lifeOf(desk: Desk, declaration: Declaration): ConveyorLife | undefined {
  const conveyor = conveyorOf(desk, declaration);
  if (!conveyor) return undefined;
  const estate = desk.estate();
  const known = lives.get(estate) ?? remainingLife(estate).conveyors;
  lives.set(estate, known);
  return known.find((life) => life.conveyor === conveyor);
}

export function lifeWords({ history, worst, unit }: ConveyorLife): string {
  const newest = history.inspections.at(-1);
  if (!newest) return 'not inspected yet';
  const looked = `inspected ${formatDay(newest.inspection.date.day)}`;
  if (!worst) return `${looked}, no rate from the readings yet`;
  if (worst.pastLimit) return `${looked}, ${worst.place.name}: ${worst.pastLimit}`;
  const condemn = worst.milestones.find(({ kind }) => kind === 'condemn');
  if (condemn?.remaining === undefined) return `${looked}, colours only`;
  const left = worst.exposureNow !== undefined && condemn.exposure !== undefined ? Math.max(0, condemn.exposure - worst.exposureNow) : condemn.remaining;
  return `${looked}, ${worst.place.name}: about ${formatNumber(left, 0)} ${unit} to the condemn limit by plain arithmetic`;
}
