import { Button, Textarea, TextInput } from '@mantine/core';
import type { PracticeRulesView } from '@archwright/contracts';
import { useVersionedForm } from '../drafts/use-versioned-form.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { ruleWords as words } from '../words/rules.js';
import { draftOfRules, readRules, tellRules, type RulesDraft } from './rules-draft.js';
import { useRules } from './use-rules.js';

/** When patients are reminded and in which words, and how long time is held. */
export function RulesPage() {
  const hooks = useRules();
  const { known } = hooks;
  if (!known.data) {
    return <NotYet asked={known} what={words.loading} />;
  }
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <PracticePlaces />
        <div className="halves">
          <RulesForm view={known.data} {...hooks} />
          <Samples view={known.data} />
        </div>
      </div>
    </>
  );
}

function RulesForm({ view, known, save }: { view: PracticeRulesView } & ReturnType<typeof useRules>) {
  const { form, draft, errors, change, isTyped, refusal, clash, submit } = useVersionedForm({
    version: view.version,
    start: draftOfRules(view.rules),
    read: readRules,
    saving: save,
    save: (body, version, onSuccess) => {
      save.mutate({ body, version }, { onSuccess });
    },
    tell: tellRules,
    refetch: async () => (await known.refetch()).data?.version,
  });
  const field = (name: Exclude<keyof RulesDraft, 'en' | 'de' | 'ar'>, type = 'text') => (
    <TextInput
      key={name}
      type={type}
      label={words.fields[name]}
      value={draft[name]}
      error={errors?.[name]}
      onChange={(event) => {
        change({ ...draft, [name]: event.currentTarget.value });
      }}
    />
  );

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack">
      {clash ? <VersionClash {...clash} /> : null}
      <fieldset className="stack-tight">
        <legend>{words.reminders}</legend>
        {field('mail')}
        {field('phone')}
        <div className="row">
          {field('quietFrom', 'time')}
          {field('quietTo', 'time')}
        </div>
      </fieldset>
      <fieldset className="stack-tight">
        <legend>{words.own}</legend>
        <p className="small soft">{words.ownHint}</p>
        {(['en', 'de', 'ar'] as const).map((language) => (
          <Textarea
            key={language}
            rows={2}
            lang={language}
            dir={language === 'ar' ? 'rtl' : 'ltr'}
            label={words.languages[language]}
            value={draft[language]}
            error={errors?.[language]}
            onChange={(event) => {
              change({ ...draft, [language]: event.currentTarget.value });
            }}
          />
        ))}
      </fieldset>
      <fieldset className="stack-tight">
        <legend>{words.holds}</legend>
        {field('phoneHoldMinutes')}
        {field('provisionalHoldHours')}
        {field('recallMonths')}
        {field('valuesPerFalseAlarm')}
      </fieldset>
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

function Samples({ view: { samples } }: { view: PracticeRulesView }) {
  return (
    <section className="stack-tight" aria-labelledby="samples">
      <h2 id="samples">{words.samples}</h2>
      <p className="small soft">{words.samplesHint}</p>
      {samples.map(({ language, subject, text }) => (
        <article
          key={language}
          className="sheet sheet-pad stack-tight"
          lang={language}
          dir={language === 'ar' ? 'rtl' : 'ltr'}
        >
          <h3>{subject}</h3>
          <p className="sample-text breakable">{text}</p>
        </article>
      ))}
    </section>
  );
}
