import { codeWords } from '@tallywing/rules';

/** Labels where the field's own name does not say it. Keys: the last two names of the path, or the last. */
const labels: Readonly<Record<string, string>> = {
  typeId: 'Equipment type',
  unitId: 'Unit',
  linkId: 'Joint',
  antennaId: 'Antenna',
  placardId: 'Placard',
  holdId: 'Hold',
  defectId: 'Defect',
  openingId: 'Opening in the panel',
  recordId: 'Entry',
  fromUnit: 'From unit',
  fromPort: 'From port',
  toUnit: 'To unit',
  toPort: 'To port',
  touched: 'The work opened or touched',
  obligationId: 'Which work',
  sameUnit: 'Same unit: its serial number was written down wrongly',
  performed: 'Done',
  done: 'Done',
  raised: 'Found',
  loaded: 'Loaded',
  'performed.at': 'Time finished',
  'done.at': 'Time done',
  'raised.at': 'Time of day',
  'loaded.at': 'Time of day',
  date: 'Date',
  grants: 'Approved for',
  approval: 'Approval of this installation',
  basis: 'Kind of approval',
  approvedOn: 'Data approved on',
  releasedOn: 'Work released on',
  permission: 'Written permission of the holder seen',
  modelListed: 'Exact model found on the list',
  acceptedBy: 'Accepted as found',
  asOf: 'As of',
  by: 'By',
  subjects: 'Of',
  subject: 'Of',
  evidence: 'How well it is known',
  agency: 'Who signed',
  entry: 'Entry in the record',
  instrument: 'Test set',
  calibratedUntil: 'Calibrated until',
  secondPerson: 'Second signature',
  enRoute: 'Flown over on the way to the place of inspection',
  dueAt: 'Fell due at',
  testedToFt: 'Tested to',
  transmitter: 'Transmitter',
  linesClear: 'Lines free of moisture and restrictions',
  portHeater: 'Heater of the static ports',
  surroundsUnchanged: 'Skin about the ports neither altered nor deformed',
  navigationLost: 'Navigation was lost',
  marked: 'Date and altitude marked on the altimeter',
  document: 'Document',
  dial: 'The dial shows',
  oldDial: 'The old dial shows',
  newDial: 'The new dial shows',
  slot: 'Which cycle',
  cycle: 'Cycle number',
  expires: 'Expires',
  'load.expires': 'Expires (as printed by the provider)',
  'load.effective': 'Effective (as printed by the provider)',
  fromFlightDeck: 'From the flight deck, without tools',
  coverage: 'Regions that the data cover',
  notices: 'Notices of the provider',
  'notices.on': 'Concerns',
  against: 'Which one',
  currentDataRequired: 'It asks for current navigation data',
  aboard: 'Aboard',
  inView: 'In the pilot’s view',
  mass: 'Change of weight',
  item: 'Change',
  listed: 'On the equipment list',
  noHazardBy: 'Found no hazard',
  notRequired: 'Not a required item',
  secured: 'Removed, or deactivated',
  how: 'How it ended',
  headingDeg: 'On heading',
  compassDeg: 'Compass shows',
  mtlModeADbm: 'MTL, mode A',
  mtlModeCDbm: 'MTL, mode C',
  mtlModeSDbm: 'MTL, mode S',
  offsetIn: 'From the centre of view',
  lists: 'Lists',
  stated: 'Stated',
  asBuilt: 'How it is built in',
  air: 'Air led to it',
  airwaysClear: 'Intakes and exhaust are clear',
  couldStrike: 'Torn loose it could strike somebody',
  bears: 'What the mount bears',
  use: 'What the light says',
  batteryShare: 'Share of the battery that is counted on',
  loadWatch: 'What watches the continuous load',
  wireAwg: 'Wire size (AWG)',
  wireRating: 'Temperature rating of the wire',
  ampacity: 'Current that the wire may carry',
  'ampacity.by': 'Known by',
  usedIn: 'Switched on in',
  intermittent: 'Short intermittent load',
  circuitsGuarded: 'Circuits behind this protector',
  envelope: 'Limits and stations',
  points: 'Limits by weight',
  leastLb: 'Always in it',
  mostLb: 'The most that may be in it',
  leadingEdgeIn: 'Leading edge of the mean chord',
  recurs: 'To be done again and again',
  interval: 'How often, counted from its entries',
  nextDue: 'Due point as stated with the entry',
  parts: 'Intervals',
  'parts.count': 'How many',
  'parts.tolerance': 'Tolerance',
  combine: 'Which of them decides',
  countFrom: 'Counted from',
  toleranceFor: 'The tolerance is for',
  life: 'Life, and where it began',
  'life.from': 'Calendar life runs from',
  'life.meters': 'Where the meters stood when it was fitted',
  'meters.at': 'The meter stood at',
  'meters.used': 'Behind it at that time',
  retireBy: 'Retire by, as somebody stated',
};

/** Units that a field's name ends in. */
const unitEndings: readonly (readonly [RegExp, string])[] = [
  [/Ft$/, 'ft'],
  [/In$/, 'in'],
  [/Lb$/, 'lb'],
  [/InHg$/, 'inHg'],
  [/Dbm$/, 'dBm'],
  [/Dbw$/, 'dBW'],
  [/Db$/, 'dB'],
  [/MHz$/, 'MHz'],
  [/Deg$/, '°'],
  [/Percent$/, '%'],
  [/Nm$/, 'NM'],
  [/PerS$/, 'a second'],
  [/milliohm$/i, 'milliohm'],
];
const powerEndings: readonly (readonly [RegExp, string])[] = [
  [/[a-z]W$/, 'W'],
  [/[a-z]A$/, 'A'],
  [/[a-z]V$/, 'V'],
  [/Ah$/, 'Ah'],
];

/** The unit a number is in, from its name: 'testedToFt' is in feet. */
export function unitOf(path: string): string | null {
  const name = lastName(path);
  // 'inHg' before 'In', and the longest ending first in general.
  const endings = [...unitEndings].sort((a, b) => b[0].source.length - a[0].source.length);
  return [...endings, ...powerEndings].find(([ending]) => ending.test(name))?.[1] ?? null;
}

export function labelOf(path: string): string {
  const names = path.split('.').filter((name) => !/^\d+$/.test(name));
  const name = names[names.length - 1] ?? '';
  const known = labels[names.slice(-2).join('.')] ?? labels[name];
  if (known) return known;
  const unit = unitOf(path);
  const bare = unit ? name.replace(/(Ft|InHg|In|Lb|Dbm|Dbw|Db|MHz|Deg|Percent|Nm|PerS|W|A|V|Ah)$/, '') : name;
  return codeWords((bare || name).replace(/([a-z0-9])([A-Z])/g, '$1 $2'));
}

function lastName(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}
