// The generated change inputs must be what the rule library's schemas say today.
import { readFileSync } from 'node:fs';
import { changeInputs } from '../generate/change-inputs.mjs';

for (const [path, text] of await changeInputs()) {
  const url = new URL(`../../${path}`, import.meta.url);
  let found = '';
  try {
    found = readFileSync(url, 'utf8');
  } catch {
    // A missing file differs like any other.
  }
  if (found !== text) {
    console.error(`${path} is not what the rule library says. Run: npm run generate`);
    process.exitCode = 1;
  }
}
if (!process.exitCode) console.log('change inputs agree with the rule library');
