import type { ButtonHTMLAttributes } from 'react';
import './button.css';

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** One 'main' a screen: the thing one came to do. */
  readonly look?: 'main' | 'plain' | 'quiet' | 'stop';
  /** While true the button keeps its place and its focus, says so, and does nothing. */
  readonly busy?: boolean;
}

export function Button({ look = 'plain', busy = false, className, onClick, type = 'button', ...rest }: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      className={['tw-button', className].filter(Boolean).join(' ')}
      data-look={look}
      aria-disabled={busy || rest.disabled || undefined}
      onClick={(event) => {
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    />
  );
}
