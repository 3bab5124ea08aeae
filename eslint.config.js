import js from '@eslint/js'
import globals from 'globals'
import { createNodeResolver, importX } from 'eslint-plugin-import-x'
import svelte from 'eslint-plugin-svelte'
import ts from 'typescript-eslint'

export default ts.config(
  { ignores: ['**/node_modules/', '**/build/', '**/dist/', '**/.svelte-kit/', '**/generated/', 'data/'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.node } },
    plugins: { 'import-x': importX },
    settings: {
      // Without these it follows no import of a .ts file, and finds no cycle.
      'import-x/extensions': ['.ts', '.js', '.mjs'],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts'] },
      'import-x/resolver-next': [createNodeResolver({ extensions: ['.ts', '.js', '.mjs'] })],
    },
    rules: {
      curly: ['error', 'multi-line'],
      eqeqeq: 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'import-x/no-cycle': ['error', { ignoreExternal: true }],
    },
  },
  {
    files: ['packages/domain/src/**/*.ts'],
    ignores: ['**/*.test.ts', '**/testing/**'],
    rules: {
      // The domain is pure: no clock, no chance, no I/O, nothing from outside.
      'no-restricted-globals': ['error', 'Date', 'process', 'fetch', 'setTimeout', 'console'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }, { object: 'Math', property: 'round' }],
      'no-restricted-imports': ['error', { patterns: [{ regex: '^[^.]', message: 'The domain imports nothing from outside.' }] }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser }, globals: { ...globals.browser } },
  },
  { files: ['apps/web/src/**/*.ts'], languageOptions: { globals: { ...globals.browser } } },
  {
    files: ['**/*.ts'],
    ignores: ['apps/web/**'],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: false }],
    },
  },
)
