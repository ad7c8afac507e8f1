/**
 * The stations that are not seen first: each is fetched when someone goes there, or when the page has nothing else to do.
 * What has been fetched once is there at once.
 */
export const laterStations = {
  flitch: () => import('../stations/flitch/FlitchStation.svelte'),
  parts: () => import('../stations/parts/PartsStation.svelte'),
  cutting: () => import('../stations/cutting/CuttingStation.svelte'),
  press: () => import('../stations/press/PressStation.svelte'),
}

/** Fetches them all, so that no way to a station waits for a server; one that fails is tried again on the way there. */
export async function fetchStations(): Promise<void> {
  await Promise.allSettled(Object.values(laterStations).map((fetch) => fetch()))
}
