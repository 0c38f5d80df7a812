// npm run build: rule library, generated files, API, web application; only what is not up to date.
import './lib/node-version.mjs';
import { prepare } from './lib/prepare.mjs';
import { command } from './lib/steps.mjs';

await command(() => prepare());
