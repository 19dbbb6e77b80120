import { NativeSelect } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useSession } from '../frame/use-session.js';
import { OpenQuestionList } from '../lab-questions/open-question-list.js';
import { DayPicker } from '../look/day-picker.js';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { cliniciansOf } from '../open-case/open-case-view.js';
import { practiceZone } from '../time/practice-zone.js';
import { longDate } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { boardWords as words } from '../words/chair.js';
import { AlertList } from './alert-list.js';
import { BoardLine } from './board-line.js';
import './stage-board.css';
import { alertRows, boardCards, type BoardCard } from './stage-board-view.js';
import { useStageBoard } from './use-stage-board.js';

const EVERYONE = 'everyone';

function Card({ card }: { card: BoardCard }) {
  return (
    <li className="board-card">
      <div>
        <div className="board-time">{card.time}</div>
        {card.zoneNote ? <div className="small soft">{card.zoneNote}</div> : null}
      </div>
      <div>
        <Link to="/chair/stages/$stageId" params={{ stageId: card.stageId }} className="board-open">
          {card.patientName}, {card.birth}
        </Link>
        <div className="soft">
          {card.caseNumber} · {card.title}
        </div>
        <p className="unseen">{card.spoken}</p>
      </div>
      <BoardLine marks={card.marks} />
      <div>
        <Tag tone={card.tone}>{card.verdict}</Tag>
        <p>{card.reason}</p>
      </div>
    </li>
  );
}

/** Today's cases by stage: what has arrived, what is missing, what may go on; alerts first. */
export function StageBoardPage() {
  const search = useSearch({ from: '/inside/chair' });
  const navigate = useNavigate();
  const session = useSession();
  const chosen = search.clinician ?? session.practitionerId ?? EVERYONE;
  const { practice, day, board, alerts } = useStageBoard(
    search.on,
    search.clinic,
    chosen === EVERYONE ? undefined : chosen,
  );
  const go = (change: Partial<typeof search>): void => {
    void navigate({ to: '/chair', search: { ...search, ...change } });
  };
  const cards = board.data ? boardCards(board.data, viewerZone()) : [];
  const rows = alertRows(alerts.data?.items ?? [], practiceZone(practice), practice.today);
  const allClinics = practice.clinics.map((clinic) => clinic.id);

  return (
    <div className="roomy">
      <ScreenHead
        title={words.title(longDate(day, practice.today), board.data?.clinicName ?? '')}
        sentence={board.data?.sentence}
      >
        <NativeSelect
          aria-label={words.clinic}
          value={search.clinic ?? ''}
          data={[
            { value: '', label: words.allClinics },
            ...practice.clinics.map((clinic) => ({ value: clinic.id, label: clinic.name })),
          ]}
          onChange={(event) => {
            const clinic = event.currentTarget.value;
            void navigate({ to: '/chair', search: { on: day, clinician: chosen, ...(clinic ? { clinic } : {}) } });
          }}
        />
        <NativeSelect
          aria-label={words.clinician}
          value={chosen}
          data={[{ value: EVERYONE, label: words.everyone }, ...cliniciansOf(practice, allClinics)]}
          onChange={(event) => {
            go({ clinician: event.currentTarget.value });
          }}
        />
        <DayPicker
          day={day}
          today={practice.today}
          onPick={(on) => {
            go({ on });
          }}
        />
      </ScreenHead>
      <div className="stack">
        <Refusal error={board.error ?? alerts.error} onRetry={() => void board.refetch()} />
        <AlertList rows={rows} />
        <OpenQuestionList today={practice.today} />
        {board.isPending ? <FirstWait what={words.loading} /> : null}
        <Waiting busy={board.isPlaceholderData}>
          {board.data ? (
            <ol className="sheet lines">
              {cards.length === 0 ? (
                <li>
                  <Empty>{words.empty}</Empty>
                </li>
              ) : null}
              {cards.map((card) => (
                <Card key={card.stageId} card={card} />
              ))}
            </ol>
          ) : null}
        </Waiting>
      </div>
    </div>
  );
}
