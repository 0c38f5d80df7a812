import { authorisedPerson } from './after-work/authorised-person.js';
import { controlsFreeAndSecured } from './after-work/controls-free-and-secured.js';
import { datesInOrder } from './after-work/dates-in-order.js';
import { documentPack } from './after-work/document-pack.js';
import { inspectionEntry } from './after-work/inspection-entry.js';
import { majorAlterationDecision } from './after-work/major-alteration-decision.js';
import { releaseEntry } from './after-work/release-entry.js';
import { testEquipmentCalibrated } from './after-work/test-equipment-calibrated.js';
import { testedAltitudeMarked } from './after-work/tested-altitude-marked.js';
import { testsAfterChange } from './after-work/tests-after-change.js';
import { held } from './authority/held.js';
import { hirePermitted } from './authority/hire-permitted.js';
import { kindOfOperation } from './authority/kind-of-operation.js';
import { sourceSaySo } from './authority/source-say-so.js';
import { dataFitsFlight } from './databases/data-fits-flight.js';
import { dataUpdate } from './databases/data-update.js';
import { navigationDataCurrent } from './databases/navigation-data-current.js';
import { nextCycleLoaded } from './databases/next-cycle-loaded.js';
import { otherDataCurrent } from './databases/other-data-current.js';
import { deactivatedUnits } from './defects/deactivated-units.js';
import { deferralDue } from './defects/deferral-due.js';
import { openDefects } from './defects/open-defects.js';
import { batteryEndurance } from './electrical/battery-endurance.js';
import { breakerMatchesWire } from './electrical/breaker-matches-wire.js';
import { continuousLoad } from './electrical/continuous-load.js';
import { adsBIdentity } from './equipment/ads-b-identity.js';
import { loadByCondition } from './electrical/load-by-condition.js';
import { oneCircuitPerEssentialBreaker } from './electrical/one-circuit-per-essential-breaker.js';
import { powerSupplied } from './electrical/power-supplied.js';
import { voltageDrop } from './electrical/voltage-drop.js';
import { wireCurrent } from './electrical/wire-current.js';
import { adsBOutFitted } from './equipment/ads-b-out-fitted.js';
import { adsBPair } from './equipment/ads-b-pair.js';
import { adsBPerformance } from './equipment/ads-b-performance.js';
import { altitudeSameSource } from './equipment/altitude-same-source.js';
import { dayEquipment } from './equipment/day-equipment.js';
import { elt } from './equipment/elt.js';
import { highAltitudeEquipment } from './equipment/high-altitude-equipment.js';
import { instrumentEquipment } from './equipment/instrument-equipment.js';
import { nightEquipment } from './equipment/night-equipment.js';
import { radioAndNavigation } from './equipment/radio-and-navigation.js';
import { spareFuses } from './equipment/spare-fuses.js';
import { transmitterFed } from './equipment/transmitter-fed.js';
import { transponderFitted } from './equipment/transponder-fitted.js';
import { annunciatorColours } from './indication/annunciator-colours.js';
import { approachAnnunciation } from './indication/approach-annunciation.js';
import { basicT } from './indication/basic-t.js';
import { flightManualSupplement } from './indication/flight-manual-supplement.js';
import { gnssAlternateMeans } from './indication/gnss-alternate-means.js';
import { gnssClass } from './indication/gnss-class.js';
import { indicatorInView } from './indication/indicator-in-view.js';
import { integrityAnnunciation } from './indication/integrity-annunciation.js';
import { lateralIndicator } from './indication/lateral-indicator.js';
import { sourceAnnunciation } from './indication/source-annunciation.js';
import { sourceSelector } from './indication/source-selector.js';
import { verticalIndicator } from './indication/vertical-indicator.js';
import { vfrLimitedPlacard } from './indication/vfr-limited-placard.js';
import { annualInspection } from './inspections/annual-inspection.js';
import { conditionInspection } from './inspections/condition-inspection.js';
import { continuedAirworthinessItems } from './inspections/continued-airworthiness-items.js';
import { directives } from './inspections/directives.js';
import { documentsInForce } from './inspections/documents-in-force.js';
import { hundredHourInspection } from './inspections/hundred-hour-inspection.js';
import { lifeLimits } from './inspections/life-limits.js';
import { ownRecurringItems } from './inspections/own-recurring-items.js';
import { programInspection } from './inspections/program-inspection.js';
import { progressiveInspection } from './inspections/progressive-inspection.js';
import { readingAge } from './inspections/reading-age.js';
import { staticAltimeterTest } from './inspections/static-altimeter-test.js';
import { transponderTest } from './inspections/transponder-test.js';
import { vorCheck } from './inspections/vor-check.js';
import { antennaFitted } from './installation/antenna-fitted.js';
import { antennaSeparation } from './installation/antenna-separation.js';
import { coolingPath } from './installation/cooling-path.js';
import { depthBehindPanel } from './installation/depth-behind-panel.js';
import { fitsTheOpening } from './installation/fits-the-opening.js';
import { installationApproval } from './installation/installation-approval.js';
import { mountStrength } from './installation/mount-strength.js';
import { reachAndView } from './installation/reach-and-view.js';
import { linkApproved } from './interfaces/link-approved.js';
import { linkNotProhibited } from './interfaces/link-not-prohibited.js';
import { optionsNotExclusive } from './interfaces/options-not-exclusive.js';
import { portableLinkNotPrimary } from './interfaces/portable-link-not-primary.js';
import { requiredCompanions } from './interfaces/required-companions.js';
import { requiredPortsJoined } from './interfaces/required-ports-joined.js';
import { signalsCompatible } from './interfaces/signals-compatible.js';
import { emptyWeightRecord } from './mass/empty-weight-record.js';
import { equipmentListCurrent } from './mass/equipment-list-current.js';
import { loadedExtremes } from './mass/loaded-extremes.js';
import { altimeterReadings } from './readings/altimeter-readings.js';
import { altitudeCorrespondence } from './readings/altitude-correspondence.js';
import { bondingReading } from './readings/bonding-reading.js';
import { compassCard } from './readings/compass-card.js';
import { compassDeviation } from './readings/compass-deviation.js';
import { gnssChecks } from './readings/gnss-checks.js';
import { ifrAltitudeLimit } from './readings/ifr-altitude-limit.js';
import { staticLeakReading } from './readings/static-leak-reading.js';
import { transponderReadings } from './readings/transponder-readings.js';
import type { Rule } from './rule.js';

