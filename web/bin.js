// What was deleted lies in the bin until it has been over 30 days there, by the
// clock and by the days on which the page was used: a clock that jumps must not
// empty it.

const DAYS = 30;
const DAY_MS = 24 * 60 * 60 * 1000;

/** The count of days on which the page was used, {seen, count}, once it is used at a time in ms. */
export function daysOf(days, now) {
  if (!days) return { seen: now, count: 0 };
  const another = Math.floor(now / DAY_MS) !== Math.floor(days.seen / DAY_MS);
  return { seen: now, count: days.count + (another ? 1 : 0) };
}

/** Whether what was deleted, {gone in ms, days}, has had its time. */
export function over({ gone, days }, { count }, now) {
  return count - days >= DAYS && now - gone >= DAYS * DAY_MS;
}

/** The part of the page that lists what was deleted, each with its way back. */
export class Bin {
  /** told({job, copied}) hears of a job that was put back; failed(error) of what went wrong. */
  constructor(box, { store, told, failed }) {
    Object.assign(this, { box, store, told, failed });
    this.rows = box.querySelector('ul');
    this.template = box.querySelector('template');
    this.count = box.querySelector('summary');
    box.addEventListener('click', ({ target }) => {
      const button = target.closest('button');
      if (button) this.press(button).catch(failed);
    });
  }

  async press(button) {
    const store = this.store();
    if (button.id === 'empty-bin') await store.emptyBin(this.shown);
    else this.told(await store.putBack(Number(button.dataset.deleted)));
    await this.show();
  }

  /** Lists what is there; name gives what a job is called. */
  async show(name = this.name) {
    this.name = name;
    const found = await this.store()?.bin(Date.now()) ?? [];
    this.shown = found.map(({ key }) => key);
    this.box.hidden = found.length === 0;
    this.count.textContent = `Deleted: ${found.length}`;
    this.rows.replaceChildren(...found.reverse().map(({ key, record: { form } }) => {
      const row = this.template.content.firstElementChild.cloneNode(true);
      row.querySelector('.deleted-name').textContent = name(form);
      row.querySelector('.deleted-about').textContent = [form.number ? form.engine : '', form.owner].filter(Boolean).join(' · ');
      const button = row.querySelector('button');
      button.dataset.deleted = key;
      button.setAttribute('aria-label', `Put back: ${name(form)}`);
      return row;
    }));
  }
}
