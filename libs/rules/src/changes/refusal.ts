/**
 * Why a change was not admitted: a code from a closed list, the field it concerns, and the data behind it.
 * The words are made at the edge from `refusalTexts`.
 */
export const refusalTexts = {
  malformed: { says: '{field}: {problem}', wayOut: 'Correct the field and send it again.' },
  'unknown-kind': {
    says: 'There is no change of kind {kind}, version {version}.',
    wayOut: 'Reload the page; this form is older or newer than the server.',
  },
  'aircraft-exists': { says: 'The aircraft is already recorded.', wayOut: 'Amend it instead of adding it again.' },
  'no-aircraft': { says: 'There is no aircraft record to change yet.', wayOut: 'Add the aircraft first.' },
  'unknown-zone': {
    says: '{zone} is not a time zone this version knows.',
    wayOut: 'Use a zone name such as America/Chicago.',
  },
  'unknown-type': {
    says: 'Equipment type {typeId} is not in the catalogue.',
    wayOut: 'Pick a type from the catalogue, or record the unit as uncatalogued and state what it does.',
  },
  'no-functions': { says: 'An uncatalogued unit must say what it does.', wayOut: 'State at least one function.' },
  'id-taken': { says: '{id} is already used on this aircraft.', wayOut: 'Choose another id.' },
  'unknown-unit': { says: 'No unit {id} is installed.', wayOut: 'Pick one of the installed units.' },
  'unknown-id': { says: 'Nothing on this aircraft has the id {id}.', wayOut: 'Pick an existing one, or add it first.' },
  'unknown-opening': {
    says: 'There is no opening {id} in the panel.',
    wayOut: 'Describe the opening first, or leave the field empty.',
  },
  'unknown-port': { says: '{unit} has no port {port}.', wayOut: 'Pick a port of the equipment type.' },
  'unknown-subject': {
    says: '{id} is neither the aircraft, a unit, a static system nor an item of this aircraft.',
    wayOut: 'Pick the item that the entry is about.',
  },
  'unknown-meter': { says: 'There is no meter {id}.', wayOut: 'Define the meter first.' },
  'same-unit': { says: 'A link must join two different units.', wayOut: 'Pick another unit at one end.' },
  'hours-backwards': {
    says: 'The meter {meter} already stood at {last}; {value} would run backwards.',
    wayOut: 'Check the reading. To correct the earlier one, record a correction with its reason.',
  },
  'reading-older': {
    says: 'The meter {meter} was already read at {lastAsOf}; this reading is from {asOf}.',
    wayOut: 'Give the time of this reading, or record a correction with its reason.',
  },
  'in-the-future': { says: '{date} has not come yet.', wayOut: 'Give the day the work was done.' },
  'before-manufacture': {
    says: '{date} is before the aircraft was made ({manufactured}).',
    wayOut: 'Check both dates.',
  },
  'touch-missing': {
    says: 'A unit that does this touches {touched}; the work must say so.',
    wayOut: 'Tick {touched} under what the work opened or touched.',
  },
  'touched-contradicts': {
    says: 'The work cannot have touched nothing and something.',
    wayOut: 'Leave "nothing" out, or leave out all the others.',
  },
  'another-serial': {
    says: 'The unit {id} is recorded with the serial number {was}. Entries belong to a serial number: those of {was} say nothing of another unit.',
    wayOut:
      'If {was} was written down wrongly, say that it is the same unit and give the reason. If it is another unit, take {id} out and fit the other one.',
  },
  'id-of-another-unit': {
    says: '{id} was the unit with the serial number {was}, which was taken out; its entries stay under that name.',
    wayOut:
      'Fit this unit under another short name. If it is the very unit that was here, give the serial number it was taken out with.',
  },
  'functions-disagree': {
    says: 'A catalogued unit takes what it does from its equipment type.',
    wayOut: 'Leave the functions empty.',
  },
  'reason-missing': { says: 'This needs a reason.', wayOut: 'State the reason in a few words.' },
  'once-yet-again': {
    says: 'Directive {number} is said to be done once, and to be due again.',
    wayOut: 'Say that it recurs, or leave interval and next due empty.',
  },
  'no-mass-record': {
    says: 'The aircraft has no empty-weight record to add to.',
    wayOut: 'Record the empty weight first.',
  },
  'hold-lifted': { says: 'The hold is already lifted.', wayOut: 'Nothing to do.' },
  'dates-out-of-order': {
    says: '{later} ({laterDate}) must not be before {earlier} ({earlierDate}).',
    wayOut: 'Check both dates.',
  },
} as const;

export type RefusalCode = keyof typeof refusalTexts;
export interface Refusal {
  readonly code: RefusalCode;
  /** Path of the field in the change, dots between names; '' for the change as a whole. */
  readonly field: string;
  readonly data: Readonly<Record<string, string | number | null>>;
}

export function refuse(code: RefusalCode, field: string, data: Refusal['data'] = {}): Refusal {
  return { code, field, data };
}
