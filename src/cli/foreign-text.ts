// How are names and lines that someone else wrote shown in a terminal or in the log of a build? On one line, with every hidden
// character told, and never as a command: build services take lines that begin with `::`, and `##[` anywhere, for their own.

import path from 'node:path';
import { visibleLine } from '../domain/units/visible-text.js';

/** The name of a file, with forward slashes. */
export function told(name: string): string {
  return shownLine(slashes(name));
}

/** A line of text, or a message that quotes one. */
export function shownLine(text: string): string {
  return visibleLine(text.replace(/\t/g, ' '))
    .replace(/^(\s*)::/, '$1./::')
    .replaceAll('##[', '## [');
}

export function slashes(name: string): string {
  return name.split(path.sep).join('/');
}
