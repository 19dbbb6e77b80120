import { NativeSelect } from '@mantine/core';
import { SIBILANT_LANGUAGES, sibilantPrompt } from '@archwright/measures';
import { useState } from 'react';
import { languageName } from '../words/plural.js';
import { verticalWords as words } from '../words/vertical.js';

const LANGUAGES = SIBILANT_LANGUAGES.map((value) => ({ value, label: languageName(value) }));

/** What the patient reads aloud while the space in speech is watched, in a language of theirs. */
export function SibilantPrompt() {
  const [language, setLanguage] = useState('en');
  const { sentence, direction } = sibilantPrompt(language);
  return (
    <div className="stack-tight">
      <h3>{words.prompt}</h3>
      <NativeSelect
        label={words.language}
        value={language}
        data={LANGUAGES}
        onChange={(event) => {
          setLanguage(event.currentTarget.value);
        }}
      />
      <p className="strong" lang={language} dir={direction}>
        {sentence}
      </p>
    </div>
  );
}
