// `finding brace at 14 m "bent"` → a remark, in a look and in a record of work alike.

import type * as ast from '../generated/ast.js';
import type { NotedFinding } from '../../domain/model/records.js';
import { stated } from './block.js';
import { chainage } from './limits.js';
import type { Reader } from './reader.js';

/** Undefined where it has no words. */
export function lowerRemark(reader: Reader, row: ast.Remark): NotedFinding | undefined {
  const at = reader.quantity(row, 'at', 'length', 'chainage', chainage);
  if (row.text === undefined) return undefined;
  const part = row.part === 'drive at' ? 'drive' : row.part;
  return { text: row.text, origin: reader.origin(row), ...stated({ part, at }) };
}
