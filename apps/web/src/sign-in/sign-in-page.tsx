import { useNavigate, useRouter, useSearch } from '@tanstack/react-router';
import { SignInForm } from './sign-in-form.js';
import { safeNext } from './next-view.js';

export function SignInPage() {
  const { next } = useSearch({ from: '/sign-in' });
  const navigate = useNavigate();
  const router = useRouter();
  return (
    <main>
      <SignInForm
        onSignedIn={() => {
          const target = safeNext(next);
          if (target === '/') void navigate({ to: '/' });
          else router.history.push(target);
        }}
      />
    </main>
  );
}
