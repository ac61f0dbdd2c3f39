import { answerSecondStart, handOver, type FirstStart } from '../../electron/main/second-start';
import { expect, test, vi } from 'vitest';

function first(opened: string | null, agrees = true) {
  return {
    focus: vi.fn(),
    opened: () => opened,
    ask: vi.fn(async () => agrees),
    openOther: vi.fn<FirstStart['openOther']>(async () => undefined),
    reload: vi.fn(),
  };
}

const asked = (library: string | undefined, demo = false) => structuredClone(handOver({ library, demo }));

test('a second start without a library only comes forward', async () => {
  const parts = first('/shelf');
  await answerSecondStart(asked(undefined), parts);
  expect(parts.focus).toHaveBeenCalledOnce();
  expect(parts.ask).not.toHaveBeenCalled();
  expect(parts.openOther).not.toHaveBeenCalled();
});

test('a second start with the library that is open only comes forward', async () => {
  const parts = first('/shelf');
  await answerSecondStart(asked('/shelf/'), parts);
  expect(parts.openOther).not.toHaveBeenCalled();
});

test('another library is opened when the maker agrees, and then shown', async () => {
  const parts = first('/shelf');
  await answerSecondStart(asked('/other'), parts);
  expect(parts.ask).toHaveBeenCalledWith('/other');
  expect(parts.openOther).toHaveBeenCalledWith({ library: '/other', demo: false });
  expect(parts.reload).toHaveBeenCalledOnce();
});

test('the present library stays when the maker says so', async () => {
  const parts = first('/shelf', false);
  await answerSecondStart(asked('/other'), parts);
  expect(parts.openOther).not.toHaveBeenCalled();
  expect(parts.reload).not.toHaveBeenCalled();
});

test('nothing is asked where no library is open', async () => {
  const parts = first(null);
  await answerSecondStart(asked(undefined, true), parts);
  expect(parts.ask).not.toHaveBeenCalled();
  expect(parts.openOther).toHaveBeenCalledWith({ library: undefined, demo: true });
});

test('a library that cannot be opened is an error to tell, and the page stays', async () => {
  const parts = first('/shelf');
  parts.openOther.mockRejectedValue(new Error('No.'));
  await expect(answerSecondStart(asked('/other'), parts)).rejects.toThrow('No.');
  expect(parts.reload).not.toHaveBeenCalled();
});

test.each([null, 'x', { library: 3, demo: true }, { library: 'relative', demo: false }, { library: '/a' }])(
  'what is not ours (%j) only brings the window forward',
  async (data) => {
    const parts = first('/shelf');
    await answerSecondStart(data, parts);
    expect(parts.focus).toHaveBeenCalledOnce();
    expect(parts.openOther).not.toHaveBeenCalled();
  },
);
