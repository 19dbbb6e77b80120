import { readDeliveredAs } from '@archwright/contracts';
import { DirectionProvider, MantineProvider } from '@mantine/core';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@fontsource/atkinson-hyperlegible/latin-400.css';
import '@fontsource/atkinson-hyperlegible/latin-700.css';
import '@fontsource/atkinson-hyperlegible/latin-ext-400.css';
import '@fontsource/atkinson-hyperlegible/latin-ext-700.css';
import '@fontsource/noto-sans-arabic/arabic-400.css';
import '@fontsource/noto-sans-arabic/arabic-700.css';
import '@mantine/core/styles/baseline.css';
import '@mantine/core/styles/default-css-variables.css';
import '@mantine/core/styles/global.css';
import '@mantine/core/styles/VisuallyHidden.css';
import '@mantine/core/styles/UnstyledButton.css';
import '@mantine/core/styles/ActionIcon.css';
import '@mantine/core/styles/Button.css';
import '@mantine/core/styles/Loader.css';
import '@mantine/core/styles/Input.css';
import '@mantine/core/styles/InlineInput.css';
import '@mantine/core/styles/PasswordInput.css';
import '@mantine/core/styles/Checkbox.css';
import '@mantine/core/styles/CheckboxIndicator.css';
import '@mantine/core/styles/Radio.css';
import '@mantine/core/styles/RadioIndicator.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/drawing.css';
import { queryClient } from './api/queries.js';
import { keepFocus } from './frame/keep-focus.js';
import { router } from './router.js';
import { theme, variables } from './theme.js';
import { delivered } from './words/delivered.js';
import { direction, language } from './words/language.js';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no element with the id "root" to draw into.');

readDeliveredAs(delivered);

document.documentElement.lang = language;
document.documentElement.dir = direction;

keepFocus(document);

createRoot(root).render(
  <StrictMode>
    <MantineProvider theme={theme} cssVariablesResolver={variables} defaultColorScheme="auto">
      <DirectionProvider initialDirection={direction} detectDirection={false}>
        <QueryClientProvider client={queryClient}>
          <RouterProvider router={router} />
        </QueryClientProvider>
      </DirectionProvider>
    </MantineProvider>
  </StrictMode>,
);
