import { useSyncExternalStore } from 'react';

const listen = (tell: () => void) => {
  addEventListener('online', tell);
  addEventListener('offline', tell);
  return () => {
    removeEventListener('online', tell);
    removeEventListener('offline', tell);
  };
};

/** Whether the phone believes that it has a signal. */
export const useOnline = (): boolean => useSyncExternalStore(listen, () => navigator.onLine);
