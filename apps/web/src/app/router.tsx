import { createBrowserRouter, redirect, type RouteObject } from 'react-router';
import { SignInScreen } from '../features/sign-in/screen.js';
import { ErrorScreen, NoSuchScreen } from './error-screen.js';
import { Layout } from './layout.js';
import { SessionGate } from './session.js';

/* One chunk a screen: the first page loads what it shows. */
const screens: RouteObject[] = [
  {
    index: true,
    lazy: async () => ({ Component: (await import('../features/ready-board/screen.js')).ReadyBoardScreen }),
  },
];

/** Signing in shows the screen that the address names. */
function Gate() {
  return (
    <SessionGate signIn={(again) => <SignInScreen onSignedIn={again} />}>
      <Layout />
    </SessionGate>
  );
}

export const router = createBrowserRouter([
  { path: '/sign-in', loader: () => redirect('/') },
  {
    path: '/',
    Component: Gate,
    ErrorBoundary: ErrorScreen,
    HydrateFallback: () => null,
    children: [{ ErrorBoundary: ErrorScreen, children: [...screens, { path: '*', Component: NoSuchScreen }] }],
  },
]);
