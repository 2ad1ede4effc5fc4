import { registerSW } from 'virtual:pwa-register';
import { t } from '../i18n/index.svelte';
import { notify } from '../ui/toasts.svelte';

/** Registers the service worker that keeps the pages on this device. */
export function keepPages(): void {
  const update = registerSW({
    onNeedRefresh: () => {
      notify(t('update.ready'), () => void update(true));
    },
    onRegisterError: (error) => console.error('service worker not registered', error),
  });
}
