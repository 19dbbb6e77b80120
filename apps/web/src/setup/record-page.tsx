import { Button } from '@mantine/core';
import type { SetupChange, SetupEntry, SetupView } from '@archwright/contracts';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { differences } from '../drafts/differences.js';
import { useVersionedDraft } from '../drafts/use-versioned-draft.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { NothingHere } from '../frame/not-found.js';
import { FirstWait, ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { setupWords as words } from '../words/setup.js';
import { PreviewSheet } from './preview-sheet.js';
import { emptyDraft, type RecordDraft } from './record-draft.js';
import { RecordForm } from './record-form.js';
import { kindOfSearch, namesOf, NEW_RECORD, otherChange, previewView } from './setup-view.js';
import { tellRecord } from './tell-record.js';
import { useSetup } from './use-setup.js';

/** One part of the practice, to add, change or take out of use. */
export function RecordPage() {
  const { recordId } = useParams({ from: '/inside/practice/setup/$recordId' });
  const { kind } = useSearch({ from: '/inside/practice/setup/$recordId' });
  const hooks = useSetup();
  const { setup, save } = hooks;
  if (!setup.data) {
    return <NotYet asked={setup} what={words.loading} />;
  }
  const entry = setup.data.entries.find(({ id }) => id === recordId) ?? null;
  if (entry === null && recordId !== NEW_RECORD) {
    // A closure that is being removed here is gone before its screen is left.
    return save.isPending || save.isSuccess ? <FirstWait what={words.loading} /> : <NothingHere />;
  }
  const start = entry?.record ?? emptyDraft(kindOfSearch(kind), setup.data);
  return <RecordEditor {...hooks} known={setup.data} entry={entry} start={start} />;
}

interface Props extends ReturnType<typeof useSetup> {
  known: SetupView;
  /** Null for one that is added. */
  entry: SetupEntry | null;
  start: RecordDraft;
}

function RecordEditor({ setup, preview, save, known, entry, start }: Props) {
  const navigate = useNavigate();
  const kept = useVersionedDraft<RecordDraft>(entry?.version ?? 0);
  const draft = kept.typed ?? start;
  const name = entry === null ? words.add(draft.kind) : namesOf(known)(entry.id);
  const isStale = hasStatus(save.error, 412);
  const shown = preview.data === undefined ? null : preview.variables;

  function edit(next: RecordDraft): void {
    kept.type(next);
    // What was shown was about something else.
    preview.reset();
    save.reset();
  }
  async function reload(keep: boolean): Promise<void> {
    const { data } = await setup.refetch();
    if (keep) kept.keepOver(data?.entries.find(({ id }) => id === entry?.id)?.version ?? 0);
    else kept.forget();
    preview.reset();
    save.reset();
  }
  function make(change: SetupChange): void {
    save.mutate({ change, version: kept.version }, { onSuccess: () => void navigate({ to: '/practice/setup' }) });
  }

  const other = entry === null ? null : otherChange(entry);
  return (
    <>
      <ScreenHead title={name} sentence={words.kinds[draft.kind]}>
        <Link to="/practice/setup">{words.back}</Link>
      </ScreenHead>
      <div className="stack column">
        {isStale ? (
          <VersionClash
            rows={differences(tellRecord(draft, known), tellRecord(start, known))}
            onKeepMine={() => void reload(true)}
            onTakeTheirs={() => void reload(false)}
          />
        ) : null}
        <RecordForm
          setup={known}
          draft={draft}
          isNew={entry === null}
          pending={preview.isPending}
          error={preview.error}
          onChange={edit}
          onShow={(record) => {
            preview.mutate(entry === null ? { do: 'add', record } : { do: 'replace', id: entry.id, record });
          }}
        />
        {other === null ? null : (
          <div>
            <Button
              variant="subtle"
              onClick={() => {
                preview.mutate(other);
              }}
            >
              {words.otherChange[other.do]}
            </Button>
          </div>
        )}
        {preview.data && shown ? (
          <section className="stack-tight" aria-live="polite">
            <PreviewSheet view={previewView(preview.data, known.today)} isClosure={draft.kind === 'closure'} />
            <Refusal error={isStale ? null : save.error} />
            <div>
              <Button
                loading={save.isPending}
                onClick={() => {
                  make(shown);
                }}
              >
                {words.make[shown.do]}
              </Button>
            </div>
          </section>
        ) : null}
      </div>
    </>
  );
}
