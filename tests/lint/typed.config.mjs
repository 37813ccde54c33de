// Lint that needs types (`npm run lint:types`): apart from the rest because it takes twenty seconds where that takes two.
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['src/**/generated/**'] },
  { plugins: { '@typescript-eslint': tseslint.plugin } },
  {
    // A switch over a union names every member, or says `default`; no promise is forgotten; no condition is
    // always true or always false.
    files: ['src/**/*.ts'],
    languageOptions: {
      parser: tseslint.parser,
      parserOptions: { project: '../../tsconfig.json', tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
    },
  },
  {
    // Here trees are read that may be half typed: what their types promise may be missing.
    files: [
      'src/language/lowering/**',
      'src/lsp/document-symbols.ts',
      'src/lsp/providers/document-symbol-provider.ts',
    ],
    rules: { '@typescript-eslint/no-unnecessary-condition': 'off' },
  },
);
