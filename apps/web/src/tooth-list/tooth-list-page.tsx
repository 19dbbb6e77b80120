import { Button, Textarea } from '@mantine/core';
import type { ToothListView } from '@archwright/contracts';
import { useVersionedForm } from '../drafts/use-versioned-form.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { toothListWords as words } from '../words/practice-lists.js';
import { LISTS, draftOfToothList, readToothList } from './tooth-list-view.js';
import { useToothList } from './use-tooth-list.js';

const HINT_BELOW: ['label', 'input', 'description', 'error'] = ['label', 'input', 'description', 'error'];

/** The practice's own words for shades, moulds and arrangements. */
export function ToothListPage() {
  const hooks = useToothList();
  const { known } = hooks;
  if (!known.data) {
    return <NotYet asked={known} what={words.loading} />;
  }
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <PracticePlaces />
        <ToothListForm view={known.data} {...hooks} />
      </div>
    </>
  );
}

function ToothListForm({ view, known, save }: { view: ToothListView } & ReturnType<typeof useToothList>) {
  const { form, draft, errors, change, isTyped, refusal, clash, submit } = useVersionedForm({
    version: view.version,
    start: draftOfToothList(view),
    read: readToothList,
    saving: save,
    save: (body, version, onSuccess) => {
      save.mutate({ body, version }, { onSuccess });
    },
    tell: (typed) => LISTS.map((list) => ({ key: list, label: words.lists[list], text: typed[list] })),
    refetch: async () => (await known.refetch()).data?.version,
  });
  return (
    <form ref={form} onSubmit={submit} noValidate className="stack">
      {clash ? <VersionClash {...clash} /> : null}
      <div className="thirds">
        {LISTS.map((list) => (
          <Textarea
            key={list}
            label={words.lists[list]}
            description={words.hint}
            inputWrapperOrder={HINT_BELOW}
            autosize
            minRows={6}
            maxRows={20}
            value={draft[list]}
            error={errors?.[list]}
            onChange={(event) => {
              change({ ...draft, [list]: event.currentTarget.value });
            }}
          />
        ))}
      </div>
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
