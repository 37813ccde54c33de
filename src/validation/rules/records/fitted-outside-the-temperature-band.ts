// Was a reline fitted at a temperature the plant did not plan for? Growth, joint gaps and bolt spacing were reckoned for the band.

import type { Rule } from '../../rule.js';

export const fittedOutsideTheTemperatureBand: Rule = {
  code: 'TL340',
  title: 'Fitted colder or warmer than planned',
  severity: 'information',
  restsOn: ['machine'],
  why: 'A liner fitted in the cold has further to grow when it runs warm; look for lifted joints at the next rounds.',
  todo: 'Check the temperature; if it is right, inspect the joints early.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  fitting temperature «-4 degC|8 degC»
}`,
  *check({ estate }) {
    for (const { conveyor, fittingTemperature: fitted } of estate.relines) {
      const band = conveyor.fittingTemperature ?? conveyor.plant.fittingTemperature;
      if (!fitted || !band || (fitted.from.value >= band.from.value && fitted.to.value <= band.to.value))
        continue;
      const said =
        fitted.from.value === fitted.to.value ? fitted.from.text : `${fitted.from.text} to ${fitted.to.text}`;
      yield {
        origin: fitted.from.origin,
        message: `${conveyor.name} was fitted at ${said}, and fitting was planned for ${band.from.text} to ${band.to.text}.`,
        related: [{ origin: band.from.origin, message: 'the band' }],
      };
    }
  },
};
