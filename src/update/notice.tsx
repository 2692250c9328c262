/** The two things that the app says about itself: that it now works without a network, and that a new version is there. */
import {
  applyUpdate,
  isBusy,
  offlineReady,
  postponeUpdate,
  updateAsked,
  updateWaiting,
} from './update';
import './notice.css';

/** Stands once in the page, at the end of it, so that a screen reader hears the changes. */
export function UpdateNotice() {
  return (
    <div class="update-notice" role="status">
      {message()}
    </div>
  );
}

function message() {
  if (isBusy.value) return null;
  if (updateAsked.value)
    return <p>The new version starts when the run in the other tab is over.</p>;
  if (updateWaiting.value) {
    return (
      <>
        <p>A new version is ready.</p>
        <button type="button" onClick={() => void applyUpdate()}>
          Update now
        </button>
        <button type="button" onClick={postponeUpdate}>
          Later
        </button>
      </>
    );
  }
  if (offlineReady.value) {
    return (
      <>
        <p>Stored on this device: it now works without a network.</p>
        <button type="button" onClick={() => (offlineReady.value = false)}>
          Good
        </button>
      </>
    );
  }
  return null;
}
