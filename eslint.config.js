import prettier from 'eslint-config-prettier';
import vue from 'eslint-plugin-vue';
import ts from 'typescript-eslint';

/** Arrows run downward only: what each layer must never import, types included. */
function mustNotImport(folders, patterns, why) {
  return {
    files: folders.map((folder) => `${folder}/**/*.{ts,vue}`),
    rules: { 'no-restricted-imports': ['error', { patterns: [{ regex: patterns, message: why }] }] },
  };
}

const FROM_RENDERER = '^(@db|@service|electron|node:|sql\\.js|pdfmake)(/|$)|/(db|electron)/';

export default ts.config(
  { ignores: ['out/**', 'node_modules/**', 'test-results*/**', 'playwright-report/**'] },
  ...ts.configs.recommended,
  ...vue.configs['flat/recommended'],
  {
    files: ['**/*.vue'],
    languageOptions: { parserOptions: { parser: ts.parser } },
    rules: {
      'vue/no-v-html': 'error',
      'vue/no-static-inline-styles': 'error',
      'vue/multi-word-component-names': 'off',
      'vue/component-api-style': ['error', ['script-setup']],
      'vue/block-lang': ['error', { script: { lang: 'ts' } }],
      'max-lines': ['error', { max: 300, skipBlankLines: true }],
    },
  },
  {
    files: ['**/*.ts'],
    rules: { 'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['**/*.{ts,vue}'],
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/ban-ts-comment': 'error',
      'no-console': ['error', { allow: ['error'] }],
      'no-eval': 'error',
      eqeqeq: 'error',
      'no-undef': 'off',
    },
  },
  {
    files: ['{shared-core,db,electron,renderer}/**/*.{ts,vue}'],
    rules: { 'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }] },
  },
  mustNotImport(
    ['shared-core'],
    '^(@db|@service|@renderer|electron|vue|pinia|node:|sql\\.js|hono|pdfmake)(/|$)|/(db|electron|renderer)/',
    'shared-core is pure: it imports nothing of ours and does no I/O.',
  ),
  mustNotImport(
    ['db'],
    '^(@service|@renderer|electron|vue|pinia|hono|pdfmake)(/|$)|/(electron|renderer)/',
    'db may import shared-core only.',
  ),
  mustNotImport(
    ['electron/service'],
    '^(@renderer|electron|vue|pinia)(/|$)|/renderer/',
    'The service may import db and shared-core only.',
  ),
  mustNotImport(
    ['electron/main', 'electron/loopback'],
    '^(@db|@core|@renderer|vue|pinia|sql\\.js|pdfmake)(/|$)|/(db|shared-core|renderer)/',
    'A host is thin: of ours it imports the service alone.',
  ),
  mustNotImport(['electron/preload'], '^(?!electron$|\\./)', 'The preload stays tiny: electron only.'),
  {
    files: ['renderer/**/*.{ts,vue}'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: FROM_RENDERER + '|^(?!type)@service',
              message: 'The renderer may import shared-core, and the service’s route types only.',
            },
          ],
        },
      ],
    },
  },
  {
    // Where the types of the service's routes and problems enter the renderer.
    files: ['renderer/service/client.ts', 'renderer/service/problem.ts'],
    rules: {
      'no-restricted-imports': 'off',
      '@typescript-eslint/no-restricted-imports': [
        'error',
        { patterns: [{ regex: '^@(db|service)', allowTypeImports: true, message: 'Types only.' }] },
      ],
    },
  },
  {
    files: ['tests/**/*.ts', 'build/**/*.{ts,mjs}', 'electron/loopback/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  prettier,
);
