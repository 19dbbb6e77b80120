import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { MessageTextsView, MessageWords, ShownText } from '@archwright/contracts';
import { useState } from 'react';
import { useVersionedForm } from '../drafts/use-versioned-form.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { messageTextWords as words } from '../words/message-texts.js';
import { draftOfTexts, isDelivered, keyOf, placesOf, readTexts, tellTexts } from './message-texts-view.js';
import { useMessageTexts } from './use-message-texts.js';

/** What patients are written, in the practice's own words. */
export function MessageTextsPage() {
  const hooks = useMessageTexts();
  const { known } = hooks;
  if (!known.data) return <NotYet asked={known} what={words.loading} />;
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <PracticePlaces />
        <TextsForm view={known.data} {...hooks} />
      </div>
    </>
  );
}

const directionOf = ({ language }: ShownText) => ({ lang: language, dir: language === 'ar' ? 'rtl' : 'ltr' });

function TextsForm({ view, known, save }: { view: MessageTextsView } & ReturnType<typeof useMessageTexts>) {
  const [chosen, setChosen] = useState(() => view.texts.map(keyOf)[0] ?? '');
  const { form, draft, errors, change, isTyped, refusal, clash, submit } = useVersionedForm({
    version: view.version,
    start: draftOfTexts(view),
    read: (typed) => readTexts(view, typed),
    saving: save,
    save: (body, version, onSuccess) => {
      save.mutate({ body, version }, { onSuccess });
    },
    tell: (typed) => tellTexts(view, typed),
    refetch: async () => (await known.refetch()).data?.version,
  });
  const shown = view.texts.find((each) => keyOf(each) === chosen);
  if (shown === undefined) return null;
  const typed = draft[chosen] ?? shown.delivered;
  const type = (next: Partial<MessageWords>): void => {
    change({ ...draft, [chosen]: { ...typed, ...next } });
  };
  const elsewhere = view.texts.filter((each) => keyOf(each) !== chosen && errors?.[keyOf(each)] !== undefined);
  return (
    <form ref={form} onSubmit={submit} noValidate className="stack">
      {clash ? <VersionClash {...clash} /> : null}
      <NativeSelect
        label={words.which}
        value={chosen}
        data={view.texts.map((each) => ({
          value: keyOf(each),
          label: words.textOf(each, !isDelivered(each, draft[keyOf(each)] ?? each.delivered)),
        }))}
        onChange={(event) => {
          setChosen(event.currentTarget.value);
        }}
      />
      {elsewhere.length > 0 ? (
        <Notice tone="stop">{words.elsewhere(elsewhere.map((each) => words.textOf(each, false)))}</Notice>
      ) : null}
      <div className="halves">
        <div className="stack-tight">
          <TextInput
            {...directionOf(shown)}
            label={words.subject}
            value={typed.subject}
            error={errors?.[chosen]?.subject}
            onChange={(event) => {
              type({ subject: event.currentTarget.value });
            }}
          />
          <Textarea
            {...directionOf(shown)}
            label={words.text}
            autosize
            minRows={10}
            maxRows={24}
            value={typed.text}
            error={errors?.[chosen]?.text}
            onChange={(event) => {
              type({ text: event.currentTarget.value });
            }}
          />
          <p className="small soft">{words.caution}</p>
          <p className="small">{words.places}</p>
          <ul className="bullets small">
            {placesOf(shown.message).map(({ place, says, isNeeded }) => (
              <li key={place}>
                <code>{place}</code> {isNeeded ? words.placeNeeded(says) : says}
              </li>
            ))}
          </ul>
        </div>
        <section className="stack-tight" aria-labelledby="sample">
          <h2 id="sample">{words.sample}</h2>
          <p className="small soft">{words.sampleHint}</p>
          <article className="sheet sheet-pad stack-tight" {...directionOf(shown)}>
            <h3>{shown.sample.subject}</h3>
            <p className="sample-text breakable">{shown.sample.text}</p>
          </article>
        </section>
      </div>
      <Refusal error={refusal} />
      {save.isSuccess && !isTyped ? <Notice tone="go">{words.saved}</Notice> : null}
      <div className="row">
        <Button type="submit" loading={save.isPending}>
          {words.save}
        </Button>
        <Button
          variant="subtle"
          disabled={isDelivered(shown, typed)}
          onClick={() => {
            type(shown.delivered);
          }}
        >
          {words.asDelivered}
        </Button>
      </div>
    </form>
  );
}
