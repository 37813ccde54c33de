// What does work at the drive put right? Fresh oil ends oil that was dirty or low and no leak; a new seal ends the leak; a new part
// ends all that was wrong with it. Grease ends nothing by itself: whether the noise is gone, the next look has to say.

import type { History } from '../model/history.js';
import type { ConditionLine, Service } from '../model/records.js';

const puts: Readonly<Record<Service['work'], readonly NonNullable<ConditionLine['aspect']>[]>> = {
  'oil changed': ['oil dirty', 'oil low'],
  'oil topped up': ['oil low'],
  'seal renewed': ['oil leak', 'seal leaking'],
  greased: [],
  renewed: ['noise', 'oil low', 'oil dirty', 'oil leak', 'seal leaking', 'flooded'],
};

/** Of a conveyor, up to the day of its history. */
export function servicesOf(services: readonly Service[], { conveyor, asOf }: History): readonly Service[] {
  return services.filter((each) => each.conveyor === conveyor && each.date.day <= (asOf ?? Infinity));
}

/** True where the work ends what a line says of the part it was done at. */
export function putsRight({ part, work }: Pick<Service, 'part' | 'work'>, line: ConditionLine): boolean {
  if (line.kind !== part) return false;
  if (work === 'renewed') return true;
  return line.aspect !== undefined && puts[work].includes(line.aspect);
}

/** Only a gearbox has oil, and no grease; a motor has no seal that is looked at here. */
export function belongsTo({ part, work }: Pick<Service, 'part' | 'work'>): boolean {
  switch (work) {
    case 'oil changed':
    case 'oil topped up':
      return part === 'gearbox';
    case 'seal renewed':
      return part !== 'motor' && part !== 'coupling';
    case 'greased':
      return part !== 'gearbox';
    case 'renewed':
      return true;
  }
}
