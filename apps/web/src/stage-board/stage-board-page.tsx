import { NativeSelect } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { OpenQuestionList } from '../lab-questions/open-question-list.js';
import { DayPicker } from '../look/day-picker.js';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { cliniciansOf } from '../open-case/open-case-view.js';
import { FindingsList } from '../screening/findings-list.js';
import { practiceZone } from '../time/practice-zone.js';
import { longDate } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { boardWords as words } from '../words/chair.js';
import { toldWords } from '../words/told.js';
import { BoardLine } from './board-line.js';
import './stage-board.css';
import { boardCards, waitingRows, type BoardCard } from './stage-board-view.js';
import { chosenClinician, EVERYONE, useStageBoard } from './use-stage-board.js';
import { WaitingList } from './waiting-list.js';

/** The chair's screen for those who treat; the case for everybody else. */
function Opens({ card, treats }: { card: BoardCard; treats: boolean }) {
  const label = `${card.patientName}, ${card.birth}`;
  return treats ? (
    <Link to="/chair/stages/$stageId" params={{ stageId: card.stageId }} className="board-open">
      {label}
    </Link>
  ) : (
    <Link to="/desk/cases/$caseId" params={{ caseId: card.caseId }} className="board-open">
      {label}
    </Link>
  );
}

function Card({ card, treats }: { card: BoardCard; treats: boolean }) {
  return (
    <li className="board-card">
      <div>
        <div className="board-time">{card.time}</div>
        {card.zoneNote ? <div className="small soft">{card.zoneNote}</div> : null}
        {card.visitState ? <div className="small soft">{card.visitState}</div> : null}
      </div>
      <div>
        <Opens card={card} treats={treats} />
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
  const chosen = chosenClinician(search.clinician, session);
  const { practice, day, board } = useStageBoard(search.on, search.clinic, chosen);
  const go = (change: Partial<typeof search>): void => {
    void navigate({ to: '/chair', search: { ...search, ...change } });
  };
  const cards = board.data ? boardCards(board.data, viewerZone()) : [];
  const rows = board.data ? waitingRows(board.data, practice.today) : [];
  const allClinics = practice.clinics.map((clinic) => clinic.id);

  return (
    <div className="roomy">
      <ScreenHead
        title={words.title(longDate(day, practice.today), board.data?.clinicName ?? '')}
        sentence={board.data && toldWords(board.data.told)}
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
        <Refusal error={board.error} onRetry={() => void board.refetch()} />
        <WaitingList rows={rows} />
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
                <Card key={card.stageId} card={card} treats={may.treat(session.role)} />
              ))}
            </ol>
          ) : null}
        </Waiting>
        {may.seeFindings(session.role) ? <FindingsList zone={practiceZone(practice)} today={practice.today} /> : null}
      </div>
    </div>
  );
}
