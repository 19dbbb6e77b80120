import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fetchFeed } from './fetch-feed.js';

const LIMITS = { bytes: 1000, ms: 500, redirects: 3 };
const SECRET = 'a-key-that-nobody-may-read';

describe('fetching a feed', () => {
  let server: Server;
  let answer: RequestListener;
  let base: string;
  beforeAll(async () => {
    server = createServer((request, response) => {
      answer(request, response);
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    base = `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`;
  });
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  const fetched = (path = `/${SECRET}`) => fetchFeed(new URL(path, base), { isPrivateAllowed: true, limits: LIMITS });
  const refusal = async (promise: Promise<unknown>) => {
    const error: unknown = await promise.then(
      () => null,
      (reason: unknown) => reason,
    );
    expect(error).toMatchObject({ message: expect.not.stringContaining(SECRET) as string });
    return (error as { code: string }).code;
  };

  it('follows some redirects and answers the text', async () => {
    answer = ({ url }, response) => {
      const hops = Number(url?.split('/')[1]);
      if (hops < 3) response.writeHead(302, { location: `/${String(hops + 1)}` }).end();
      else response.end('BEGIN:VCALENDAR ü');
    };
    expect(await fetched('/0')).toBe('BEGIN:VCALENDAR ü');
    expect(await refusal(fetched('/-1'))).toBe('cli.feed-redirects');
  });

  it.each<[string, RequestListener, string]>([
    ['an error', (_, response) => response.writeHead(404).end(), 'status'],
    ['more than it takes', (_, response) => response.end('x'.repeat(1001)), 'too-large'],
    ['a packed answer', (_, response) => response.setHeader('content-encoding', 'gzip').end('x'), 'encoding'],
    ['no answer in time', () => undefined, 'failed'],
    ['half an answer in time', (_, response) => response.write('BEGIN'), 'failed'],
    ['half an answer', (_, response) => void response.write('BEGIN', () => response.destroy()), 'failed'],
    [
      'a redirect to a file',
      (_, response) => response.writeHead(302, { location: 'file:///etc/passwd' }).end(),
      'scheme',
    ],
  ])('refuses %s', async (_, listener, reason) => {
    answer = listener;
    expect(await refusal(fetched())).toBe(`cli.feed-${reason}`);
  });

  // `localhost` is a name that resolves to a private address; the numbers are other ways to write one.
  it.each(['localhost', '127.0.0.1', '2130706433', '0x7f.1', '[::1]', '[::ffff:127.0.0.1]', '169.254.169.254', '0'])(
    'asks nobody at %s',
    async (host) => {
      let isAsked = false;
      answer = (_, response) => {
        isAsked = true;
        response.end();
      };
      const url = new URL(`http://${host}:${new URL(base).port}/${SECRET}`);
      expect(await refusal(fetchFeed(url, { isPrivateAllowed: false, limits: LIMITS }))).toBe('cli.feed-private');
      expect(isAsked).toBe(false);
    },
  );
});
