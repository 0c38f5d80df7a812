import { approvalOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodDay, trainer, trainerTypes } from '../../../testing/trainer.js';
import type { InstallationApproval } from '../../dossier/installation.js';
import { installationApproval } from './installation-approval.js';

const at = '2026-03-02T14:00Z';
const unit = (part: Partial<InstallationApproval> | null) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', functions: ['gnss'], approval: part === null ? null : approvalOf(part) })],
    },
  });
const data = { title: 'Change 7 of the model list', revision: '12', date: '2024-01-10' };
const listed = { basis: 'stc-model-list', permission: true, modelListed: true, document: data } as const;

testRule(installationApproval, [
  { name: 'nothing recorded', dossier: unit(null), at, expect: 'cannot-tell', message: 'unrecorded' },
  {
    name: 'field approval',
    dossier: unit({}),
    at,
    expect: 'met',
    message: 'approved',
    data: { document: 'Approved data' },
  },
  {
    name: 'field approval without its date',
    dossier: unit({ approvedOn: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'type design', dossier: unit({ basis: 'type-certificate', approvedOn: null }), at, expect: 'met' },
  { name: 'minor alteration', dossier: unit({ basis: 'minor-alteration', approvedOn: null }), at, expect: 'met' },
  {
    name: 'certificate with the permission of its holder',
    dossier: unit({ basis: 'stc', permission: true }),
    at,
    expect: 'met',
  },
  {
    name: 'certificate, permission refused',
    dossier: unit({ basis: 'stc', permission: false }),
    at,
    expect: 'not-met',
    message: 'not-approved',
  },
  { name: 'certificate, permission not seen', dossier: unit({ basis: 'stc' }), at, expect: 'cannot-tell' },
  { name: 'exact model on the list', dossier: unit(listed), at, expect: 'met' },
  { name: 'model not on the list', dossier: unit({ ...listed, modelListed: false }), at, expect: 'not-met' },
  { name: 'model not looked up', dossier: unit({ ...listed, modelListed: null }), at, expect: 'cannot-tell' },
  { name: 'listed, but no permission', dossier: unit({ ...listed, permission: null }), at, expect: 'cannot-tell' },
  {
    name: 'revision of the list not recorded',
    dossier: unit({ ...listed, document: { ...data, revision: null } }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'accepted as found by a named person',
    dossier: unit({ basis: 'as-found', approvedOn: null, acceptedBy: { asOf: '2024-05-01', by: 'J. Orrell' } }),
    at,
    expect: 'met',
  },
  {
    name: 'as found, accepted by nobody',
    dossier: unit({ basis: 'as-found', approvedOn: null }),
    at,
    expect: 'cannot-tell',
  },

  {
    name: 'a portable unit is not installed',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'p', functions: ['gnss', 'portable-display'] })] } }),
    at,
    expect: 'none',
  },
  {
    name: 'a radio with an audio panel in it, nothing recorded',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'com1', functions: ['com', 'audio', 'altimeter'] })] },
    }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'an altimeter is no avionics unit',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter'] })] } }),
    at,
    expect: 'none',
  },
  {
    name: 'a well-kept trainer',
    dossier: trainer(),
    types: Object.values(trainerTypes),
    at: goodDay,
    expect: 'met',
  },
]);
