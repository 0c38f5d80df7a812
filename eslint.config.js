import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import { boundaries } from './scripts/lint/boundaries.mjs';
import { clockFree } from './scripts/lint/clock-free.mjs';

const tests = ['**/*.test.ts', '**/*.test.tsx', 'tests/**/*.ts'];

export default tseslint.config(
  {
    ignores: [
      '**/dist/',
      '**/node_modules/',
      '**/*.generated.ts',
      '**/*.d.ts',
      'apps/api/src/database/prisma-client/',
      'libs/rules/src/time/zone-data.ts',
      '.data/',
      '.test-data/',
    ],
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.recommended],
    rules: {
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-empty': 'error',
      'no-param-reassign': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    // Rules that need types, where promises are: they cost more than all others together.
    files: ['apps/**/*.ts', 'apps/**/*.tsx', 'tests/{api,browser,faults}/**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/only-throw-error': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    },
  },
  {
    files: ['{apps,libs}/*/src/**/*.ts', '{apps,libs}/*/src/**/*.tsx'],
    ignores: tests,
    plugins: { tallywing: boundaries },
    rules: { 'tallywing/imports': 'error' },
  },
  { files: ['libs/rules/src/**/*.ts'], ignores: tests, ...clockFree },
  {
    files: ['apps/web/src/**/*.ts', 'apps/web/src/**/*.tsx'],
    plugins: { 'react-hooks': reactHooks },
    rules: { 'react-hooks/rules-of-hooks': 'error', 'react-hooks/exhaustive-deps': 'error' },
  },
  {
    files: tests,
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'MemberExpression[object.name=/^(test|it|describe|suite)$/][property.name=/^(skip|only|todo|skipIf|runIf|fails)$/]',
          message: 'Every test runs, everywhere. Take it out, or mend what it shows.',
        },
      ],
    },
  },
);
