import { stageWords as words } from '../words/chair.js';
import { photographWords } from '../words/photographs.js';
import { teethWords } from '../words/teeth.js';
import type { Section } from './visit-steps.js';

const titles: Readonly<Record<Section, string>> = {
  ...words,
  teeth: teethWords.title,
  photographs: photographWords.title,
};

/** The way to each section of a long page; it stays at the top edge, one row that can be pushed sideways. */
export function SectionList({ sections }: { sections: readonly Section[] }) {
  return (
    <nav className="stage-sections no-print" aria-label={words.sections}>
      {sections.map((section) => (
        <a key={section} className="action" href={`#${section}`}>
          {titles[section]}
        </a>
      ))}
    </nav>
  );
}
