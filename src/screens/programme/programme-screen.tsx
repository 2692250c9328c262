/** A programme that somebody has given, from a link, a QR code or a file: what it changes, and whether it is accepted. */
import { useEffect, useState } from 'preact/hooks';
import { OfferError, type ProgrammeOffer } from '../../../shared/formats/programme-offer';
import { Page } from '../../parts/page/page';
import { offerOf } from '../../parts/programme-offer/link';
import type { ScreenProps } from '../../route';
import { Offer } from './offer';
import { OpenProgramme } from './open-programme';

type Read = ProgrammeOffer | OfferError | null;

export function ProgrammeScreen({ argument }: ScreenProps) {
  const [read, setRead] = useState<Read>(null);
  useEffect(() => {
    setRead(null);
    if (argument !== null) offerOf(argument).then(setRead, setRead);
  }, [argument]);
  if (argument !== null && read === null) return null;
  if (read !== null && !(read instanceof OfferError)) return <Offer offer={read} />;
  return (
    <Page title="Open a programme">
      <OpenProgramme failure={read?.message ?? null} />
    </Page>
  );
}
