import { Button, Textarea, TextInput } from '@mantine/core';
import type { PathSummary } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { keepDraft, keptDraft } from '../drafts/kept-drafts.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { Outrun, isOutrun } from '../look/outrun.js';
import { ScreenHead } from '../look/screen.js';
import { pathWords as words } from '../words/paths.js';
import { DifferenceTable } from './difference-table.js';
import { readPathText, textOf } from './path-draft.js';
import { PathFaults } from './path-faults.js';
import { PathNumbers } from './path-numbers.js';
import { PathShapeEditor } from './path-shape-editor.js';
import './paths.css';
import { nextVersion } from './paths-view.js';
import { usePath, type ReadPathView } from './use-paths.js';

/** A copy of a version, changed by fields or as text, checked while it is typed, published when it is sound. */
export function PathEditPage() {
  const { versionId } = useParams({ from: '/inside/practice/paths/$versionId/edit' });
  const hooks = usePath(versionId, undefined);
  const { path } = hooks;
  if (!path.data) {
    return <NotYet asked={path} what={words.loading} />;
  }
  return <Editor base={path.data} {...hooks} />;
}

const asText = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);

function Editor({ base, paths, setup, publish }: { base: ReadPathView } & ReturnType<typeof usePath>) {
  const navigate = useNavigate();
  const draftKey = `path.${base.id}`;
  const [text, setText] = useState(() => keptDraft(draftKey, asText) ?? textOf(base.document));
  const { path, faults, notJson } = readPathText(text);
  const basedOn = path === null ? 0 : nextVersion(paths.data?.items ?? [], path.code) - 1;

  function type(next: string): void {
    setText(next);
    keepDraft(draftKey, next);
    publish.reset();
  }
  function change(next: TreatmentPath): void {
    type(textOf(next));
  }
  function giveUp(): void {
    keepDraft(draftKey, null);
    setText(textOf(base.document));
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
        {path === null ? null : (
          <>
            <PathHead path={path} onChange={change} />
            <PathShapeEditor path={path} onChange={change} />
            <PathNumbers path={path} onChange={change} />
          </>
        )}
        <section className="stack-tight path-text" aria-labelledby="text">
          <h2 id="text">{words.text}</h2>
          <Textarea
            aria-labelledby="text"
            description={words.textHint}
            rows={18}
            spellCheck={false}
            value={text}
            error={notJson === null ? undefined : words.notJson(notJson)}
            onChange={(event) => {
              type(event.currentTarget.value);
            }}
          />
        </section>
        <PathFaults path={path} faults={faults} notJson={notJson} setup={setup.data} />
        {path === null ? null : <DifferenceTable before={base.document} after={path} />}
        <Outrun error={publish.error} />
        <Refusal error={isOutrun(publish.error) ? null : publish.error} />
        <div className="row">
          <Button
            loading={publish.isPending}
            disabled={path === null || faults.length > 0}
            onClick={() => {
              if (path !== null) send(path);
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

function PathHead({ path, onChange }: { path: TreatmentPath; onChange: (path: TreatmentPath) => void }) {
  return (
    <div className="stack-tight column">
      <TextInput
        label={words.fields.code}
        description={words.fields.codeHint}
        value={path.code}
        onChange={(event) => {
          onChange({ ...path, code: event.currentTarget.value });
        }}
      />
      <TextInput
        label={words.fields.title}
        value={path.title}
        onChange={(event) => {
          onChange({ ...path, title: event.currentTarget.value });
        }}
      />
      <Textarea
        label={words.fields.summary}
        rows={2}
        value={path.summary}
        onChange={(event) => {
          onChange({ ...path, summary: event.currentTarget.value });
        }}
      />
    </div>
  );
}
