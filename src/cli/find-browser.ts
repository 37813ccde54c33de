// Where is a browser that prints to PDF? Chromium, Chrome or Edge: on Linux by its name on the PATH, on macOS and Windows in
// the folders into which their installers put it.

import path from 'node:path';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
];
const onMac = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const onWindows = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

type Environment = Readonly<Record<string, string | undefined>>;

/** The first that is there; `exists` looks. */
export function findBrowser(
  platform: NodeJS.Platform,
  env: Environment,
  exists: (file: string) => boolean,
): string | undefined {
  return places(platform, env).find(exists);
}

function places(platform: NodeJS.Platform, env: Environment): readonly string[] {
  switch (platform) {
    case 'win32':
      return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) =>
        onWindows.flatMap((parts) => (env[name] ? [path.win32.join(env[name], ...parts)] : [])),
      );
    case 'darwin':
      return ['/Applications', ...(env['HOME'] ? [`${env['HOME']}/Applications`] : [])].flatMap((folder) =>
        onMac.map((name) => `${folder}/${name}.app/Contents/MacOS/${name}`),
      );
    default: {
      const folders = (env['PATH'] ?? '').split(':').filter((folder) => folder !== '');
      return names.flatMap((name) => folders.map((folder) => path.posix.join(folder, name)));
    }
  }
}
