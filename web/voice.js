// Says the sentence aloud by the phone's own voice, for one whose eyes are on the
// needle. Only a voice that speaks on the phone itself: another would send the
// words away. Where there is none there is no button.

const STILL_MS = 1200; // a figure is typed in less

export class Voice {
  /** button says the sentence, and from then on each new one; pressed while it speaks it hushes, for good. words() gives the sentence. */
  constructor(button, words) {
    Object.assign(this, { button, words });
    this.on = false;
    this.said = '';
    button.addEventListener('click', () => this.pressed());
    globalThis.speechSynthesis?.addEventListener?.('voiceschanged', () => this.find());
    this.find();
  }

  /** Looks for a voice: some phones tell of theirs late. */
  find() {
    const voices = globalThis.speechSynthesis?.getVoices() ?? [];
    this.voice = voices.find(({ lang, localService }) => localService && /^en[-_]GB/.test(lang)) ?? voices.find(({ lang, localService }) => localService && /^en\b/.test(lang));
    this.button.hidden = !this.voice;
  }

  pressed() {
    if (speechSynthesis.speaking) this.hush();
    else {
      this.on = true;
      this.say();
    }
    this.button.setAttribute('aria-pressed', String(this.on));
  }

  say() {
    this.said = this.words();
    speechSynthesis.cancel();
    const utterance = new SpeechSynthesisUtterance(this.said);
    utterance.voice = this.voice;
    utterance.lang = this.voice.lang;
    speechSynthesis.speak(utterance);
  }

  /** The sentence may be another now: says it once it stands still. */
  changed() {
    clearTimeout(this.soon);
    if (!this.on) return;
    this.soon = setTimeout(() => { if (this.on && this.words() !== this.said) this.say(); }, STILL_MS);
  }

  hush() {
    this.on = false;
    clearTimeout(this.soon);
    globalThis.speechSynthesis?.cancel();
    this.button.setAttribute('aria-pressed', 'false');
  }
}
