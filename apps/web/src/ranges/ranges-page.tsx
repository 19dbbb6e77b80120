import { Button, Textarea } from '@mantine/core';
import type { MeasurementRangesView, PracticeView } from '@archwright/contracts';
import { useVersionedForm } from '../drafts/use-versioned-form.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { practiceZone } from '../time/practice-zone.js';
import { dateAndTime } from '../time/wording.js';
import { rangeWords as words } from '../words/ranges.js';
import { LimitsTable, UsualTable } from './range-tables.js';
import { draftOfRanges, readRanges, tellRanges, type RangesDraft, type RangesErrors } from './ranges-draft.js';
import { useRanges } from './use-ranges.js';

const NO_ERRORS: RangesErrors = { usual: {}, limits: {}, reason: undefined };

/** Usual ranges and limits, as shipped and as the practice has them. */
export function RangesPage() {
  const hooks = useRanges();
  const { known, practice } = hooks;
  if (!known.data) {
    return <NotYet asked={known} what={words.loading} />;
  }
  const { usual, limits } = known.data;
  const own = [...usual, ...limits].filter((each) => each.own !== null).length;
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence(own)} />
      <div className="stack">
        <PracticePlaces />
        <p className="soft">{known.data.note}</p>
        <RangesForm view={known.data} {...hooks} />
        <History view={known.data} practice={practice} />
      </div>
    </>
  );
}

function RangesForm({ view, known, save }: { view: MeasurementRangesView } & ReturnType<typeof useRanges>) {
  const { form, draft, errors, change, isTyped, refusal, clash, submit } = useVersionedForm({
    version: view.version,
    start: draftOfRanges(view),
    read: (typed: RangesDraft) => readRanges(typed, view),
    saving: save,
    save: (body, version, onSuccess) => {
      save.mutate({ body, version }, { onSuccess });
    },
    tell: (typed: RangesDraft) => tellRanges(typed, view),
    refetch: async () => (await known.refetch()).data?.version,
  });
  const wrong = errors ?? NO_ERRORS;

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack">
      {clash ? <VersionClash {...clash} /> : null}
      <section className="stack-tight" aria-labelledby="usual">
        <h2 id="usual">{words.usual}</h2>
        <UsualTable view={view} draft={draft} errors={wrong} onChange={change} />
      </section>
      <section className="stack-tight" aria-labelledby="limits">
        <h2 id="limits">{words.limits}</h2>
        <LimitsTable view={view} draft={draft} errors={wrong} onChange={change} />
      </section>
      <Textarea
        label={words.reason}
        rows={2}
        maxLength={500}
        value={draft.reason}
        error={wrong.reason}
        onChange={(event) => {
          change({ ...draft, reason: event.currentTarget.value });
        }}
      />
      <Refusal error={refusal} />
      {save.isSuccess && !isTyped ? <Notice tone="go">{words.saved}</Notice> : null}
      <div>
        <Button type="submit" loading={save.isPending}>
          {words.save}
        </Button>
      </div>
    </form>
  );
}

function History({ view: { history }, practice }: { view: MeasurementRangesView; practice: PracticeView }) {
  if (history.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="history">
      <h2 id="history">{words.history}</h2>
      <PlainTable
        label={words.history}
        columns={Object.values(words.historyColumns)}
        rows={history.map(({ version, changedAt, changedBy, reason }) => ({
          id: String(version),
          head: dateAndTime(changedAt, practiceZone(practice), practice.today),
          cells: [changedBy, reason],
        }))}
      />
    </section>
  );
}
