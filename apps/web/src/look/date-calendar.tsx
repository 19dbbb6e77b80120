import { Popover } from '@mantine/core';
import { DatePicker } from '@mantine/dates';
import { useLayoutEffect, type RefObject } from 'react';
import '@mantine/core/styles/Popover.css';
import '@mantine/dates/styles.css';
import './date-calendar.css';
import { longDate, monthAndYear } from '../time/wording.js';
import { dateWords as words } from '../words/dates.js';
import { language } from '../words/language.js';

// The library writes names of months and weekdays by the catalogues of its calendar; English comes with it.
if (language === 'de') await import('dayjs/locale/de.js');
if (language === 'ar') await import('dayjs/locale/ar.js');

/** First column of the week, from Sunday 0: Saturday in Arabic, Monday else (Unicode CLDR, week data). */
const FIRST_DAY = language === 'ar' ? 6 : 1;

/** Most who lose all teeth do so late in life: common practice, no source. It spares paging through decades. */
const USUAL_AGE_YEARS = 70;

const LABELS = {
  previousMonth: words.previousMonth,
  nextMonth: words.nextMonth,
  previousYear: words.previousYear,
  nextYear: words.nextYear,
  previousDecade: words.previousDecade,
  nextDecade: words.nextDecade,
  monthLevelControl: words.toYear,
  yearLevelControl: words.toDecade,
};

interface Props {
  /** Button of the field: the calendar stands below the field, and the button has the focus again when it is closed. */
  opener: RefObject<HTMLElement | null>;
  /** As `YYYY-MM-DD`, '' for none. */
  value: string;
  min: string | undefined;
  max: string | undefined;
  isBirth: boolean;
  onPick: (day: string) => void;
  onClose: () => void;
}

/** The calendar of a field. Fetched when the first one is opened. */
export default function DateCalendar({ opener, value, min, max, isBirth, onPick, onClose }: Props) {
  const start = value || (isBirth ? yearsBefore(max ?? '', USUAL_AGE_YEARS) : (max ?? min ?? ''));
  function leave(): void {
    onClose();
    opener.current?.focus();
  }
  return (
    <Popover
      opened
      onChange={onClose}
      trapFocus
      withRoles={false}
      closeOnEscape={false}
      position="bottom-start"
      offset={4}
      transitionProps={{ duration: 0 }}
      portalProps={{ target: '#work' }}
    >
      <Popover.Target refProp="hold">
        <Below opener={opener} />
      </Popover.Target>
      <Popover.Dropdown
        role="dialog"
        aria-label={words.calendar}
        className="date-calendar no-print"
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          event.stopPropagation();
          leave();
        }}
      >
        <DatePicker
          size="lg"
          locale={language}
          firstDayOfWeek={FIRST_DAY}
          weekendDays={[]}
          hideOutsideDates
          value={value || null}
          {...(start === '' ? {} : { defaultDate: start })}
          {...(min === undefined ? {} : { minDate: min })}
          {...(max === undefined ? {} : { maxDate: max })}
          defaultLevel={isBirth && value === '' ? 'decade' : 'month'}
          ariaLabels={LABELS}
          monthLabelFormat={monthAndYear}
          getDayAriaLabel={(day) => longDate(day, '')}
          getDayProps={(day) => (day === value ? { 'data-autofocus': true, 'aria-current': 'date' } : {})}
          onChange={(day) => {
            if (day !== null) onPick(day);
            leave();
          }}
        />
      </Popover.Dropdown>
    </Popover>
  );
}

/** Stands for the field, which is there already. */
function Below({ opener, hold }: { opener: Props['opener']; hold?: (node: HTMLElement | null) => void }) {
  useLayoutEffect(() => {
    hold?.(opener.current?.closest<HTMLElement>('.mantine-Input-wrapper') ?? null);
  }, [hold, opener]);
  return null;
}

const yearsBefore = (date: string, years: number): string =>
  date === '' ? '' : `${String(Number(date.slice(0, 4)) - years)}-01-01`;
