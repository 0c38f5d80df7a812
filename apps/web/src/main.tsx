import './app/no-eval.js';
import { ApolloProvider } from '@apollo/client/react';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { RouterProvider } from 'react-router/dom';
import { makeClient } from './app/client.js';
import { router } from './app/router.js';
import { startTheme } from './app/theme.js';
import { ToastProvider } from './ui/toast.js';
import './ui/tokens.css';
import './ui/base.css';

startTheme();
const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element #root');
createRoot(root).render(
  <StrictMode>
    <ApolloProvider client={makeClient()}>
      <ToastProvider>
        <RouterProvider router={router} />
      </ToastProvider>
    </ApolloProvider>
  </StrictMode>,
);
