import { Button, createTheme, type CSSVariablesResolver, type MantineColorsTuple } from '@mantine/core';

import { KeptButton } from './look/kept-button.js';

/** The accent from soft to deep; shade 8 is the one that buttons wear (white on it reads at 7:1). */
const accent: MantineColorsTuple = [
  '#e3eff4',
  '#d8e7ec',
  '#c3dbe4',
  '#afceda',
  '#86b5c6',
  '#5f9bb1',
  '#3f819b',
  '#2b6c87',
  '#0b5a78',
  '#084861',
];

export const theme = createTheme({
  fontFamily: "'Atkinson Hyperlegible', 'Noto Sans Arabic', system-ui, sans-serif",
  headings: { fontFamily: "'Atkinson Hyperlegible', 'Noto Sans Arabic', system-ui, sans-serif" },
  fontSizes: { xs: '0.8125rem', sm: '0.9375rem', md: '0.9375rem', lg: '1.125rem', xl: '1.375rem' },
  colors: { accent },
  primaryColor: 'accent',
  primaryShade: 8,
  autoContrast: true,
  defaultRadius: 8,
  cursorType: 'pointer',
  components: { Button: Button.extend({ defaultProps: { component: KeptButton } }) },
});

/** The library's own colours follow our tokens, so that there is one place for light and dark. */
export const variables: CSSVariablesResolver = () => {
  const tokens = {
    '--mantine-color-gray-4': 'var(--line-strong)',
    '--mantine-color-dark-4': 'var(--line-strong)',
    '--mantine-color-dark-6': 'var(--surface)',
    '--mantine-color-body': 'var(--surface)',
    '--mantine-color-text': 'var(--ink)',
    '--mantine-color-dimmed': 'var(--soft)',
    '--mantine-color-placeholder': 'var(--soft)',
    '--mantine-color-error': 'var(--stop)',
    '--mantine-color-default': 'var(--surface)',
    '--mantine-color-default-hover': 'var(--shade)',
    '--mantine-color-default-color': 'var(--ink)',
    '--mantine-color-default-border': 'var(--line-strong)',
    '--mantine-color-accent-filled': 'var(--accent)',
    '--mantine-color-accent-filled-hover': 'var(--accent)',
    '--mantine-primary-color-filled': 'var(--accent)',
    '--mantine-primary-color-filled-hover': 'var(--accent)',
    '--mantine-primary-color-contrast': 'var(--accent-ink)',
  };
  return { variables: {}, light: tokens, dark: tokens };
};
