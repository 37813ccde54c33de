// Where a photo lies that a text names: beside the text, never outside its folder.

import { URI, Utils } from 'vscode-uri';
import { photoTrouble } from '../domain/conditions/photo-path.js';

/** Undefined where the path is none that may be opened. */
export function photoAddress(textUri: string, path: string): string | undefined {
  return photoTrouble(path) === undefined
    ? Utils.joinPath(Utils.dirname(URI.parse(textUri)), path).toString()
    : undefined;
}
