import { Button } from '@mantine/core';
import type { PathSummary } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { keepDraft, keptDraft } from '../drafts/kept-drafts.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { Outrun, isOutrun } from '../look/outrun.js';
import { ScreenHead } from '../look/screen.js';
import { pathWords as words } from '../words/paths.js';
import { DifferenceTable } from './difference-table.js';
import { faultsOf, keptPath } from './path-draft.js';
import { PathEditor } from './path-editor.js';
import { PathFaults } from './path-faults.js';
import { begun, changedTo, undone, type PathHistory } from './path-history.js';
import { WHOLE, type PartRef } from './path-parts.js';
import './paths.css';
import { nextVersion } from './paths-view.js';
import { usePath, type ReadPathView } from './use-paths.js';

/** A copy of a version, changed part by part, checked with every change, published when it is sound. */
export function PathEditPage() {
  const { versionId } = useParams({ from: '/inside/practice/paths/$versionId/edit' });
  const hooks = usePath(versionId, undefined);
  const { path } = hooks;
  if (!path.data) {
    return <NotYet asked={path} what={words.loading} />;
  }
  return <Editor base={path.data} {...hooks} />;
}

function Editor({ base, paths, setup, publish }: { base: ReadPathView } & ReturnType<typeof usePath>) {
  const navigate = useNavigate();
  const draftKey = `path.${base.id}`;
  const [history, setHistory] = useState(() => begun(keptDraft(draftKey, keptPath) ?? base.document));
  const [open, setOpen] = useState({ part: WHOLE, visits: 0 });
  const { path, before } = history;
  const faults = useMemo(() => faultsOf(path), [path]);
  const basedOn = nextVersion(paths.data?.items ?? [], path.code) - 1;

  function keep(next: PathHistory): void {
    setHistory(next);
    keepDraft(draftKey, next.path);
    publish.reset();
  }
  function choose(part: PartRef, goesThere: boolean): void {
    setOpen(({ visits }) => ({ part, visits: goesThere ? visits + 1 : 0 }));
  }
  function giveUp(): void {
    setHistory(begun(base.document));
    keepDraft(draftKey, null);
    publish.reset();
  }
  function send(document: TreatmentPath): void {
    const onSuccess = ({ id }: PathSummary) => {
      keepDraft(draftKey, null);
      void navigate({ to: '/practice/paths/$versionId', params: { versionId: id }, search: { with: base.id } });
    };
    publish.mutate({ document, basedOn }, { onSuccess });
  }

  return (
    <>
      <ScreenHead title={words.editTitle(base.title)} sentence={words.editSentence}>
        <Link to="/practice/paths/$versionId" params={{ versionId: base.id }}>
          {words.head(base.code, base.version)}
        </Link>
      </ScreenHead>
      <div className="stack">
        <PathEditor
          path={path}
          faults={faults}
          setup={setup.data}
          open={open}
          onChoose={choose}
          onChange={(next, typedIn) => {
            keep(changedTo(history, next, typedIn ?? null));
          }}
          onUndo={
            before.length === 0
              ? null
              : () => {
                  keep(undone(history));
                  choose(open.part, false);
                }
          }
        />
        <PathFaults
          path={path}
          faults={faults}
          setup={setup.data}
          onChoose={(part) => {
            choose(part, true);
          }}
        />
        <DifferenceTable before={base.document} after={path} />
        <Outrun error={publish.error} />
        <Refusal error={isOutrun(publish.error) ? null : publish.error} />
        <div className="row">
          <Button
            loading={publish.isPending}
            disabled={faults.length > 0}
            onClick={() => {
              send(path);
            }}
          >
            {words.publish(basedOn + 1)}
          </Button>
          <Button variant="subtle" onClick={giveUp}>
            {words.giveUp}
          </Button>
        </div>
      </div>
    </>
  );
}
