import { frameWords } from '../words/frame.js';
import { HABITS, language, LANGUAGES, speak } from '../words/language.js';

/** Each language by its own name. Choosing one draws the page anew. */
export function LanguageChoice() {
  return (
    <select
      className="plain-button"
      aria-label={frameWords.language}
      value={language}
      onChange={(event) => {
        const chosen = LANGUAGES.find((each) => each === event.currentTarget.value);
        if (chosen) speak(chosen);
      }}
    >
      {LANGUAGES.map((each) => (
        <option key={each} value={each} lang={each} dir={HABITS[each].direction}>
          {HABITS[each].name}
        </option>
      ))}
    </select>
  );
}
