/** A sound made here, and a shake where the device can: no file, no request. */

let audio: AudioContext | undefined;

/** Browsers let a page sound only after a touch: called from one. */
export function wakeSound(): void {
  audio ??= typeof AudioContext === 'function' ? new AudioContext() : undefined;
  void audio?.resume();
}

/** Two falling tones; three times where something is over. */
export function ring(urgent: boolean): void {
  navigator.vibrate?.(urgent ? [400, 150, 400, 150, 400] : [250, 120, 250]);
  if (!audio || audio.state !== 'running') return;
  const start = audio.currentTime;
  for (let n = 0; n < (urgent ? 6 : 2); n++) {
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    tone.frequency.value = n % 2 ? 660 : 880;
    loud.gain.setValueAtTime(0.0001, start + n * 0.28);
    loud.gain.exponentialRampToValueAtTime(0.4, start + n * 0.28 + 0.02);
    loud.gain.exponentialRampToValueAtTime(0.0001, start + n * 0.28 + 0.26);
    tone.connect(loud).connect(audio.destination);
    tone.start(start + n * 0.28);
    tone.stop(start + n * 0.28 + 0.27);
  }
}

/** Keeps the screen on while the page is seen; gives what lets go. */
export function stayAwake(): () => void {
  let held: WakeLockSentinel | undefined;
  let wanted = true;
  const hold = async () => {
    if (!wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      held = await navigator.wakeLock.request('screen');
      if (!wanted) void held.release();
    } catch (error) {
      // Low battery or not allowed here: the screen may go dark, the alarms still sound.
      if (!(error instanceof DOMException)) throw error;
    }
  };
  const seen = () => void hold();
  document.addEventListener('visibilitychange', seen);
  void hold();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', seen);
    void held?.release();
  };
}

/** Voices of the device itself: others would send a client's name away. */
const voiceFor = (language: string) =>
  speechSynthesis.getVoices().find((voice) => voice.localService && voice.lang.slice(0, 2) === language);

/** Tells whether this device can read aloud in a language, and again when its voices come; gives what stops telling. */
export function canSpeak(language: string, tell: (can: boolean) => void): () => void {
  if (!('speechSynthesis' in globalThis)) return () => {};
  const look = () => tell(voiceFor(language) !== undefined);
  look();
  speechSynthesis.addEventListener?.('voiceschanged', look);
  return () => speechSynthesis.removeEventListener?.('voiceschanged', look);
}

export function speak(words: string, language: string): void {
  const voice = voiceFor(language);
  if (!voice) return;
  const said = new SpeechSynthesisUtterance(words);
  said.voice = voice;
  said.lang = voice.lang;
  speechSynthesis.cancel();
  speechSynthesis.speak(said);
}
