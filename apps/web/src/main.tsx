import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './ui/tokens.css';
import './ui/base.css';
import './ui/pieces.css';
import './ui/shell.css';
import './ui/print.css';
import { queries } from './api/queries.ts';
import { keepForOffline } from './offline.ts';
import { router } from './router.tsx';
import { readyWords } from './text/taste.ts';

const place = document.getElementById('app');
if (!place) throw new Error('the page has no place for the app');
await readyWords();
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
if (document.readyState === 'complete') void keepForOffline();
else addEventListener('load', () => void keepForOffline());
