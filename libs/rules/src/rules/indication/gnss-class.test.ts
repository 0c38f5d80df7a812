import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RuleCase } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { Grant, InstallationApproval } from '../../dossier/installation.js';
import type { GnssCapability } from '../effects.js';
import { gnssCapabilities } from '../effects.js';
import { gnssClass } from './gnss-class.js';

const at = '2026-03-02T14:00Z';
const all: readonly Grant[] = [...gnssCapabilities];
const type = (...authorisations: EquipmentType['authorisations'][number][]) =>
  typeOf({ id: 'nx', functions: ['gnss'], authorisations });
const marked = (tso: string, mark: string | null) => ({ tso, class: mark });
const paper = (grants: readonly Grant[] | null): InstallationApproval => approvalOf({ grants });
const supplement = (grants: readonly Grant[] | null, id = 's1', revision: string | null = 'A') => ({
  id,
  units: ['gps1'],
  document: { title: 'Supplement 12', revision, date: null },
  aboard: true,
  currentDataRequired: null,
  grants,
});
const dossier = (approval: InstallationApproval | null, supplements: ReturnType<typeof supplement>[], typed = true) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', approval, ...(typed ? { typeId: 'nx' } : { functions: ['gnss'] }) })],
      supplements,
    },
  });
const full = dossier(paper(all), [supplement(all)]);
/** Class alone decides: installation and supplement grant everything. */
const byClass = (
  tso: string,
  mark: string | null,
  capability: GnssCapability,
  expect: RuleCase['expect'],
): RuleCase => ({
  name: `${tso} ${mark ?? 'without class'}: ${capability}`,
  dossier: full,
  types: [type(marked(tso, mark))],
  at,
  subject: `gps1:${capability}`,
  expect,
});
/** Papers decide: the class allows everything. */
const byPaper = (
  name: string,
  given: ReturnType<typeof dossier>,
  capability: GnssCapability,
  expect: RuleCase['expect'],
): RuleCase => ({
  name,
  dossier: given,
  types: [type(marked('C146e', 'Gamma-3'))],
  at,
  subject: `gps1:${capability}`,
  expect,
});

