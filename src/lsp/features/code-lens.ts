// One line above each conveyor: what is wrong, when it was last looked at, how much life is left by the plain arithmetic,
// and the pages that can be shown. The commands belong to the VS Code extension; other editors show the titles.

import type { CodeLens } from 'vscode-languageserver';
import { remainingLife, type ConveyorLife } from '../../generators/remaining-life/remaining-life.js';
import type { Desk } from '../desk.js';
import { handWords, keyOf } from '../forecasts.js';
import { conveyorOf } from '../model-at.js';
import type { Declaration } from '../declared.js';
import type { Text } from '../texts.js';
import { shortestName } from '../shortest-name.js';

export function codeLenses(desk: Desk, text: Text): CodeLens[] {
  if (!desk.settings.codeLens.conveyors) return [];
  const names = desk.names();
  const conveyors = names.declared('conveyor').filter((conveyor) => conveyor.text === text);
  const jobs = names.declared('job').filter((job) => job.text === text);
  return [
    ...conveyors.flatMap((conveyor) => conveyorLenses(desk, text, conveyor)),
    ...jobs.map((job) => ({
      range: text.range(job.start, job.end),
      command: { title: 'Show work pack', command: 'troughline.showWorkPack', arguments: [job.name] },
    })),
  ];
}

function conveyorLenses(desk: Desk, text: Text, declaration: Declaration): CodeLens[] {
  const range = text.range(declaration.start, declaration.end);
  const name = shortestName(desk, declaration);
  const life = lifeOf(desk, declaration);
  return [
    {
      range,
      command: {
        title: life ?? 'not complete enough for a report',
        command: 'troughline.showReport',
        arguments: [name],
      },
    },
    ...(findingWords(desk, declaration)
      ? [
          {
            range,
            command: { title: findingWords(desk, declaration), command: 'workbench.actions.view.problems' },
          },
        ]
      : []),
    { range, command: { title: 'Show drawing', command: 'troughline.showDrawing', arguments: [name] } },
    { range, command: { title: 'New inspection', command: 'troughline.newInspection', arguments: [name] } },
  ];
}

function findingWords(desk: Desk, { node, text }: Declaration): string {
  const start = node.$cstNode?.offset ?? 0;
  const end = node.$cstNode?.end ?? 0;
  const count = desk
    .findingsIn(text.uri)
    .filter(({ origin }) => origin.start >= start && origin.end <= end).length;
  return count === 0 ? '' : `${count} finding${count === 1 ? '' : 's'}`;
}

const lives = new WeakMap<object, readonly ConveyorLife[]>();

/** By the model where it has spoken, else by hand arithmetic, which takes no time. */
function lifeOf(desk: Desk, declaration: Declaration): string | undefined {
  const conveyor = conveyorOf(desk, declaration);
  if (!conveyor) return undefined;
  const modelled = desk.forecasts?.conveyors[keyOf(declaration.text.uri, declaration.start)];
  if (modelled) return modelled.short;
  const estate = desk.estate();
  const known = lives.get(estate) ?? remainingLife(estate, { depth: 'hand' }).conveyors;
  lives.set(estate, known);
  const life = known.find((each) => each.conveyor === conveyor);
  return life && handWords(life);
}
