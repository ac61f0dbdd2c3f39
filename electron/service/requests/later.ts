import { Hono } from 'hono';
import { answerProblem } from '../problems/problem-details';
import { nothingThere } from '../problems/nothing-there';

/**
 * A room's routes, loaded when the first request for one of them comes: a starting host then loads only what the first
 * screen asks for. Its type is the room's own, for the typed client; requests are answered just as by the room.
 * @param place where it stands below `/api`: `/exports`
 */
export function later<Room extends Hono, Context>(
  place: string,
  load: (context: Context) => Promise<Room>,
  context: Context,
): Room {
  let loading: Promise<Hono> | undefined;
  const loaded = async (): Promise<Hono> => {
    const room = new Hono().basePath('/api').route(place, await load(context));
    room.onError(answerProblem);
    room.notFound((c) => answerProblem(nothingThere(), c));
    return room;
  };
  const door = new Hono().all('*', async (c) => {
    // What could not be loaded is tried anew by whoever asks next.
    loading ??= loaded();
    loading.catch(() => (loading = undefined));
    return (await loading).fetch(c.req.raw, c.env);
  });
  return door as unknown as Room;
}
