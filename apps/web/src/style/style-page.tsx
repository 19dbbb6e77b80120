import { Button, Checkbox, NativeSelect, PasswordInput, Radio, Textarea, TextInput } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { Legend } from '../case-line/legend.js';
import { CaseLineDrawing } from '../case-line/line-drawing.js';
import { layLines } from '../case-line/line-view.js';
import { LanguageChoice } from '../frame/language-choice.js';
import { ClashSheet } from '../look/clash-sheet.js';
import { DateField } from '../look/date-field.js';
import { DecisionForm } from '../look/decision-form.js';
import { Mark, Tag, type MarkShape, type Tone } from '../look/marks.js';
import { Conflict, Notice, Refusal } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { SAMPLE_LINE, SAMPLE_REFUSAL, SAMPLE_ROWS } from './samples.js';
import './style.css';

const GROUNDS = ['paper', 'surface', 'shade', 'quiet-soft', 'accent-soft', 'go-soft', 'caution-soft', 'stop-soft'];
const INKS = ['ink', 'soft', 'accent', 'go', 'caution', 'stop', 'line', 'line-strong'];
const STEPS = ['load-0', 'load-1', 'load-2', 'load-3', 'load-4', 'bar-0', 'bar-1', 'bar-2'];
const SIZES = ['small', 'text', 'lead', 'head'];
const MARKS: MarkShape[] = ['done', 'now', 'to-come', 'needs-person', 'missed'];
const TONES: Tone[] = ['plain', 'accent', 'go', 'caution', 'stop'];
const NOTICES = ['plain', 'go', 'caution', 'stop'] as const;

const nothing = (): void => undefined;

function Swatches({ title, names }: { title: string; names: readonly string[] }) {
  return (
    <div className="stack-tight">
      <h3>{title}</h3>
      <ul className="swatches">
        {names.map((name) => (
          <li key={name}>
            <span className="swatch" style={{ background: `var(--${name})` }} />
            <span className="swatch swatch-grey" style={{ background: `var(--${name})` }} />
            <code>{name}</code>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Section({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section className="sheet sheet-pad stack">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function SampleLine() {
  const laid = layLines([SAMPLE_LINE], 900);
  return (
    <div className="scroll-x" tabIndex={0} role="group" aria-label="A case as a line">
      {laid?.rows.map((row) => (
        <CaseLineDrawing key={row.clinicY} axis={laid.axis} row={row} levels={{ clinic: 'Clinic', lab: 'Lab' }} />
      ))}
      <Legend />
    </div>
  );
}

function SampleDates() {
  const [day, setDay] = useState('2027-01-28');
  const [empty, setEmpty] = useState('');
  const [birth, setBirth] = useState('');
  return (
    <div className="thirds">
      <DateField label="A date" value={day} onChange={setDay} />
      <DateField label="Empty, from a day on" min="2027-01-04" value={empty} onChange={setEmpty} />
      <DateField label="A birth date" isBirth max="2027-01-04" value={birth} onChange={setBirth} />
      <DateField label="A refused date" value="2020-01-31" error="Give a day to come." onChange={nothing} />
      <DateField label="A date not to be changed" value="2027-01-28" disabled onChange={nothing} />
    </div>
  );
}

/** Every part of the look with its states on one page, for whoever changes it; it is no part of what is shipped. */
export function StylePage() {
  return (
    <main id="work" className="main stack">
      <ScreenHead title="Style" sentence="Each part of the screens in each of its states. Switch colours and language.">
        <LanguageChoice />
      </ScreenHead>
      <Section title="Colours, and how they are without colour">
        <Swatches title="Grounds" names={GROUNDS} />
        <Swatches title="Text, rules and verdicts" names={INKS} />
        <Swatches title="Load and bars" names={STEPS} />
      </Section>
      <Section title="Type">
        {SIZES.map((size) => (
          <p key={size} style={{ fontSize: `var(--size-${size})` }}>
            {size}: six visits, five cases may go on · 0123456789
          </p>
        ))}
      </Section>
      <Section title="State by shape">
        <div className="row">
          {MARKS.map((shape) => (
            <span key={shape} className="row">
              <Mark shape={shape} /> {shape}
            </span>
          ))}
        </div>
        <div className="row">
          {TONES.map((tone) => (
            <Tag key={tone} tone={tone}>
              {tone}
            </Tag>
          ))}
        </div>
        <SampleLine />
      </Section>
      <Section title="Actions">
        <div className="row">
          <Button>Most usual</Button>
          <Button variant="default">Another</Button>
          <Button disabled>Not possible</Button>
          <Button loading>Under way</Button>
          <button type="button" className="plain-button">
            In passing
          </button>
        </div>
      </Section>
      <Section title="Fields">
        <TextInput label="Empty" description="What it accepts, before a mistake" />
        <TextInput label="Filled" defaultValue="3.5" inputMode="decimal" />
        <TextInput label="Refused" defaultValue="three" error="Enter a number such as 3.5." />
        <TextInput label="Not to be changed" defaultValue="27-0147" disabled />
        <PasswordInput label="Hidden" visibilityToggleButtonProps={{ 'aria-label': 'Show it' }} />
        <NativeSelect label="One of a few" data={['upper', 'lower', 'both']} />
        <Textarea label="Longer text" rows={2} />
        <Checkbox label="Agreed" defaultChecked />
        <Radio.Group label="One of two">
          <div className="stack">
            <Radio value="right" label="right" />
            <Radio value="left" label="left" />
          </div>
        </Radio.Group>
        <SampleDates />
        <DecisionForm
          about="an example"
          choices={[
            { key: 'keep', label: 'Keep', then: 'Everything stays as it is.' },
            { key: 'drop', label: 'Drop', then: 'It is taken off the list.' },
          ]}
          paths={{ reason: 'reason' }}
          pending={false}
          error={null}
          onDecide={nothing}
        />
      </Section>
      <Section title="What the page says">
        {NOTICES.map((tone) => (
          <Notice key={tone} tone={tone}>
            A notice that is {tone}.
          </Notice>
        ))}
        <Refusal error={SAMPLE_REFUSAL} onRetry={nothing} />
        <Conflict onKeepMine={nothing} onTakeTheirs={nothing} />
        <ClashSheet
          rows={[{ key: 'shade', label: 'Shade', mine: 'as the old denture', theirs: '' }]}
          onKeepMine={nothing}
          onTakeTheirs={nothing}
        />
      </Section>
      <Section title="Lists">
        <PlainTable label="Example" columns={['What', 'When', 'State']} rows={SAMPLE_ROWS} />
        <FirstWait what="the day" />
        <Waiting busy>
          <p>The old picture while a new one is fetched.</p>
        </Waiting>
        <Empty>Nothing is planned yet. What will stand here, and how to begin.</Empty>
      </Section>
    </main>
  );
}
