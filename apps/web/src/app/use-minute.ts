import { useEffect, useState } from 'react';
import { clockNow } from '../trade/time.js';

/** UTC now, to the minute: what lies open over midnight is judged and recorded for the new day. */
export function useMinute(): string {
  const [now, setNow] = useState(clockNow);
  useEffect(() => {
    const timer = setInterval(() => setNow(clockNow()), 10_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
