import { idWords } from '@tallywing/rules';
import { useApolloClient, useMutation } from '@apollo/client/react';
import { Suspense, useEffect, useRef } from 'react';
import { Link, NavLink, Outlet, useLocation } from 'react-router';
import { graphql } from '../graphql.js';
import { Empty, Loading } from '../ui/states.js';
import { JudgingStrip } from './judging-strip.js';
import { LiveStrip } from './live/live-strip.js';
import { isFor, screensFor } from './screens.js';
import { useSession } from './session.js';
import { ThemeSwitch } from './theme.js';
import './layout.css';

const SignOut = graphql(`
  mutation SignOut {
    signOut
  }
`);

/** Band, navigation and the screen's place. A change of screen moves the focus to its heading. */
export function Layout() {
  const { viewer, ended } = useSession();
  const { pathname } = useLocation();
  const screens = useRef<HTMLElement>(null);
  useEffect(() => {
    // On a phone the band of screens is wider than the page: the one that is shown is never out of sight.
    const nav = screens.current;
    const here = nav?.querySelector<HTMLElement>('[aria-current="page"]');
    if (nav && here) nav.scrollLeft = here.offsetLeft - nav.offsetLeft - (nav.clientWidth - here.offsetWidth) / 2;
  }, [pathname]);
  return (
    <>
      <a className="tw-skip" href="#screen">
        Skip to the screen
      </a>
      <header className="tw-band tw-no-print">
        <Link to="/" className="tw-name">
          <svg viewBox="0 0 32 24" aria-hidden="true">
            <path d="M7 4v16M12 4v16M17 4v16M22 4v16" />
            <path d="M2 20 29 5" className="tw-name-wing" />
          </svg>
          Tallywing
        </Link>
        <nav aria-label="Screens" ref={screens}>
          <ul>
            {screensFor(viewer.may).map((screen) => (
              <li key={screen.path}>
                <NavLink to={screen.path} end={screen.path === '/'}>
                  {screen.title}
                </NavLink>
              </li>
            ))}
          </ul>
        </nav>
        <div className="tw-who">
          <Link to="/sessions" title="Where you are signed in">
            {viewer.name}, {idWords(viewer.role).toLowerCase()}
            <span className="tw-who-house">{viewer.operator?.name ?? viewer.organisation.name}</span>
          </Link>
          <ThemeSwitch />
          <SignOutButton />
        </div>
      </header>
      <LiveStrip shown={viewer.organisation.counter} ended={ended} />
      {!ended && <JudgingStrip />}
      {ended && (
        <p className="tw-strip" role="alert">
          Your session has ended. What you typed is kept on this device.{' '}
          <a href={window.location.href}>Sign in again</a>
        </p>
      )}
      <main id="screen" tabIndex={-1} className="tw-screen">
        <FocusOnMove />
        <Suspense fallback={<Loading what="the screen" />}>
          {isFor(pathname, viewer.may) ? <Outlet /> : <NotForThisRole />}
        </Suspense>
      </main>
    </>
  );
}

function NotForThisRole() {
  return (
    <Empty title="This screen is not for your role.">
      <p>Ask a manager of your organisation if you need it.</p>
      <Link to="/">To the ready board</Link>
    </Empty>
  );
}

function SignOutButton() {
  const client = useApolloClient();
  const [signOut, { loading }] = useMutation(SignOut);
  return (
    <button
      type="button"
      className="tw-band-button"
      disabled={loading}
      onClick={async () => {
        await signOut().catch(() => undefined); // gone or not, this device shows nothing more
        await client.clearStore();
        window.location.assign('/');
      }}
    >
      Sign out
    </button>
  );
}

/** A screen reader hears the new screen, and the next Tab starts in it. Not on the first load. */
function FocusOnMove() {
  const { pathname } = useLocation();
  const first = useRef(true);
  useEffect(() => {
    if (first.current) first.current = false;
    else document.getElementById('screen')?.focus();
  }, [pathname]);
  return null;
}
