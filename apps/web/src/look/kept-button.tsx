import type { ComponentProps } from 'react';

interface Props extends ComponentProps<'button'> {
  /** Set while what the button began is under way. */
  'data-loading'?: boolean;
}

/**
 * The button beneath every button. While it is at work it does nothing more, but keeps the focus: one that is disabled
 * would drop it, and whoever works by keyboard would begin again at the top of the page.
 */
export function KeptButton({ 'data-loading': isAtWork, type = 'button', disabled, onClick, ...props }: Props) {
  if (!isAtWork) return <button {...props} type={type} disabled={disabled} onClick={onClick} />;
  return (
    <button
      {...props}
      type={type}
      data-loading
      aria-disabled
      onClick={(event) => {
        event.preventDefault();
      }}
    />
  );
}
