import { Workbox } from 'workbox-window/build/workbox-window.prod.mjs';
import { trustedScriptUrl } from '../trusted';
import { followWorker, lookWhenVisible } from './update';

/**
 * Registers the service worker of the built app and follows its versions; called once at the start. Where there is no
 * worker to be had (development, a browser that refuses) the app works on, but needs the network to load.
 */
export async function startUpdates(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const workbox = new Workbox(trustedScriptUrl('sw.js'), { updateViaCache: 'none' });
  followWorker(workbox, {
    hadController: navigator.serviceWorker.controller !== null,
    reload: () => location.reload(),
  });
  try {
    const registration = await workbox.register();
    if (registration !== undefined) lookWhenVisible(workbox, registration);
  } catch (error) {
    console.warn('The app could not be stored for offline use.', error);
  }
}
