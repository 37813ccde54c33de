// One line above each conveyor: what is wrong, when it was last looked at, how much life is left by the plain arithmetic,
// and the pages that can be shown. The commands belong to the VS Code extension; other editors show the titles.

import type { CodeLens } from 'vscode-languageserver';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import type { Session } from '../session.js';
import { handWords, keyOf } from '../forecasts.js';
import { conveyorOf } from '../model-at.js';
import type { Declaration } from '../document-symbols.js';
import type { EstateDocument } from '../document.js';
import { shortestName } from '../shortest-name.js';
import type { ConveyorLife } from '../../generators/remaining-life/remaining-life.js';

export function codeLenses(session: Session, document: EstateDocument): CodeLens[] {
  if (!session.settings.codeLens.conveyors) return [];
  const names = session.symbols();
  const conveyors = names.declared('conveyor').filter((conveyor) => conveyor.document === document);
  const jobs = names.declared('job').filter((job) => job.document === document);
  return [
    ...conveyors.flatMap((conveyor) => conveyorLenses(session, document, conveyor)),
    ...jobs.map((job) => ({
      range: document.range(job.start, job.end),
      command: { title: 'Show work pack', command: 'troughline.showWorkPack', arguments: [job.name] },
    })),
  ];
}

function conveyorLenses(session: Session, document: EstateDocument, declaration: Declaration): CodeLens[] {
  const range = document.range(declaration.start, declaration.end);
  const name = shortestName(session, declaration);
  const life = lifeOf(session, declaration);
  return [
    {
      range,
      command: {
        title: life ?? 'not complete enough for a report',
        command: 'troughline.showReport',
        arguments: [name],
      },
    },
    ...(findingWords(session, declaration)
      ? [
          {
            range,
            command: {
              title: findingWords(session, declaration),
              command: 'workbench.actions.view.problems',
            },
          },
        ]
      : []),
    { range, command: { title: 'Show drawing', command: 'troughline.showDrawing', arguments: [name] } },
    { range, command: { title: 'New inspection', command: 'troughline.newInspection', arguments: [name] } },
  ];
}

function findingWords(session: Session, { node, document }: Declaration): string {
  const start = node.$cstNode?.offset ?? 0;
  const end = node.$cstNode?.end ?? 0;
  const count = session
    .findingsIn(document.uri)
    .filter(({ origin }) => origin.start >= start && origin.end <= end).length;
  return count === 0 ? '' : `${count} finding${count === 1 ? '' : 's'}`;
}

const lives = new WeakMap<object, readonly ConveyorLife[]>();

/** By the model where it has symbol, else by hand arithmetic, which takes no time. */
function lifeOf(session: Session, declaration: Declaration): string | undefined {
  const conveyor = conveyorOf(session, declaration);
  if (!conveyor) return undefined;
  const modelled = session.forecasts?.conveyors[keyOf(declaration.document.uri, declaration.start)];
  if (modelled) return modelled.short;
  const estate = session.estate();
  const known = lives.get(estate) ?? remainingLife(estate, { depth: 'hand' }).conveyors;
  lives.set(estate, known);
  const life = known.find((each) => each.conveyor === conveyor);
  return life && handWords(life);
}