/**
 * Every rule in force, by topic; but a hold leads, since its reason comes first wherever a verdict shows, and what speaks of the
 * sources of all others comes last.
 */
export const rules: readonly Rule[] = [
  held,
  authorisedPerson,
  controlsFreeAndSecured,
  datesInOrder,
  documentPack,
  inspectionEntry,
  majorAlterationDecision,
  releaseEntry,
  testEquipmentCalibrated,
  testedAltitudeMarked,
  testsAfterChange,
  hirePermitted,
  kindOfOperation,
  dataFitsFlight,
  dataUpdate,
  navigationDataCurrent,
  nextCycleLoaded,
  otherDataCurrent,
  deactivatedUnits,
  deferralDue,
  openDefects,
  batteryEndurance,
  breakerMatchesWire,
  continuousLoad,
  adsBIdentity,
  loadByCondition,
  oneCircuitPerEssentialBreaker,
  powerSupplied,
  voltageDrop,
  wireCurrent,
  adsBOutFitted,
  adsBPair,
  adsBPerformance,
  altitudeSameSource,
  dayEquipment,
  elt,
  highAltitudeEquipment,
  instrumentEquipment,
  nightEquipment,
  spareFuses,
  radioAndNavigation,
  transmitterFed,
  transponderFitted,
  annunciatorColours,
  approachAnnunciation,
  basicT,
  flightManualSupplement,
  gnssAlternateMeans,
  gnssClass,
  indicatorInView,
  integrityAnnunciation,
  lateralIndicator,
  sourceAnnunciation,
  sourceSelector,
  verticalIndicator,
  vfrLimitedPlacard,
  annualInspection,
  conditionInspection,
  continuedAirworthinessItems,
  directives,
  documentsInForce,
  hundredHourInspection,
  lifeLimits,
  ownRecurringItems,
  programInspection,
  progressiveInspection,
  readingAge,
  staticAltimeterTest,
  transponderTest,
  vorCheck,
  antennaFitted,
  antennaSeparation,
  coolingPath,
  depthBehindPanel,
  fitsTheOpening,
  installationApproval,
  mountStrength,
  reachAndView,
  linkApproved,
  linkNotProhibited,
  optionsNotExclusive,
  portableLinkNotPrimary,
  requiredCompanions,
  requiredPortsJoined,
  signalsCompatible,
  emptyWeightRecord,
  equipmentListCurrent,
  loadedExtremes,
  altimeterReadings,
  altitudeCorrespondence,
  bondingReading,
  compassCard,
  compassDeviation,
  gnssChecks,
  ifrAltitudeLimit,
  staticLeakReading,
  transponderReadings,
  sourceSaySo,
];
