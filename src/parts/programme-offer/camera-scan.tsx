/** A button that opens the camera to read a QR code; it closes at once when one is found, or when the page is hidden. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../button/button';
import { type CameraFault, closeCamera, lookForCode, openCamera } from './camera';
import styles from './camera-scan.module.css';

interface CameraScanProps {
  readonly onText: (text: string) => void;
}

const FAULTS: Readonly<Record<CameraFault, string>> = {
  refused:
    'The camera is not allowed here. Allow it for this page in the settings of the browser, or take a picture of the code instead.',
  missing:
    'No camera can be opened here; perhaps another program has it. Take a picture of the code instead, or open the link or the file.',
};

export function CameraScan({ onText }: CameraScanProps) {
  const [isOpen, setOpen] = useState(false);
  const [fault, setFault] = useState<CameraFault | null>(null);
  if (isOpen) {
    return (
      <Viewfinder
        onText={(text) => {
          setOpen(false);
          onText(text);
        }}
        onClose={(why) => {
          setOpen(false);
          setFault(why);
        }}
      />
    );
  }
  const open = () => {
    setFault(null);
    setOpen(true);
  };
  return (
    <>
      <Button kind="main" onClick={open}>
        Read it with the camera
      </Button>
      {fault !== null && <p role="alert">{FAULTS[fault]}</p>}
    </>
  );
}

interface ViewfinderProps extends CameraScanProps {
  /** With the reason where it was not the person who closed it. */
  readonly onClose: (fault: CameraFault | null) => void;
}

function Viewfinder({ onText, onClose }: ViewfinderProps) {
  const video = useRef<HTMLVideoElement>(null);
  const [isAsking, setAsking] = useState(true);
  // As they were when the camera was opened: both only close it.
  const told = useRef({ onText, onClose }).current;
  useEffect(() => {
    let stream: MediaStream | null = null;
    let stopLooking = () => undefined as void;
    let isGone = false;
    const start = async () => {
      const opened = await openCamera();
      if (typeof opened === 'string') {
        if (!isGone) told.onClose(opened);
        return;
      }
      // The question may have stood longer than the page.
      if (isGone) return closeCamera(opened);
      stream = opened;
      setAsking(false);
      video.current!.srcObject = opened;
      await video.current!.play().catch(() => undefined);
      if (!isGone) stopLooking = lookForCode(video.current!, told.onText);
    };
    const closeIfHidden = () => {
      if (document.visibilityState === 'hidden') told.onClose(null);
    };
    document.addEventListener('visibilitychange', closeIfHidden);
    void start();
    return () => {
      isGone = true;
      stopLooking();
      document.removeEventListener('visibilitychange', closeIfHidden);
      if (stream !== null) closeCamera(stream);
    };
  }, [told]);
  return (
    <div class={styles.finder}>
      <video ref={video} class={styles.video} playsInline muted aria-label="What the camera sees" />
      <p role="status">
        {isAsking
          ? 'The browser asks whether the camera may be used.'
          : 'Hold the code straight and so near that it fills the picture. No picture is kept or sent.'}
      </p>
      <Button onClick={() => onClose(null)}>Close the camera</Button>
    </div>
  );
}
