import { type BrowserContext, type Page, test, expect as usual } from '@playwright/test';
import { shippedLectures } from '../../notebooks/lectures/shipped.ts';
import { lessons } from '../../notebooks/lessons/lessons.ts';
import { curves, title, upToDate } from './givenLecture.ts';
import { answerByKeys, currentTask, firstWords, lessonSettled, openLesson, tabTo } from './lessonSteps.ts';
import { addTen, button, card, lecturesOf, newLecture, tenTitles, titlesOf } from './makingLectures.ts';
import { type OwnServer, startServer } from './ownServer.ts';
import { openDocument, readInputs, settled } from './stepwellPage.ts';

/** What is computed afresh for every step may take a busy machine longer than the usual five seconds. */
const expect = usual.configure({ timeout: 30_000 });

const [lecture] = shippedLectures;
const { steps } = lecture!;
const thresholdPlot = lessons.find(({ id }) => id === 'threshold-plot')!;

let server: OwnServer;
let context: BrowserContext;
/** Requests to another host, those that failed, and errors. */
let amiss: string[];

/** One visit with network; then it is cut for all that follows. */
test.beforeAll(async ({ browser }) => {
  server = await startServer();
  context = await browser.newContext({
    baseURL: server.address,
    serviceWorkers: 'allow',
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const first = await context.newPage();
  await first.goto('/');
  await expect(first.locator('.taken-along')).toContainText('It has all the pages now');
  await server.stop();
  await context.setOffline(true);
  await expect(
    first.evaluate(() => fetch('nowhere.txt').then(String)),
    'there is no network',
  ).rejects.toThrow();
  await first.close();
  watch();
});
test.afterAll(() => context.close());

test.beforeEach(() => {
  amiss = [];
});
test.afterEach(async () => {
  const found = [...amiss];
  for (const page of context.pages()) await page.close();
  expect(found).toEqual([]);
});

function watch(): void {
  context.on('request', (request) => {
    const address = request.url();
    if (/^(https?|wss?):/.test(address) && !address.startsWith(server.address))
      amiss.push(`left: ${address}`);
  });
  context.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? '';
    // One that a page broke off as it was left did not fail for want of a network.
    if (reason !== 'net::ERR_ABORTED') amiss.push(`failed: ${request.url()} ${reason}`);
  });
  context.on('weberror', (error) => amiss.push(error.error().message));
  context.on('console', (message) => {
    if (message.type() === 'error') amiss.push(message.text());
  });
}

/** Before the room has answered there is neither a curve nor a number of what it is asked about. */
async function expectWithheld(page: Page): Promise<void> {
  await expect(page.getByRole('region', { name: 'Question to the room' })).toBeVisible();
  const withheld = page.locator('main.giving [data-withheld]');
  await expect(withheld).not.toHaveCount(0);
  for (const kind of ['.figure-curve:not([d=""])', 'canvas', '.value'])
    await expect(withheld.locator(kind).filter({ visible: true })).toHaveCount(0);
}

/** Shows the step on the page to its end: where it asks, the room answers first. */
async function giveStep(page: Page, beside: Page, place: number): Promise<void> {
  const step = steps[place]!;
  await expect(title(page)).toHaveText(step.title);
  await expect(title(page)).toBeFocused();
  await expect(beside.getByRole('heading', { level: 1 })).toHaveText(step.title);
  await expect(beside.getByText(`Step ${place + 1} of ${steps.length}`)).toBeVisible();
  if (step.ask) {
    await expectWithheld(page);
    await page.keyboard.press('2');
    await expect(beside.locator('.lecturer-room')).toHaveText(`The room says: ${step.ask.options[1]}`);
    await page.keyboard.press('PageDown');
    await expect(page.locator('main.giving [data-withheld]')).toHaveCount(0);
    await expect(page.locator('main.giving [data-revealed]').first()).toBeVisible();
    await expect(title(page)).toHaveText(step.title);
  }
  await upToDate(page);
  await expect(page.locator('main.giving .problem').filter({ visible: true })).toHaveCount(0);
}

