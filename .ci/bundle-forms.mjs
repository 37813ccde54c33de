// The scripts of the offline forms (src/views) as text: a page without a network carries its script along, and the generators that
// write such pages are pure, so they import the script as a constant. The same source gives the same bytes.

import { build } from 'esbuild';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const forms = { 'phone-sheet': 'phoneSheetScript', 'as-fitted': 'asFittedScript' };

export async function bundleForms(root) {
  const folder = path.join(root, 'src', 'generators', 'page', 'generated');
  mkdirSync(folder, { recursive: true });
  for (const [name, constant] of Object.entries(forms)) {
    const { outputFiles } = await build({
      entryPoints: [`src/views/${name}/${name}.ts`],
      absWorkingDir: root,
      bundle: true,
      write: false,
      format: 'iife',
      // Phones on site are old; what they lack is written out.
      target: 'es2018',
      charset: 'utf8',
      legalComments: 'none',
      minifyWhitespace: true,
      minifySyntax: true,
    });
    const script = JSON.stringify(outputFiles[0].text);
    writeFileSync(
      path.join(folder, `${name}.ts`),
      `// Made by npm run generate from src/views/${name}.\nexport const ${constant} =\n  ${script};\n`,
    );
  }
}
