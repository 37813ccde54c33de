// Does a slide gate that something drives have an isolation point that holds it? Shut above people, it could be opened onto them.
// A mechanical one at the gate, its pin, does as well; so does one without a chainage.

import type { Break, GateDrive, Isolation } from '../../../domain/model/conveyor.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const gateDriveNotIsolated: Rule = {
  code: 'TL555',
  title: 'Gate that nothing isolates',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'A gate that is shut above people holds only as long as nobody can move it: its own drive opens it onto them.',
  todo: 'Declare what locks it, an isolation point for its energy or the pin at the gate; the site’s own isolation procedure says which.',
  given: 'conveyor',
  example: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break «Gate» at 7 m to 7.5 m slide gate driven by hydraulics allowance 20 mm
  isolation Q1 "local isolator" electrical at 11.5 m
  isolation Feed "feed held off" material at 0.2 m‹|
  isolation H1 "power pack" hydraulic›`,
  cases: [
    {
      name: 'a pin at the gate',
      text: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break Gate at 7 m to 7.5 m slide gate driven by air allowance 20 mm
  isolation Q1 "local isolator" electrical at 11.5 m
  isolation Feed "feed held off" material at 0.2 m
  isolation Pin "gate pinned" mechanical at 7.2 m`,
    },
    {
      name: 'the pin of another gate',
      text: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break «Gate» at 7 m to 7.5 m slide gate driven by air allowance 20 mm
  isolation Q1 "local isolator" electrical at 11.5 m
  isolation Feed "feed held off" material at 0.2 m
  isolation Pin "gate pinned" mechanical at 9.2 m`,
    },
    {
      name: 'moved by hand',
      text: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break Gate at 7 m to 7.5 m slide gate driven by hand allowance 20 mm`,
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, breaks, isolations }) {
      // Where none is declared at all, that is told already.
      if (isolations.length === 0) return;
      for (const gate of breaks) {
        if (!gate.drive || gate.drive === 'hand' || isolations.some((point) => holds(point, gate))) continue;
        yield {
          origin: gate.nameOrigin ?? gate.origin,
          message: `${gate.name} of ${name} is driven by ${gate.drive}, and no ${energy[gate.drive]} isolation point nor a pin at the gate is declared.`,
        };
      }
    },
  ),
};

const energy: Readonly<Record<Exclude<GateDrive, 'hand'>, Isolation['kind']>> = {
  electricity: 'electrical',
  hydraulics: 'hydraulic',
  air: 'pneumatic',
};

/** mm from the gate to its pin; judgement. */
const beside = 500;

function holds({ kind, at }: Isolation, { drive, from, to }: Break): boolean {
  if (drive && drive !== 'hand' && kind === energy[drive]) return true;
  return kind === 'mechanical' && (!at || (at.value >= from.value - beside && at.value <= to.value + beside));
}
