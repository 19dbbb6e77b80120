import { useMantineColorScheme } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { Link, Outlet, useNavigate } from '@tanstack/react-router';
import { Suspense, useEffect, useState, useSyncExternalStore } from 'react';
import { z } from 'zod';
import { remove } from '../api/client.js';
import { onSession, sessionEnded } from '../api/session-watch.js';
import { forgetDrafts } from '../drafts/kept-drafts.js';
import { GuideStrip } from '../guide/guide-strip.js';
import { useLive } from '../live/use-live.js';
import { FirstWait } from '../look/screen.js';
import { SignInForm } from '../sign-in/sign-in-form.js';
import { frameWords } from '../words/frame.js';
import { FindBox } from './find-box.js';
import { LanguageChoice } from './language-choice.js';
import { may, placesOf } from './places-view.js';
import { useSession } from './use-session.js';

function Logo() {
  return (
    <svg
      width="28"
      height="24"
      viewBox="0 0 28 24"
      fill="none"
      strokeWidth="3"
      strokeLinecap="round"
      aria-hidden="true"
    >
      <path d="M3 21C6 9 10 4 14 4s8 5 11 17" />
      <circle cx="14" cy="4" r="2.4" stroke="none" />
    </svg>
  );
}

const LOOKS = ['auto', 'light', 'dark'] as const;

function LookButton() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <button
      type="button"
      className="plain-button"
      onClick={() => {
        setColorScheme(LOOKS[(LOOKS.indexOf(colorScheme) + 1) % LOOKS.length] ?? 'auto');
      }}
    >
      {frameWords.appearance[colorScheme]}
    </button>
  );
}

function subscribeOnline(changed: () => void): () => void {
  window.addEventListener('online', changed);
  window.addEventListener('offline', changed);
  return () => {
    window.removeEventListener('online', changed);
    window.removeEventListener('offline', changed);
  };
}

/** The line of workplaces, the search, and the screen. When the session ends the screen stays mounted behind the sign-in. */
export function Frame() {
  const session = useSession();
  const navigate = useNavigate();
  const client = useQueryClient();
  const [expired, setExpired] = useState(false);
  const online = useSyncExternalStore(subscribeOnline, () => navigator.onLine);
  const isUp = useLive(session.userId, !expired);
  useEffect(() => onSession(setExpired), []);

  async function signOut(): Promise<void> {
    await remove('/sessions/current', z.unknown()).catch(() => undefined);
    sessionEnded();
    forgetDrafts();
    client.clear();
    await navigate({ to: '/sign-in', search: {} });
  }

  return (
    <>
      {expired ? (
        <SignInForm
          note="again"
          onSignedIn={(next) => {
            if (next.userId !== session.userId) {
              forgetDrafts();
              window.location.assign('/');
              return;
            }
            void client.invalidateQueries();
          }}
        />
      ) : null}
      <div hidden={expired}>
        <a className="skip" href="#work">
          {frameWords.skip}
        </a>
        <header className="head">
          <Link to="/" className="mark">
            <Logo />
            {frameWords.name}
          </Link>
          <nav className="places" aria-label={frameWords.placesLabel}>
            {placesOf(session.role).map((place) => (
              <Link key={place.key} to={place.to} className="place" activeProps={{ className: 'place-here' }}>
                {frameWords.places[place.key]}
              </Link>
            ))}
          </nav>
          {session.role === 'lab' ? (
            <FindBox to="/bench/find" label={frameWords.findCase} />
          ) : (
            <FindBox to="/find" label={frameWords.find} />
          )}
          <div className="who">
            <div className="who-lines">
              <div>{session.name}</div>
              <div className="soft">{frameWords.roles[session.role]}</div>
            </div>
            {may.seeCaughtMail(session) ? <Link to="/caught-mail">{frameWords.caughtMail}</Link> : null}
            <Link to="/password">{frameWords.password}</Link>
            <LookButton />
            <LanguageChoice />
            <button type="button" className="plain-button" onClick={() => void signOut()}>
              {frameWords.signOut}
            </button>
          </div>
        </header>
        <p className="offline" role="status" hidden={online && isUp}>
          {online ? (isUp ? null : frameWords.lineDown) : frameWords.offline}
        </p>
        {session.isDemonstration ? <GuideStrip role={session.role} /> : null}
        <main id="work" className="main" tabIndex={-1}>
          <Suspense fallback={<FirstWait what="" />}>
            <Outlet />
          </Suspense>
        </main>
      </div>
    </>
  );
}
