// Settings as the client gives them; what is missing or of another shape falls back to the defaults.

import { defaultSettings, type Settings } from '../protocol/messages.js';

export function readSettings(given: unknown): Settings {
  const own = isObject(given) ? given : {};
  const estates = own['estates'];
  return {
    estates: Array.isArray(estates)
      ? estates.filter((each) => typeof each === 'string')
      : defaultSettings.estates,
    inlayHints: switches(own['inlayHints'], defaultSettings.inlayHints),
    codeLens: switches(own['codeLens'], defaultSettings.codeLens),
    diagnostics: switches(own['diagnostics'], defaultSettings.diagnostics),
  };
}

function switches<T extends Readonly<Record<string, boolean>>>(given: unknown, defaults: T): T {
  if (!isObject(given)) return defaults;
  const known = Object.entries(defaults).map(([name, usual]) => [
    name,
    typeof given[name] === 'boolean' ? given[name] : usual,
  ]);
  return Object.fromEntries(known) as T; // the very names of the defaults, each with a boolean
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
