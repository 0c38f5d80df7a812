// How fast one aircraft is judged on one core, against a named baseline in the same run: JSON.parse of the same dossier.
// The dossiers are those of the invented fleet, each as its recorded changes make it.
import { gzipSync } from 'node:zlib';

const TIMES = Number(process.env.TIMES ?? 3);
const built = (path) => new URL(`../../apps/api/dist/demo/${path}`, import.meta.url).href;
const { assess, defaultConditions, horizon, replay } = await import('@tallywing/rules');
const { shopFleet } = await import(built('fleet.js'));
const { live } = await import(built('life.js'));
const { Days } = await import(built('days.js'));
const { demoTypeList } = await import(built('catalogue/all.js'));

const now = `${new Date().toISOString().slice(0, 16)}Z`;
const inEighteenMonths = `${Number(now.slice(0, 4)) + 1}-12-31T00:00Z`;
const catalogue = { version: 'bench', types: Object.fromEntries(demoTypeList.map((type) => [type.id, type])) };
const texts = shopFleet.map((spec) => {
  const { aircraftId, entries } = live(spec, new Days(now.slice(0, 10)));
  return JSON.stringify(
    replay(
      entries.map((entry) => entry.change),
      aircraftId,
    ),
  );
});

/** Each dossier freshly parsed, so that nothing remembered about one helps; milliseconds for each, in order. */
function measure(work) {
  const took = [];
  for (let time = 0; time < TIMES; time += 1) {
    for (const text of texts) {
      const dossier = JSON.parse(text);
      const from = performance.now();
      work(dossier, text);
      took.push(performance.now() - from);
    }
  }
  return took.sort((a, b) => a - b);
}

const middle = (sorted) => sorted[Math.floor(sorted.length / 2)];
const ends = (sorted) => sorted[Math.floor(sorted.length * 0.95)];
const judge = (dossier) => assess(dossier, catalogue, { instant: now }, defaultConditions);
measure(judge); // once to warm up
const parsing = measure((_, text) => JSON.parse(text));
const rows = [
  ['JSON.parse of the dossier (baseline)', parsing],
  ['assess, from nothing', measure(judge)],
  [
    'horizon of one flight',
    measure((dossier) => horizon(dossier, catalogue, now, inEighteenMonths, defaultConditions)),
  ],
];
for (const [name, took] of rows) {
  const median = middle(took);
  console.log(
    `${name.padEnd(38)} median ${median.toFixed(3)} ms, p95 ${ends(took).toFixed(3)} ms, ${Math.round(1000 / median)} a second, ${(median / middle(parsing)).toFixed(0)} x baseline`,
  );
}
const sizes = texts.map((text) => [text.length, gzipSync(text).length]).sort((a, b) => a[0] - b[0]);
const [plain, packed] = middle(sizes);
const [most, mostPacked] = sizes.at(-1);
console.log(`dossier: median ${plain} bytes, ${packed} compressed; largest ${most}, ${mostPacked} compressed`);
