import type { StageBoard } from '@archwright/contracts';
import { positionOf } from '@archwright/protocol';
import type { LabStep, Stage } from '@archwright/records';
import type { StageRecord } from './stage-record.js';
import type { StandingRows } from './stage-standing.js';

type Mark = StageBoard['cards'][number]['line'][number];

/** A case as one line: its visits, the laboratory work between them, and what waits for a person. */
export function caseLine(
  { chain, rows, stage }: Pick<StageRecord, 'chain' | 'rows' | 'stage'>,
  waiting: Pick<StandingRows, 'alerts' | 'pauses'>,
): Mark[] {
  const visits = rows.stages
    .filter((row) => row.state !== 'dropped')
    .map((row) => ({ at: positionOf(chain, row.code), round: row.round, mark: visitMark(chain, row, stage) }));
  const work = chain.phases.map((phase) => {
    const own = rows.steps.filter((row) => phase.steps.includes(row.code) && row.state !== 'discarded');
    const label = `Laboratory work before ${phase.beforeStage}`;
    return {
      at: positionOf(chain, phase.afterStage) + 0.5,
      round: 1,
      mark: { kind: 'lab', label, state: workState(own) } satisfies Mark,
    };
  });
  const found = [...waiting.alerts, ...waiting.pauses].filter(({ caseId }) => caseId === stage.caseId);
  const raised = found.map(({ stageId, reason }) => {
    const row = rows.stages.find(({ id }) => id === stageId);
    const mark: Mark = { kind: 'alert', label: reason, state: 'needs-person' };
    return { at: row === undefined ? 0 : positionOf(chain, row.code) + 0.25, round: row?.round ?? 1, mark };
  });
  return [...visits, ...work, ...raised].sort((a, b) => a.at - b.at || a.round - b.round).map(({ mark }) => mark);
}

/** The visit of the day counts as now, whether it has begun or not. */
function visitMark(chain: StageRecord['chain'], row: Stage, ofTheDay: Stage): Mark {
  const title = chain.stages.find(({ code }) => code === row.code)?.title ?? row.code;
  const label = row.round === 1 ? title : `${title}, go ${String(row.round)}`;
  if (row.state === 'passed' || row.state === 'repeated') return { kind: 'visit', label, state: 'done' };
  const isNow = row.state === 'in-progress' || row.id === ofTheDay.id;
  return { kind: 'visit', label, state: isNow ? 'now' : 'to-come' };
}

function workState(steps: readonly LabStep[]): Mark['state'] {
  if (steps.length > 0 && steps.every(({ state }) => state === 'finished')) return 'done';
  if (steps.some(({ state }) => state === 'paused' || state === 'rejected')) return 'needs-person';
  return steps.some(({ state }) => state === 'started' || state === 'finished') ? 'now' : 'to-come';
}
