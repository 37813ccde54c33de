// `drive change DG1 2022-01-17 power 7.5 kW speed 18 rpm` → what the drive is from that day on, the speed as a record of the duty (so
// that wear goes by the turns from then on), and the work that it was: another power is another motor.

import type * as ast from '../generated/ast.js';
import type { DriveChange, DutyChange, Service } from '../../domain/model/records.js';
import type { Draft } from '../sheet.js';
import { present, stated, wordsSaid } from './block.js';
import type { Reader } from './reader.js';

export interface DriveChangeDrafts {
  readonly change: Draft<DriveChange>;
  readonly speed?: Draft<DutyChange>;
  readonly work: Draft<Service>;
}

/** Undefined where it does not say of what, since when, or to what. */
export function lowerDriveChange(reader: Reader, node: ast.DriveChange): DriveChangeDrafts | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const power = reader.quantity(node, 'power', 'power', 'drive power');
  const speed = reader.quantity(node, 'speed', 'rotation', 'speed of the screw');
  const isRead = (node.power === undefined) === !power && (node.speed === undefined) === !speed;
  if (!conveyorUse || !date || (!power && !speed) || !isRead) return undefined;
  const origin = reader.origin(node);
  const known = { conveyorUse, origin };
  const note = stated({ note: wordsSaid(node) });
  const by = stated({ by: node.by });
  const to = [power?.text, speed?.text].filter(Boolean).join(', ');
  return {
    change: { ...known, date, ...stated({ power, speed }), ...by, ...note },
    ...(speed && { speed: { ...known, from: date, speed, ...note } }),
    work: {
      ...known,
      date,
      place: {},
      ...(power
        ? { part: 'motor', work: 'renewed', note: present([to, wordsSaid(node)]).join('; ') }
        : { part: 'drive', words: `changed to ${to}`, ...note }),
      ...by,
    },
  };
}
