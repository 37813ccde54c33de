// Does a drive change say anything that was not so already?

import { driveAfter, driveChangesOf } from '../../../domain/model/present-drive.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { DriveChange } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const driveChangeWithoutEffect: Rule = {
  code: 'TL269',
  title: 'Drive change that changes nothing',
  severity: 'warning',
  restsOn: ['machine', 'history'],
  why:
    'If the drive was edited on the conveyor too, all hours before the change are counted at the new speed, and the wear before ' +
    'and after it is not told apart.',
  todo: 'Let `drive at` say what the conveyor was built with, and the record what it became.',
  given: 'estate',
  around: { inspection: '  P1 thickness 9.8 mm' },
  example: '\ndrive change DG1 2025-02-03 power «5.5 kW|7.5 kW»',
  cases: [
    { name: 'another speed', text: '\ndrive change DG1 2025-02-03 speed 22 rpm' },
    { name: 'the same speed', text: '\ndrive change DG1 2025-02-03 speed «18 rpm»' },
    { name: 'one of both is new', text: '\ndrive change DG1 2025-02-03 power 5.5 kW speed 22 rpm' },
    {
      name: 'back to what it was',
      text: '\ndrive change DG1 2025-02-03 speed 22 rpm\ndrive change DG1 2025-03-03 speed 18 rpm',
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const changes = driveChangesOf(estate, conveyor, undefined);
      for (const [i, change] of changes.entries()) {
        const why = reason(conveyor, changes.slice(0, i), change);
        const { power, speed } = change;
        if (why !== undefined) yield { origin: (power ?? speed ?? change).origin, message: why };
      }
    }
  },
};

function reason(
  { name, drive }: Conveyor,
  before: readonly DriveChange[],
  { power, speed }: DriveChange,
): string | undefined {
  if (!drive) return `${name} declares no drive, so nothing is known of what this changed: add \`drive at\`.`;
  const old = driveAfter(drive, before);
  const isNew = (power && power.value !== old.power?.value) || (speed && speed.value !== old.speed?.value);
  const same = [power?.text, speed?.text].filter(Boolean).join(' and ');
  return isNew ? undefined : `The drive of ${name} had ${same} before this day already.`;
}
