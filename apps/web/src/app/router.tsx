import type { ComponentType } from 'react';
import { createBrowserRouter, redirect, type RouteObject } from 'react-router';
import { SignInScreen } from '../features/sign-in/screen.js';
import { ErrorScreen, NoSuchScreen } from './error-screen.js';
import { Loading } from '../ui/states.js';
import { Layout } from './layout.js';
import { SessionGate } from './session.js';

/* One chunk a screen: the first page loads what it shows. */
const screens: RouteObject[] = [
  { index: true, lazy: async () => screen((await import('../features/ready-board/screen.js')).ReadyBoardScreen) },
  { path: 'aircraft/:id', lazy: async () => screen((await import('../features/aircraft/screen.js')).AircraftScreen) },
  { path: 'aircraft/:id/job', lazy: async () => screen((await import('../features/job/screen.js')).JobScreen) },
  {
    path: 'aircraft/:id/history',
    lazy: async () => screen((await import('../features/history/screen.js')).HistoryScreen),
  },
  {
    path: 'aircraft/:id/history/then',
    lazy: async () => screen((await import('../features/history/look-back-screen.js')).LookBackScreen),
  },
  {
    path: 'aircraft/:id/taking-on',
    lazy: async () => screen((await import('../features/taking-on/aircraft-screen.js')).TakingOnAircraftScreen),
  },
  { path: 'taking-on', lazy: async () => screen((await import('../features/taking-on/screen.js')).TakingOnScreen) },
  { path: 'findings', lazy: async () => screen((await import('../features/findings/screen.js')).FindingsScreen) },
  { path: 'due', lazy: async () => screen((await import('../features/due/screen.js')).DueScreen) },
  { path: 'meters', lazy: async () => screen((await import('../features/meters/screen.js')).MetersScreen) },
  { path: 'databases', lazy: async () => screen((await import('../features/databases/screen.js')).DatabasesScreen) },
  { path: 'catalogue', lazy: async () => screen((await import('../features/catalogue/screen.js')).CatalogueScreen) },
  {
    path: 'catalogue/new',
    lazy: async () => screen((await import('../features/catalogue/editor-screens.js')).EnterTypeScreen),
  },
  {
    path: 'catalogue/:id',
    lazy: async () => screen((await import('../features/catalogue/type-screen.js')).TypeScreen),
  },
  {
    path: 'catalogue/:id/copy',
    lazy: async () => screen((await import('../features/catalogue/editor-screens.js')).CopyTypeScreen),
  },
  {
    path: 'catalogue/:id/revise',
    lazy: async () => screen((await import('../features/catalogue/editor-screens.js')).ReviseTypeScreen),
  },
  { path: 'import', lazy: async () => screen((await import('../features/import/screen.js')).ImportScreen) },
  { path: 'hours', lazy: async () => screen((await import('../features/labour/screen.js')).LabourScreen) },
  { path: 'house', lazy: async () => screen((await import('../features/house/screen.js')).HouseScreen) },
  { path: 'audit', lazy: async () => screen((await import('../features/house/audit-screen.js')).AuditScreen) },
  { path: 'workshop', lazy: async () => screen((await import('../features/workshop/screen.js')).WorkshopScreen) },
  { path: 'people', lazy: async () => screen((await import('../features/people/screen.js')).PeopleScreen) },
  {
    path: 'sessions',
    lazy: async () => screen((await import('../features/people/sessions-screen.js')).SessionsScreen),
  },
  { path: 'rules', lazy: async () => screen((await import('../features/rules/screen.js')).RulesScreen) },
  { path: 'rules/:id', lazy: async () => screen((await import('../features/rules/rule-screen.js')).RuleScreen) },
];

function screen(Component: ComponentType): { Component: ComponentType } {
  return { Component };
}

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
    HydrateFallback: () => <Loading what="the screen" />,
    children: [{ ErrorBoundary: ErrorScreen, children: [...screens, { path: '*', Component: NoSuchScreen }] }],
  },
]);
