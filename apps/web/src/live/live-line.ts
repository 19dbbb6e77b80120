import { changeNews, type ChangeNews } from '@archwright/contracts';

/** The service sends something every 15 seconds, so a line that is silent for longer than two messages is dead. */
const SILENT_MS = 40_000;
/** Shorter breaks, such as a restart of the service, are not worth a word. */
const UNSAID_MS = 4_000;
const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 30_000;

/** What this needs of a browser's `EventSource`. */
export interface Source {
  onmessage: ((event: MessageEvent<string>) => void) | null;
  onerror: ((event: Event) => void) | null;
  close(): void;
}

interface Listener {
  /** Something happened, also while the line was down. */
  onNews: (news: ChangeNews) => void;
  onState: (isUp: boolean) => void;
  /** The line broke, perhaps because the session is over. */
  onBroken: () => void;
}

/**
 * The line to the stream of changes. It goes on where it broke, so that nothing that happened meanwhile is missed, and
 * rests while nobody looks: a browser opens few connections to one service, and every tab would hold one.
 */
export class LiveLine {
  private source: Source | null = null;
  private position: string | null = null;
  private failures = 0;
  private silence: ReturnType<typeof setTimeout> | undefined;
  private again: ReturnType<typeof setTimeout> | undefined;
  private saying: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly open: (address: string) => Source,
    private readonly listener: Listener,
  ) {}

  /** Opens the line, unless it is open. */
  start(): void {
    if (this.source !== null) return;
    clearTimeout(this.again);
    const source = this.open(this.position === null ? '/api/v1/changes' : `/api/v1/changes?after=${this.position}`);
    this.source = source;
    source.onmessage = ({ data, lastEventId }) => {
      this.hear(data, lastEventId);
    };
    source.onerror = () => {
      this.breakOff();
    };
    this.watch();
  }

  /** Closes the line and keeps its position. */
  rest(): void {
    clearTimeout(this.silence);
    clearTimeout(this.again);
    clearTimeout(this.saying);
    this.saying = undefined;
    this.source?.close();
    this.source = null;
  }

  private hear(data: string, position: string): void {
    this.position = position;
    this.failures = 0;
    clearTimeout(this.saying);
    this.saying = undefined;
    this.listener.onState(true);
    this.watch();
    const news = changeNews.parse(JSON.parse(data));
    if (news.isEverything || news.changes.length > 0) this.listener.onNews(news);
  }

  private watch(): void {
    clearTimeout(this.silence);
    this.silence = setTimeout(() => {
      this.breakOff();
    }, SILENT_MS);
  }

  private breakOff(): void {
    clearTimeout(this.silence);
    this.source?.close();
    this.source = null;
    this.saying ??= setTimeout(() => {
      this.listener.onState(false);
    }, UNSAID_MS);
    this.again = setTimeout(
      () => {
        this.start();
      },
      Math.min(FIRST_PAUSE_MS * 2 ** this.failures, LONGEST_PAUSE_MS),
    );
    this.failures++;
    this.listener.onBroken();
  }
}
