import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderReport } from '../../src/report/formats.ts';
import { pageStyle, styleHash } from '../../src/report/page-style.ts';
import { hostile, withTyped } from '../report/hostile.ts';
import { reportOf } from '../report/report-of.ts';

const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

it('lets in no style but its own: the policy names the hash of the style', () => {
  // CSP level 3, section 6.7.2: the base64 SHA-256 of the element's text.
  expect(styleHash).toBe(`sha256-${createHash('sha256').update(pageStyle).digest('base64')}`);
});

describe.skipIf(!existsSync(executablePath))(
  'the HTML report in a real browser',
  { timeout: 120_000 },
  () => {
    const folder = mkdtempSync(join(tmpdir(), 'report-page-'));
    let browser: Browser;

    beforeAll(async () => {
      const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking'];
      browser = await chromium.launch({ executablePath, args });
    }, 60_000);
    afterAll(async () => {
      await browser?.close();
      rmSync(folder, { recursive: true, force: true });
    });

    async function open(html: string, options: BrowserContextOptions = {}) {
      const file = join(folder, `${createHash('sha256').update(html).digest('hex').slice(0, 12)}.html`);
      writeFileSync(file, html);
      const context = await browser.newContext(options);
      const page = await context.newPage();
      const faults: string[] = [];
      const requests: string[] = [];
      page.on('console', (message) => faults.push(message.text()));
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('dialog', (dialog) => {
        faults.push(dialog.message());
        void dialog.dismiss();
      });
      page.on('request', (request) => requests.push(request.url()));
      await page.goto(pathToFileURL(file).href);
      return { page, context, faults, requests };
    }

    const html = (name: string, text?: string) => {
      const wanted = text === undefined ? {} : { change: withTyped(text), notes: [text] };
      const { report, wording } = reportOf(name, wanted);
      return renderReport(report, wording, 'html');
    };

    async function violations(page: Page): Promise<string[]> {
      await page.addScriptTag({ path: axe });
      return page.evaluate(async () => {
        const { axe } = globalThis as unknown as {
          axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const { violations } = await axe.run();
        return violations.map((one) => `${one.id}: ${one.nodes[0]?.html}`);
      });
    }

    it.each([
      ['fernhollow-lane-12', 1000, 'light'],
      ['fernhollow-lane-12', 400, 'dark'],
      ['larkspur-way-41', 1000, 'dark'],
      ['kiln-road-3', 400, 'light'],
      ['weir-cottages-5', 320, 'light'],
    ] as const)(
      '%s at %i px, %s, has no fault that axe finds, and needs no sideways scrolling',
      async (name, width, colorScheme) => {
        const { page, context } = await open(html(name), {
          viewport: { width, height: 900 },
          colorScheme,
          // The page's own policy would keep the checker out as well.
          bypassCSP: true,
        });
        expect(await violations(page)).toEqual([]);
        // WCAG 2.2, 1.4.10 Reflow: no scrolling in two directions at 320 CSS px.
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        await context.close();
      },
    );

    it('fetches nothing and runs nothing, whatever was typed', async () => {
      for (const text of hostile) {
        const { page, context, faults, requests } = await open(html('fernhollow-lane-12', text));
        expect(faults).toEqual([]);
        expect(requests).toHaveLength(1);
        expect(await page.locator('script, img, svg, iframe, object, form').count()).toBe(0);
        expect(await page.locator('style').count()).toBe(1);
        expect(await page.locator('h1').isVisible()).toBe(true);
        await context.close();
      }
    });

    it('has its headings in order, from one title down', async () => {
      const { page, context } = await open(html('kiln-road-3'));
      const levels = await page
        .locator('h1, h2, h3')
        .evaluateAll((all) => all.map((one) => Number(one.tagName.slice(1))));
      expect(levels.filter((level) => level === 1)).toHaveLength(1);
      expect(levels[0]).toBe(1);
      levels.reduce((before, level) => {
        expect(level).toBeLessThanOrEqual(before + 1);
        return level;
      });
      expect(await page.title()).toContain('3 Kiln Road');
      expect(await page.locator('html').getAttribute('lang')).toBe('en');
      await context.close();
    });
  },
);