test('the lecture is given from end to end by keyboard, with the lecturer’s page beside it', async () => {
  test.setTimeout(300_000);
  const page = await context.newPage();
  await page.goto('/');
  await settled(page);
  const before = await readInputs(page);
  await tabTo(page, 'a[href="#lectures"]', 'body');
  await page.keyboard.press('Enter');
  await expect(page.locator('main#lectures')).toBeVisible();
  await tabTo(page, `a[href="#lectures/${lecture!.id}/1"]`, 'main');
  await page.keyboard.press('Enter');
  await expect(title(page)).toHaveText(steps[0]!.title);
  const [beside] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
  await expect(beside.locator('.lecturer-notes')).not.toBeEmpty();
  const heading = beside.getByRole('heading', { level: 1 });
  await expect(heading, 'its style comes without network').toHaveCSS('font-family', /^"?Source S/);
  const faces = () => beside.evaluate(() => [...document.fonts].map(({ family }) => family).join());
  await expect.poll(faces, 'and its fonts').toMatch(/Source S.*KaTeX|KaTeX.*Source S/);
  await page.bringToFront();

  const moved = steps.findIndex(({ id }) => id === 'flat');
  for (let place = 0; place < steps.length; place++) {
    await giveStep(page, beside, place);
    if (place === moved) await takeBackAndDoAgain(page, place);
    if (place < steps.length - 1) await page.keyboard.press('PageDown');
  }
  expect(steps.filter(({ ask }) => ask).length).toBeGreaterThan(5);
  await expect(beside.locator('.lecturer-next')).toHaveText('This is the last step.');
  await page.keyboard.press('n');
  await expect.poll(() => beside.isClosed()).toBe(true);
  await page.keyboard.press('Escape');
  await expect(page.locator('main#lectures')).toBeVisible();
  expect(await readInputs(page)).toEqual(before);
});

/** In a step with a field: a change, then the step before and this one again. */
async function takeBackAndDoAgain(page: Page, place: number): Promise<void> {
  const field = page.locator('main.giving .field[data-input="workpiece.z"] input[type="text"]');
  const prepared = await field.inputValue();
  await tabTo(page, '.field[data-input="workpiece.z"] input[type="text"]', 'main.giving');
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('70 µm');
  await page.keyboard.press('Enter');
  // In a field the key takes back what is typed.
  await tabTo(page, 'button', 'main.giving');
  const changed = /^(70\sµm|0\.07\smm)$/;
  await expect(field).toHaveValue(changed);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(field).toHaveValue(prepared);
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(field).toHaveValue(changed);
  await page.keyboard.press('PageUp');
  await expect(title(page)).toHaveText(steps[place - 1]!.title);
  const { ask } = steps[place - 1]!;
  await expect(page.locator(curves)).not.toHaveCount(0);
  await expect(page.getByRole('button', { name: `2 ${ask!.options[1]}` })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.keyboard.press('PageDown');
  await expect(title(page)).toHaveText(steps[place]!.title);
  await expect(field).toHaveValue(changed);
}

test('ten steps from three pages are composed, shared by link, and opened', async () => {
  const page = await context.newPage();
  await openDocument(page, 'lectures');
  await newLecture(page, 'Half a wave');
  await addTen(page);
  expect(await titlesOf(page)).toEqual(tenTitles);
  await button(page, 'All lectures').click();
  await button(page, 'Copy link for students: Half a wave').click();
  await expect(card(page, 'Half a wave')).toContainText('The link is copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(link.startsWith(`${server.address}#lectures/`)).toBe(true);

  const students = await context.newPage();
  await students.goto(link);
  await settled(students);
  await expect(students.getByRole('heading', { name: 'Half a wave', exact: true })).toBeFocused();
  expect((await lecturesOf(students))[0]!.steps).toHaveLength(10);
  await card(students, 'Half a wave').getByRole('link', { name: tenTitles[0]!, exact: true }).click();
  for (const [i, name] of tenTitles.entries()) {
    await expect(title(students)).toHaveText(name);
    expect(new URL(students.url()).hash).toMatch(new RegExp(`^#lectures/lecture1/${i + 1}$`));
    await upToDate(students);
    await expect(students.locator('main.giving .giving-piece').first()).toBeVisible();
    await students.keyboard.press('PageDown');
  }
});

test('a lesson gives two wrong answers the reason of each, and goes on to its end', async () => {
  const page = await context.newPage();
  const drawn = await openLesson(page, thresholdPlot, 3);
  const reasons: string[] = [];
  for (const task of thresholdPlot.tasks) {
    const reply = currentTask(page).locator('.lesson-reply');
    const { errors, right } = drawn.at(task.id);
    for (const { error, answer } of task.id === 'radius' ? errors.slice(0, 2) : []) {
      await answerByKeys(page, drawn, task, answer);
      await expect(reply).toContainText('Not yet.');
      await expect(reply).toContainText(firstWords(error));
      reasons.push((await reply.textContent())!);
    }
    await answerByKeys(page, drawn, task, right);
    await expect(reply).toContainText(/^Right/);
    await lessonSettled(page);
    if (task === thresholdPlot.tasks.at(-1)) break;
    await tabTo(page, '.lesson-next');
    await page.keyboard.press('Enter');
    await expect(currentTask(page).locator('h3')).toBeFocused();
  }
  expect(reasons).toHaveLength(2);
  expect(reasons[0]).not.toBe(reasons[1]);
  await expect(page.locator('.lesson-summary')).toBeVisible();
});
