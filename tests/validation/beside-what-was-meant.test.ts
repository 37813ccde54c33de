import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { inSoundEstate } from '../../src/validation/example.js';
import { panelWouldSlide } from '../../src/validation/rules/jobs/panel-would-slide.js';
import { messageOf } from './findings-in.js';

test('a stop that lies beside the end of the panels is named, with how far off it is', () => {
  const text = 'bad' in panelWouldSlide ? panelWouldSlide.bad.replace(/[«»]/g, '') : '';
  const told = (rest: string): string =>
    analyse([{ uri: 'a.trough', text: inSoundEstate('job', text, { conveyor: rest }) }]).findings.find(
      ({ code }) => code === 'TL405',
    )?.message ?? '';
  expect(told('rest at 1.6 m')).toMatch(
    /nothing to rest on: the stop at 1\.6 m lies 100 mm from the end of the panels\.$/,
  );
  expect(told('rest at 2.1 m')).toMatch(/nothing to rest on\.$/);
  expect(told('rest at 1.5 m')).toBe('');
});

test('an old panel that nothing took out is named by its number', () => {
  const records =
    'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope run 3\n  old panel at 4.2 m thickness 5.1 mm\n}';
  expect(messageOf('TL370', 'estate', records)).toMatch(/at 4\.20 m of DG1, on panel 3 of run 2\.$/);
});
