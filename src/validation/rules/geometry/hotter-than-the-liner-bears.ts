// Is the liner's material good for the service temperature? PE1000 is rated to about 80 °C in continuous service (data sheets).

import type { Rule } from '../../rule.js';

export const hotterThanTheLinerBears: Rule = {
  code: 'TL220',
  title: 'Service hotter than the liner bears',
  severity: 'error',
  restsOn: [],
  why: 'PE1000 softens well below its melting point: it wears many times faster, creeps off its bolts and buckles into the screw.',
  todo: 'Check the temperature of the material conveyed; if it is right, another liner is needed.',
  given: 'conveyor',
  example: `
  service temperature 5 degC to «95 degC|35 degC»
  fitting temperature ‹90|5› degC to ‹95|25› degC`,
  cases: [
    {
      name: 'as hot as the liner bears',
      text: `
  service temperature 5 degC to 80 degC`,
    },
    {
      name: 'just hotter',
      text: `
  service temperature 5 degC to «81 degC»`,
    },
  ],
  *check({ estate }) {
    const told = new Set<object>();
    for (const conveyor of estate.conveyors) {
      const limit = conveyor.liner.maximumTemperature;
      const service = (conveyor.serviceTemperature ?? conveyor.plant.serviceTemperature)?.to;
      if (!service || service.value <= limit.value || told.has(service)) continue;
      told.add(service);
      yield {
        origin: service.origin,
        message:
          `${conveyor.name} runs at up to ${service.text}, ` +
          `and ${conveyor.liner.name} is good for ${limit.text}${limit.assumed === undefined ? '' : ' (assumed)'}.`,
        related: [{ origin: conveyor.linerUse.origin, message: `the liner of ${conveyor.name}` }],
      };
    }
  },
};
