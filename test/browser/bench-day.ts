import { practiceView, type CaseView } from '@archwright/contracts';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { Narrator } from '../../apps/cli/src/demo/narrator.js';
import { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { bookedCase, found } from '../e2e/booking-practice.js';

const HOUR_MS = 3_600_000;
const PATHS = ['digital-printed-bases', 'conventional', 'abbreviated'];

/** A day at the bench: cases booked and examined, so that their first laboratory work is signed and lies ahead. */
export class BenchDay {
  private constructor(
    private readonly cast: Cast,
    readonly cases: readonly CaseView[],
  ) {}

  /** @param examined how many of the cases have had their first visit when the day begins */
  static async prepare(url: string, { booked, examined }: { booked: number; examined: number }): Promise<BenchDay> {
    const cast = new Cast(url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const cases: CaseView[] = [];
    for (let index = 0; index < booked; index++) {
      cases.push(await bookedCase({ desk: cast.desk, practice }, { path: found(PATHS[index % PATHS.length]) }));
    }
    const day = new BenchDay(cast, cases);
    const inTurn = [...cases].sort((one, other) => firstVisit(one).localeCompare(firstVisit(other)));
    for (const each of inTurn.slice(0, examined)) await day.examine(each);
    return day;
  }

  private async examine({ id, stages }: CaseView): Promise<void> {
    const treatment = new Treatment(this.cast, id, new Narrator(() => undefined));
    await treatment.consent();
    await treatment.completeStage(found(stages[0]).code);
  }

  /** The service's clock goes on to the first laboratory step of the case, or past it: then what nobody began runs late. */
  async goToWorkOf(caseId: string, hoursLater = 0): Promise<void> {
    const { labSteps } = await new Treatment(this.cast, caseId, new Narrator(() => undefined)).state();
    const starts = labSteps.flatMap(({ startsAt }) => startsAt ?? []).sort();
    await this.cast.moveClock(new Date(Date.parse(found(starts[0])) + hoursLater * HOUR_MS).toISOString());
  }
}

const firstVisit = ({ stages }: CaseView): string => stages[0]?.startsAt ?? '';
