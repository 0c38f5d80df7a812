import { useMemo, useState } from 'react';
import { Button } from '../../ui/button.js';
import { AddStep } from './components/add-step.js';
import { EffectPanel } from './components/effect-panel.js';
import { JoinsOffer } from './components/joins-offer.js';
import { MoveOffer } from './components/move-offer.js';
import { RecordOffer } from './components/record-offer.js';
import { StepCard } from './components/step-card.js';
import { effectOf, judgeAll, stillOwed, type PlanEffect, type Profile } from '../../trade/effect.js';
import { subjectName } from './options.js';
import { valueAt } from '../../form/tree.js';
import { entryFor, newStep } from './follow.js';
import { type Catalogue, type Dossier, installedNames, type Join, messageOf, openJoins } from '@tallywing/rules';
import type { Start } from './kinds.js';
import { planOf, type Plan, type Step } from './plan.js';
import { useSettled } from './use-settled.js';
import './job.css';

export interface DeskProps {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly profiles: readonly Profile[];
  readonly now: string;
  readonly today: string;
  readonly by: string;
  readonly steps: readonly Step[];
  readonly onSteps: (steps: readonly Step[]) => void;
  readonly mayRecord: boolean;
  readonly recording: boolean;
  readonly onRecord: (plan: Plan) => void;
}

/** Planned work with its effect beside it, judged by the rule library in this browser. Knows nothing of the server. */
export function Desk(props: DeskProps) {
  const { dossier, catalogue, profiles, now, today, by, steps, onSteps } = props;
  const [adding, setAdding] = useState(steps.length === 0);
  const [strict, setStrict] = useState(false);
  const zone = dossier.configuration.aircraft.base.zone;
  const plan = useMemo(() => planOf(dossier, catalogue, steps, now), [dossier, catalogue, steps, now]);
  // Typing stays quick: the plan is judged when a person pauses.
  const after = useSettled(plan.after, 250);
  const standing = useMemo(() => judgeAll(dossier, catalogue, profiles, now), [dossier, catalogue, profiles, now]);
  const effect = useMemo(
    () => effectOf(standing, after === dossier ? standing : judgeAll(after, catalogue, profiles, now), profiles),
    [standing, after, dossier, catalogue, profiles, now],
  );
  const words = { zone, names: installedNames(after.configuration) };
  const start: Start = { dossier: plan.after, catalogue, today, now, workedAt: latestWork(steps), by };

  const add = (kind: string, preset?: Readonly<Record<string, unknown>>) => {
    onSteps([...steps, newStep(kind, start, preset)]);
    setAdding(false);
  };
  const join = (joins: readonly Join[]) =>
    onSteps([...steps, ...joins.map((link) => newStep('link.connect', start, { link }))]);
  const recordOwed = (owed: PlanEffect['owed'][number]) => onSteps([...steps, entryFor(owed, start)]);

  return (
    <div className="tw-job">
      <div className="tw-stack">
        {steps.length > 0 && (
          <>
            <h2 className="tw-hidden">The plan</h2>
            <ol className="tw-steps">
              {plan.steps.map((judged, index) => (
                <StepCard
                  key={judged.step.key}
                  judged={judged}
                  number={index + 1}
                  catalogue={catalogue}
                  zone={zone}
                  strict={strict}
                  onChange={(next) => onSteps(steps.map((each) => (each.key === next.key ? next : each)))}
                  onRemove={() => onSteps(steps.filter((each) => each.key !== judged.step.key))}
                />
              ))}
            </ol>
          </>
        )}
        <RecordOffer start={start} onAdd={(step) => onSteps([...steps, step])} />
        <MoveOffer
          dossier={plan.after}
          catalogue={catalogue}
          onMove={({ unit, reason }) => add('unit.amend', { unit, reason })}
        />
        {fittedUnits(plan).map((unitId) => (
          <JoinsOffer
            key={unitId}
            unitId={unitId}
            joins={openJoins(unitId, plan.after, catalogue)}
            dossier={plan.after}
            onJoin={join}
          />
        ))}
        {adding ? (
          <section className="tw-sheet tw-stack" aria-label="What was done">
            <h2>{steps.length === 0 ? 'What was done, or is planned?' : 'And what else?'}</h2>
            <AddStep onAdd={(kind) => add(kind)} />
            {steps.length > 0 && <Button onClick={() => setAdding(false)}>Close the list</Button>}
          </section>
        ) : (
          <Button onClick={() => setAdding(true)}>Add something else</Button>
        )}
        {steps.length > 0 && (
          <div className="tw-job-foot tw-no-print">
            <Button
              look="main"
              busy={props.recording}
              disabled={!props.mayRecord}
              onClick={() => {
                setStrict(true);
                if (plan.ready) props.onRecord(plan);
              }}
            >
              {props.recording ? 'Recording…' : 'Record the work'}
            </Button>
            <span role="status">{footWords(plan, strict, props.mayRecord)}</span>
          </div>
        )}
      </div>
      <EffectPanel
        pending={after !== plan.after}
        effect={{ ...effect, owed: stillOwed(effect.owed, plan.after) }}
        message={(result) => messageOf(result, words)}
        subjectName={(id) => subjectName(id, plan.after)}
        onRecord={recordOwed}
      />
    </div>
  );
}

function latestWork(steps: readonly Step[]): string | null {
  const times = steps.map((step) => valueAt(step.value, 'performed.at')).filter((at) => typeof at === 'string');
  return times.sort().at(-1) ?? null;
}

function fittedUnits(plan: Plan): string[] {
  return plan.steps.flatMap(({ step, change }) =>
    change && step.kind === 'unit.install' ? [String(valueAt(step.value, 'unit.id'))] : [],
  );
}

function footWords(plan: Plan, strict: boolean, mayRecord: boolean): string {
  if (!mayRecord) return 'Your role may plan work here, not record it.';
  const open = plan.steps.flatMap((each, index) => (each.change ? [] : [index + 1]));
  if (open.length === 0) return '';
  return strict ? `Not recorded: something is missing or wrong in ${open.map((n) => `no. ${n}`).join(', ')}.` : '';
}
