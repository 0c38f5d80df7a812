/** The public face of the core. Nothing else is imported from outside. */
export { assess, explainResult, widenMoment } from './assess/assess.js';
export type { AskedMoment } from './assess/assess.js';
export { differenceOf, inShort } from './assess/in-short.js';
export type { Difference, OpenResult, Short } from './assess/in-short.js';
export { openAtRelease } from './assess/release.js';
export type { OpenAtRelease } from './assess/release.js';
export { ruleBook } from './assess/rule-book.js';
export type { Worked } from './assess/worked.js';
export { rulesVersion } from './assess/version.js';
export { fixedOperations, needsOf } from './assess/operations.js';
export { capabilityWords, codeWords, idWords, isCapability, lowerFirst, upperFirst } from './words/codes.js';
export { dateTimeWords, dateWords, whenWords } from './words/dates.js';
export { factWords, partsOf } from './words/fact-words.js';
export { messageOf } from './assess/message.js';
export type { MessageWords } from './assess/message.js';
export { installedNames } from './words/names.js';
export { notesOn } from './assess/step-notes.js';
export type { StepNote } from './assess/step-notes.js';
export type { Names } from './words/names.js';
export { readLargeWire, wireSizeWords } from './words/wire-size.js';
export { timeline } from './horizon/timeline.js';
export type { Stretch } from './horizon/timeline.js';
export { findingsOf } from './horizon/findings.js';
export type { Finding } from './horizon/findings.js';
export { dueItemsOf } from './horizon/due.js';
export type { DueItem } from './horizon/due.js';
export { horizon } from './horizon/horizon.js';
export { findOut } from './way-back/find-out.js';
export type { FactToFind } from './way-back/find-out.js';
export { gapsOf, visits } from './way-back/gaps.js';
export type { AskedFlight, Gaps, MissingFact, Visit, VisitToMake } from './way-back/gaps.js';
export { wayBack } from './way-back/way-back.js';
export type { Span, Way, WayBack, WayStep } from './way-back/way-back.js';
export { defaultLabour, houseLabour, labourOf } from './way-back/labour.js';
export type { HouseLabour, Job, Labour, LabourTable } from './way-back/labour.js';
export type { Assumption } from './way-back/deeds.js';
export { openJoins } from './graph/joins.js';
export type { Join } from './graph/joins.js';
export { admit, apply, blankDossier, changeDefinitions, changeSchema, parseChange, replay } from './changes/changes.js';
export type { Change, ChangeKind, ChangeOf, Parsed } from './changes/changes.js';
export {
  aboutOf,
  correctableKinds,
  correctingKinds,
  correctionsAmong,
  dayOf,
  knownNow,
} from './changes/looking-back.js';
export type { Correctable, Day, KnownNow, Written } from './changes/looking-back.js';
export { differencesOf } from './changes/differences.js';
export type { Difference as DossierDifference } from './changes/differences.js';
export {
  aircraftFileFormat,
  aircraftFileSchema,
  aircraftFileVersion,
  readAircraftFile,
} from './interchange/aircraft-file.js';
export type { AircraftFile, AircraftHistory } from './interchange/aircraft-file.js';
export { refusalTexts } from './changes/refusal.js';
export type { Refusal, RefusalCode } from './changes/refusal.js';
export { touchedBy, touchedByJoint } from './changes/checks.js';
export { entryTexts, readEntry, unknownPairFamilies } from './catalogue/entry.js';
export { limitationFields, withSpeed } from './catalogue/entry-checks.js';
export type { EntryCode, EntryProblem, ReadEntry, TypeEntry } from './catalogue/entry.js';
export { drawsNothing, equipmentType, functionCode, signalCode } from './catalogue/type.js';
export type { Catalogue, EquipmentType, FunctionCode, Limitation, SignalCode } from './catalogue/type.js';
export { dossierSchemaVersion, dossier as dossierSchema } from './dossier/dossier.js';
export type { Dossier } from './dossier/dossier.js';
export {
  approaches,
  airspaces,
  defaultConditions,
  errands,
  purposes,
  strictest,
  widenConditions,
} from './verdict/conditions.js';
export type { Airspace, Approach, FlightConditions, Purpose } from './verdict/conditions.js';
export { equipmentItem } from './dossier/aircraft.js';
export { agencyKind, rating } from './dossier/common.js';
export type { Agency, Rating } from './dossier/common.js';
export { capabilities } from './verdict/capability.js';
export type { Capability } from './verdict/capability.js';
export type { Clause, Leaf, Outcome } from './verdict/clause.js';
export type { Explained } from './verdict/evaluate.js';
export type {
  Assessment,
  Draft,
  Due,
  Effect,
  Horizon,
  Moment,
  Ready,
  Remedy,
  Result,
  Standing,
  Verdict,
  Window,
} from './verdict/result.js';
export { metersAt, readingGoodForDays } from './assess/meters.js';
export { doubtedStatuses, isPolicyKind, policyAt, policyBodies, policyDay } from './catalogue/policy.js';
export type { Policy, PolicyKind } from './catalogue/policy.js';
export { holdOfJob, holdsAt, jobOfHold } from './dossier/hold.js';
export type { Hold, SaySo } from './dossier/status.js';
export type { RuleMeta, Topic } from './rules/rule.js';
export { topics } from './rules/rule.js';
export { lastGoodDay } from './time/calendar.js';
export { databaseCycle, databaseCycleAt } from './time/cycles.js';
export type { DatabaseCycle } from './time/cycles.js';
export {
  civilDateAt,
  isZone,
  localTimeAt,
  startOfDay,
  startOfDayAfter,
  zoneDataVersion,
  zoneNames,
} from './time/zones.js';
export type { SourceRef, SourceStatus } from './facts/source.js';
export type { JudgedPoint, JudgedReadings, Limit } from './calculations/judged.js';
export { judgeAdsBReport, leastAdsBCodes } from './calculations/ads-b.js';
export { judgeAltimeterTest } from './calculations/altimeter-test.js';
export { judgeBonding } from './calculations/bonding.js';
export { judgeCompass } from './calculations/compass.js';
export { interferenceTestMHz } from './facts/vhf.js';
export { judgeInterference } from './calculations/interference.js';
export { judgeCorrespondence } from './calculations/correspondence.js';
export { judgeStaticLeak } from './calculations/static-leak.js';
export { judgeTransponderTest } from './calculations/transponder-test.js';
export { judgeVorCheck } from './calculations/vor-check.js';
export { nextHundredHour } from './calculations/hundred-hour.js';
export {
  aluminiumInPlaceOf,
  aluminiumVoltageDrop,
  bundleCurrent,
  groundReturnDropV,
  longestRun,
  mainWiresDropV,
  protectorFor,
  smallestWire,
  smallestWireForDrop,
  wireVoltageDrop,
} from './calculations/wire.js';
export { arinc429LabelBits, arinc429WordOf } from './calculations/arinc-429.js';
export { emptyWeightAfter, loadedCentre } from './calculations/mass.js';
export { antennaDragLb } from './calculations/antenna.js';
export { viewAngle } from './calculations/view.js';
export { navChannel, vhfChannel, vhfHarmonic } from './calculations/vhf.js';
export { CalculationError } from './calculations/errors.js';
export { TimeError } from './time/errors.js';
