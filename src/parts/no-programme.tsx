import { ButtonLink } from './button/button';
import { Page } from './page/page';
import { hrefOf } from '../route';

/** What a screen about the programme shows before there is one. */
export function NoProgramme({ title }: { readonly title: string }) {
  return (
    <Page title={title} note="There is no programme yet, so there is nothing to show.">
      <ButtonLink href={hrefOf('start')} kind="main">
        Set the programme
      </ButtonLink>
    </Page>
  );
}
