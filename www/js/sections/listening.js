/**
 * The microphone's spectrum, while it is asked for. Nothing of it is kept or sent.
 */

/** Long enough to tell a plate's modes apart: 3 Hz at 48 kHz. */
const FFT_SIZE = 16_384;

/** @typedef {{ db: Float32Array, step_hz: number }} Spectrum (frequency) dB over full scale, from 0 Hz in even steps */

export class Listening {
  #heard;
  /** @type {AudioContext | undefined} */
  #audio;
  /** @type {MediaStream | undefined} */
  #stream;

  /** @param {(spectrum: Spectrum) => void} heard called for each frame, with the loudest heard at each frequency since the start */
  constructor(heard) {
    this.#heard = heard;
  }

  get on() {
    return this.#audio !== undefined;
  }

  /**
   * @returns {Promise<void>} once it listens
   * @throws {DOMException} where the person or the machine has no microphone for the page
   */
  async start() {
    // What makes speech clearer takes the ring out of a tap.
    const constraints = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
    this.#stream = await navigator.mediaDevices.getUserMedia({ audio: constraints });
    const audio = new AudioContext();
    this.#audio = audio;
    const analyser = new AnalyserNode(audio, { fftSize: FFT_SIZE, smoothingTimeConstant: 0 });
    new MediaStreamAudioSourceNode(audio, { mediaStream: this.#stream }).connect(analyser);
    const now = new Float32Array(analyser.frequencyBinCount);
    const loudest = new Float32Array(now.length).fill(Number.NEGATIVE_INFINITY);
    const step_hz = audio.sampleRate / FFT_SIZE;
    const look = () => {
      if (this.#audio === audio) {
        analyser.getFloatFrequencyData(now);
        now.forEach((db, at) => {
          loudest[at] = Math.max(loudest[at], db);
        });
        this.#heard({ db: loudest, step_hz });
        requestAnimationFrame(look);
      }
    };
    look();
  }

  stop() {
    for (const track of this.#stream?.getTracks() ?? []) {
      track.stop();
    }
    void this.#audio?.close();
    this.#audio = undefined;
    this.#stream = undefined;
  }
}