testRule(gnssClass, [
  // TSO-C129 after the table of AIM 1-1-17: class A1 and its like fly approaches, none of them with vertical guidance.
  byClass('C129', 'A1', 'nav-gnss', 'met'),
  byClass('C129a', 'A1', 'approach-lnav', 'met'),
  byClass('C129a', 'A1', 'approach-lp', 'not-met'),
  byClass('C129a', 'A1', 'approach-lnav-vnav', 'not-met'),
  byClass('C129a', 'A1', 'approach-lpv', 'not-met'),
  byClass('C129a', 'B3', 'approach-lnav', 'met'),
  byClass('C129a', 'A2', 'approach-lnav', 'not-met'),
  // The table gives class A2 en route use, the text of b.3(b) does not name it.
  byClass('C129a', 'A2', 'nav-gnss', 'cannot-tell'),
  byClass('C129a', null, 'nav-gnss', 'cannot-tell'),
  byClass('C129a', 'Z9', 'nav-gnss', 'cannot-tell'),
  byClass('C196a', null, 'approach-lnav', 'met'),
  byClass('C196a', null, 'approach-lpv', 'not-met'),
  byClass('C115a', null, 'nav-gnss', 'not-met'),
  // Operational classes of C145 and C146 after AIM 1-1-18.
  byClass('C146a', 'Gamma-1', 'approach-lnav', 'met'),
  byClass('C146a', 'Gamma-1', 'approach-lnav-vnav', 'not-met'),
  byClass('C146c', 'Gamma-2', 'approach-lnav-vnav', 'met'),
  byClass('C146c', 'Gamma-2', 'approach-lpv', 'not-met'),
  byClass('C145c', 'Beta-3', 'approach-lpv', 'met'),
  byClass('C146c', 'Delta-4', 'approach-lpv', 'met'),
  byClass('C146c', 'Delta-4', 'nav-gnss', 'not-met'),
  byClass('C146c', null, 'nav-gnss', 'cannot-tell'),
  // LP from letter b on.
  byClass('C146', 'Gamma-3', 'approach-lp', 'not-met'),
  byClass('C146a', 'Gamma-3', 'approach-lp', 'not-met'),
  byClass('C146b', 'Gamma-3', 'approach-lp', 'met'),
  byClass('C145c', 'Beta-3', 'approach-lp', 'met'),
  byClass('C146b', 'Gamma-2', 'approach-lp', 'not-met'),
  {
    name: 'no satellite authorisation',
    dossier: full,
    types: [type(marked('C169a', null))],
    at,
    subject: 'gps1:nav-gnss',
    expect: 'not-met',
  },
  {
    name: 'the better of two authorisations',
    dossier: full,
    types: [type(marked('C129a', 'A2'), marked('C146d', 'Gamma-3'))],
    at,
    subject: 'gps1:nav-gnss',
    expect: 'met',
    message: 'approved',
    data: { capability: 'nav-gnss' },
  },
  {
    name: 'not catalogued',
    dossier: dossier(paper(all), [supplement(all)], false),
    at,
    subject: 'gps1:nav-gnss',
    expect: 'cannot-tell',
    message: 'unclear',
  },

  // Class, installation and supplement: what all of them allow.
  byPaper('installed for VFR alone', dossier(paper(['vfr-only']), [supplement(all)]), 'nav-gnss', 'not-met'),
  byPaper(
    'VFR alone beside other uses: the narrower',
    dossier(paper(['vfr-only', 'nav-gnss']), [supplement(all)]),
    'nav-gnss',
    'not-met',
  ),
  byPaper(
    'installation to LNAV, supplement to LPV: the narrower',
    dossier(paper(['nav-gnss', 'approach-lnav']), [supplement(all)]),
    'approach-lpv',
    'not-met',
  ),
  byPaper(
    'installation to LPV, supplement to LNAV: the narrower',
    dossier(paper(all), [supplement(['nav-gnss', 'approach-lnav'])]),
    'approach-lpv',
    'not-met',
  ),
  byPaper('what both allow', dossier(paper(['nav-gnss', 'approach-lnav']), [supplement(all)]), 'approach-lnav', 'met'),
  byPaper(
    'LP not stated in the supplement',
    dossier(paper(all), [supplement(['nav-gnss', 'approach-lpv'])]),
    'approach-lp',
    'not-met',
  ),
  byPaper(
    'two supplements, one narrower',
    dossier(paper(all), [supplement(all), supplement(['nav-gnss'], 's2')]),
    'approach-lpv',
    'not-met',
  ),
  byPaper(
    'two supplements, one not read',
    dossier(paper(all), [supplement(all), supplement(null, 's2')]),
    'approach-lpv',
    'cannot-tell',
  ),
  byPaper(
    'revision of the supplement not recorded',
    dossier(paper(all), [supplement(all, 's1', null)]),
    'approach-lpv',
    'met',
  ),
  byPaper('approval not recorded', dossier(null, [supplement(all)]), 'nav-gnss', 'cannot-tell'),
  byPaper('approval does not say', dossier(paper(null), [supplement(all)]), 'nav-gnss', 'cannot-tell'),
  byPaper('no supplement', dossier(paper(all), []), 'nav-gnss', 'cannot-tell'),
  byPaper('supplement does not say', dossier(paper(all), [supplement(null)]), 'nav-gnss', 'cannot-tell'),
  {
    name: 'hand-held',
    dossier: full,
    types: [
      typeOf({ id: 'nx', functions: ['gnss', 'portable-display'], authorisations: [marked('C146e', 'Gamma-3')] }),
    ],
    at,
    subject: 'gps1:nav-gnss',
    expect: 'not-met',
    message: 'not-approved',
  },
  {
    name: 'no satellite unit',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'n', functions: ['com'] })] } }),
    at,
    expect: 'none',
  },
]);
