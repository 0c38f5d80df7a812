import { useApolloClient, useMutation } from '@apollo/client/react';
import { useState, type FormEvent } from 'react';
import { problemOf, type Problem } from '../../app/problem.js';
import { graphql } from '../../graphql.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Field } from '../../ui/field.js';
import { Trouble } from '../../ui/states.js';
import './sign-in.css';

const SignIn = graphql(`
  mutation SignIn($email: String!, $password: String!) {
    signIn(email: $email, password: $password) {
      id
    }
  }
`);

/** Asks who is there. The address bar keeps the screen one wanted; after signing in it is shown. */
export function SignInScreen({ onSignedIn }: { onSignedIn: () => Promise<unknown> }) {
  const client = useApolloClient();
  const [signIn, { loading }] = useMutation(SignIn);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [missing, setMissing] = useState<'email' | 'password' | null>(null);

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const email = String(form.get('email')).trim();
    const password = String(form.get('password'));
    setMissing(email === '' ? 'email' : password === '' ? 'password' : null);
    if (email === '' || password === '') return;
    setProblem(null);
    try {
      await signIn({ variables: { email, password } });
      await client.clearStore();
      await onSignedIn();
    } catch (error) {
      setProblem(problemOf(error));
    }
  }

  return (
    <main className="tw-sign-in">
      <form className="tw-sheet tw-stack" onSubmit={submit} noValidate>
        <div>
          <p className="tw-sign-in-name">Tallywing</p>
          <h1>Sign in</h1>
        </div>
        <p className="tw-soft">Which aircraft may fly what today, why, and until when.</p>
        <Field label="E-mail" error={missing === 'email' ? 'Type the e-mail address of your account.' : null}>
          <input name="email" type="email" autoComplete="username" autoFocus />
        </Field>
        <Field label="Password" error={missing === 'password' ? 'Type your password.' : null}>
          <input name="password" type="password" autoComplete="current-password" />
        </Field>
        {problem && <Trouble title={problem.title} wayOut={problem.wayOut} />}
        <Button type="submit" look="main" busy={loading}>
          {loading ? 'Signing in…' : 'Sign in'}
        </Button>
        <Caution />
      </form>
    </main>
  );
}
