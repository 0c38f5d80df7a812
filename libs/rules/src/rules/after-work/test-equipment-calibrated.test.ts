import { mechanic, radioStation, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { testEquipmentCalibrated } from './test-equipment-calibrated.js';

const of = (calibratedUntil: string | null, agency: RecordHead['agency'] = radioStation) =>
  dossierOf({
    status: {
      records: [
        recordOf({
          kind: 'altimeter-test',
          on: '2026-03-03',
          agency,
          instrument: { serial: 'TS-7', calibratedUntil },
        }),
      ],
    },
  });
const at = '2026-03-20T12:00Z';

testRule(testEquipmentCalibrated, [
  { name: 'until the day after', dossier: of('2026-03-04'), at, expect: 'met', message: 'calibrated' },
  { name: 'until the day itself', dossier: of('2026-03-03'), at, expect: 'met' },
  {
    name: 'until the day before',
    dossier: of('2026-03-02'),
    at,
    expect: 'not-met',
    message: 'lapsed',
    data: { serial: 'TS-7', until: '2026-03-02', done: '2026-03-03' },
  },
  { name: 'used by a mechanic', dossier: of('2026-03-02', mechanic), at, expect: 'not-met' },
  { name: 'calibration not recorded', dossier: of(null), at, expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'used on one altimeter, whose test is the one to do again',
    dossier: dossierOf({
      status: {
        records: [
          recordOf({
            kind: 'altimeter-test',
            on: '2026-03-03',
            subjects: ['alt1'],
            agency: radioStation,
            instrument: { serial: 'TS-7', calibratedUntil: '2026-03-02' },
          }),
        ],
      },
    }),
    at,
    expect: 'not-met',
  },
  {
    name: 'no test set named',
    dossier: dossierOf({ status: { records: [recordOf({ kind: 'altimeter-test', on: '2026-03-03' })] } }),
    at,
    expect: 'none',
  },
]);
