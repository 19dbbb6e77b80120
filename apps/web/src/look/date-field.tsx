import { TextInput } from '@mantine/core';
import { lazy, Suspense, useEffect, useRef, useState, type ReactNode } from 'react';
import { birthDate, fieldDate } from '../time/wording.js';
import { dateWords as words } from '../words/dates.js';
import { locale } from '../words/language.js';
import { isCurrent, isUnread, readDate, typeDate, type TypedDate } from './date-text.js';
import './date-field.css';

const DateCalendar = lazy(() => import('./date-calendar.js'));

interface Props {
  label?: string;
  'aria-label'?: string;
  description?: string | undefined;
  /** Said below the field; `true` only marks it. A text that is no date has an error of its own, which comes first. */
  error?: ReactNode;
  required?: boolean;
  disabled?: boolean;
  autoFocus?: boolean;
  className?: string;
  /** As `YYYY-MM-DD`, '' for none. */
  value: string;
  /** First and last day that the calendar offers; what is typed is left to the form. */
  min?: string;
  max?: string;
  /** A day long ago: the calendar begins with years, and the weekday is nobody's concern. */
  isBirth?: boolean;
  /** Hears '' while what stands in the field is no date. */
  onChange: (value: string) => void;
}

/**
 * A date, typed or chosen in a calendar. It is shown with weekday and month by name. What can't be read as a date stays in
 * the field, which says what it accepts, and keeps its form from being sent.
 */
export function DateField({ value, onChange, error, min, max, isBirth = false, className = '', ...rest }: Props) {
  const [typed, setTyped] = useState<TypedDate | null>(null);
  const [isLeft, setIsLeft] = useState(false);
  const [isOpen, setIsOpen] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const own = typed !== null && isCurrent(typed, value) ? typed : null;
  const isWrong = own !== null && isUnread(own);

  useEffect(() => {
    const field = input.current;
    const form = field?.form;
    if (!isWrong || !form) return undefined;
    function hold(event: SubmitEvent): void {
      event.preventDefault();
      // Before the form's own answer: it would send the field as if nothing stood in it.
      event.stopPropagation();
      setIsLeft(true);
      field?.focus();
    }
    form.addEventListener('submit', hold, true);
    return () => {
      form.removeEventListener('submit', hold, true);
    };
  }, [isWrong]);

  return (
    <TextInput
      {...rest}
      className={`date-field ${className}`}
      ref={input}
      autoComplete="off"
      placeholder={words.shape}
      value={own?.text ?? shown(value, isBirth)}
      error={isWrong && isLeft ? words.wrong : error}
      onChange={(event) => {
        const next = typeDate(event.currentTarget.value, value, locale);
        setTyped(next);
        setIsLeft(false);
        if (next.read !== value) onChange(next.read);
      }}
      onBlur={() => {
        setIsLeft(true);
        if (!isWrong) setTyped(null);
      }}
      rightSectionWidth={44}
      rightSection={
        <>
          <button
            ref={opener}
            type="button"
            className="date-opener no-print"
            aria-label={words.calendar}
            aria-haspopup="dialog"
            aria-expanded={isOpen}
            disabled={rest.disabled}
            onClick={() => {
              setIsOpen(!isOpen);
            }}
          >
            <svg viewBox="0 0 20 20" aria-hidden="true">
              <path d="M3 5h14v12H3zM3 9h14M7 2.5V6M13 2.5V6" />
            </svg>
          </button>
          {isOpen ? (
            <Suspense fallback={null}>
              <DateCalendar
                opener={opener}
                value={readDate(value, locale) ?? ''}
                min={min}
                max={max}
                isBirth={isBirth}
                onPick={(day) => {
                  setTyped(null);
                  onChange(day);
                }}
                onClose={() => {
                  setIsOpen(false);
                }}
              />
            </Suspense>
          ) : null}
        </>
      }
    />
  );
}

/** A kept draft may hold anything: what is no date is shown as it is. */
function shown(value: string, isBirth: boolean): string {
  if (readDate(value, locale) !== value) return value;
  return isBirth ? birthDate(value) : fieldDate(value);
}
