/** What a time on the track goes by, on every page and list: its event, else its day, and its session, else when it was. In UTC. */
export const outingName = (outing: {
  readonly event?: string | undefined;
  readonly session?: string | undefined;
  readonly at: string;
}): string => {
  const { event, session, at } = outing;
  return `${event ?? at.slice(0, 10)} › ${session ?? `session of ${at.slice(11, 16)} UTC`}`;
};
