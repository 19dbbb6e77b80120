import { sessionView, signIn, type SessionView } from '@archwright/contracts';
import { Button, PasswordInput, TextInput } from '@mantine/core';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState, type SyntheticEvent } from 'react';
import { post } from '../api/client.js';
import { hasStatus } from '../api/errors.js';
import { sessionQuery } from '../api/queries.js';
import { sessionGood } from '../api/session-watch.js';
import { LanguageChoice } from '../frame/language-choice.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { signInWords } from '../words/frame.js';

/** Keeps what was typed through every refusal; the first field that needs a person gets the focus. */
export function SignInForm({ note, onSignedIn }: { note?: 'again'; onSignedIn: (session: SessionView) => void }) {
  const client = useQueryClient();
  const [signInName, setName] = useState('');
  const [password, setPassword] = useState('');
  const [tried, setTried] = useState(false);
  const nameInput = useRef<HTMLInputElement>(null);
  const passwordInput = useRef<HTMLInputElement>(null);

  const enter = useMutation({
    mutationFn: () => post('/sessions', sessionView, signIn.parse({ signInName, password })),
    onSuccess: (session) => {
      client.setQueryData(sessionQuery.queryKey, session);
      sessionGood();
      onSignedIn(session);
    },
    onError: () => {
      passwordInput.current?.focus();
    },
  });

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setTried(true);
    if (signInName.trim() === '') nameInput.current?.focus();
    else if (password === '') passwordInput.current?.focus();
    else enter.mutate();
  }

  const wrong = hasStatus(enter.error, 401) ? signInWords.wrong : null;
  const tooMany = hasStatus(enter.error, 429) ? signInWords.tooMany : null;
  return (
    <div className="sign-in">
      <ScreenHead title={signInWords.title} sentence={signInWords.sentence} />
      <form className="sheet sheet-pad stack" onSubmit={submit} noValidate>
        {note ? <Notice tone="caution">{signInWords.again}</Notice> : null}
        {(wrong ?? tooMany) ? <Notice tone="stop">{wrong ?? tooMany}</Notice> : <Refusal error={enter.error} />}
        <TextInput
          ref={nameInput}
          label={signInWords.name}
          autoComplete="username"
          autoCapitalize="none"
          value={signInName}
          error={tried && signInName.trim() === '' ? signInWords.nameMissing : null}
          onChange={(event) => {
            setName(event.currentTarget.value);
          }}
        />
        <PasswordInput
          ref={passwordInput}
          label={signInWords.password}
          autoComplete="current-password"
          value={password}
          error={tried && password === '' ? signInWords.passwordMissing : null}
          visibilityToggleButtonProps={{ 'aria-label': signInWords.showPassword }}
          onChange={(event) => {
            setPassword(event.currentTarget.value);
          }}
        />
        <Button type="submit" loading={enter.isPending}>
          {signInWords.enter}
        </Button>
        <p className="small soft">{signInWords.demo}</p>
        <LanguageChoice />
      </form>
    </div>
  );
}
