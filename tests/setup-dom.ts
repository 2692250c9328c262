import { configure } from '@testing-library/preact';

/** As long as other waits: what is loaded lazily comes late where the cores are busy. */
configure({ asyncUtilTimeout: 60_000 });
